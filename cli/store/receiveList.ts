import { basename } from 'node:path';
import { receiveListLines } from '../../src/pipeline/receiveList.ts';
import type { ItemOptions } from '../commands/stock.ts';
import { diskReader } from '../files/reader.ts';
import { reportFindings } from '../terminal/report.ts';
import { onOrderWish } from './bookItem.ts';
import { bookInStore } from './ledgerFile.ts';
import { aboutBooking, futureDay, tellBooked } from './tell.ts';

/** Runs `plywright stock receive list`: all of the list as one booking, or nothing. */
export async function receiveList(path: string, options: ItemOptions): Promise<void> {
  const tooEarly = await futureDay(options);
  if (tooEarly.length > 0) return reportFindings(tooEarly, options);
  const text = await diskReader.text(path, 'list');
  if (!text.ok) return reportFindings(text.findings, options);
  const { supplier, place } = options;
  const more = { ...(supplier === undefined ? {} : { supplier }), ...(place === undefined ? {} : { place }) };
  const booked = await bookInStore(options.store, (ledger) => {
    const lines = receiveListLines(
      text.value,
      path,
      ledger,
      more,
      options.notOrdered ? null : onOrderWish(options),
    );
    if (!lines.ok) return lines;
    const about = aboutBooking({ ...options, why: options.why ?? basename(path) });
    return { ok: true, value: { ...about, kind: 'receive', lines: lines.value }, findings: lines.findings };
  });
  if (!booked.ok) return reportFindings(booked.findings, options);
  await tellBooked(booked.value, booked.findings, options);
}
