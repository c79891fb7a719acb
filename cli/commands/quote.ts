import { type Command, Option } from 'commander';
import { paperLanguages } from '../papers/kinds.ts';
import { oneOf } from './paperOptions.ts';
import { day, percentage } from './readOptions.ts';
import { withSearchOptions } from './runOptions.ts';
import { type SettingOptions, settingsInWords, withSettings } from './settings.ts';

/** What `plywright quote` was asked for. */
export interface QuoteOptions extends SettingOptions {
  readonly out: string;
  readonly seed: number;
  readonly time?: number;
  readonly work?: number;
  readonly threads?: number;
  readonly json?: true;
  readonly library?: string;
  /** Plan file to price in place of one that is searched for. */
  readonly plan?: string;
  readonly sheets?: 'whole' | 'share';
  /** In hundredths of a percent. */
  readonly vat?: number;
  /** A day such as 2026-03-02; today where it is not given. */
  readonly date?: string;
  readonly language: string;
  readonly replace?: true;
}

const more = `
The estimate has the material of the order as it is nested, edging, fittings,
the work at the saw (sheets, metres, cuts, settings of the fence, pieces turned)
and after it (edging, drilling, cutting by hand, assembly), mark-up and VAT.
Times, prices of an hour, mark-up and VAT are the library's, in its rates.yaml.
Each line says where its quantity and where its price stands.

It is an estimate and not an invoice. Papers go to
DIR/<name of the order>/quotation/: quotation.csv and quotation.pdf.

--sheets says how sheets are charged, whatever the library says: whole, as
nested, or by share, without the area of the offcuts that are kept.

Without --plan the order is nested as by 'plywright cut' with the same seed and
limits; --plan prices the plan that the saw has.
${settingsInWords}

Examples:
  plywright quote parts-libraries/demo-van/orders/demo-long.yaml
  plywright quote my-order.yaml --sheets share --language de
  plywright quote my-order.yaml --plan out/my-order/plan.json --json

Exit codes: as in 'plywright --help'.
`;

/** Adds `plywright quote`. */
export function addQuoteCommand(program: Command): void {
  const command = program
    .command('quote')
    .description('Works out a clear estimate of what each order costs.')
    .argument('<ORDER...>', 'order files (YAML)');
  withSearchOptions(withSettings(command))
    .option('--plan <FILE>', 'price this plan of the order in place of a new one')
    .addOption(new Option('--sheets <HOW>', 'how sheets are charged').choices(['whole', 'share']))
    .option('--vat <PERCENT>', "value added tax in place of the library's", percentage)
    .option('--date <DAY>', 'day of the estimate, such as 2026-03-02 (default: today)', day)
    .option('--json', 'print one JSON document instead of the table')
    .option('--library <DIR>', 'library folder, or name of one under parts-libraries/')
    .option('--language <TAG>', 'language of quotation.pdf: en or de', oneOf(paperLanguages), 'en')
    .option('--replace', 'write over papers that were changed by hand')
    .addHelpText('after', more)
    .action(async (orders: string[], options: QuoteOptions, own: Command) => {
      if (options.plan !== undefined && orders.length > 1) {
        own.error('error: --plan goes with one order at a time');
      }
      const { quote } = await import('../quoting/quote.ts');
      await quote(orders, options);
    });
}
