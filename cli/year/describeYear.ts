import { shortened } from '../../src/basics/findings.ts';
import {
  type OrderMix,
  type Spread,
  summariseRuns,
  type YearRun,
  yieldOf,
} from '../../src/pipeline/simulateYear.ts';
import type { coloursFor } from '../terminal/findings.ts';
import { money } from '../terminal/money.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { counted, printable, TERMINAL_WIDTH, wrap } from '../terminal/text.ts';

/** Lines of the table of weeks: some of many cuttings. */
const MOST_WEEKS_SHOWN = 13;

function percent(share: number): string {
  return (share * 100).toFixed(1);
}

function range({ least, most }: Spread, print: (value: number) => string): string {
  const [low, high] = [print(least), print(most)];
  return low === high ? low : `${low}–${high}`;
}

function mean({ mean: value }: Spread): string {
  return value.toFixed(1);
}

function cells(what: string, of: { sheets: Spread; costMinor: Spread; yield: Spread }): string[] {
  return [
    shortened(what, 27),
    mean(of.sheets),
    range(of.sheets, String),
    money(of.costMinor.mean, ''),
    money(of.costMinor.deviation, ''),
    percent(of.yield.mean),
    range(of.yield, percent),
  ];
}

/** So many of the cuttings, evenly spread, the last among them. */
function shown<T>(all: readonly T[]): T[] {
  if (all.length <= MOST_WEEKS_SHOWN) return [...all];
  return Array.from(
    { length: MOST_WEEKS_SHOWN },
    (_, index) => all[Math.round((index * (all.length - 1)) / (MOST_WEEKS_SHOWN - 1))]!,
  );
}

/** What the terminal says of a simulated year: sheets of each finish over all runs, and the rack of the first run. */
export function describeYear(
  mix: OrderMix,
  runs: readonly YearRun[],
  currency: string,
  colours: ReturnType<typeof coloursFor>,
): string {
  const summary = summariseRuns(runs);
  const first = runs[0]!;
  const sheets = plainTable(
    ['board and finish', 'sheets', 'from–to', `cost ${currency}`.trim(), '±', 'yield %', 'from–to'],
    [
      ...summary.finishes.map((one) => cells(`${printable(one.board)} ${printable(one.finish)}`, one)),
      cells('together', summary),
    ],
    'lrrrrrr',
  );
  const rows = shown(first.cuttings).map((one) => [
    String(one.week),
    String(one.orders),
    String(one.taken.reduce((sum, { sheets: count }) => sum + count, 0)),
    percent(yieldOf(one.taken)),
    `${one.offcutsUsed}`,
    `${one.offcutsMade}`,
    `${one.offcutsGone}`,
    `${one.offcutsInRack}`,
    (Number(one.rackAreaUm2) / 1e12).toFixed(2),
  ]);
  const weeks = plainTable(
    ['week', 'orders', 'sheets', 'yield %', 'used', 'made', 'gone', 'in rack', 'm²'],
    rows,
    'rrrrrrrrr',
  );
  const seeds = runs.length === 1 ? `seed ${first.seed}` : `seeds ${first.seed} to ${runs.at(-1)!.seed}`;
  return [
    colours.bold(printable(mix.title)),
    wrap(
      `${counted(summary.orders, 'order')} in ${counted(mix.weeks, 'week')}, ` +
        `${counted(runs.length, 'run')} (${seeds}); whole sheets taken, mean and spread of the runs`,
      TERMINAL_WIDTH,
    ),
    '',
    sheets,
    '',
    wrap('±: standard deviation of the runs; yield: panels over the whole sheets taken', TERMINAL_WIDTH),
    '',
    colours.bold(`Offcuts over time, seed ${first.seed}`),
    weeks,
    '',
  ].join('\n');
}
