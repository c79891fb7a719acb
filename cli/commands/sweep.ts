import { type Command, InvalidArgumentError } from 'commander';
import { VARIATION_EXPECTED, type Variation, variationFromText } from '../../src/basics/variations.ts';
import { paperLanguages } from '../papers/kinds.ts';
import { oneOf } from './paperOptions.ts';
import { wholeNumber } from './runOptions.ts';
import { type SettingOptions, withSettings } from './settings.ts';

/** What `plywright sweep` was asked for. */
export interface SweepOptions extends SettingOptions {
  readonly vary?: readonly Variation[];
  readonly seed: number;
  readonly work: number;
  readonly threads?: number;
  /** Folder in which results are kept. */
  readonly cache: string;
  /** Folder for page and list. */
  readonly out?: string;
  readonly language: string;
  readonly library?: string;
  readonly json?: true;
  readonly replace?: true;
}

function variation(text: string, earlier: readonly Variation[] = []): readonly Variation[] {
  const read = variationFromText(text);
  if (read === undefined) throw new InvalidArgumentError(`It must be ${VARIATION_EXPECTED}.`);
  return [...earlier, read];
}

/** Moves of the search for each stock group: fewer than for a cut, since there are many points. */
const USUAL_WORK = 1000;

const more = `
Tries an order with one or two parameters over a range and tells how sheets,
price and mass run with them, with the least sheets there can be, and where a
sheet falls away. Each point is nested and replayed as by 'plywright cut' with
the same seed and --work; values that the order cannot be built with are told
with the reason.

Results are kept in the cache by what they depend on: the order, the library,
seed, --work and the program itself. A run that was ended or killed goes on where
it was when it is started again, and says the same.

--out writes sweep.html, a page with plots that needs nothing else, and sweep.csv.

Examples:
  plywright sweep my-van.yaml --vary bed_width=1200..1350/10
  plywright sweep my-van.yaml --vary 'base cupboard.width=350..450/5' --out widths
  plywright sweep my-van.yaml --vary bed_width=1200..1350/25 --vary sink=small,large

Exit codes: as in 'plywright --help'.
`;

/** Adds `plywright sweep`. */
export function addSweepCommand(program: Command): void {
  const command = program
    .command('sweep')
    .description('Tries an order with one or two parameters over a range.')
    .argument('<ORDER>', 'order or variant file (YAML)')
    .option('--vary <NAME=VALUES>', 'what is tried, FROM..TO/STEP or words; once or twice', variation);
  withSettings(command)
    .option('--out <DIR>', 'write page and list into this folder')
    .option('--cache <DIR>', 'keep results in this folder', 'out/.cache')
    .option('--seed <N>', 'start of the random search', wholeNumber(0, 4_294_967_295), 1)
    .option(
      '--work <N>',
      'end each search after this many moves',
      wholeNumber(0, 1_000_000_000_000),
      USUAL_WORK,
    )
    .option('--threads <N>', 'use at most N threads; the result is the same', wholeNumber(1, 256))
    .option('--language <TAG>', 'language of the page: en or de', oneOf(paperLanguages), 'en')
    .option('--json', 'print one JSON document instead of the table')
    .option('--library <DIR>', 'library folder, or name of one under parts-libraries/')
    .option('--replace', 'write over papers that were changed by hand')
    .addHelpText('after', more)
    .action(async (order: string, options: SweepOptions, own: Command) => {
      const { vary = [] } = options;
      if (vary.length === 0) own.error(`error: say what is tried with --vary ${VARIATION_EXPECTED}`);
      if (vary.length > 2) own.error('error: --vary can be given twice at most');
      const points = vary.reduce((product, { values }) => product * values.length, 1);
      if (points > 10_000) own.error(`error: these are ${points} points; at most 10000 can be tried`);
      const { sweep } = await import('../comparing/sweep.ts');
      await sweep(order, options);
    });
}
