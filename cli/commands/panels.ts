import type { Command } from 'commander';
import { type SettingOptions, settingsInWords, withSettings } from './settings.ts';

/** What `plywright panels` was asked for. */
export interface PanelsOptions extends SettingOptions {
  readonly csv?: true;
  readonly json?: true;
  readonly library?: string;
}

const more = `
Sizes are in mm: finished with edging on, cut as sawn. Length runs with the
grain.
${settingsInWords}

Examples:
  plywright panels my-order.yaml
  plywright panels my-order.yaml --csv > panels.csv

Exit codes: as in 'plywright --help'.
`;

/** Adds `plywright panels`. */
export function addPanelsCommand(program: Command): void {
  const command = program
    .command('panels')
    .description('Prints every panel of an order: unit, size, board, finish, grain, edging and mass.')
    .argument('<ORDER>', 'order file (YAML)')
    .option('--csv', 'as comma-separated values (RFC 4180)')
    .option('--json', 'as one JSON document')
    .option('--library <DIR>', 'library folder, or name of one under parts-libraries/');
  withSettings(command)
    .addHelpText('after', more)
    .action(async (order: string, options: PanelsOptions, command: Command) => {
      if (options.csv && options.json) command.error('error: give --csv or --json, not both');
      const { printPanels } = await import('../printing/panels.ts');
      await printPanels(order, options);
    });
}
