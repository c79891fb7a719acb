import { errorFinding, listWords, warningFinding } from '../basics/findings.ts';
import { umToMm } from '../basics/lengths.ts';
import { worthKeeping } from '../basics/worthKeeping.ts';
import { type CarriedOver, type CarriedPanel, carryOver, type SawnPiece } from '../changes/carryOver.ts';
import { planPanel } from '../cutPlans/index.ts';
import { makeStockGroups } from '../demands/index.ts';
import { wordsOf } from '../documents/words/index.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { Panel } from '../model/furniture.ts';
import type { PlanFile, PlanLabel, PlanSawn, SawnCopies } from '../model/plan.ts';
import type { SheetSupply, StockGroup } from '../model/stock.ts';
import { type Job, type OrderedFurniture, placedIn } from './job.ts';
import { offcutsCutUp, offcutsOfPlan } from './piecesOfPlan.ts';
import { earlierPlans } from './recutPlan.ts';
import { partsBefore, piecesBefore } from './sawnBefore.ts';

/** An order that goes on from a plan of which some sheets are sawn. */
export interface AfterRequest {
  /** The order as it is now. */
  readonly ordered: OrderedFurniture;
  /** The plan that it was cut by so far. */
  readonly plan: PlanFile;
  /** SHA-256 of its text. */
  readonly planHash: string;
  /** Name of the job on the plan's labels. */
  readonly job: string;
  /** Sheets of the plan that are sawn. */
  readonly sawn: readonly SawnCopies[];
  /** Sheets that can be had, and offcuts of a store. */
  readonly supplies: readonly SheetSupply[];
  /** Whether a store has the sawn sheets booked, and so their offcuts. */
  readonly isBooked: boolean;
  readonly rows: 'whole' | 'as sawn';
  /** A tag such as `en`, for the title. */
  readonly language: string;
  /** File of the order, to show. */
  readonly file: string;
}

function materialOf(of: { readonly board: string; readonly finish: string }, thickness: number): string {
  return JSON.stringify([of.board, of.finish, thickness]);
}

/** A sawn piece that the order has no use for, as an offcut; null where it is too small or its grain is not known. */
function offcutOf(piece: SawnPiece, { order, library }: OrderedFurniture): SheetSupply | null {
  const { part } = piece.of;
  const { leastOffcut } = library.saws.get(order.saw)!;
  if (!worthKeeping(part.cutLengthUm, part.cutWidthUm, leastOffcut)) return null;
  const hasGrain = library.finishes.get(part.finish)?.grain ?? true;
  if (piece.grain === null && hasGrain) return null;
  return {
    id: piece.code,
    board: part.board,
    finish: part.finish,
    thicknessUm: part.thicknessUm,
    lengthUm: part.cutLengthUm,
    widthUm: part.cutWidthUm,
    grain: piece.grain ?? 'none',
    priceMinor: null,
    count: 1,
    kind: 'offcut',
  };
}

/** The offcuts of the sheets that are sawn, but for those that these sheets were cut from; a store has them itself. */
function ownOffcuts({ plan, job, sawn, isBooked }: AfterRequest): SheetSupply[] {
  if (isBooked) return [];
  const gone = new Set(offcutsCutUp(plan));
  return offcutsOfPlan(plan, job).filter(({ id, sheet: { group, number, copy } }) => {
    const isSawn = sawn.some(
      (one) => one.group === group && one.number === number && one.copies.includes(copy),
    );
    return isSawn && !gone.has(id);
  });
}

/** Counted sheets less what the sawn ones took. */
function lessSawn(supplies: readonly SheetSupply[], { plan, sawn }: AfterRequest): SheetSupply[] {
  return supplies.map((supply) => {
    if (supply.kind === 'offcut' || supply.count === null) return supply;
    const used = plan.groups.reduce((sum, group) => {
      const own = group.sheets.filter(({ stock }) => stock === supply.id).map(({ number }) => number);
      const some = sawn.filter((one) => one.group === group.id && own.includes(one.number));
      return sum + some.reduce((all, { copies }) => all + copies.length, 0);
    }, 0);
    return { ...supply, count: Math.max(0, supply.count - used) };
  });
}

/** Groups under the ids that their material had before, since labels have them. */
function renamed(groups: readonly StockGroup[], plan: PlanFile): StockGroup[] {
  const before = new Map(
    [...plan.groups, ...(plan.sawn?.groups ?? [])].map((group) => [
      materialOf(group, group.thickness),
      group.id,
    ]),
  );
  const taken = new Set(before.values());
  return groups.map((group) => {
    const known = before.get(materialOf(group, umToMm(group.thicknessUm)));
    if (known !== undefined) return { ...group, id: known };
    let { id } = group;
    for (let again = 2; taken.has(id); again++) id = `${group.id}-${again}`;
    taken.add(id);
    return { ...group, id };
  });
}

type Carried = CarriedPanel<Panel>;

function sawnPanel({ panel, sawn, sawnLabel, differs }: Carried) {
  const count = sawn.length;
  const { label: _none, ...listed } = planPanel({ ...panel, count }, undefined);
  return { ...listed, label: sawnLabel!, codes: sawn.map(({ code }) => code), differs: [...differs] };
}

function leftPiece({ of: { part }, code, grain }: SawnPiece, kept: boolean) {
  const { name, unit, cutLengthUm, cutWidthUm } = part;
  const size = { length: umToMm(cutLengthUm), width: umToMm(cutWidthUm) };
  return { code, name, unit, ...size, grain: grain ?? ('none' as const), kept };
}

/** What is sawn already, group by group, with what becomes of it. */
function sawnSection(
  { plan, sawn }: AfterRequest,
  carried: CarriedOver<Panel>,
  kept: ReadonlySet<string>,
  groupId: (of: { board: string; finish: string; thicknessUm: number }) => string,
): PlanSawn {
  const groups = new Map<string, PlanSawn['groups'][number]>();
  const groupOf = (of: { board: string; finish: string; thicknessUm: number }) => {
    const id = groupId(of);
    const group = groups.get(id) ?? {
      id,
      board: of.board,
      finish: of.finish,
      thickness: umToMm(of.thicknessUm),
      panels: [],
      left: [],
    };
    groups.set(id, group);
    return group;
  };
  for (const one of carried.panels) {
    if (one.sawn.length > 0) groupOf(one.panel).panels.push(sawnPanel(one));
  }
  for (const piece of carried.left) {
    groupOf(piece.of.part).left.push(leftPiece(piece, kept.has(piece.code)));
  }
  return { part: (plan.sawn?.part ?? 1) + 1, sheets: [...sawn], groups: [...groups.values()] };
}

function panelWords({ name, unit }: { readonly name: string; readonly unit: string }): string {
  return unit === '' ? name : `${name}, ${unit}`;
}

function tell({ panels, left, brokenRows }: CarriedOver<Panel>, kept: ReadonlySet<string>): Finding[] {
  const changed = panels.flatMap(({ panel, differs, sawnLabel }) => {
    if (differs.length === 0 || sawnLabel === null) return [];
    const message = `Panel ${sawnLabel.number} ${panelWords(panel)} is sawn already and still fits, but the order has it otherwise since.`;
    const advice = 'look at what has been done to it before you go on with it';
    return [warningFinding('sawn-panel-differs', message, undefined, { found: differs.join(', '), advice })];
  });
  const over = [true, false].flatMap((large) => {
    const own = left.filter(({ code }) => kept.has(code) === large);
    if (own.length === 0) return [];
    const what = own.map(({ of: { part, number }, piece }) => `${number}/${piece} ${panelWords(part)}`);
    const message = `${own.length === 1 ? 'One sawn panel is' : `${own.length} sawn panels are`} of no use to the order any more.`;
    const advice = large
      ? 'each becomes an offcut under its label, in the size that the saw gave it'
      : 'too small for an offcut: waste';
    return [warningFinding('sawn-panel-left', message, undefined, { found: what.join('; '), advice })];
  });
  const broken = brokenRows.map(({ sawn, others }) => {
    const message = `Of a row of fronts over which the grain runs on ${listWords(sawn.map(panelWords), 'and')} ${sawn.length === 1 ? 'is' : 'are'} sawn: the grain of the others does not meet ${sawn.length === 1 ? 'its' : 'theirs'}.`;
    return warningFinding('matched-row-broken', message, undefined, {
      found: listWords(others.map(panelWords), 'and'),
      advice: 'to cut the whole row anew from one blank, add --whole-rows',
    });
  });
  return [...changed, ...over, ...broken];
}

/**
 * An order of which some sheets of an earlier plan are sawn → a job for the rest. Sawn panels that still fit the order are
 * used and keep their labels; those that it has no use for become offcuts where they are large enough; offcuts of the sawn
 * sheets are offered first. What is otherwise since with a sawn panel, and what is left over, is told.
 */
export function prepareAfter(request: AfterRequest): Checked<Job> {
  const { ordered, plan, job, file } = request;
  const wanted = ordered.furniture.units.flatMap(({ panels }) => panels);
  const before = partsBefore(plan);
  const pieces = piecesBefore(plan, job, request.sawn, before);
  const carried = carryOver({ before, pieces, wanted, rows: request.rows });
  const offcuts = new Map(
    carried.left.flatMap((piece) => {
      const offcut = offcutOf(piece, ordered);
      return offcut === null ? [] : [[piece.code, offcut] as const];
    }),
  );
  const told = placedIn(file, tell(carried, new Set(offcuts.keys())));
  const rest = carried.panels.flatMap(({ panel, label }): Panel[] =>
    label === null ? [] : [{ ...panel, count: label.pieces.length }],
  );
  if (rest.length === 0) {
    const nothing = errorFinding('nothing-to-saw', 'Every panel of the order is sawn already.', { file });
    return { ok: false, findings: [...told, nothing] };
  }
  const supplies = [...lessSawn(request.supplies, request), ...ownOffcuts(request), ...offcuts.values()];
  const saw = ordered.library.saws.get(ordered.order.saw)!;
  const stock = makeStockGroups(rest, supplies, saw);
  const findings = [...told, ...placedIn(file, stock.findings)];
  if (findings.some(({ severity }) => severity === 'error')) return { ok: false, findings };
  const groups = renamed(stock.groups, plan);
  return { ok: true, value: jobOf(request, carried, groups, new Set(offcuts.keys())), findings };
}

function jobOf(
  request: AfterRequest,
  carried: CarriedOver<Panel>,
  groups: readonly StockGroup[],
  kept: ReadonlySet<string>,
): Job {
  const { ordered, plan, planHash, job, language } = request;
  const ids = new Map(
    [
      ...plan.groups,
      ...(plan.sawn?.groups ?? []),
      ...groups.map((one) => ({ ...one, thickness: umToMm(one.thicknessUm) })),
    ].map((group) => [materialOf(group, group.thickness), group.id]),
  );
  const sawn = sawnSection(request, carried, kept, (of) => ids.get(materialOf(of, umToMm(of.thicknessUm)))!);
  const labels = new Map<string, PlanLabel>(
    carried.panels.flatMap(({ panel, label }) => (label === null ? [] : [[panel.id, label] as const])),
  );
  const name = `${job}-part-${sawn.part}`;
  const { title } = ordered.order;
  return {
    name,
    title: wordsOf(language).later.partTitle(title, sawn.part),
    currency: ordered.library.currency,
    groups,
    ordered,
    later: { before: { plan: planHash, ...earlierPlans(plan), job, title, name }, sawn, labels },
  };
}
