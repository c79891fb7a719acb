import type { Command } from 'commander';
import { wholeNumber } from './runOptions.ts';

/** What `plywright year` was asked for. */
export interface YearOptions {
  readonly seed: number;
  readonly runs: number;
  readonly work: number;
  readonly csv?: string;
  readonly replace?: true;
  readonly json?: true;
  readonly library?: string;
}

const more = `
MIX is a small file that says which orders come, and how they are cut:

  title: A year of vans
  weeks: 52
  cut together: 2
  keep offcuts: { weeks: 26, most: 40 }
  orders:
    - { order: my-van.yaml, count: 8 }
    - { order: my-van.yaml, count: 4, set: [front.finish=chestnut] }
    - { order: your-van.yaml, weeks: [3, 17, 40] }

Paths are from the folder of the file. Orders with a count come in weeks that
are drawn by the seed, those with weeks in these. Orders of two weeks are here
cut together, from the offcuts in the rack first; what is left goes there for 26
weeks, where there is room for 40, the largest. Every plan is replayed.

Each run draws other weeks, from --seed on. Told are sheets, price and yield of
each board and finish, with least, mean and most of the runs, and the offcuts in
the rack over time. Yield is the area of the panels over that of the whole
sheets taken. The same file and seed give the same figures.

Examples:
  plywright year my-year.yaml
  plywright year my-year.yaml --runs 10 --csv year
  plywright year my-year.yaml --json

Exit codes: as in 'plywright --help'.
`;

/** Adds `plywright year`. */
export function addYearCommand(program: Command): void {
  program
    .command('year')
    .description('Simulates what a mix of orders takes over a year.')
    .argument('<MIX>', 'file that says which orders come (YAML)')
    .option('--runs <N>', 'how many runs, each with weeks of its own', wholeNumber(1, 1000), 3)
    .option('--seed <N>', 'seed of the first run', wholeNumber(0, 4_294_000_000), 1)
    .option('--work <N>', 'end each search after this many moves', wholeNumber(0, 1_000_000_000), 1000)
    .option('--csv <DIR>', 'write year-sheets.csv and year-weeks.csv into this folder')
    .option('--replace', 'write over lists that were changed by hand')
    .option('--json', 'print one JSON document instead of the tables')
    .option('--library <DIR>', 'library folder, or name of one under parts-libraries/')
    .addHelpText('after', more)
    .action(async (mix: string, options: YearOptions) => {
      const { year } = await import('../year/year.ts');
      await year(mix, options);
    });
}
