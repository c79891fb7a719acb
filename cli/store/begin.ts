import type { StockOptions } from '../commands/stock.ts';
import { exitCodes } from '../exitCodes.ts';
import { endWith, jsonText, print } from '../terminal/output.ts';
import { reportFindings } from '../terminal/report.ts';
import { printable } from '../terminal/text.ts';
import { beginStore } from './ledgerFile.ts';

/** Runs `plywright stock begin`. */
export async function begin(options: StockOptions): Promise<void> {
  const begun = await beginStore(options.store);
  if (!begun.ok) return reportFindings(begun.findings, options);
  if (options.json) {
    const document = { ok: true, exitCode: exitCodes.done, store: options.store, findings: [] };
    await print(jsonText(document));
  } else await print(`A store in which nothing is booked yet is in ${printable(options.store)}/\n`);
  endWith(exitCodes.done);
}
