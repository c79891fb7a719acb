import type { PanelAspect } from '../model/furniture.ts';
import type { Part } from '../model/part.ts';
import type { PlanLabel } from '../model/plan.ts';
import { fitsAsSawn, type MatchablePanel, matchPanels, panelDifferences } from './matchPanels.ts';
import { useSawn } from './useSawn.ts';

/** A panel of the order as it was, with its number in the lists. */
export interface NumberedPart {
  readonly part: Part;
  readonly number: number;
}

/** A piece that is sawn, with the text of its label. */
export interface SawnPiece {
  /** One of the panels of the order as it was. */
  readonly of: NumberedPart;
  /** Which of those that are alike, from 1. */
  readonly piece: number;
  readonly code: string;
  /** Which way the grain runs on it; null where that is not known. */
  readonly grain: 'length' | 'width' | 'none' | null;
}

/** A panel of the changed order with its number, and the pieces of it that are sawn. */
export interface CarriedPanel<New> {
  readonly panel: New;
  readonly sawn: readonly SawnPiece[];
  /** Number, and which pieces the sawn ones are from now on; null where none is sawn. */
  readonly sawnLabel: PlanLabel | null;
  /** What of it is otherwise since it was sawn, as far as that is known. */
  readonly differs: readonly PanelAspect[];
  /** Number, and the pieces that are still to be sawn; null where none is. */
  readonly label: PlanLabel | null;
}

/** A row of matched fronts of which only some are sawn. */
export interface BrokenRow<New> {
  readonly sawn: readonly New[];
  readonly others: readonly New[];
}

/** What was sawn, as the changed order can use it. */
export interface CarriedOver<New> {
  /** Every panel of the changed order, in its order. */
  readonly panels: readonly CarriedPanel<New>[];
  /** Sawn pieces that it has no use for. */
  readonly left: readonly SawnPiece[];
  readonly brokenRows: readonly BrokenRow<New>[];
}

type Uses<New> = Map<New, SawnPiece[]>;

/** Sawn pieces handed out to the panels that they can be, and those that are over. */
function handOut<New extends MatchablePanel>(
  before: readonly NumberedPart[],
  pieces: readonly SawnPiece[],
  wanted: readonly New[],
): { uses: Uses<New>; left: SawnPiece[] } {
  const there = new Map<Part, SawnPiece[]>();
  for (const piece of [...pieces].sort((a, b) => a.piece - b.piece)) {
    there.set(piece.of.part, [...(there.get(piece.of.part) ?? []), piece]);
  }
  const counts = new Map([...there].map(([part, own]) => [part, own.length]));
  const parts: readonly Part[] = before.map(({ part }) => part);
  const uses: Uses<New> = new Map();
  const left: SawnPiece[] = [];
  for (const { before: part, after, count } of useSawn(counts, matchPanels(parts, wanted))) {
    const taken = there.get(part)!.splice(0, count);
    if (after === null) left.push(...taken);
    else uses.set(after, [...(uses.get(after) ?? []), ...taken]);
  }
  return { uses, left };
}

function isOwn(piece: SawnPiece, panel: MatchablePanel): boolean {
  const { unit, name } = piece.of.part;
  return unit === panel.unit && name === panel.name;
}

/** Rows over which the grain runs on, in their order. */
function rowsOf<New extends MatchablePanel>(wanted: readonly New[]): New[][] {
  const rows = new Map<string, New[]>();
  for (const panel of wanted) {
    if (panel.match === undefined || panel.grain !== 'length') continue;
    const key = JSON.stringify([panel.order, panel.board, panel.finish, panel.match.run]);
    rows.set(key, [...(rows.get(key) ?? []), panel]);
  }
  return [...rows.values()].filter((row) => row.length > 1);
}

/** Takes pieces back from rows that are to be of one blank, where not all of a row is sawn. */
function keepWholeRows<New extends MatchablePanel>(rows: readonly New[][], uses: Uses<New>): SawnPiece[] {
  const back: SawnPiece[] = [];
  for (const row of rows) {
    const own = row.map((panel) => (uses.get(panel) ?? []).filter((piece) => isOwn(piece, panel)));
    const whole = Math.min(...own.map(({ length }) => length));
    row.forEach((panel, index) => {
      const kept = own[index]!.slice(0, whole);
      back.push(...(uses.get(panel) ?? []).filter((piece) => !kept.includes(piece)));
      uses.set(panel, kept);
    });
  }
  return back;
}

function findBrokenRows<New extends MatchablePanel>(
  rows: readonly New[][],
  uses: Uses<New>,
): BrokenRow<New>[] {
  return rows.flatMap((row) => {
    const count = (panel: New) => (uses.get(panel) ?? []).filter((piece) => isOwn(piece, panel)).length;
    const all = row.map((panel) => (uses.get(panel) ?? []).length);
    const even = row.every((panel, index) => count(panel) === all[index] && all[index] === all[0]);
    if (even) return [];
    const sawn = row.filter((_, index) => all[index]! > 0);
    return [{ sawn, others: row.filter((panel) => !sawn.includes(panel) || count(panel) < panel.count) }];
  });
}

/** Numbers of the changed order's panels: the old one where it is still the same as sawn, otherwise one never used. */
function numbersOf<New extends MatchablePanel>(
  before: readonly NumberedPart[],
  wanted: readonly New[],
): Map<New, number> {
  const old = new Map<Part, number>(before.map(({ part, number }) => [part, number]));
  const numbers = new Map<New, number>();
  const taken = new Set<number>();
  const parts: readonly Part[] = before.map(({ part }) => part);
  for (const { before: part, after } of matchPanels(parts, wanted)) {
    if (part === null || after === null || numbers.has(after) || !fitsAsSawn(part, after)) continue;
    const number = old.get(part)!;
    if (taken.has(number)) continue;
    taken.add(number);
    numbers.set(after, number);
  }
  let last = Math.max(0, ...old.values());
  for (const panel of wanted) {
    if (numbers.has(panel)) continue;
    last += 1;
    numbers.set(panel, last);
  }
  return numbers;
}

/** What differs since, of all pieces together; places in rows are counted anew by every plan and do not count. */
function differences(sawn: readonly SawnPiece[], panel: MatchablePanel): PanelAspect[] {
  const all = sawn.flatMap(({ of }) => panelDifferences(of.part, panel)).filter((one) => one !== 'row');
  return [...new Set(all)];
}

/**
 * What is sawn of an order, carried over to the order as it is now. A sawn piece serves the panel that it was sawn as, or any
 * other of the same board, size and grain; what serves none is left. Panels that are as they were keep their numbers, others
 * get numbers that were never used, so that no two pieces of wood ever bear the same label. `rows: whole` uses fronts of a
 * matched row only where all of the row are sawn; otherwise rows of which some are sawn come back as broken.
 */
export function carryOver<New extends MatchablePanel>(request: {
  readonly before: readonly NumberedPart[];
  readonly pieces: readonly SawnPiece[];
  readonly wanted: readonly New[];
  readonly rows: 'whole' | 'as sawn';
}): CarriedOver<New> {
  const { before, pieces, wanted } = request;
  const { uses, left } = handOut(before, pieces, wanted);
  const rows = rowsOf(wanted);
  if (request.rows === 'whole') left.push(...keepWholeRows(rows, uses));
  const numbers = numbersOf(before, wanted);
  const sawnOf = new Map<number, Set<number>>();
  for (const { of, piece } of pieces) {
    sawnOf.set(of.number, (sawnOf.get(of.number) ?? new Set<number>()).add(piece));
  }
  const panels = wanted.map((panel): CarriedPanel<New> => {
    const sawn = uses.get(panel) ?? [];
    const number = numbers.get(panel)!;
    const used = new Set(sawnOf.get(number));
    const free = (): number => {
      let piece = 1;
      while (used.has(piece)) piece += 1;
      used.add(piece);
      return piece;
    };
    const sawnAs = sawn.map(({ of, piece }) => (of.number === number ? piece : free()));
    const rest = Array.from({ length: panel.count - sawn.length }, free);
    const labelFor = (own: number[]) => (own.length === 0 ? null : { number, pieces: own, of: panel.count });
    const differs = differences(sawn, panel);
    return { panel, sawn, sawnLabel: labelFor(sawnAs), differs, label: labelFor(rest) };
  });
  return { panels, left, brokenRows: findBrokenRows(rows, uses) };
}
