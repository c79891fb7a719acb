import { join } from 'node:path';
import type { Papers } from '../../src/edge/index.ts';
import type { Checked, Finding } from '../../src/model/finding.ts';
import type { PurchaseReport } from '../../src/model/purchase.ts';
import type { BookingLine, Ledger } from '../../src/model/store.ts';
import { purchaseFindings } from '../../src/pipeline/buyOrders.ts';
import {
  expectedLines,
  type PurchaseOfWay,
  type PurchaseSubject,
  purchaseOfWay,
  reservationLines,
} from '../../src/pipeline/makePurchase.ts';
import { type OnHand, onHandFor } from '../../src/pipeline/onHand.ts';
import { type BuyOptions, spareOf } from '../commands/buy.ts';
import { listenForInterrupts } from '../cutting/interrupts.ts';
import { exitCodes } from '../exitCodes.ts';
import { safeFileName } from '../files/fileName.ts';
import { diskWriter } from '../files/papersFolder.ts';
import { type Booked, bookInStore, readStore } from '../store/ledgerFile.ts';
import { aboutBooking, futureDay, today } from '../store/tell.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { endWith, jsonText, print, printError } from '../terminal/output.ts';
import { sayMeanwhile } from '../terminal/progress.ts';
import { reportFindings } from '../terminal/report.ts';
import { counted } from '../terminal/text.ts';
import { describePurchasePapers } from './describePapers.ts';
import { describePurchase } from './describePurchase.ts';
import { type NestedWay, type Ways, WaysToCut } from './nestWays.ts';
import { purchasePapers } from './papers.ts';
import { purchaseAsData } from './purchaseAsData.ts';
import { type ReadyOrders, readOrders } from './readOrders.ts';

/** What is written and told in the end. */
interface Bought {
  readonly report: PurchaseReport;
  readonly way: NestedWay;
  readonly folder: string;
  readonly findings: readonly Finding[];
}

function nameOf({ orders }: ReadyOrders, { name }: BuyOptions): string {
  const first = orders[0]!.ordered.order.id;
  const usual = orders.length === 1 ? first : `${first}-and-${orders.length - 1}-more`;
  return `purchase-${safeFileName(name ?? usual)}`;
}

function titleOf({ orders }: ReadyOrders, { name }: BuyOptions): string {
  const ids = orders.map(({ ordered }) => ordered.order.id);
  const some = ids.length > 4 ? [...ids.slice(0, 3), `${ids.length - 3} more`] : ids;
  return name ?? some.join(', ');
}

async function ledgerOf(store: string | undefined): Promise<Checked<Ledger | null>> {
  if (store === undefined) return { ok: true, value: null, findings: [] };
  const read = await readStore(store);
  return read.ok ? { ...read, value: read.value.ledger } : read;
}

/** Runs `plywright buy`: reads, nests both ways, replays all plans, books if asked for, and only then writes. */
export async function buy(files: readonly string[], options: BuyOptions): Promise<void> {
  const tooEarly =
    options.reserve || options.expect ? await futureDay({ ...options, store: options.store ?? '' }) : [];
  if (tooEarly.length > 0) return reportFindings(tooEarly, options);
  const orders = await readOrders(files, options);
  if (!orders.ok) return reportFindings(orders.findings, options);
  const ledger = await ledgerOf(options.store);
  if (!ledger.ok) return reportFindings(ledger.findings, options);
  const name = nameOf(orders.value, options);
  const folder = join(options.out, name);
  const existing = options.replace ? 'replace edited' : 'keep edited';
  const inTheWay = await diskWriter.look(folder, existing);
  if (inTheWay.length > 0) return reportFindings(inTheWay, options);

  let stopSearch: () => void = () => undefined;
  const interrupts = listenForInterrupts(() => stopSearch());
  try {
    const stoppable = (stop: () => void) => {
      stopSearch = stop;
      if (interrupts.pressed()) stop();
    };
    const title = titleOf(orders.value, options);
    const ids = orders.value.orders.map(({ ordered }) => ordered.order.id);
    const onHand: readonly OnHand[] = ledger.value === null ? [] : onHandFor(ledger.value, [...ids, name]);
    const ways = await new WaysToCut(orders.value, { name, title }, onHand, options, stoppable).run();
    const subject: PurchaseSubject = {
      name,
      orders: orders.value.orders.map(({ ordered }) => ordered),
      library: orders.value.library,
      ledger: ledger.value,
      terms: { today: options.date ?? today(), spare: spareOf(options) },
    };
    const chosen = chooseWay(ways, options);
    if (!chosen.ok) return await reportWrongWay(chosen, options);
    const { purchase, report } = reportOf(chosen.way, chosen.other, subject, title);
    const findings = [
      ...orders.findings,
      ...ledger.findings,
      ...chosen.findings,
      ...purchaseFindings(report.chosen.purchase, report.currency),
      ...orderedBefore(subject),
    ];
    if (findings.some(({ severity }) => severity === 'error')) return await reportFindings(findings, options);
    const said = sayMeanwhile(process.stderr, 'writing the papers');
    const papers = await purchasePapers(report, chosen.way, options);
    said();
    interrupts.putOff();
    const booked = await keep(purchase, subject, options);
    if (!booked.ok) return await reportFindings(booked.findings, options);
    const failed = await diskWriter.papers(folder, papers, existing);
    if (failed.length > 0) return await reportFindings([...failed, ...stands(booked.value)], options);
    await tell({ report, way: chosen.way, folder, findings }, papers, booked.value, {
      ...options,
      endedEarly: interrupts.pressed(),
    });
  } finally {
    interrupts.end();
  }
}

type Chosen =
  | {
      readonly ok: true;
      readonly way: NestedWay;
      readonly other: NestedWay | undefined;
      readonly findings: readonly Finding[];
    }
  | { readonly ok: false; readonly fault: boolean; readonly findings: readonly Finding[] };

/** The way that was asked for; the other only where there is one. One order alone is cut by itself. */
function chooseWay({ together, apart }: Ways, options: BuyOptions): Chosen {
  const [wanted, other] =
    together === null ? [apart, null] : options.cut === 'together' ? [together, apart] : [apart, together];
  if (!wanted.ok) return wanted;
  if (other !== null && !other.ok && other.fault) return other;
  const findings = apart.ok ? apart.findings : wanted.findings;
  if (other === null || other.ok) return { ok: true, way: wanted.value, other: other?.value, findings };
  const finding: Finding = {
    code: 'no-other-way',
    severity: 'warning',
    message: `The orders cannot be cut ${options.cut === 'together' ? 'apart' : 'together'}, so there is nothing to compare with.`,
    ...(other.findings[0] === undefined ? {} : { found: other.findings[0].message }),
  };
  return { ok: true, way: wanted.value, other: undefined, findings: [...findings, finding] };
}

async function reportWrongWay(wrong: Extract<Chosen, { ok: false }>, options: BuyOptions): Promise<void> {
  if (!wrong.fault) return reportFindings(wrong.findings, options);
  await printError(
    'A plan did not pass its replay, so nothing was written. This is a fault of plywright:\n' +
      'please report it with the orders that led to it.\n\n',
  );
  return reportFindings(wrong.findings, options, exitCodes.failedReplay);
}

function reportOf(
  way: NestedWay,
  other: NestedWay | undefined,
  subject: PurchaseSubject,
  title: string,
): { readonly purchase: PurchaseOfWay; readonly report: PurchaseReport } {
  const purchase = purchaseOfWay(way, subject);
  const report: PurchaseReport = {
    name: subject.name,
    title,
    currency: subject.library.currency,
    orders: subject.orders.map(({ order, furniture }) => ({
      id: order.id,
      title: order.title,
      start: order.start ?? null,
      panels: furniture.units.reduce((sum, { panels }) => sum + panels.length, 0) * furniture.count,
    })),
    chosen: purchase.result,
    ...(other === undefined ? {} : { other: purchaseOfWay(other, subject).result }),
  };
  return { purchase, report };
}

/** A purchase of which something is on order already, so that its papers are about the rest. */
function orderedBefore({ ledger, name }: PurchaseSubject): Finding[] {
  const goods = [...(ledger?.onOrder.values() ?? [])].filter(({ purchase }) => purchase === name);
  if (goods.length === 0) return [];
  return [
    {
      code: 'ordered-before',
      severity: 'warning',
      message: `Of ${name} something is on order already, so its papers are about what is still to be ordered.`,
      found: `${counted(goods.length, 'line')} on order`,
      advice: 'to keep the papers of the first one, give this one another --name or --out',
    },
  ];
}

/** What was asked to be kept, and to be booked as on order. */
function linesToBook(
  purchase: PurchaseOfWay,
  ledger: Ledger,
  name: string,
  { reserve, expect }: BuyOptions,
): BookingLine[] {
  return [
    ...(reserve ? reservationLines(purchase.uses, ledger) : []),
    ...(expect ? expectedLines(purchase, ledger, name) : []),
  ];
}

/** Books what was asked for; null where nothing was to be booked. The store must be as it was when the plans were made. */
async function keep(
  purchase: PurchaseOfWay,
  { ledger, name }: PurchaseSubject,
  options: BuyOptions,
): Promise<Checked<Booked | null>> {
  const { store } = options;
  const nothing = { ok: true, value: null, findings: [] } as const;
  if (store === undefined || ledger === null) return nothing;
  if (linesToBook(purchase, ledger, name, options).length === 0) return nothing;
  return bookInStore(store, (now) => {
    if (now.bookings.length !== ledger.bookings.length) {
      const finding: Finding = {
        code: 'store-changed',
        severity: 'error',
        message:
          'Somebody has booked in the store meanwhile, so that the purchase no longer holds; nothing was written.',
        place: { file: store },
        advice: 'run it again',
      };
      return { ok: false, findings: [finding] };
    }
    const lines = linesToBook(purchase, now, name, options);
    const kind = lines.some(({ move }) => move === 'expect') ? 'expect' : 'reserve';
    const about = aboutBooking({ ...options, store, why: name });
    return { ok: true, value: { ...about, kind, lines }, findings: [] };
  });
}

/** What is booked though the papers could not be written. */
function stands(booked: Booked | null): Finding[] {
  if (booked === null) return [];
  const { number } = booked.booking;
  return [
    {
      code: 'booking-stands',
      severity: 'warning',
      message: `The purchase is booked all the same, as booking ${number}.`,
      advice: `to take it back: plywright stock reverse ${number}`,
    },
  ];
}

/** What was booked, or why nothing was; and, where nothing says that it is on order, that the next purchase knows nothing of it. */
function bookedInWords(
  { report }: Bought,
  booked: Booked | null,
  { reserve, expect, store }: BuyOptions,
): string[] {
  const toOrder = report.chosen.purchase.suppliers.length > 0;
  const lines = booked?.booking.lines ?? [];
  const expected = lines.filter(({ move }) => move === 'expect').length;
  const kept = lines.length - expected;
  const number = booked?.booking.number;
  const said = [
    ...(kept > 0 ? [`Reserved as booking ${number}: ${counted(kept, 'line')}.`] : []),
    ...(reserve && kept === 0
      ? ['The store has nothing for these orders that is not kept for them already.']
      : []),
    ...(expected > 0 ? [`On order as booking ${number}: ${counted(expected, 'line')}.`] : []),
    ...(expect && expected === 0 ? ['Nothing is to be ordered, so nothing is booked as on order.'] : []),
    ...(store !== undefined && !expect && toOrder
      ? ['Not booked as on order: a purchase after this one orders it again, unless --expect books it.']
      : []),
  ];
  return said.length === 0 ? [] : [`${said.join('\n')}\n`];
}

async function tell(
  bought: Bought,
  papers: Papers,
  booked: Booked | null,
  options: BuyOptions & { readonly endedEarly: boolean },
): Promise<void> {
  const { report, way, folder, findings } = bought;
  const colours = coloursFor(process.stdout);
  const paths = [...papers.keys()].sort();
  if (options.json) {
    const document = {
      ok: true,
      exitCode: exitCodes.done,
      seed: options.seed,
      endedEarly: options.endedEarly,
      purchase: { name: report.name, folder, papers: paths, ...purchaseAsData(report) },
      groups: way.plans.flatMap(({ groups }, job) =>
        groups.map((group, index) => ({
          job: way.jobs[job]!.name,
          ...group,
          seconds: way.seconds[job]![index]!,
        })),
      ),
      booked: booked?.booking ?? null,
      findings,
    };
    await print(jsonText(document));
  } else {
    const parts = [
      describePurchase(report, colours),
      ...bookedInWords(bought, booked, options),
      describePurchasePapers(folder, paths, colours),
      ...(options.endedEarly
        ? ['The search was ended early; the purchase is that of the best plans so far.\n']
        : []),
      ...(findings.length === 0 ? [] : [describeFindings(findings, colours)]),
    ];
    await print(parts.join('\n'));
  }
  endWith(exitCodes.done);
}
