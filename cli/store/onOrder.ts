import { basename } from 'node:path';
import type { Checked, Finding } from '../../src/model/finding.ts';
import type { BookingKind, BookingLine, Ledger, OnOrder } from '../../src/model/store.ts';
import { goodsOnOrder, nearestPurchase, onOrderLine, postponedLines } from '../../src/pipeline/keepStore.ts';
import { expectListLines } from '../../src/pipeline/receiveList.ts';
import type { BookOptions, ItemOptions, PostponeOptions } from '../commands/stock.ts';
import { diskReader } from '../files/reader.ts';
import { reportFindings } from '../terminal/report.ts';
import { bookAndTell, markAsked } from './bookItem.ts';
import { aboutBooking } from './tell.ts';

/** Runs `plywright stock expect list`: all of the list as one booking, or nothing. */
export async function expectList(path: string, options: ItemOptions): Promise<void> {
  const text = await diskReader.text(path, 'list');
  if (!text.ok) return reportFindings(text.findings, options);
  const forOrder = options.order === undefined ? {} : { order: options.order };
  const listed = { ...markAsked(options), ...forOrder };
  await bookAndTell(options, (ledger) => {
    const lines = expectListLines(text.value, path, ledger, listed);
    if (!lines.ok) return lines;
    const about = aboutBooking({ ...options, why: options.why ?? basename(path) });
    return { ...lines, value: { ...about, kind: 'expect', ...forOrder, lines: lines.value } };
  });
}

/** What is still on order of a purchase; told where nothing is. */
function goodsOf(ledger: Ledger, purchase: string, supplier: string | undefined): Checked<OnOrder[]> {
  const goods = goodsOnOrder(ledger, { purchase, supplier });
  if (goods.length > 0) return { ok: true, value: goods, findings: [] };
  const nearest = nearestPurchase(ledger, purchase);
  const finding: Finding = {
    code: 'not-on-order',
    severity: 'error',
    message: `Nothing is on order under ${purchase}${supplier === undefined ? '' : ` with ${supplier}`}.`,
    ...(nearest === undefined || nearest === purchase ? {} : { nearest }),
    advice: 'what is on order stands in `plywright stock show`',
  };
  return { ok: false, findings: [finding] };
}

async function bookPurchase(
  kind: BookingKind,
  purchase: string,
  options: BookOptions & { readonly supplier?: string },
  linesOf: (goods: readonly OnOrder[]) => Checked<BookingLine[]>,
): Promise<void> {
  await bookAndTell(options, (ledger) => {
    const goods = goodsOf(ledger, purchase, options.supplier);
    const lines = goods.ok ? linesOf(goods.value) : goods;
    if (!lines.ok) return lines;
    return { ...lines, value: { ...aboutBooking(options), kind, lines: lines.value } };
  });
}

function allAs(move: 'in' | 'withdraw'): (goods: readonly OnOrder[]) => Checked<BookingLine[]> {
  return (goods) => ({
    ok: true,
    value: goods.map((one) => onOrderLine(one, move)),
    findings: [],
  });
}

/** Runs `plywright stock receive purchase`: all that is still on order of it has come in. */
export async function receivePurchase(purchase: string, options: ItemOptions): Promise<void> {
  await bookPurchase('receive', purchase, options, allAs('in'));
}

/** Runs `plywright stock withdraw purchase`: nothing of it that is still on order will come. */
export async function withdrawPurchase(purchase: string, options: ItemOptions): Promise<void> {
  await bookPurchase('withdraw', purchase, options, allAs('withdraw'));
}

/** Runs `plywright stock postpone`. */
export async function postpone(purchase: string, options: PostponeOptions): Promise<void> {
  await bookPurchase('postpone', purchase, options, (goods) => {
    const lines = postponedLines(goods, options.expected);
    if (lines.length > 0) return { ok: true, value: lines, findings: [] };
    const message = `All that is on order under ${purchase} is expected on ${options.expected} already.`;
    return { ok: false, findings: [{ code: 'nothing-to-correct', severity: 'error', message }] };
  });
}
