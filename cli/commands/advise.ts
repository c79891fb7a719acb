import { type Command, InvalidArgumentError } from 'commander';
import { RANGE_EXPECTED, rangeFromText, TOO_MANY_VALUES, valuesOfRange } from '../../src/basics/rangeText.ts';
import { wholeNumber } from './runOptions.ts';
import { type SettingOptions, settingsInWords, withSettings } from './settings.ts';

/** What `plywright advise` was asked for. */
export interface AdviseOptions extends SettingOptions {
  readonly may: readonly string[];
  readonly seed: number;
  readonly work?: number;
  readonly nestings: number;
  readonly json?: true;
  readonly library?: string;
}

function limit(text: string, earlier: readonly string[] = []): readonly string[] {
  const range = rangeFromText(text);
  if (range === undefined) throw new InvalidArgumentError(`It must be ${RANGE_EXPECTED}.`);
  const values = valuesOfRange(range);
  if (values === null) throw new InvalidArgumentError(TOO_MANY_VALUES);
  return [...earlier, text];
}

/** With more moves `plywright cut` searches from several seeds: its plan would not be the one that is told here. */
const MOST_WORK = 399_999;

const more = `
--may says what may be changed, within which limits: a parameter of a unit, as
in --may 'galley sink.depth=440..480', or a choice of the layout, as in
--may bed_width=1200..1300. Lengths are tried to the mm, or by the step that
follows a slash, as in --may bed_width=1200..1300/5. It may be given again; then
two of them are changed together as well.

Told are changes after which the sheets cost less, all checks passing and with
no warning that the order does not have: the smallest first, and larger ones
where they save more. Then which panel of each board brings a sheet, and what
sheets of one size alone would take. Each has a plan of its own, nested with the
same seed and limits as by 'plywright cut' and replayed. Nothing is written.

Many values are ruled out together by the least that they can cost. Where
--nestings ends the search before all were looked at, nearest first, a part of
them goes to changes further away, at distances that double. Where a
formula makes a panel smallest in the middle of a range, a change there may be
missed.
${settingsInWords}

Examples:
  plywright advise my-order.yaml
  plywright advise my-order.yaml --may 'galley sink.depth=440..480'
  plywright advise my-order.yaml --may bed_width=1200..1300 --json

Exit codes: as in 'plywright --help'.
`;

/** Adds `plywright advise`. */
export function addAdviseCommand(program: Command): void {
  const command = program
    .command('advise')
    .description('Finds small changes of an order that make its sheets cost less.')
    .argument('<ORDER>', 'order file (YAML)');
  withSettings(command)
    .option('--may <NAME=FROM..TO>', 'what may be changed within which limits; may be given again', limit, [])
    .option('--seed <N>', 'start of the random search', wholeNumber(0, 4_294_967_295), 1)
    .option('--work <N>', 'end each search after this many moves', wholeNumber(0, MOST_WORK))
    .option('--nestings <N>', 'nest at most so often to find changes', wholeNumber(1, 1_000_000), 200)
    .option('--json', 'print one JSON document instead of the tables')
    .option('--library <DIR>', 'library folder, or name of one under parts-libraries/')
    .addHelpText('after', more)
    .action(async (order: string, options: AdviseOptions) => {
      const { advise } = await import('../advising/advise.ts');
      await advise(order, options);
    });
}
