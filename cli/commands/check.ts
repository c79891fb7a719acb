import type { Command } from 'commander';
import { type SettingOptions, settingsInWords, withSettings } from './settings.ts';

/** What `plywright check` was asked for. */
export interface CheckOptions extends SettingOptions {
  readonly json?: true;
  readonly library?: string;
}

const more = `
An order is checked with its library: words, formulas, sizes, and whether the
furniture can be built (panels through each other, gaps, units outside the
vehicle). Of an order without errors the cautions that apply, what brings them,
and the mass of its furniture are told as well. A library folder is checked with
the orders that lie in its orders/. Nothing is written.
${settingsInWords}

Examples:
  plywright check my-order.yaml
  plywright check my-order.yaml --set bed_width=1300
  plywright check parts-libraries/demo-van

Exit codes: 0 when there are no errors (warnings and cautions may be printed),
1 when there are; others as in 'plywright --help'.
`;

/** Adds `plywright check`. */
export function addCheckCommand(program: Command): void {
  const command = program
    .command('check')
    .description('Checks an order with its library, or a library, and prints everything found at once.')
    .argument('<ORDER|LIBRARY>', 'order file (YAML) or library folder')
    .option('--json', 'as one JSON document')
    .option('--library <DIR>', 'library folder, or name of one under parts-libraries/');
  withSettings(command)
    .addHelpText('after', more)
    .action(async (path: string, options: CheckOptions) => {
      const { check } = await import('../printing/check.ts');
      await check(path, options);
    });
}
