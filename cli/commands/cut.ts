import type { Command } from 'commander';
import { InvalidArgumentError } from 'commander';
import { LENGTH_EXPECTED, lengthFromText } from '../../src/basics/lengthText.ts';
import { papersInWords } from './paperOptions.ts';
import { sheetList } from './readOptions.ts';
import {
  labelFormatsInWords,
  type RunOptions,
  withPaperOptions,
  withSearchOptions,
  wrongLabels,
} from './runOptions.ts';
import { type SettingOptions, settingsInWords, withSettings } from './settings.ts';

/** What `plywright cut` was asked for. */
export interface CutOptions extends RunOptions, SettingOptions {
  readonly library?: string;
  readonly panels?: string;
  readonly sheets?: string;
  readonly saw?: string;
  /** In µm. */
  readonly kerf?: number;
  readonly trim?: number;
  /** Folder of the store whose offcuts are offered. */
  readonly store?: string;
  /** Only sheets that the store has. */
  readonly sheetsOnHand?: true;
  /** Plan file of which some sheets are sawn. */
  readonly after?: string;
  /** Which sheets of it, where no store knows. */
  readonly sawn?: readonly string[];
  readonly wholeRows?: true;
}

function lengthUpTo(mostMm: number): (text: string) => number {
  return (text) => {
    const um = lengthFromText(text);
    if (um === undefined) throw new InvalidArgumentError(`It must be ${LENGTH_EXPECTED}.`);
    if (um < 0 || um > mostMm * 1000) throw new InvalidArgumentError(`It must be from 0 to ${mostMm} mm.`);
    return um;
  };
}

const more = `
Without --time and --work the search ends after a set amount of work, so that
one seed gives the same papers, byte for byte, on every machine. --work sets
that amount for each stock group; from 400000 on two seeds have half of it each.
--time ends the search by the clock: alone, all stock groups are searched as
usual, then those that are not proved best share the time that is left, and the
papers depend on how fast the machine is.

Ctrl-C ends the search and keeps the best plan so far; pressed again, it ends
the program with nothing written.

Papers of an order go to DIR/<name of the order>/. Every run writes what is
quickly made: plan.json, cut-plans/*.svg, the lists (*.csv) and cautions.txt.
More papers are written when asked for, as in --papers book,labels:
${papersInWords}
All of them are written or none. Papers that you changed by hand are not
overwritten unless you give --replace; other files of yours in that folder stay
where they are.

--language holds for cut plans, book, labels and cautions, --lengths for cut
plans, book and labels: inches prints fractions to 1/64, inches-32 to 1/32, and
both keep the mm beside every setting of the saw. Lists and plan.json are for
other programs too and stay in mm, with columns in English.

--store offers the offcuts of a store that are free or reserved for the order,
at no price, and tells what they save: for boards that are cut from offcuts the
search is done again without them. Nothing is booked; once the cut is done,
'plywright stock cut' does so.
${settingsInWords}

--after goes on with an order that was changed after some sheets of its plan
were sawn: those that the store has booked ('plywright stock cut PLAN --sheets
...'), or those that --sawn names. Sawn panels that still fit are used and keep
their labels, offcuts of the sawn sheets are offered, and only the rest is cut.
What of a sawn panel is otherwise since, and which are of no use any more, is
told; these become offcuts where they are large enough. Papers go to
DIR/<name of the job>-part-2/, then -part-3/. --whole-rows cuts a row of matched
fronts anew as a whole where only some of it are sawn.

labels.pdf has a label for every panel, in the order in which they come off the
saw, then one for every offcut to keep. Print it in true size ("actual size",
100 %). --first-label begins a used sheet at its first free label, counted row
after row. Formats for --label-format:
${labelFormatsInWords}

Examples:
  plywright cut parts-libraries/demo-van/orders/demo-long.yaml
  plywright cut one.yaml two.yaml --out jobs --seed 7
  plywright cut my-order.yaml --time 20
  plywright cut my-order.yaml --after out/my-order/plan.json --store store
  plywright cut my-order.yaml --set bed_width=1300 --set front.finish=slate
  plywright cut --panels list.csv --sheets sheets.csv --kerf 3.2 --trim 10
  plywright cut --panels list.csv --sheets sheets.csv --kerf '1/8 in' --json

Exit codes: as in 'plywright --help'.
`;

/** Adds `plywright cut`. */
export function addCutCommand(program: Command): void {
  const command = program
    .command('cut')
    .description('Makes the cut plans, lists and plan file for each order, or for a plain list of panels.')
    .argument('[ORDER...]', 'order files (YAML)');
  withSearchOptions(command)
    .option('--json', 'print one JSON document instead of the summary')
    .option('--library <DIR>', 'library folder, or name of one under parts-libraries/')
    .option('--panels <FILE>', 'plain list of panels (CSV) instead of an order')
    .option('--sheets <FILE>', 'plain list of sheets (CSV) for --panels')
    .option('--saw <NAME>', 'for --panels: a saw of --library')
    .option('--kerf <LENGTH>', 'for --panels: width of the cut, mm or inches (default: 3.2)', lengthUpTo(50))
    .option('--trim <LENGTH>', 'for --panels: taken off each side of a sheet (default: 10)', lengthUpTo(500));
  withPaperOptions(withSettings(command))
    .option('--store <FOLDER>', 'offer the offcuts of this store first')
    .option('--sheets-on-hand', 'take only sheets that the store has')
    .option('--after <PLAN>', 'go on from this plan: what is sawn of it stays')
    .option('--sawn <SHEETS>', 'for --after without a store: GROUP/2, GROUP/2x3', sheetList)
    .option('--whole-rows', 'for --after: cut broken rows of fronts anew')
    .option('--replace', 'write over papers that were changed by hand')
    .addHelpText('after', more)
    .action(async (orders: string[], options: CutOptions, command: Command) => {
      const wrong = wrongCombination(orders, options);
      if (wrong !== null) command.error(`error: ${wrong}`);
      if (options.after !== undefined) {
        const { cutAfter } = await import('../cutting/cutAfter.ts');
        return cutAfter(orders[0]!, options.after, options);
      }
      // Threads take a while to start: they do so while what reads an order is loaded, and while it is read.
      const { startNestThreads } = await import('../threads/nestPool.ts');
      const started = startNestThreads(options.threads);
      const { cut } = await import('../cutting/cut.ts');
      await cut(orders, options, started);
    });
}

function wrongAfter(orders: readonly string[], options: CutOptions): string | null {
  const { after, sawn, store, wholeRows } = options;
  if (after === undefined) {
    if (sawn !== undefined) return '--sawn goes with --after PLAN';
    return wholeRows === undefined ? null : '--whole-rows goes with --after PLAN';
  }
  if (orders.length !== 1) return '--after goes with one order';
  if (store === undefined && sawn === undefined) return '--after needs --store FOLDER, or --sawn SHEETS';
  return store !== undefined && sawn !== undefined ? 'the store knows what is sawn: leave --sawn out' : null;
}

function wrongCombination(orders: readonly string[], options: CutOptions): string | null {
  const lists = options.panels !== undefined || options.sheets !== undefined;
  if (orders.length > 0 && lists) return 'give orders or --panels with --sheets, not both';
  if (lists && options.panels === undefined) return '--sheets needs --panels FILE';
  if (lists && options.sheets === undefined) return '--panels needs --sheets FILE';
  if (lists && options.store !== undefined) return '--store goes with an order; a list names its offcuts';
  if (orders.length > 1 && options.store !== undefined) {
    return '--store goes with one order at a time, since an offcut can be cut only once';
  }
  if (options.sheetsOnHand && options.store === undefined) return '--sheets-on-hand needs --store FOLDER';
  const after = wrongAfter(orders, options);
  if (after !== null) return after;
  if (lists && options.set !== undefined) return '--set goes with an order';
  if (!lists && orders.length === 0) return 'give an order file, or --panels FILE with --sheets FILE';
  const onlyLists = (['saw', 'kerf', 'trim'] as const).find((name) => options[name] !== undefined);
  if (!lists && onlyLists !== undefined) return `--${onlyLists} goes with --panels; an order names its saw`;
  if (options.saw !== undefined && options.library === undefined) return '--saw needs --library DIR';
  if (options.saw !== undefined && (options.kerf !== undefined || options.trim !== undefined)) {
    return 'give --saw, or --kerf and --trim, not both';
  }
  if (lists && options.library !== undefined && options.saw === undefined) {
    return '--library goes with an order, or with --saw for a list';
  }
  return wrongLabels(options);
}
