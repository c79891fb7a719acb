import { type Command, InvalidArgumentError, Option } from 'commander';
import type { Spare, Way } from '../../src/model/purchase.ts';
import type { Units } from '../../src/pipeline/makePapers.ts';
import { lengthUnits, paperLanguages } from '../papers/kinds.ts';
import { oneOf } from './paperOptions.ts';
import { day, words } from './readOptions.ts';
import { type SettingOptions, withSettings } from './settings.ts';

/** An amount to spare before its reason is known. */
export type SpareAmount =
  | { readonly kind: 'percent of need' | 'percent of bought'; readonly hundredths: number }
  | { readonly kind: 'sheets'; readonly count: number };

/** What `plywright buy` was asked for. */
export interface BuyOptions extends SettingOptions {
  readonly out: string;
  readonly name?: string;
  readonly cut: Way;
  readonly store?: string;
  readonly spare?: SpareAmount;
  readonly spareWhy?: string;
  readonly start?: string;
  readonly date?: string;
  readonly saw?: string;
  readonly reserve?: true;
  readonly expect?: true;
  readonly who?: string;
  readonly seed: number;
  readonly time?: number;
  readonly work?: number;
  readonly threads?: number;
  readonly library?: string;
  readonly language: string;
  readonly lengths: Units;
  readonly replace?: true;
  readonly json?: true;
}

function wholeNumber(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = /^\d{1,16}$/.test(text) ? Number(text) : Number.NaN;
    if (!(value >= least && value <= most)) {
      throw new InvalidArgumentError(`It must be a whole number from ${least} to ${most}.`);
    }
    return value;
  };
}

function seconds(text: string): number {
  const value = /^\d{1,6}(?:\.\d{1,6})?$/.test(text) ? Number(text) : Number.NaN;
  if (!(value > 0 && value <= 100_000)) {
    throw new InvalidArgumentError('It must be a number of seconds above 0, up to 100000.');
  }
  return value;
}

/** `5%`, `5% of bought`, `2` sheets of each board and finish. */
export function spareAmount(text: string): SpareAmount {
  const percent = /^(\d{1,2})(?:\.(\d{1,2}))?\s*%(\s*of\s+bought)?$/.exec(text.trim());
  if (percent !== null) {
    const hundredths = Number(percent[1]) * 100 + Number((percent[2] ?? '').padEnd(2, '0'));
    if (hundredths > 9000) throw new InvalidArgumentError('It must be at most 90 %.');
    return { kind: percent[3] === undefined ? 'percent of need' : 'percent of bought', hundredths };
  }
  const sheets = /^(\d{1,3})(?:\s*sheets?)?$/.exec(text.trim());
  if (sheets !== null) return { kind: 'sheets', count: Number(sheets[1]) };
  throw new InvalidArgumentError("It must be as 5%, '5% of bought' or 2 (sheets of each board and finish).");
}

const more = `
Panels of all orders are pooled by board and finish and cut together from shared
sheets, or apart, each order from sheets of its own. Both are worked out and
shown side by side with what they cost and the least that is possible; --cut
says which one is ordered. Rows of matched fronts stay together, and panels that
an order wants on sheets of its own (its 'own sheets') share none.

What the store has free, or keeps for these orders, is taken first, then what is
on order for them or for nobody; what is kept or on order for others is left.
The rest is ordered in whole packs and rolls, of the cheapest offer, and more of
it where a price break makes that cheaper.

--spare adds to what the plans take: 5% of it, '5% of bought' (so much of what
is bought may be lost), or 2 sheets of each board and finish. Its reason stands
on the papers. The last day to order is counted back from the day on which each
order is begun ('start' in the order, or --start) over working days.

Papers go to DIR/purchase-NAME/: purchase-*.csv, purchase.pdf, a request for
each supplier (request-*.pdf), and the plans: cut together they are the papers
of one job, as 'plywright cut' writes them; cut apart, plans/ORDER.json.

--reserve keeps what the store has for these orders, as one booking: sheets that
are cut together under the name purchase-NAME, all else for each order.
--expect, once it is ordered, books what is to be ordered as on order under the
name purchase-NAME: each part for those who take it, for the day on which it
comes when it is ordered on the day of the purchase. Both are one booking. The
same purchase worked out again then says what is still to be ordered, and
'plywright stock receive purchase purchase-NAME' books in what has come.

Examples:
  plywright buy one.yaml two.yaml three.yaml --store store
  plywright buy one.yaml two.yaml --cut apart --spare 5% --spare-why 'knots'
  plywright buy one.yaml two.yaml --name june --reserve --expect --store store

Exit codes: as in 'plywright --help'.
`;

/** Adds `plywright buy`. */
export function addBuyCommand(program: Command): void {
  withSettings(program.command('buy'))
    .description('Works out what to order of whom for one or several orders, and by when.')
    .argument('<ORDER...>', 'order files (YAML), all made from one library')
    .option('--name <NAME>', 'name of the purchase (default: that of the orders)', words(60))
    .addOption(
      new Option('--cut <WAY>', 'how the orders are cut').choices(['together', 'apart']).default('together'),
    )
    .option('--store <FOLDER>', 'take what is in this store first')
    .option('--spare <AMOUNT>', "more than is needed: 5%, '5% of bought' or 2 (sheets)", spareAmount)
    .option('--spare-why <TEXT>', 'why, for the papers', words(300))
    .option('--start <DAY>', 'day on which orders are begun that do not say it, such as 2026-03-02', day)
    .option('--date <DAY>', 'the day of the purchase (default: today)', day)
    .option('--saw <NAME>', 'a saw of the library for all orders, in place of the one that each names')
    .option('--reserve', 'keep what the store has for these orders')
    .option('--expect', 'book what is to be ordered as on order')
    .option(
      '--who <NAME>',
      'who books, with --reserve or --expect (default: the name you are logged in with)',
      words(300),
    )
    .option('--out <DIR>', 'folder in which the purchase gets its folder', 'out')
    .option('--seed <N>', 'start of the random search', wholeNumber(0, 4_294_967_295), 1)
    .option('--time <SECONDS>', 'end the search after this time', seconds)
    .option(
      '--work <N>',
      'end the search of each board after this many moves',
      wholeNumber(0, 1_000_000_000_000),
    )
    .option('--threads <N>', 'use at most N threads; the papers are the same', wholeNumber(1, 256))
    .option('--library <DIR>', 'library folder, or name of one under parts-libraries/')
    .option('--language <TAG>', 'language of the papers: en or de', oneOf(paperLanguages), 'en')
    .option('--lengths <UNIT>', 'print lengths in mm, inches or inches-32', oneOf(lengthUnits), 'mm')
    .option('--replace', 'write over papers that were changed by hand')
    .option('--json', 'print one JSON document instead of the tables')
    .addHelpText('after', more)
    .action(async (orders: string[], options: BuyOptions, command: Command) => {
      const wrong = wrongCombination(options);
      if (wrong !== null) command.error(`error: ${wrong}`);
      const { buy } = await import('../buying/buy.ts');
      await buy(orders, options);
    });
}

function wrongCombination({ reserve, expect, store, spare, spareWhy, who }: BuyOptions): string | null {
  if (reserve && store === undefined) return '--reserve needs --store FOLDER';
  if (expect && store === undefined) return '--expect needs --store FOLDER';
  if (who !== undefined && !reserve && !expect) return '--who goes with --reserve or --expect';
  if (spare !== undefined && spareWhy === undefined)
    return '--spare needs --spare-why TEXT: it stands on the papers';
  if (spareWhy !== undefined && spare === undefined) return '--spare-why goes with --spare';
  return null;
}

/** What was asked for to spare, with its reason. */
export function spareOf({ spare, spareWhy }: BuyOptions): Spare {
  return spare === undefined ? { kind: 'none' } : { ...spare, why: spareWhy ?? '' };
}
