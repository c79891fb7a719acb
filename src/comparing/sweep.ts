import type { Design } from '../model/comparison.ts';
import type { SheetStep, Sweep, SweepPoint, WorkedOut } from '../model/sweep.ts';

/** Board and finish of a stock group as a key. */
function kindOf({ board, finish }: Design['groups'][number]): string {
  return JSON.stringify([board, finish]);
}

function sheetsByKind({ groups }: Design): Map<string, number> {
  const counts = new Map<string, number>();
  for (const group of groups) counts.set(kindOf(group), (counts.get(kindOf(group)) ?? 0) + group.sheets);
  return counts;
}

function stepsBetween(before: Design, after: Design): SheetStep[] {
  const [old, now] = [sheetsByKind(before), sheetsByKind(after)];
  const kinds = [...new Set([...old.keys(), ...now.keys()])].sort();
  return kinds.flatMap((kind) => {
    const sheets = (now.get(kind) ?? 0) - (old.get(kind) ?? 0);
    const [board, finish] = JSON.parse(kind) as [string, string];
    return sheets === 0 ? [] : [{ sheets, board, finish }];
  });
}

/** A way to build that was tried: the value of each parameter, and what it came to. */
export interface TriedPoint {
  readonly values: readonly string[];
  readonly result: WorkedOut;
}

/** Where the sheets of a point differ from those of the last point of `before` that can be built. */
function stepsFrom(before: readonly TriedPoint[], { result }: TriedPoint): SheetStep[] {
  const last = before.findLast((point) => point.result.ok)?.result;
  return last?.ok && result.ok ? stepsBetween(last.design, result.design) : [];
}

/** The points of a sweep in their order, with the steps at which sheets come or fall away along each parameter. */
export function sweepOf(parameters: readonly string[], tried: readonly TriedPoint[]): Sweep {
  const rows = new Map<string, TriedPoint[]>();
  const columns = new Map<string, TriedPoint[]>();
  const points = tried.map((point): SweepPoint => {
    const row = lineOf(rows, point.values.slice(0, -1));
    const column = lineOf(columns, point.values.slice(1));
    const steps = stepsFrom(row, point);
    const stepsAcross = parameters.length === 1 ? [] : stepsFrom(column, point);
    row.push(point);
    column.push(point);
    return { ...point, steps, stepsAcross };
  });
  return { parameters, points };
}

/** The points so far whose other parameters have these values. */
function lineOf(lines: Map<string, TriedPoint[]>, others: readonly string[]): TriedPoint[] {
  const key = JSON.stringify(others);
  const known = lines.get(key);
  if (known !== undefined) return known;
  const line: TriedPoint[] = [];
  lines.set(key, line);
  return line;
}

/** Points that follow each other with the same sheets, and those that cannot be built for the same reason. */
export function runsOf(points: readonly SweepPoint[]): SweepPoint[][] {
  const runs: SweepPoint[][] = [];
  for (const point of points) {
    const last = runs.at(-1)?.at(-1);
    const sameRow = last?.values.slice(0, -1).every((value, at) => value === point.values[at]) ?? false;
    if (last !== undefined && sameRow && saysTheSame(last, point)) runs.at(-1)!.push(point);
    else runs.push([point]);
  }
  return runs;
}

function saysTheSame(first: SweepPoint, second: SweepPoint): boolean {
  const [a, b] = [first.result, second.result];
  if (!a.ok || !b.ok) return !a.ok && !b.ok && a.refused === b.refused;
  const sameAcross = JSON.stringify(first.stepsAcross) === JSON.stringify(second.stepsAcross);
  return second.steps.length === 0 && sameAcross && leastOf(a.design) === leastOf(b.design);
}

/** Sheets that the plan of a design takes. */
export function sheetsOf({ groups }: Design): number {
  return groups.reduce((sum, { sheets }) => sum + sheets, 0);
}

/** No plan of a design takes fewer sheets. */
export function leastOf({ groups }: Design): number {
  return groups.reduce((sum, { leastSheets }) => sum + leastSheets, 0);
}
