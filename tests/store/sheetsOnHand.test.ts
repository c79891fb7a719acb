import { describe, expect, it } from 'vitest';
import type { PlanGroup, PlanStock } from '../../src/model/plan.ts';
import type { SheetSupply } from '../../src/model/stock.ts';
import type { Draft, SheetItem } from '../../src/model/store.ts';
import { reversal } from '../../src/store/book.ts';
import { lineOf } from '../../src/store/items.ts';
import { offcutsFor } from '../../src/store/offcutsFor.ts';
import { planIsBooked, recutsBooked, sheetsBooked, sheetsFor } from '../../src/store/planBookings.ts';
import { sheetsOnHand, sheetsThere } from '../../src/store/sheetsOnHand.ts';
import { draft, edging, ledgerAfterAll, offcut, sheet } from './histories.ts';

const short: SheetItem = { ...sheet, length: 1250, width: 625 };
const plain: SheetItem = { ...sheet, board: '', finish: '', thickness: 0, length: 2000, width: 1000.5 };
const half: SheetItem = { ...plain, finish: 'raw' };

const ledger = () =>
  ledgerAfterAll(
    draft('receive', [
      lineOf(sheet, 6, 'in'),
      lineOf(short, 3, 'in'),
      lineOf(plain, 2, 'in'),
      lineOf(half, 1, 'in'),
      lineOf(edging, 50_000, 'in'),
      lineOf(offcut('free'), 1, 'in'),
      lineOf(offcut('own'), 1, 'in', 'van-1'),
      lineOf(offcut('other'), 1, 'in', 'van-2'),
    ]),
    draft('reserve', [
      lineOf(sheet, 2, 'reserve', 'van-1'),
      lineOf(sheet, 1, 'reserve', 'van-2'),
      lineOf(short, 3, 'reserve', 'van-2'),
    ]),
  );

/** A sheet as a library offers it. */
const offer = (more: Partial<SheetSupply> = {}): SheetSupply => ({
  id: 'poplar-15-pale-grey',
  board: 'poplar-15',
  finish: 'pale-grey',
  thicknessUm: 16_200,
  lengthUm: 2_500_000,
  widthUm: 1_250_000,
  grain: 'length',
  priceMinor: 10_000,
  count: null,
  kind: 'sheet',
  ...more,
});

describe('sheets that an order may take', () => {
  it('are the free ones and its own', () => {
    expect(sheetsThere(ledger(), 'van-1', sheet)).toBe(5);
    expect(sheetsThere(ledger(), 'van-2', sheet)).toBe(4);
    expect(sheetsThere(ledger(), 'van-3', sheet)).toBe(3);
    expect(sheetsThere(ledger(), 'van-1', { ...sheet, grain: 'none' })).toBe(0);
    const group = { board: 'poplar-15', finish: 'pale-grey', thickness: 16.2 } as PlanGroup;
    const size = { length: 2500, width: 1250, grain: 'length' } as PlanStock;
    expect(sheetsFor(ledger(), 'van-1')(group, size)).toBe(5);
    expect(sheetsFor(ledger(), 'van-1')(group, { ...size, width: 1 })).toBe(0);
  });

  it('are those that the library offers, as many as are there, and every other size', () => {
    const offered = [offer(), offer({ id: 'few', count: 2 }), offer({ id: 'none', lengthUm: 3_000_000 })];
    const others = sheetsOnHand(ledger(), 'van-2', offered);
    expect(others.map(({ id, count }) => [id, count])).toEqual([
      ['poplar-15-pale-grey', 4],
      ['few', 2],
      ['none', 0],
      ['poplar-15-pale-grey-1250x625', 3],
      ['sheet-2000x1000.5', 2],
      ['raw-2000x1000.5', 1],
    ]);
    // A quarter of the sheet that the library has, at a quarter of its price.
    expect(others[3]).toEqual({
      ...offer({ id: 'poplar-15-pale-grey-1250x625', lengthUm: 1_250_000, widthUm: 625_000 }),
      // The library's largest is cheaper by area.
      priceMinor: 2083,
      count: 3,
    });
    expect(others[4]).toMatchObject({ thicknessUm: 0, widthUm: 1_000_500, priceMinor: null });
    // All three of the other size are kept for another.
    expect(sheetsOnHand(ledger(), 'van-1', [offer()]).map(({ id }) => id)).toEqual([
      'poplar-15-pale-grey',
      'sheet-2000x1000.5',
      'raw-2000x1000.5',
    ]);
  });

  it.each<[string, Partial<SheetSupply>, number | null]>([
    ['the same', {}, 2500],
    ['an offcut', { kind: 'offcut' }, null],
    ['without a price', { priceMinor: null }, null],
    ['of another board', { board: 'birch-18' }, null],
    ['of another finish', { finish: 'white' }, null],
    ['of another thickness', { thicknessUm: 16_000 }, null],
  ])('are priced by the sheet of the library that is %s', (_what, more, price) => {
    const [, priced] = sheetsOnHand(ledger(), 'van-2', [offer(more)]).filter(
      ({ widthUm }, index) => index === 0 || widthUm === 625_000,
    );
    expect(priced?.priceMinor).toBe(price);
  });
});

it('offcuts that an order may take are the free ones and its own, at no price', () => {
  expect(offcutsFor(ledger(), 'van-1').map(({ id }) => id)).toEqual(['free', 'own']);
  expect(offcutsFor(ledger(), 'van-2')[0]).toEqual({
    ...offer({ id: 'free', lengthUm: 700_000, widthUm: 400_000 }),
    priceMinor: null,
    count: 1,
    kind: 'offcut',
  });
});

describe('what of a plan is sawn', () => {
  const [plan, another] = ['a'.repeat(64), 'b'.repeat(64)];
  const cut = (more: Partial<Draft>) => draft('cut', [lineOf(sheet, 1, 'out')], more);
  const received = draft('receive', [lineOf(sheet, 9, 'in')]);
  const sheets = (copy: number) => [{ group: 'grey', number: 1, copies: [copy] }];

  it('are the sheets of its bookings that are not reversed', () => {
    const before = ledgerAfterAll(received);
    expect(planIsBooked(before, plan)).toBe(false);
    expect(sheetsBooked(before, plan)).toEqual([]);
    const sawn = ledgerAfterAll(received, cut({ plan, sheets: sheets(1) }), cut({ plan, sheets: sheets(2) }));
    expect(planIsBooked(sawn, plan)).toBe(true);
    expect(planIsBooked(sawn, another)).toBe(false);
    expect(sheetsBooked(sawn, plan)).toEqual([...sheets(1), ...sheets(2)]);
    const back = ledgerAfterAll(
      received,
      cut({ plan, sheets: sheets(1) }),
      cut({ plan, sheets: sheets(2) }),
      reversal(sawn, 2, { date: '2026-03-02', who: 'M. Beck', why: 'test' }),
    );
    expect(sheetsBooked(back, plan)).toEqual(sheets(2));
    expect(sheetsBooked(ledgerAfterAll(received, cut({ plan })), plan)).toBe('all');
  });

  it('has the recuts of its job', () => {
    const recut = (number: number) => ({ number, spoiled: ['label'] });
    const sawn = ledgerAfterAll(
      received,
      cut({ order: 'van-1', plan }),
      cut({ order: 'van-1', recut: recut(1) }),
      cut({ order: 'van-2', recut: recut(3) }),
      cut({ order: 'van-1', recut: recut(2) }),
    );
    expect(recutsBooked(sawn, 'van-1')).toEqual([1, 2]);
    expect(recutsBooked(sawn, 'van-2')).toEqual([3]);
    expect(recutsBooked(sawn, 'van-3')).toEqual([]);
  });
});
