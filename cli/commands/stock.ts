import { type Command, InvalidArgumentError, Option } from 'commander';
import { LENGTH_EXPECTED, lengthFromText } from '../../src/basics/lengthText.ts';
import type { ItemWish } from '../../src/pipeline/keepStore.ts';
import { day, sheetList, words } from './readOptions.ts';

/** The kinds of things that a store holds. */
export const stockItems = ['sheet', 'offcut', 'edging', 'fitting'] as const;
export type StockItemWord = (typeof stockItems)[number];

/** Options of every `plywright stock` command. */
export interface StockOptions {
  readonly store: string;
  readonly json?: true;
}

/** Options of those that book. */
export interface BookOptions extends StockOptions {
  /** A day such as 2026-03-02; today where it is not given. */
  readonly date?: string;
  readonly who?: string;
  readonly why?: string;
}

/** What is moved. Lengths are in mm. */
export interface ItemOptions extends BookOptions, Omit<ItemWish, 'item'> {
  readonly count?: number;
  readonly metres?: number;
  readonly order?: string;
  readonly fromReserved?: string;
  /** Of a list or of what is on order: only what this one delivers. */
  readonly supplier?: string;
  /** Under which purchase goods are on order. */
  readonly purchase?: string;
  /** The day on which goods on order are expected. */
  readonly expected?: string;
  /** What comes in was not on order. */
  readonly notOrdered?: true;
}

/** Options of `plywright stock postpone`. */
export interface PostponeOptions extends BookOptions {
  readonly expected: string;
  readonly supplier?: string;
}

/** Options of `plywright stock show`. */
export interface ShowOptions extends StockOptions {
  readonly on?: string;
  readonly after?: number;
}

/** Options of `plywright stock cut`. */
export interface CutStockOptions extends BookOptions {
  readonly order?: string;
  readonly place?: string;
  /** Sheets that were sawn, as people name them; all that are left where it is not given. */
  readonly sheets?: readonly string[];
  readonly orderFile?: readonly string[];
  readonly library?: string;
}

function wholeFrom(least: number): (text: string) => number {
  return (text) => {
    const value = /^\d{1,7}$/.test(text) ? Number(text) : Number.NaN;
    if (!(value >= least && value <= 1_000_000)) {
      throw new InvalidArgumentError(`It must be a whole number from ${least} to 1000000.`);
    }
    return value;
  };
}

function metres(text: string): number {
  const value = /^\d{1,6}(?:\.\d{1,3})?$/.test(text) ? Number(text) : Number.NaN;
  if (Number.isNaN(value)) throw new InvalidArgumentError('It must be metres, such as 50 or 12.5.');
  return value;
}

function millimetres(text: string): number {
  const um = lengthFromText(text);
  if (um === undefined || um <= 0) throw new InvalidArgumentError(`It must be ${LENGTH_EXPECTED}.`);
  return um / 1000;
}

const more = `
A store is a folder with the ledger of a workshop: sheets, offcuts with their
labels, edging and fittings, what of them is reserved for which order, and what
is on order with suppliers. Every booking adds a line to ledger.jsonl there,
which can be read and kept under version control. Nothing is erased: a wrong
booking is reversed by another.

Examples:
  plywright stock begin
  plywright stock receive sheet --board poplar-15 --finish pale-grey \\
    --thickness 16.2 --length 2500 --width 1250 --grain length --count 6
  plywright stock receive edging --name grey-1 --metres 50 --why 'note 4711'
  plywright stock reserve sheet --board poplar-15 --count 4 --order my-van
  plywright stock expect sheet --board poplar-15 --count 6 --purchase may \\
    --supplier sheet-yard --expected 2026-03-09
  plywright stock receive purchase may --supplier sheet-yard
  plywright stock cut out/my-van/plan.json
  plywright stock correct offcut --label A17 --place 'rack 2'
  plywright stock show --on 2026-03-02
  plywright stock history
  plywright stock reverse 7 --why 'counted twice'

'plywright stock COMMAND --help' says more about a command.
Exit codes: as in 'plywright --help'.
`;

const cutExamples = `
Sheets are named as their cut plans: poplar-15-pale-grey/2 is cut plan 2 of that
stock group with all its sheets that are not booked yet, poplar-15-pale-grey/2x3
three of them, poplar-15-pale-grey all that is left of the group.

Examples:
  plywright stock cut out/my-van/plan.json --place 'rack 1'
  plywright stock cut out/my-van/plan.json --sheets poplar-15-pale-grey/1
  plywright stock cut out/my-van/plan.json --order-file my-van.yaml
  plywright stock cut out/purchase-may/plan.json \\
    --order-file one.yaml --order-file two.yaml
`;

function withStore(command: Command): Command {
  return command
    .option('--store <FOLDER>', 'folder of the store', 'store')
    .option('--json', 'as one JSON document');
}

function withBooking(command: Command): Command {
  return withStore(command)
    .option('--date <DAY>', 'the day it happened, such as 2026-03-02 (default: today)', day)
    .option('--who <NAME>', 'who books (default: the name you are logged in with)', words(300))
    .option('--why <TEXT>', 'the reason, or the number of a delivery note', words(2000));
}

function withItem(command: Command): Command {
  return withBooking(command)
    .argument('<ITEM>', 'sheet, offcut, edging or fitting')
    .option('--board <ID>', 'of a sheet or offcut', words(300))
    .option('--finish <ID>', 'of a sheet or offcut', words(300))
    .option('--thickness <LENGTH>', 'of a sheet or offcut, mm or inches', millimetres)
    .option('--length <LENGTH>', 'of a sheet or offcut, mm or inches', millimetres)
    .option('--width <LENGTH>', 'of a sheet or offcut, mm or inches', millimetres)
    .addOption(
      new Option('--grain <SIDE>', 'which of the two the grain runs along').choices([
        'length',
        'width',
        'none',
      ]),
    )
    .option('--label <TEXT>', 'what is written on an offcut', words(300))
    .option('--name <ID>', 'of an edging or fitting', words(300));
}

/** The commands that move an item, with what they add to the options of all of them. */
const itemCommands = {
  receive: {
    summary: 'book what has come in',
    description:
      'Books what has come in. Of a size that the store had before, as much as tells it is enough. `receive list FILE` books a whole list (CSV) at once: one of a purchase, sheets-to-buy.csv, edging-to-buy.csv (whole rolls), fittings.csv (whole packs), offcuts-kept.csv, or your own with columns item, board, finish, thickness, length, width, grain, label, place, name, count, metres. `receive purchase NAME` books all that is still on order of a purchase. What is on order comes in as that, the earliest expected first, and is kept for whom it was ordered; --not-ordered says that it is none of it.',
    example:
      'plywright stock receive fitting --name hinge --count 20\n  plywright stock receive list out/purchase-may/purchase-sheets.csv\n  plywright stock receive purchase purchase-may --supplier sheet-yard',
    options: ['count', 'metres', 'place', 'supplier', 'purchase', 'not ordered'],
  },
  expect: {
    summary: 'book what was ordered of a supplier',
    description:
      'Books what was ordered of a supplier and has not come yet: it is on order, and the next purchase takes it off what is to be bought. `expect list FILE` books a whole list (CSV) at once, as of a purchase. `plywright buy --expect` books a purchase by itself, each part for the order that takes it.',
    example:
      'plywright stock expect fitting --name hinge --count 20 --purchase may --supplier fittings-post\n  plywright stock expect list out/purchase-may/purchase-sheets.csv --purchase purchase-may',
    options: ['count', 'metres', 'purchase', 'supplier', 'expected', 'order'],
  },
  withdraw: {
    summary: 'book what is on order and will not come',
    description:
      'Books what is on order and will not come. `withdraw purchase NAME` takes back all that is still on order of a purchase.',
    example:
      'plywright stock withdraw sheet --board poplar-15 --count 2 --purchase may\n  plywright stock withdraw purchase may --supplier sheet-yard',
    options: ['count', 'metres', 'purchase', 'supplier'],
  },
  correct: {
    summary: 'book what was counted',
    description:
      'Books what was counted. Of an offcut it books another place or size, or with --count 0 that it is gone.',
    example: "plywright stock correct sheet --board poplar-15 --count 7 --why 'counted'",
    options: ['counted', 'counted metres', 'place'],
  },
  issue: {
    summary: 'book what was taken out',
    description: 'Books what was taken out, for an order or for anything else.',
    example: 'plywright stock issue edging --name grey-1 --metres 12.5 --order my-van',
    options: ['count', 'metres', 'order', 'from reserved'],
  },
  reserve: {
    summary: 'keep what is there for an order',
    description: 'Keeps what is there for an order.',
    example: 'plywright stock reserve sheet --board poplar-15 --count 4 --order my-van',
    options: ['count', 'metres', 'order'],
  },
  release: {
    summary: 'free what was reserved for an order',
    description: 'Frees what was reserved for an order.',
    example: 'plywright stock release sheet --board poplar-15 --count 4 --order my-van',
    options: ['count', 'metres', 'order'],
  },
  'put-back': {
    summary: 'book an offcut back into the rack',
    description: 'Books an offcut back into the rack.',
    example: "plywright stock put-back offcut --label A17 --place 'rack 2'",
    options: ['place'],
  },
} as const;

export type ItemCommand = keyof typeof itemCommands;
type ItemOption = (typeof itemCommands)[ItemCommand]['options'][number];

function addItemOption(command: Command, option: ItemOption): void {
  switch (option) {
    case 'count':
      command.option('--count <N>', 'how many sheets or fittings', wholeFrom(1));
      break;
    case 'metres':
      command.option('--metres <N>', 'how much edging', metres);
      break;
    case 'counted':
      command.option('--count <N>', 'how many sheets or fittings there are', wholeFrom(0));
      break;
    case 'counted metres':
      command.option('--metres <N>', 'how much edging there is', metres);
      break;
    case 'place':
      command.option('--place <TEXT>', 'where an offcut stands', words(300));
      break;
    case 'supplier':
      command.option('--supplier <ID>', 'who delivers it; of a list or purchase only that', words(300));
      break;
    case 'purchase':
      command.option('--purchase <NAME>', 'the purchase under which it is on order', words(300));
      break;
    case 'expected':
      command.option('--expected <DAY>', 'the day on which it is expected, such as 2026-03-09', day);
      break;
    case 'not ordered':
      command.option('--not-ordered', 'it is none of what is on order');
      break;
    case 'order':
      command.option('--order <NAME>', 'the order it is for', words(300));
      break;
    case 'from reserved':
      command.option('--from-reserved <ORDER>', 'take what is reserved for this other order', words(300));
      break;
  }
}

/** What some commands take as a whole, in place of a single item. */
const wholes: Partial<Readonly<Record<ItemCommand, readonly ('list' | 'purchase')[]>>> = {
  receive: ['list', 'purchase'],
  expect: ['list'],
  withdraw: ['purchase'],
};
const wholeInWords = { list: 'file of the list', purchase: 'name of the purchase' } as const;

function addItemCommand(stock: Command, name: ItemCommand): void {
  const { summary, description, example, options } = itemCommands[name];
  const command = withItem(stock.command(name).summary(summary).description(description));
  for (const option of options) addItemOption(command, option);
  const known = wholes[name] ?? [];
  if (known.length > 0) {
    const named = known.map((word) => `'${word}'`).join(' or ');
    command.argument('[NAME]', `for ${named}: ${known.map((word) => wholeInWords[word]).join(' or ')}`);
  }
  command
    .addHelpText('after', `\nExamples:\n  ${example}\n`)
    .action(async (item: string, ...rest: [string | undefined, ItemOptions] | [ItemOptions]) => {
      const [second, given] =
        known.length > 0 ? (rest as [string | undefined, ItemOptions]) : [undefined, rest[0] as ItemOptions];
      const word = item.toLowerCase();
      if (known.some((whole) => whole === word)) {
        const wrong = wrongWholeOptions(name, word, second, given);
        if (wrong !== null) command.error(`error: ${wrong}`);
        return bookWhole(name, word, second!, given);
      }
      if (second !== undefined) {
        const places = known.map((whole) => `'${name} ${whole}'`).join(' or ');
        command.error(`error: '${second}' goes with ${places}, not with '${item}'`);
      }
      const single = stockItems.find((one) => one === word.replace(/s$/, ''));
      if (single === undefined) {
        command.error(`error: '${item}' is not sheet, offcut, edging or fitting`);
        return;
      }
      const wrong = wrongItemOptions(name, single, given) ?? wrongOnOrderOptions(name, single, given);
      if (wrong !== null) command.error(`error: ${wrong}`);
      const { bookItem } = await import('../store/bookItem.ts');
      await bookItem(name, single, given);
    });
}

async function bookWhole(name: ItemCommand, word: string, second: string, given: ItemOptions): Promise<void> {
  if (word === 'list' && name === 'receive') {
    const { receiveList } = await import('../store/receiveList.ts');
    return receiveList(second, given);
  }
  const { expectList, receivePurchase, withdrawPurchase } = await import('../store/onOrder.ts');
  if (word === 'list') return expectList(second, given);
  return name === 'receive' ? receivePurchase(second, given) : withdrawPurchase(second, given);
}

/** Of a whole list or purchase nothing is said by options that stands in it. */
function wrongWholeOptions(
  name: ItemCommand,
  word: string,
  second: string | undefined,
  given: ItemOptions,
): string | null {
  if (second === undefined)
    return `give the ${word}: plywright stock ${name} ${word} ${word === 'list' ? 'FILE' : 'NAME'}`;
  const fields = [
    'board',
    'finish',
    'thickness',
    'length',
    'width',
    'grain',
    'label',
    'name',
    'count',
    'metres',
  ] as const;
  const other = fields.find((field) => given[field] !== undefined);
  if (other !== undefined)
    return word === 'list' ? `--${other} stands in the list` : `--${other} goes with a single item`;
  if (word === 'purchase' && given.purchase !== undefined) return `the purchase is '${second}' already`;
  if (word === 'purchase' && (given.notOrdered || given.place !== undefined))
    return 'a purchase is on order, and has no offcuts';
  if (name === 'expect' && given.purchase === undefined)
    return 'give --purchase NAME: under which it is on order';
  return notOrderedWithPurchase(given);
}

function notOrderedWithPurchase({ notOrdered, purchase }: ItemOptions): string | null {
  return notOrdered && purchase !== undefined ? '--not-ordered and --purchase exclude each other' : null;
}

function wrongOnOrderOptions(name: ItemCommand, item: StockItemWord, given: ItemOptions): string | null {
  if (name === 'expect' || name === 'withdraw') {
    if (item === 'offcut') return 'an offcut is not ordered of a supplier';
    if (given.purchase === undefined) return 'give --purchase NAME: under which it is on order';
  }
  if (
    name === 'receive' &&
    item === 'offcut' &&
    (given.purchase !== undefined || given.supplier !== undefined)
  ) {
    return 'an offcut is not ordered of a supplier';
  }
  return notOrderedWithPurchase(given);
}

function wrongItemOptions(name: ItemCommand, item: StockItemWord, given: ItemOptions): string | null {
  if (name === 'put-back' && item !== 'offcut') return 'only an offcut is put back; use receive';
  if ((name === 'reserve' || name === 'release') && given.order === undefined) return 'give --order NAME';
  if (item === 'edging' && given.count !== undefined) return 'edging is counted in --metres';
  if (item !== 'edging' && given.metres !== undefined) return '--metres goes with edging';
  if (item === 'edging' && given.metres === undefined) return 'give --metres N';
  if (item === 'edging' && given.metres === 0 && name !== 'correct') return '--metres must be above 0';
  if (item === 'offcut') {
    return given.count === undefined || given.count === (name === 'correct' ? 0 : 1)
      ? null
      : 'every offcut is booked by itself, with its label';
  }
  if (item !== 'edging' && given.count === undefined) return 'give --count N';
  return null;
}

function addOtherCommands(stock: Command): void {
  withStore(stock.command('begin').summary('make a store in which nothing is booked'))
    .description('Makes a store in a folder that has none.')
    .addHelpText('after', '\nExamples:\n  plywright stock begin --store workshop\n')
    .action(async (options: StockOptions) => {
      const { begin } = await import('../store/begin.ts');
      await begin(options);
    });
  withBooking(stock.command('reverse').summary('reverse a wrong booking'))
    .description('Books the contrary of a booking, so that the stock is as if it had not been.')
    .argument('<NUMBER>', 'number of the booking, as history prints it', wholeFrom(1))
    .addHelpText('after', "\nExamples:\n  plywright stock reverse 7 --why 'counted twice'\n")
    .action(async (number: number, options: BookOptions) => {
      const { reverse } = await import('../store/bookItem.ts');
      await reverse(number, options);
    });
  withBooking(stock.command('postpone').summary('book another day for what is on order'))
    .description('Books another day on which all that is still on order of a purchase is expected.')
    .argument('<NAME>', 'the purchase, as show prints it', words(300))
    .requiredOption('--expected <DAY>', 'the day on which it is expected now, such as 2026-03-11', day)
    .option('--supplier <ID>', 'only what this supplier delivers', words(300))
    .addHelpText(
      'after',
      '\nExamples:\n  plywright stock postpone may --supplier sheet-yard --expected 2026-03-11\n',
    )
    .action(async (purchase: string, options: PostponeOptions) => {
      const { postpone } = await import('../store/onOrder.ts');
      await postpone(purchase, options);
    });
  withBooking(stock.command('cut').summary('book a finished cut by its plan file'))
    .description(
      'Takes out the sheets and offcuts of a plan, what is reserved for its order first, and books the offcuts that are kept in, under the text of their labels. The plan is replayed before. With --sheets only these sheets are booked; the ledger keeps which, and a later booking takes those that are left. With --order-file edging and fittings are taken out as well: edging for the panels that are sawn, with its overlength, in whole metres; fittings with the last sheet. For orders that are cut together it is given for each of them.',
    )
    .argument('<PLAN>', 'plan file (plan.json)')
    .option(
      '--order <NAME>',
      'name of the order or list (default: that of the plan or its folder)',
      words(300),
    )
    .option('--place <TEXT>', 'where the kept offcuts stand', words(300))
    .option('--sheets <SHEETS>', 'sawn so far: GROUP/2, GROUP/2x3 or GROUP, with commas', sheetList)
    .option(
      '--order-file <FILE>',
      'order (YAML) whose edging and fittings go out too; may be given again',
      (file: string, earlier: readonly string[] = []) => [...earlier, file],
    )
    .option('--library <DIR>', 'library folder of that order, or name of one')
    .addHelpText('after', cutExamples)
    .action(async (plan: string, options: CutStockOptions, command: Command) => {
      if (options.library !== undefined && options.orderFile === undefined) {
        command.error('error: --library goes with --order-file');
      }
      const { bookCut } = await import('../store/bookCut.ts');
      await bookCut(plan, options);
    });
}

function addReadingCommands(stock: Command): void {
  withStore(stock.command('show').summary('print what is there'))
    .description('Prints what is in the store, now, on a day or after a booking.')
    .option('--on <DAY>', 'as it was in the evening of a day, such as 2026-03-02', day)
    .option('--after <NUMBER>', 'as it was after a booking', wholeFrom(0))
    .addHelpText('after', '\nExamples:\n  plywright stock show --on 2026-03-02\n')
    .action(async (options: ShowOptions, command: Command) => {
      if (options.on !== undefined && options.after !== undefined) {
        command.error('error: give --on or --after, not both');
      }
      const { show } = await import('../store/show.ts');
      await show(options);
    });
  withStore(stock.command('history').summary('print every booking'))
    .description('Prints every booking, the first first.')
    .addHelpText('after', '\nExamples:\n  plywright stock history --json\n')
    .action(async (options: StockOptions) => {
      const { history } = await import('../store/show.ts');
      await history(options);
    });
}

/** Adds `plywright stock` with its commands. */
export function addStockCommand(program: Command): void {
  const stock = program
    .command('stock')
    .description(
      'Keeps the store of the workshop: what is there, what comes in and goes out, what is reserved and on order.',
    )
    .helpCommand(false)
    .addHelpText('after', more);
  addReadingCommands(stock);
  for (const name of Object.keys(itemCommands) as ItemCommand[]) addItemCommand(stock, name);
  addOtherCommands(stock);
  for (const command of stock.commands) {
    command
      .helpOption('-h, --help', 'print this help')
      .configureHelp({ helpWidth: 80 })
      .showHelpAfterError(`'plywright stock ${command.name()} --help' shows how it is used, with examples.`)
      .exitOverride();
  }
}
