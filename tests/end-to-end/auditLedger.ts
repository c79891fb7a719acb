import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';

/**
 * The books of a workshop's folder once more, from its files alone and by code of its own: the lines of the ledger are added
 * up, and the area that each cut took out and brought back is held against the plan file that it was cut by.
 */

interface Line {
  readonly item: 'sheet' | 'offcut' | 'edging' | 'fitting';
  readonly move: 'in' | 'out' | 'reserve' | 'release' | 'expect' | 'withdraw';
  readonly onOrder?: { readonly purchase: string };
  readonly count?: number;
  readonly metres?: number;
  readonly length?: number;
  readonly width?: number;
  readonly label?: string;
  readonly [field: string]: unknown;
}

export interface BookedLine {
  readonly number: number;
  readonly kind: string;
  readonly order?: string;
  readonly plan?: string;
  readonly sheets?: readonly { group: string; number: number; copies: readonly number[] }[];
  readonly recut?: { readonly spoiled: readonly string[] };
  readonly reverses?: number;
  readonly lines: readonly Line[];
}

interface Plan {
  readonly groups: readonly {
    readonly id: string;
    readonly stock: readonly { id: string; length: number; width: number }[];
    readonly panels: readonly {
      readonly id: string;
      readonly count: number;
      readonly byHand?: { readonly openings: readonly { kept?: { length: number; width: number } }[] };
    }[];
    readonly sheets: readonly {
      readonly number: number;
      readonly stock: string;
      readonly copies: number;
      readonly pieces: readonly { is: string; panel?: string; length?: number; width?: number }[];
    }[];
  }[];
  readonly sawn?: {
    readonly groups: readonly {
      readonly left: readonly { length: number; width: number; kept: boolean }[];
    }[];
  };
}

/** Whole µm² of mm with at most three decimals. */
const um2 = (length: number, width: number) =>
  BigInt(Math.round(length * 1000)) * BigInt(Math.round(width * 1000));

/** Bookings of a store, the first first. */
export function bookingsIn(folder: string): BookedLine[] {
  return readFileSync(join(folder, 'store/ledger.jsonl'), 'utf8')
    .split('\n')
    .filter((line) => line.startsWith('{"number"'))
    .map((line) => JSON.parse(line) as BookedLine);
}

/** What tells an item from others; of an offcut its label. */
function keyOf({
  item,
  move: _move,
  reservedFor: _for,
  onOrder: _onOrder,
  count: _count,
  metres: _metres,
  place: _place,
  ...rest
}: Line) {
  return JSON.stringify(item === 'offcut' ? [item, String(rest.label).toUpperCase()] : [item, rest]);
}

/** Pieces, of edging mm. */
function amountOf({ count, metres }: Line): number {
  return metres === undefined ? (count ?? 1) : Math.round(metres * 1000);
}

function areaOf(line: Line): bigint {
  return line.item === 'sheet' || line.item === 'offcut'
    ? um2(line.length!, line.width!) * BigInt(amountOf(line))
    : 0n;
}

const moved = (lines: readonly Line[], move: Line['move']) => lines.filter((line) => line.move === move);
const area = (lines: readonly Line[]) => lines.reduce((sum, line) => sum + areaOf(line), 0n);

/** Plan files under a folder by the SHA-256 of their text. */
function plansIn(folder: string): Map<string, Plan> {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  const plans = files.filter(
    (name) => /(?:plan|plans[\\/][a-z-]+)\.json$/.test(name) && !name.includes('.plywright'),
  );
  return new Map(
    plans.map((name) => {
      const text = readFileSync(join(folder, name), 'utf8');
      return [createHash('sha256').update(text).digest('hex'), JSON.parse(text) as Plan];
    }),
  );
}

/** What the booked sheets of a plan turn into panels, dust and waste, and how many panels come of them. */
function sawnBy(plan: Plan, booking: BookedLine): { readonly away: bigint; readonly panels: number } {
  let away = 0n;
  let panels = 0;
  for (const { group: id, number, copies } of booking.sheets ?? []) {
    const group = plan.groups.find((one) => one.id === id)!;
    const sheet = group.sheets.find((one) => one.number === number)!;
    const stock = group.stock.find((one) => one.id === sheet.stock)!;
    let kept = 0n;
    for (const piece of sheet.pieces) {
      if (piece.is === 'offcut') kept += um2(piece.length!, piece.width!);
      if (piece.is !== 'panel') continue;
      panels += copies.length;
      const { byHand } = group.panels.find((one) => one.id === piece.panel)!;
      for (const { kept: out } of byHand?.openings ?? []) if (out) kept += um2(out.length, out.width);
    }
    away += BigInt(copies.length) * (um2(stock.length, stock.width) - kept);
  }
  return { away, panels };
}

/** What `plywright stock show --json` says of one item. */
export interface ShownEntry {
  readonly item: Line['item'];
  readonly amount: number;
  readonly free: number;
  readonly [field: string]: unknown;
}

/** What `plywright stock show --json` says of goods on order. */
export interface ShownOnOrder {
  readonly item: Line['item'];
  readonly amount: number;
  readonly purchase: string;
  readonly [field: string]: unknown;
}

/** Adds up what is on order under each purchase at every booking, and holds it against what the command shows. */
function auditOnOrder(bookings: readonly BookedLine[], shown: readonly ShownOnOrder[]): void {
  const amounts = new Map<string, number>();
  const keyUnder = (line: Line, purchase: string) => `${purchase} ${keyOf(line)}`;
  for (const { number, lines } of bookings) {
    for (const line of lines) {
      if (line.onOrder === undefined || line.move === 'reserve' || line.move === 'release') continue;
      const key = keyUnder(line, line.onOrder.purchase);
      const more = line.move === 'expect' || line.move === 'out';
      const amount = (amounts.get(key) ?? 0) + (more ? amountOf(line) : -amountOf(line));
      expect(amount, `${key} on order after booking ${number}`).toBeGreaterThanOrEqual(0);
      amounts.set(key, amount);
    }
  }
  const found = new Map<string, number>();
  for (const { amount, purchase, supplier: _s, expected: _e, reservedFor: _r, item, ...rest } of shown) {
    const key = keyUnder({ item, move: 'expect', ...rest } as Line, purchase);
    found.set(key, (found.get(key) ?? 0) + Math.round(amount * (item === 'edging' ? 1000 : 1)));
  }
  expect(found).toEqual(new Map([...amounts].filter(([, amount]) => amount > 0)));
}

/**
 * Adds the ledger up at every booking and in the end holds it against what the command shows. Each cut is held against its
 * plan by area. Gives how many panels each plan has given so far, by the SHA-256 of its text.
 */
export function auditLedger(
  folder: string,
  shown: readonly ShownEntry[],
  onOrder: readonly ShownOnOrder[] = [],
): Map<string, number> {
  const amounts = new Map<string, number>();
  const panels = new Map<string, number>();
  const plans = plansIn(join(folder, 'out'));
  const bookings = bookingsIn(folder);
  expect(bookings.map(({ number }) => number)).toEqual(bookings.map((_, index) => index + 1));
  for (const booking of bookings) {
    for (const line of booking.lines) {
      if (line.move !== 'in' && line.move !== 'out') continue;
      const key = keyOf(line);
      const amount = (amounts.get(key) ?? 0) + (line.move === 'in' ? amountOf(line) : -amountOf(line));
      expect(amount, `${key} after booking ${booking.number}`).toBeGreaterThanOrEqual(0);
      if (line.item === 'offcut') expect(amount, `${key} is there once`).toBeLessThanOrEqual(1);
      amounts.set(key, amount);
    }
    if (booking.kind !== 'cut') continue;
    const plan = plans.get(booking.plan!)!;
    expect(plan, `the plan of booking ${booking.number}`).toBeDefined();
    const { away, panels: own } = sawnBy(plan, booking);
    panels.set(booking.plan!, (panels.get(booking.plan!) ?? 0) + own);
    // Sawn panels that a changed order has no use for come back as offcuts, once, with the first sheets of its plan.
    const isFirst = bookings.find((one) => one.plan === booking.plan) === booking;
    const left = (plan.sawn?.groups ?? [])
      .flatMap((group) => group.left)
      .filter(({ kept }) => kept && isFirst)
      .reduce((sum, piece) => sum + um2(piece.length, piece.width), 0n);
    expect(
      area(moved(booking.lines, 'out')) - area(moved(booking.lines, 'in')),
      `booking ${booking.number}`,
    ).toBe(away - left);
  }
  auditOnOrder(bookings, onOrder);
  const there = [...amounts].filter(([, amount]) => amount > 0);
  expect(shown).toHaveLength(there.length);
  for (const entry of shown) {
    const { item, amount, free, reserved: _reserved, ...rest } = entry;
    const key = keyOf({ item, move: 'in', ...rest } as Line);
    const unit = item === 'edging' ? 1000 : 1;
    expect(Math.round(amount * unit), key).toBe(amounts.get(key));
    expect(free).toBeLessThanOrEqual(amount);
    expect(free).toBeGreaterThanOrEqual(0);
  }
  return panels;
}
