import type { Command } from 'commander';
import { sheetList } from './readOptions.ts';
import { seconds, wholeNumber } from './runOptions.ts';
import { type SettingOptions, withSettings } from './settings.ts';

/** What `plywright diff` was asked for. */
export interface DiffOptions extends SettingOptions {
  readonly seed: number;
  readonly time?: number;
  readonly work?: number;
  readonly threads?: number;
  readonly json?: true;
  readonly library?: string;
  /** Plan file of the old order that the saw has. */
  readonly plan?: string;
  /** Sheets of that plan that are sawn, as people name them. */
  readonly sawn?: readonly string[];
  readonly store?: string;
  /** Folder for the lists. */
  readonly csv?: string;
  readonly replace?: true;
}

const more = `
Panels are known by their unit and their name. Each is the same, changed (board,
finish, size, edging, openings, holes …), new, or no longer needed.

With --plan and --store, the ledger says which sheets of the old order's plan are
sawn; --sawn names sheets that nobody has booked, as 'plywright stock cut' does.
Their panels serve the new order where they are as the saw must leave them,
whatever they were sawn as. What is still to be sawn is nested from sheets and,
first, from the offcuts of the store, or without one of the sheets that are sawn.

To buy is what the new order takes, without what is done and what the store has
free or reserved for either order. Without a store it is what the new order
takes beyond the old one. Prices are those of an estimate ('plywright quote --help'),
or of the material alone where the library has no rates.

--set says what is otherwise in the new order, as in --set bed_width=1300,
--set 'base cupboard.width=400' or --set front.finish=slate.

--csv writes changed-panels.csv and changed-material.csv into a folder.

Examples:
  plywright diff my-van.yaml my-van-changed.yaml
  plywright diff my-van.yaml --set bed_width=1300
  plywright diff old.yaml new.yaml --plan out/old/plan.json --store store
  plywright diff old.yaml new.yaml --csv changes --json

Exit codes: as in 'plywright --help'.
`;

/** Adds `plywright diff`. */
export function addDiffCommand(program: Command): void {
  const command = program
    .command('diff')
    .description('Tells what a changed order means: panels, what is sawn already, what to buy, the price.')
    .argument('<OLD>', 'order file (YAML) as it was')
    .argument('[NEW]', 'order file (YAML) as it is now; OLD with --set where left out');
  withSettings(command)
    .option('--plan <FILE>', 'plan of the old order that the saw has')
    .option('--sawn <SHEETS>', 'of that plan: GROUP/2, GROUP/2x3 or GROUP, with commas', sheetList)
    .option('--store <FOLDER>', 'what is there, and with --plan what is sawn')
    .option('--csv <DIR>', 'write the lists into this folder')
    .option('--seed <N>', 'start of the random search', wholeNumber(0, 4_294_967_295), 1)
    .option('--time <SECONDS>', 'end the search after this time', seconds)
    .option('--work <N>', 'end the search after this many moves', wholeNumber(0, 1_000_000_000_000))
    .option('--threads <N>', 'use at most N threads; the result is the same', wholeNumber(1, 256))
    .option('--json', 'print one JSON document instead of the tables')
    .option('--library <DIR>', 'library folder, or name of one under parts-libraries/')
    .option('--replace', 'write over lists that were changed by hand')
    .addHelpText('after', more)
    .action(async (before: string, after: string | undefined, options: DiffOptions, command: Command) => {
      if (after === undefined && options.set === undefined) {
        command.error('error: give the order as it is now, or what is otherwise with --set');
      }
      if (options.sawn !== undefined && options.plan === undefined) {
        command.error('error: --sawn needs --plan FILE, of which these are sheets');
      }
      const { diff } = await import('../quoting/diff.ts');
      await diff(before, after ?? before, options);
    });
}
