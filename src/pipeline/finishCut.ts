import { errorFinding } from '../basics/findings.ts';
import { allSheets, countSheets } from '../changes/sheetsOfPlan.ts';
import { type LabelledPiece, labelledPieces } from '../documents/panelStickerPieces.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { PlanFile, PlanGroup, PlanStock, SawnCopies } from '../model/plan.ts';
import type { BookingLine, Ledger, OffcutItem, SheetItem, StockEntry } from '../model/store.ts';
import { applyLine } from '../store/applyLine.ts';
import { issueLines } from '../store/draftLines.ts';
import { itemKey, lineOf } from '../store/items.ts';

/** What finishing a cut is booked with. */
export interface FinishedCut {
  /** Name of the order or list, as the labels have it. */
  readonly job: string;
  /** Where the kept offcuts stand. */
  readonly place: string;
  /** The sheets that were sawn; absent: all of them. */
  readonly sheets?: readonly SawnCopies[];
  /** Whether sheets of the plan were booked before. */
  readonly goesOn?: boolean;
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
    advice: stock.id.startsWith('PW1/')
      ? 'book the cut that it came from first, or receive the offcut with its label'
      : 'receive the offcut first, with its label',
  });
}

function takenOut(
  plan: PlanFile,
  ledger: Ledger,
  job: string,
  sheets: readonly SawnCopies[],
): Checked<BookingLine[]> {
  const findings: Finding[] = [];
  const bySize = new Map<string, { readonly item: SheetItem; count: number }>();
  const lines: BookingLine[] = [];
  const used = new Set<string>();
  for (const group of plan.groups) {
    for (const stock of group.stock) {
      const own = new Set(
        group.sheets.filter((sheet) => sheet.stock === stock.id).map(({ number }) => number),
      );
      const count = countSheets(sheets.filter((one) => one.group === group.id && own.has(one.number)));
      if (count === 0) continue;
      if (stock.kind === 'sheet') {
        const item: SheetItem = { item: 'sheet', ...boardOf(group, stock) };
        const before = bySize.get(itemKey(item))?.count ?? 0;
        bySize.set(itemKey(item), { item, count: before + count });
        continue;
      }
      const meant = offcutsMeant(ledger, group, stock, count, job, used);
      if (meant.length < count) findings.push(notThere(group, stock, count, meant.length));
      for (const item of meant) lines.push(...issueLines(ledger, item, 1, [job]));
    }
  }
  if (findings.length > 0) return { ok: false, findings };
  const out = [...bySize.values()].flatMap(({ item, count }) => issueLines(ledger, item, count, [job]));
  return { ok: true, value: [...out, ...lines], findings };
}

function keptSize(piece: Exclude<LabelledPiece, { is: 'panel' }>): { length: number; width: number } {
  if (piece.is === 'offcut') return { length: piece.ending.length, width: piece.ending.width };
  const { length, width } = piece.kept;
  return piece.ending.lengthAlong === 'length' ? { length, width } : { length: width, width: length };
}

function putBack(plan: PlanFile, { job, place }: FinishedCut, sheets: readonly SawnCopies[]): BookingLine[] {
  const isSawn = ({ group, sheet, copy }: LabelledPiece) =>
    sheets.some((one) => one.group === group.id && one.number === sheet.number && one.copies.includes(copy));
  return labelledPieces(plan, job).flatMap((piece) => {
    if (piece.is === 'panel' || !isSawn(piece)) return [];
    const { board, finish, thickness, stock } = piece.group;
    const grain = stock.find(({ id }) => id === piece.sheet.stock)?.grain ?? 'none';
    const of = { board, finish, thickness, ...keptSize(piece), grain };
    return [lineOf({ item: 'offcut', label: piece.code, place, ...of }, 1, 'in')];
  });
}

/** Sawn panels that a changed order no longer has and that are large enough to be offcuts: they come in once. */
function leftOver(plan: PlanFile, ledger: Ledger, { place }: FinishedCut): BookingLine[] {
  return (plan.sawn?.groups ?? []).flatMap(({ board, finish, thickness, left }) =>
    left.flatMap(({ code, length, width, grain, kept }) => {
      const of = { board, finish, thickness, length, width, grain };
      const item: OffcutItem = { item: 'offcut', label: code, place, ...of };
      return !kept || ledger.stock.has(itemKey(item)) ? [] : [lineOf(item, 1, 'in')];
    }),
  );
}

function withLines(ledger: Ledger, lines: readonly BookingLine[]): Ledger {
  const stock = new Map<string, StockEntry>(ledger.stock);
  const onOrder = new Map(ledger.onOrder);
  for (const line of lines) applyLine({ stock, onOrder }, line);
  return { ...ledger, stock };
}

/**
 * The lines that book a cut whose plan has been replayed, or some of its sheets: sheets and the offcuts that they were cut
 * from go out, those reserved for the job first; the offcuts that are kept come in under the text of their labels, and with
 * the first sheets of a later plan the sawn panels that its order no longer has. A finding for every offcut of the plan that
 * the store does not have. Whether there are enough sheets is for the booking to say.
 */
export function finishCut(plan: PlanFile, ledger: Ledger, cut: FinishedCut): Checked<BookingLine[]> {
  const sheets = cut.sheets ?? allSheets(plan);
  const left = cut.goesOn === true ? [] : leftOver(plan, ledger, cut);
  const out = takenOut(plan, withLines(ledger, left), cut.job, sheets);
  return out.ok ? { ...out, value: [...left, ...out.value, ...putBack(plan, cut, sheets)] } : out;
}

/** The order that all of a plan's panels are for; empty where the plan is for several, or for a plain list. */
export function orderOfPlan(plan: PlanFile): string {
  const panels = [...plan.groups, ...(plan.sawn?.groups ?? [])].flatMap((group) => [...group.panels]);
  const orders = new Set(panels.map(({ order }) => order));
  const [first = ''] = orders;
  return orders.size > 1 ? '' : first;
}
