import type { Checked, Finding } from '../../src/model/finding.ts';
import type { SawnCopies } from '../../src/model/plan.ts';
import type { Draft, Ledger } from '../../src/model/store.ts';
import { finishCut } from '../../src/pipeline/finishCut.ts';
import type { OrderedFurniture } from '../../src/pipeline/job.ts';
import {
  bookingsOfPlan,
  joinedSheets,
  sheetsBooked,
  sheetsInWords,
  sheetsMeant,
  sheetsWithout,
} from '../../src/pipeline/keepStore.ts';
import { ordersNotCut, suppliesOfCut } from '../../src/pipeline/suppliesOfCut.ts';
import type { CutStockOptions } from '../commands/stock.ts';
import { orderedByFile } from '../cutting/orderedByFile.ts';
import { type ProvenFile, readProvenPlan } from '../cutting/readProvenPlan.ts';
import { reportFindings } from '../terminal/report.ts';
import { bookInStore } from './ledgerFile.ts';
import { aboutBooking, futureDay, tellBooked } from './tell.ts';

function wrong(message: string, more: Partial<Finding> = {}): Checked<never> {
  return { ok: false, findings: [{ code: 'cut-twice', severity: 'error', message, ...more }] };
}

/** The sheets that are booked now: those that were named, or all that are left. */
function sheetsNow(
  { plan, hash }: ProvenFile,
  ledger: Ledger,
  words: readonly string[] | undefined,
  done: readonly SawnCopies[] | 'all',
): Checked<readonly SawnCopies[]> {
  const left = done === 'all' ? [] : sheetsWithout(plan, done);
  const last = bookingsOfPlan(ledger, hash).at(-1);
  if (left.length === 0 && last !== undefined) {
    const message = `This plan is booked already, as booking ${last.number} of ${last.date}.`;
    const advice = `if that one was wrong, reverse it: plywright stock reverse ${last.number}`;
    return wrong(message, { advice });
  }
  if (words !== undefined) return sheetsMeant(plan, words, done === 'all' ? [] : done);
  return { ok: true, value: left, findings: [] };
}

function draftOf(
  proven: ProvenFile,
  ledger: Ledger,
  orders: readonly OrderedFurniture[],
  options: CutStockOptions,
): Checked<Draft> {
  const { plan, hash } = proven;
  const job = options.order ?? proven.job;
  const done = sheetsBooked(ledger, hash);
  const sheets = sheetsNow(proven, ledger, options.sheets, done);
  if (!sheets.ok) return sheets;
  const before = done === 'all' ? [] : done;
  const sawn = joinedSheets(plan, [...before, ...sheets.value]);
  const goesOn = before.length > 0;
  const lines = finishCut(plan, ledger, { job, place: options.place ?? '', sheets: sheets.value, goesOn });
  if (!lines.ok) return lines;
  const supplies = suppliesOfCut({ plan, hash, job, sawn }, orders, ledger);
  const { recut } = plan;
  const about = aboutBooking({ ...options, why: options.why ?? recut?.why ?? '' });
  return {
    ok: true,
    value: {
      ...about,
      kind: 'cut',
      order: job,
      plan: hash,
      sheets: [...sheets.value],
      ...(recut === undefined ? {} : { recut: { number: recut.number, spoiled: recut.spoiled } }),
      lines: [...lines.value, ...supplies.lines],
    },
    findings: supplies.findings,
  };
}

/** The orders whose edging and fittings go out too. */
async function ordersOf({ orderFile, library }: CutStockOptions): Promise<Checked<OrderedFurniture[]>> {
  const orders: OrderedFurniture[] = [];
  for (const file of orderFile ?? []) {
    const ordered = await orderedByFile({ orderFile: file, ...(library === undefined ? {} : { library }) });
    if (!ordered.ok) return ordered;
    if (ordered.value !== undefined) orders.push(ordered.value);
  }
  return { ok: true, value: orders, findings: [] };
}

/** Runs `plywright stock cut`: the plan is replayed before anything of it is booked. */
export async function bookCut(path: string, options: CutStockOptions): Promise<void> {
  const tooEarly = await futureDay(options);
  if (tooEarly.length > 0) return reportFindings(tooEarly, options);
  const proven = await readProvenPlan(path, 'nothing was booked', options);
  if (proven === null) return;
  const orders = await ordersOf(options);
  if (!orders.ok) return reportFindings(orders.findings, options);
  const others = ordersNotCut(proven.plan, orders.value);
  if (others.length > 0) return reportFindings(others, options);
  const booked = await bookInStore(options.store, (ledger) => draftOf(proven, ledger, orders.value, options));
  if (!booked.ok) return reportFindings(booked.findings, options);
  const done = sheetsBooked(booked.value.ledger, proven.hash);
  const left = done === 'all' ? [] : sheetsInWords(sheetsWithout(proven.plan, done));
  const said = left.length === 0 ? 'All sheets of this plan are sawn.' : `Still to saw: ${left.join(', ')}`;
  await tellBooked(booked.value, booked.findings, options, { said, data: { sheetsLeft: left } });
}
