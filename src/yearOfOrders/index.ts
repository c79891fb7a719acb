import type { FinishTaken, Spread, YearRun, YearSummary } from '../model/yearOfOrders.ts';

export { mixJsonSchema, readMix } from './mixFile.ts';
export { keptInRack, rackAreaUm2 } from './rack.ts';
export { scheduleOf } from './schedule.ts';

/** Least, mean, most and standard deviation (of a sample, with n − 1) of some figures; at least one. */
export function spreadOf(values: readonly number[]): Spread {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) * (value - mean), 0);
  const deviation = values.length < 2 ? 0 : Math.sqrt(squares / (values.length - 1));
  return { least: Math.min(...values), mean, most: Math.max(...values), deviation };
}

/** What is taken by board and finish, added up; sorted by both. */
export function addTaken(taken: readonly FinishTaken[]): FinishTaken[] {
  const sums = new Map<string, FinishTaken>();
  for (const one of taken) {
    const key = JSON.stringify([one.board, one.finish]);
    const before = sums.get(key);
    sums.set(
      key,
      before === undefined
        ? one
        : {
            ...one,
            panels: before.panels + one.panels,
            sheets: before.sheets + one.sheets,
            costMinor: before.costMinor + one.costMinor,
            panelAreaUm2: before.panelAreaUm2 + one.panelAreaUm2,
            sheetAreaUm2: before.sheetAreaUm2 + one.sheetAreaUm2,
          },
    );
  }
  return [...sums].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, sum]) => sum);
}

/** Area of panels over that of the whole sheets taken, to six decimals; 0 where no sheet was. */
export function yieldOf(taken: readonly FinishTaken[]): number {
  const sum = (of: (one: FinishTaken) => bigint) => taken.reduce((total, one) => total + of(one), 0n);
  const sheets = sum(({ sheetAreaUm2 }) => sheetAreaUm2);
  if (sheets === 0n) return 0;
  return Number((sum(({ panelAreaUm2 }) => panelAreaUm2) * 1_000_000n) / sheets) / 1_000_000;
}

function total(taken: readonly FinishTaken[], of: (one: FinishTaken) => number): number {
  return taken.reduce((sum, one) => sum + of(one), 0);
}

/** Figures of runs of one mix beside each other, for all finishes together and one by one. At least one run. */
export function summariseRuns(runs: readonly YearRun[]): YearSummary {
  const figures = (takenOf: (run: YearRun) => readonly FinishTaken[]) => ({
    sheets: spreadOf(runs.map((run) => total(takenOf(run), ({ sheets }) => sheets))),
    costMinor: spreadOf(runs.map((run) => total(takenOf(run), ({ costMinor }) => costMinor))),
    yield: spreadOf(runs.map((run) => yieldOf(takenOf(run)))),
  });
  const kinds = addTaken(runs.flatMap(({ taken }) => taken));
  return {
    orders: runs[0]!.cuttings.reduce((sum, { orders }) => sum + orders, 0),
    ...figures(({ taken }) => taken),
    offcutsInRack: spreadOf(runs.map(({ cuttings }) => cuttings.at(-1)?.offcutsInRack ?? 0)),
    finishes: kinds.map(({ board, finish }) => ({
      board,
      finish,
      ...figures(({ taken }) => taken.filter((one) => one.board === board && one.finish === finish)),
    })),
  };
}
