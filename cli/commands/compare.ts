import { type Command, InvalidArgumentError } from 'commander';
import { VARIATION_EXPECTED, type Variation, variationFromText } from '../../src/basics/variations.ts';
import type { Units } from '../../src/pipeline/makePapers.ts';
import { lengthUnits, paperLanguages } from '../papers/kinds.ts';
import { oneOf } from './paperOptions.ts';
import { seconds, wholeNumber } from './runOptions.ts';
import { type SettingOptions, withSettings } from './settings.ts';

/** What `plywright compare` was asked for. */
export interface CompareOptions extends SettingOptions {
  readonly seed: number;
  readonly time?: number;
  readonly work?: number;
  readonly threads?: number;
  readonly json?: true;
  readonly library?: string;
  readonly layouts?: readonly string[];
  readonly vehicles?: readonly string[];
  /** Order whose saw, boards and finishes layouts are compared with. */
  readonly like?: string;
  readonly vary?: readonly Variation[];
  /** Folder in which results are kept. */
  readonly cache: string;
  /** Folder for page and lists. */
  readonly out?: string;
  readonly language: string;
  readonly lengths: Units;
  readonly replace?: true;
}

function words(text: string): string[] {
  const found = text.split(',').map((word) => word.trim());
  if (found.some((word) => word === ''))
    throw new InvalidArgumentError('It must be names with commas between.');
  return [...new Set(found)];
}

function variation(text: string, earlier: readonly Variation[] = []): readonly Variation[] {
  const read = variationFromText(text);
  if (read === undefined) throw new InvalidArgumentError(`It must be ${VARIATION_EXPECTED}.`);
  return [...earlier, read];
}

const more = `
Each order or variant is worked out as by 'plywright cut' with the same seed and
limits, and nothing is cut. Figures are kept in the cache by all they depend on,
unless --time decides when the search ends. Every column is of one design, every row of one
figure: sheets (and, where a plan might be bettered, the least there can be),
yield, offcuts, edging, price as 'plywright quote' has it, mass and balance,
seats, sleeping places and work at the saw. * marks the best of a row in which
designs differ.

--layouts and --vehicles compare layouts of a library with their defaults, in
every vehicle named ('all' for all); saw, boards and finishes are those of the
order that --like names, or else of the first in the library's orders/. --set and
--vary go for all of them. A layout that refuses what is asked is left out, and
why is told.

--out writes comparison.html, a page with drawings and plots that needs nothing
else, the lists compared-designs.csv and compared-sheets.csv, and the orders that
were made of layouts.

Examples:
  plywright compare my-van.yaml my-van-wide-bed.yaml
  plywright compare my-van.yaml --vary sink=small,large --vary bed_width=1250,1300
  plywright compare --library demo-van --layouts all --vehicles all --out designs
  plywright compare --layouts rear-bed,lengthways-beds --set cooker=one-burner

Exit codes: as in 'plywright --help'.
`;

/** Adds `plywright compare`. */
export function addCompareCommand(program: Command): void {
  const command = program
    .command('compare')
    .description('Sets orders, variants or layouts side by side.')
    .argument('[ORDER...]', 'order or variant files (YAML)')
    .option('--layouts <NAMES>', "layouts of the library, with commas, or 'all'", words)
    .option('--vehicles <NAMES>', "vehicles for --layouts, with commas, or 'all' (the default)", words)
    .option('--like <ORDER>', 'for --layouts: order whose saw, boards and finishes are taken');
  withSettings(command)
    .option('--vary <NAME=VALUES>', 'try each with several values; may be given again', variation)
    .option('--out <DIR>', 'write page and lists into this folder')
    .option('--cache <DIR>', 'keep results in this folder', 'out/.cache')
    .option('--seed <N>', 'start of the random search', wholeNumber(0, 4_294_967_295), 1)
    .option('--time <SECONDS>', 'end the search after this time', seconds)
    .option('--work <N>', 'end the search after this many moves', wholeNumber(0, 1_000_000_000_000))
    .option('--threads <N>', 'use at most N threads; the result is the same', wholeNumber(1, 256))
    .option('--language <TAG>', 'language of the page: en or de', oneOf(paperLanguages), 'en')
    .option('--lengths <UNIT>', 'print lengths in mm, inches or inches-32', oneOf(lengthUnits), 'mm')
    .option('--json', 'print one JSON document instead of the table')
    .option('--library <DIR>', 'library folder, or name of one under parts-libraries/')
    .option('--replace', 'write over papers that were changed by hand')
    .addHelpText('after', more)
    .action(async (orders: string[], options: CompareOptions, own: Command) => {
      if (orders.length === 0 && options.layouts === undefined) {
        own.error('error: give order files, or layouts of a library with --layouts');
      }
      const forLayouts = (['vehicles', 'like'] as const).find((name) => options[name] !== undefined);
      if (options.layouts === undefined && forLayouts !== undefined) {
        own.error(`error: --${forLayouts} goes with --layouts`);
      }
      const { compareDesigns } = await import('../comparing/compare.ts');
      await compareDesigns(orders, options);
    });
}
