import { umToMm } from '../basics/lengths.ts';
import type { Um } from '../model/geometry.ts';
import type { Nest } from '../model/nest.ts';
import type { HandWork, Part } from '../model/part.ts';
import type {
  PlanBefore,
  PlanFile,
  PlanGroup,
  PlanLabel,
  PlanPanel,
  PlanRecut,
  PlanSawn,
  PlanSheet,
  PlanStock,
} from '../model/plan.ts';
import type { SawRules, StockGroup, StockSheet } from '../model/stock.ts';
import { arrange } from './arrange.ts';
import { type ArrangedSheet, handOut } from './handOut.ts';
import { makeStacks } from './makeStacks.ts';
import { sawSheet } from './sawSheet.ts';

export { readPlan } from '../basics/readPlan.ts';
export { planSchemaText } from './planSchema.ts';
export { writePlan } from './writePlan.ts';

/** What the plan says about the job as a whole. */
export interface PlanJob {
  /** The order or list it is made for. */
  readonly job: string;
  /** ISO 4217, or empty where prices are areas. */
  readonly currency: string;
  readonly seed: number;
  /** What a plan takes over that goes on from an earlier one. */
  readonly later?: LaterPlan;
}

/** What makes a plan a later one of its job. */
export interface LaterPlan {
  readonly before: PlanBefore;
  readonly recut?: PlanRecut;
  readonly sawn?: PlanSawn;
  /** By the id of a part: its number, and which of its pieces are sawn. */
  readonly labels: ReadonlyMap<string, PlanLabel>;
}

/** The plan file holds no name longer than this. */
const LONGEST_NAME = 300;

function shortened(name: string): string {
  return name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1)}…` : name;
}

/** A part as the plan file has it. */
export function planPanel(part: Part, label?: PlanLabel): PlanPanel {
  return {
    id: part.id,
    name: shortened(part.name),
    unit: shortened(part.unit),
    order: shortened(part.order),
    length: umToMm(part.cutLengthUm),
    width: umToMm(part.cutWidthUm),
    finishedLength: umToMm(part.finishedLengthUm),
    finishedWidth: umToMm(part.finishedWidthUm),
    count: part.count,
    grain: part.grain,
    edging: {
      alongLength: [part.edging.alongLength[0], part.edging.alongLength[1]],
      alongWidth: [part.edging.alongWidth[0], part.edging.alongWidth[1]],
    },
    ...(part.byHand === undefined ? {} : { byHand: planHandWork(part.byHand) }),
    ...(label === undefined ? {} : { label }),
  };
}

function planHandWork({ outline, openings }: HandWork): NonNullable<PlanPanel['byHand']> {
  const extent = ([from, to]: readonly [Um, Um]): [number, number] => [umToMm(from), umToMm(to)];
  return {
    ...(outline === undefined
      ? {}
      : { outline: outline.map((at) => extent([at.alongLengthUm, at.alongWidthUm])) }),
    openings: openings.map(({ name, alongLength, alongWidth, kept }) => ({
      name: shortened(name),
      length: extent(alongLength),
      width: extent(alongWidth),
      ...(kept === undefined ? {} : { kept: { length: umToMm(kept.lengthUm), width: umToMm(kept.widthUm) } }),
    })),
  };
}

function planStock(sheet: StockSheet): PlanStock {
  const { left, right, near, far } = sheet.trim;
  return {
    id: sheet.id,
    kind: sheet.kind,
    length: umToMm(sheet.lengthUm),
    width: umToMm(sheet.widthUm),
    grain: sheet.grain,
    price: sheet.priceMinor,
    count: sheet.count,
    trim: { left: umToMm(left), right: umToMm(right), near: umToMm(near), far: umToMm(far) },
  };
}

function planSaw(saw: SawRules): PlanGroup['saw'] {
  return {
    name: saw.name,
    kerf: umToMm(saw.kerfUm),
    firstCut: saw.firstCut,
    turns: saw.turns,
    smallestPart: umToMm(saw.smallestPartUm),
    longestCut: saw.longestCutUm === null ? null : umToMm(saw.longestCutUm),
    cuttingHeight: saw.cuttingHeightUm === null ? null : umToMm(saw.cuttingHeightUm),
    leastOffcut: { length: umToMm(saw.leastOffcut.lengthUm), width: umToMm(saw.leastOffcut.widthUm) },
    // A fence goes without saying, as in plans that were written before saws could say otherwise.
    ...(saw.guidedBy === 'rail' ? { guidedBy: saw.guidedBy } : {}),
  };
}

/** Sheets in the order of sawing; those that turn out to be cut alike become copies of the first of them. */
function arrangeSheets(group: StockGroup, nest: Nest): ArrangedSheet[] {
  const alike = new Map<string, ArrangedSheet>();
  for (const { sheet, copies, root } of nest.sheets) {
    const arranged = { sheet, copies, root: arrange(root, group.saw) };
    const key = JSON.stringify([sheet, arranged.root]);
    const before = alike.get(key);
    alike.set(key, before ? { ...before, copies: before.copies + copies } : arranged);
  }
  return [...alike.values()];
}

function planSheets(group: StockGroup, nest: Nest): PlanSheet[] {
  const parts = new Map(group.parts.map((part) => [part.id, part]));
  return handOut(group, arrangeSheets(group, nest)).map(({ arranged, copies, ids }, index) => {
    const given = ids.map(() => 0);
    const nextPart = (demand: number): Part => parts.get(ids[demand]![given[demand]!++]!)!;
    const sawn = sawSheet(group, arranged.sheet, arranged.root, nextPart);
    return {
      number: index + 1,
      stock: group.sheets[arranged.sheet]!.id,
      copies,
      start: sawn.start,
      steps: [...sawn.steps],
      pieces: [...sawn.pieces],
    };
  });
}

function planGroup(group: StockGroup, nest: Nest, labels: LaterPlan['labels'] | undefined): PlanGroup {
  const runs = group.demands.flatMap(({ blank }) =>
    blank
      ? [{ name: blank.run, follows: blank.follows, panels: blank.pieces.map((piece) => piece.part) }]
      : [],
  );
  const saw = planSaw(group.saw);
  const thickness = umToMm(group.thicknessUm);
  const sheets = planSheets(group, nest);
  return {
    id: group.id,
    board: group.board,
    finish: group.finish,
    thickness,
    saw,
    panels: group.parts.map((part) => planPanel(part, labels?.get(part.id))),
    runs,
    pricedBy: group.pricedBy ?? 'price',
    stock: group.sheets.map(planStock),
    sheets,
    stacks: makeStacks(saw, thickness, sheets),
    bound: {
      sheets: nest.bound.sheets,
      cost: nest.bound.costMinor,
      certificate: nest.bound.certificate,
    },
    proved: nest.proved,
  };
}

/**
 * Stock groups with their nests → the plan of the job: for every sheet the cuts in the order in which a sawyer makes
 * them, trims first and matched blanks parted last, and what becomes of every piece. Equal sheets are planned once
 * with their copies, and lie in stacks where the saw is high enough. Throws when a nest does not cut exactly what its group asks for, or cannot be sawn.
 */
export function makePlan(
  groups: readonly { readonly group: StockGroup; readonly nest: Nest }[],
  job: PlanJob,
): PlanFile {
  const { later } = job;
  return {
    format: 'plywright plan',
    version: 1,
    job: shortened(job.job),
    currency: job.currency,
    seed: job.seed,
    ...(later === undefined ? {} : { before: later.before }),
    ...(later?.recut === undefined ? {} : { recut: later.recut }),
    ...(later?.sawn === undefined ? {} : { sawn: later.sawn }),
    groups: groups.map(({ group, nest }) => planGroup(group, nest, later?.labels)),
  };
}
