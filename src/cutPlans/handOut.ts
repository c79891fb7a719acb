import type { StockGroup } from '../model/stock.ts';
import type { Arranged } from './arrange.ts';

/** One way to cut a sheet, in the order of sawing, and how many sheets are cut so. */
export interface ArrangedSheet {
  /** Index into the group's sheets. */
  readonly sheet: number;
  readonly copies: number;
  readonly root: Arranged;
}

/** Sheets cut in one way down to the panels' names: `ids[d]` names the part of each leaf of demand d, in order. */
export interface HandedOut {
  readonly arranged: ArrangedSheet;
  readonly copies: number;
  /** For blanks the list is empty: their parts are the same in every blank. */
  readonly ids: readonly (readonly string[])[];
}

function countLeaves(piece: Arranged, leaves: number[]): void {
  switch (piece.kind) {
    case 'demand':
      leaves[piece.demand] = (leaves[piece.demand] ?? 0) + 1;
      return;
    case 'stack':
      for (const child of piece.children) countLeaves(child, leaves);
      return;
    case 'spare':
      return;
  }
}

/** Parts of one demand with how many are still to be cut. */
type Remaining = { readonly part: string; count: number }[];

/** Whether `leaves` pieces on each of `copies` equal sheets can be given parts that are the same on every copy. */
function canServe(remaining: Remaining, leaves: number, copies: number): boolean {
  return remaining.reduce((sum, entry) => sum + Math.floor(entry.count / copies), 0) >= leaves;
}

/** Most copies, at most `wanted`, that can carry the same names; at least 1 while enough parts are left. */
function mostCopies(remaining: readonly Remaining[], leaves: readonly number[], wanted: number): number {
  const served = (copies: number) =>
    leaves.every((count, demand) => count === 0 || canServe(remaining[demand]!, count, copies));
  if (served(wanted)) return wanted;
  let least = 1;
  let most = wanted;
  while (most - least > 1) {
    const middle = Math.floor((least + most) / 2);
    if (served(middle)) least = middle;
    else most = middle;
  }
  return served(least) ? least : 0;
}

/**
 * Names for the leaves of one demand on `copies` equal sheets. Parts whose count the copies divide go first, since
 * they leave nothing behind that would split later sheets; then the most numerous.
 */
function takeParts(remaining: Remaining, leaves: number, copies: number): string[] {
  if (leaves === 0) return [];
  const order = remaining.map((_, index) => index);
  const leavesRest = (index: number) => (remaining[index]!.count % copies === 0 ? 0 : 1);
  order.sort((a, b) => leavesRest(a) - leavesRest(b) || remaining[b]!.count - remaining[a]!.count || a - b);
  const ids: string[] = [];
  for (const index of order) {
    const entry = remaining[index]!;
    const take = Math.min(Math.floor(entry.count / copies), leaves - ids.length);
    for (let i = 0; i < take; i++) ids.push(entry.part);
    entry.count -= take * copies;
  }
  return ids;
}

/**
 * Says which part each piece of each sheet is. Equal sheets stay together as copies as long as the same parts can be
 * cut from each of them; otherwise they are divided into fewer copies. The order of the sheets is kept. Throws when
 * the nest cuts other numbers of a demand than the group asks for.
 */
export function handOut(group: StockGroup, sheets: readonly ArrangedSheet[]): HandedOut[] {
  const remaining: Remaining[] = group.demands.map((demand) =>
    demand.blank
      ? [{ part: demand.blank.run, count: demand.count }]
      : demand.parts.map((entry) => ({ ...entry })),
  );
  const byCopies = sheets.map((_, index) => index);
  byCopies.sort((a, b) => sheets[b]!.copies - sheets[a]!.copies || a - b);
  const out = new Map<number, HandedOut[]>();
  for (const index of byCopies) {
    const arranged = sheets[index]!;
    const leaves = group.demands.map(() => 0);
    countLeaves(arranged.root, leaves);
    const made: HandedOut[] = [];
    for (let left = arranged.copies; left > 0; left -= made.at(-1)!.copies) {
      const copies = mostCopies(remaining, leaves, left);
      if (copies === 0) throw new Error(`the nest of ${group.id} cuts more pieces than are wanted`);
      const ids = leaves.map((count, demand) => takeParts(remaining[demand]!, count, copies));
      made.push({
        arranged,
        copies,
        ids: ids.map((list, demand) => (group.demands[demand]!.blank ? [] : list)),
      });
    }
    out.set(index, made);
  }
  const missing = remaining.findIndex((entries) => entries.some((entry) => entry.count !== 0));
  if (missing >= 0) {
    throw new Error(`the nest of ${group.id} does not cut demand ${missing} as often as it is wanted`);
  }
  return sheets.flatMap((_, index) => out.get(index)!);
}
