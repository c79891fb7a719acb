import { errorFinding } from '../basics/findings.ts';
import { type LabelledPiece, labelledPieces } from '../documents/panelStickerPieces.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { PlanFile, PlanGroup, PlanStock } from '../model/plan.ts';
import type { BookingLine, Ledger, OffcutItem, SheetItem } from '../model/store.ts';
import { issueLines } from '../store/draftLines.ts';
import { itemKey, lineOf } from '../store/items.ts';

/** What finishing a cut is booked with. */
export interface FinishedCut {
  /** Name of the order or list, as the labels have it. */
  readonly job: string;
  /** Where the kept offcuts stand. */
  readonly place: string;
}

function boardOf(group: PlanGroup, { length, width, grain }: PlanStock) {
  const { board, finish, thickness } = group;
  return { board, finish, thickness, length, width, grain };
}

/** The offcuts of the store that a plan's row of offcuts stands for: the one of its name, else any of its size. */
function offcutsMeant(
  ledger: Ledger,
  group: PlanGroup,
  stock: PlanStock,
  count: number,
  job: string,
  used: Set<string>,
): OffcutItem[] {
  const size: Omit<SheetItem, 'item'> = boardOf(group, stock);
  const alike = [...ledger.stock.values()].flatMap(({ item, reserved }) => {
    if (item.item !== 'offcut' || used.has(item.label)) return [];
    const { board, finish, thickness, length, width, grain } = item;
    const own = { board, finish, thickness, length, width, grain };
    if (JSON.stringify(own) !== JSON.stringify(size)) return [];
    const named = item.label.toUpperCase() === stock.id.toUpperCase();
    const rank = named ? 0 : reserved.has(job) ? 1 : reserved.size === 0 ? 2 : 3;
    return [{ item, rank }];
  });
  const meant = alike.sort((a, b) => a.rank - b.rank).slice(0, count);
  for (const { item } of meant) used.add(item.label);
  return meant.map(({ item }) => item);
}

function notThere(group: PlanGroup, stock: PlanStock, count: number, there: number): Finding {
  const { length, width } = stock;
  const what = `${group.board} ${group.finish}`.trim();
  const message = `The plan cuts the offcut ${stock.id}, and the store has too few of that size.`;
  return errorFinding('not-in-store', message, undefined, {
    found: `${there} of ${what} ${length} × ${width}`,
    expected: String(count),
    advice: 'receive the offcut first, with its label',
  });
}

function takenOut(plan: PlanFile, ledger: Ledger, job: string): Checked<BookingLine[]> {
  const findings: Finding[] = [];
  const sheets = new Map<string, { readonly item: SheetItem; count: number }>();
  const lines: BookingLine[] = [];
  const used = new Set<string>();
  for (const group of plan.groups) {
    for (const stock of group.stock) {
      const own = group.sheets.filter((sheet) => sheet.stock === stock.id);
      const count = own.reduce((sum, { copies }) => sum + copies, 0);
      if (count === 0) continue;
      if (stock.kind === 'sheet') {
        const item: SheetItem = { item: 'sheet', ...boardOf(group, stock) };
        const before = sheets.get(itemKey(item))?.count ?? 0;
        sheets.set(itemKey(item), { item, count: before + count });
        continue;
      }
      const meant = offcutsMeant(ledger, group, stock, count, job, used);
      if (meant.length < count) findings.push(notThere(group, stock, count, meant.length));
      for (const item of meant) lines.push(...issueLines(ledger, item, 1, job));
    }
  }
  if (findings.length > 0) return { ok: false, findings };
  const out = [...sheets.values()].flatMap(({ item, count }) => issueLines(ledger, item, count, job));
  return { ok: true, value: [...out, ...lines], findings };
}

function keptSize(piece: Exclude<LabelledPiece, { is: 'panel' }>): { length: number; width: number } {
  if (piece.is === 'offcut') return { length: piece.ending.length, width: piece.ending.width };
  const { length, width } = piece.kept;
  return piece.ending.lengthAlong === 'length' ? { length, width } : { length: width, width: length };
}

function putBack(plan: PlanFile, { job, place }: FinishedCut): BookingLine[] {
  return labelledPieces(plan, job).flatMap((piece) => {
    if (piece.is === 'panel') return [];
    const { board, finish, thickness, stock } = piece.group;
    const grain = stock.find(({ id }) => id === piece.sheet.stock)?.grain ?? 'none';
    const item: OffcutItem = {
      item: 'offcut',
      label: piece.code,
      place,
      board,
      finish,
      thickness,
      ...keptSize(piece),
      grain,
    };
    return [lineOf(item, 1, 'in')];
  });
}

/**
 * The lines that book a cut whose plan has been replayed: its sheets and the offcuts that it was cut from go out, those
 * reserved for the job first; the offcuts that are kept come in under the text of their labels. A finding for every offcut
 * of the plan that the store does not have. Whether there are enough sheets is for the booking to say.
 */
export function finishCut(plan: PlanFile, ledger: Ledger, cut: FinishedCut): Checked<BookingLine[]> {
  const out = takenOut(plan, ledger, cut.job);
  return out.ok ? { ...out, value: [...out.value, ...putBack(plan, cut)] } : out;
}

/** The booking that has booked this very plan and is not reversed, or null. */
export function bookedAlready(ledger: Ledger, planHash: string): Finding | null {
  const before = ledger.bookings.find(
    ({ plan, number }) => plan === planHash && !ledger.reversedBy.has(number),
  );
  if (before === undefined) return null;
  const message = `This plan is booked already, as booking ${before.number} of ${before.date}.`;
  return errorFinding('cut-twice', message, undefined, {
    advice: `if that one was wrong, reverse it: plywright stock reverse ${before.number}`,
  });
}

/** The order that a plan's panels are for; empty where the plan, made from a plain list, does not say. */
export function orderOfPlan(plan: PlanFile): string {
  return plan.groups.flatMap(({ panels }) => panels).find(({ order }) => order !== '')?.order ?? '';
}
