import { type Command, InvalidArgumentError } from 'commander';
import { papersInWords } from './paperOptions.ts';
import {
  labelFormatsInWords,
  type RunOptions,
  withPaperOptions,
  withSearchOptions,
  wrongLabels,
} from './runOptions.ts';

/** What `plywright recut` was asked for. */
export interface RecutOptions extends RunOptions {
  /** File with texts of labels, a line each. */
  readonly labels?: string;
  readonly store?: string;
  readonly sheetsOnHand?: true;
  /** False when offcuts of the plan itself may not be cut up. */
  readonly ownOffcuts: boolean;
  readonly wholeRows?: true;
  readonly why: string;
  readonly orderFile?: string;
  readonly library?: string;
}

function reason(text: string): string {
  const plain = text.trim();
  if (plain.length > 2000) throw new InvalidArgumentError('It must be a text of at most 2000 characters.');
  return plain;
}

const more = `
A panel is named by its number in the cutting list (12), by its name, by its
unit and name ('galley sink/left side') or by the text of its label. Of a panel
that is made several times 12/2 is the second, as its label has it, and 12/all
are all. --labels reads the texts of scanned labels, a line each.

The panels are cut from offcuts that the plan keeps, from those of the store
that are free or reserved for the order, and from the fewest fresh sheets. A
store that has the cut booked knows which offcuts of the plan are there;
otherwise all are offered, but for those that earlier recuts in the same folder
cut up. With --no-own-offcuts none of the plan is.

The panels keep their numbers, and new labels read as the old ones did. Papers
go to DIR/<name of the job>-recut-<number>/; its plan.json is replayed and
booked with 'plywright stock cut' as any other, and the booking says which
panels were spoiled and why. --order-file gives the papers titles, holes and
drawings.

Of a row of fronts over which the grain runs on, a front that is cut anew alone
does not meet its neighbours. That is told; --whole-rows cuts the whole blank.

Papers for --papers:
${papersInWords}
Formats for --label-format:
${labelFormatsInWords}

Examples:
  plywright recut out/my-van/plan.json 12 --why 'corner torn out'
  plywright recut out/my-van/plan.json 'galley sink/left side' 30/2 --store .
  plywright recut out/my-van/plan.json --labels scanned.txt --papers labels,book

Exit codes: as in 'plywright --help'.
`;

/** Adds `plywright recut`. */
export function addRecutCommand(program: Command): void {
  const command = program
    .command('recut')
    .description('Cuts spoiled panels of a plan anew, from offcuts or the fewest fresh sheets.')
    .argument('<PLAN>', 'plan file (plan.json) that the panels were cut by')
    .argument('[PANEL...]', 'number, name or label of each spoiled panel')
    .option('--labels <FILE>', 'file with the texts of their labels, a line each')
    .option('--why <TEXT>', 'what happened, for papers and ledger', reason, '')
    .option('--whole-rows', 'cut rows of matched fronts anew as a whole')
    .option('--store <FOLDER>', 'offer the offcuts of this store as well')
    .option('--sheets-on-hand', 'take only sheets that the store has')
    .option('--no-own-offcuts', 'leave the offcuts of the plan itself alone')
    .option('--order-file <FILE>', 'order (YAML) that the plan was made for')
    .option('--library <DIR>', 'library folder of that order, or name of one');
  withSearchOptions(command).option('--json', 'print one JSON document instead of the summary');
  withPaperOptions(command)
    .option('--replace', 'write over papers that were changed by hand')
    .addHelpText('after', more)
    .action(async (plan: string, panels: string[], options: RecutOptions, own: Command) => {
      const wrong = wrongCombination(panels, options);
      if (wrong !== null) own.error(`error: ${wrong}`);
      const { recut } = await import('../cutting/recut.ts');
      await recut(plan, panels, options);
    });
}

function wrongCombination(panels: readonly string[], options: RecutOptions): string | null {
  if (panels.length === 0 && options.labels === undefined) return 'name a panel, or give --labels FILE';
  if (options.sheetsOnHand && options.store === undefined) return '--sheets-on-hand needs --store FOLDER';
  if (options.library !== undefined && options.orderFile === undefined)
    return '--library goes with --order-file';
  return wrongLabels(options);
}
