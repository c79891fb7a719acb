import { createHash } from 'node:crypto';
import { basename, dirname, resolve } from 'node:path';
import { bookedAlready, finishCut, orderOfPlan } from '../../src/pipeline/finishCut.ts';
import { readPlan, replay } from '../../src/pipeline/replayPlan.ts';
import type { CutStockOptions } from '../commands/stock.ts';
import { exitCodes } from '../exitCodes.ts';
import { diskReader } from '../files/reader.ts';
import { printError } from '../terminal/output.ts';
import { reportFindings } from '../terminal/report.ts';
import { printable } from '../terminal/text.ts';
import { bookInStore } from './ledgerFile.ts';
import { aboutBooking, futureDay, tellBooked } from './tell.ts';

/** Runs `plywright stock cut`: the plan is replayed before anything of it is booked. */
export async function bookCut(path: string, options: CutStockOptions): Promise<void> {
  const tooEarly = futureDay(options);
  if (tooEarly.length > 0) return reportFindings(tooEarly, options);
  const text = await diskReader.text(path, 'plan');
  if (!text.ok) return reportFindings(text.findings, options);
  const plan = readPlan(text.value, path);
  if (!plan.ok) return reportFindings(plan.findings, options, exitCodes.wrongInput);
  const replayed = replay(text.value, path);
  if (!replayed.ok) {
    await printError(`${printable(path)} cannot be sawn as it is written, so nothing was booked:\n\n`);
    return reportFindings(replayed.findings, options, exitCodes.failedReplay);
  }
  // The papers of a job lie in a folder of its name.
  const job = options.order ?? (orderOfPlan(plan.value) || basename(dirname(resolve(path))));
  const planHash = createHash('sha256').update(text.value).digest('hex');
  const booked = await bookInStore(options.store, (ledger) => {
    const twice = bookedAlready(ledger, planHash);
    if (twice !== null) return { ok: false, findings: [twice] };
    const lines = finishCut(plan.value, ledger, { job, place: options.place ?? '' });
    if (!lines.ok) return lines;
    const about = { ...aboutBooking(options), order: job, plan: planHash };
    return { ok: true, value: { ...about, kind: 'cut', lines: lines.value }, findings: [] };
  });
  if (!booked.ok) return reportFindings(booked.findings, options);
  await tellBooked(booked.value, booked.findings, options);
}
