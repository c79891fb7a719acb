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

/** The points of a sweep in their order, with the steps at which sheets come or fall away along the last parameter. */
export function sweepOf(
  parameters: readonly string[],
  tried: readonly { readonly values: readonly string[]; readonly result: WorkedOut }[],
): Sweep {
  const points = tried.map(({ values, result }, index): SweepPoint => {
    const before = tried[index - 1];
    const sameRow = before?.values.slice(0, -1).every((value, at) => value === values[at]) ?? false;
    const steps =
      before !== undefined && sameRow && before.result.ok && result.ok
        ? stepsBetween(before.result.design, result.design)
        : [];
    return { values, result, steps };
  });
  return { parameters, points };
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

function saysTheSame({ result: a }: SweepPoint, { result: b, steps }: SweepPoint): boolean {
  if (!a.ok || !b.ok) return !a.ok && !b.ok && a.refused === b.refused;
  return steps.length === 0 && leastOf(a.design) === leastOf(b.design);
}

/** Sheets that the plan of a design takes. */
export function sheetsOf({ groups }: Design): number {
  return groups.reduce((sum, { sheets }) => sum + sheets, 0);
}

/** No plan of a design takes fewer sheets. */
export function leastOf({ groups }: Design): number {
  return groups.reduce((sum, { leastSheets }) => sum + leastSheets, 0);
}
