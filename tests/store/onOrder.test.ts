import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeInOrder } from '../../src/basics/takeInOrder.ts';
import type { Draft, Ledger } from '../../src/model/store.ts';
import { expectListLines, receiveListLines } from '../../src/pipeline/receiveList.ts';
import { reservedAmount, sameState } from '../../src/store/applyLine.ts';
import { book, emptyLedger, reversal } from '../../src/store/book.ts';
import { itemInWords, itemKey, lineOf, onOrderLine } from '../../src/store/items.ts';
import { goodsOnOrder, postponedLines, receivedLines } from '../../src/store/onOrder.ts';
import { must } from '../helpers/demoVan.ts';
import {
  amountIn,
  bookAll,
  draft,
  edging,
  fitting,
  items,
  marks,
  offcut,
  onOrderOf,
  sheet,
  wishes,
} from './histories.ts';

const about = { date: '2026-03-02', who: 'M. Beck', why: 'test' };
const [soon, later, april] = [marks[0]!, marks[1]!, marks[2]!];

function booked(...drafts: Draft[]): Ledger {
  return drafts.reduce((ledger, one) => must(book(ledger, one)), emptyLedger);
}

function refused(ledger: Ledger, one: Draft): string {
  const after = book(ledger, one);
  return after.ok ? 'taken' : after.findings.map(({ code }) => code).join(' ');
}

/** Six sheets for a van and two for nobody, three later. */
const expected = draft('expect', [
  lineOf(sheet, 6, 'expect', 'van-1', soon),
  lineOf(sheet, 2, 'expect', undefined, soon),
  lineOf(sheet, 3, 'expect', undefined, later),
]);

function receive(ledger: Ledger, amount: number, wish = {}) {
  const { lines, findings } = receivedLines(ledger, sheet, amount, wish);
  return { ledger: must(book(ledger, draft('receive', lines))), codes: findings.map(({ code }) => code) };
}

describe('goods on order', () => {
  it('are not there until they come, and then are kept for whom they were ordered', () => {
    const ledger = booked(expected);
    expect(amountIn(ledger, sheet)).toBe(0);
    expect(onOrderOf(ledger, sheet)).toBe(11);
    expect(refused(ledger, draft('issue', [lineOf(sheet, 1, 'out')]))).toBe('not-in-store');
    const part = receive(ledger, 4);
    expect(part.codes).toEqual([]);
    expect(onOrderOf(part.ledger, sheet)).toBe(7);
    expect(part.ledger.stock.get(itemKey(sheet))).toMatchObject({
      amount: 4,
      reserved: new Map([['van-1', 4]]),
    });
    const all = receive(part.ledger, 7);
    expect([amountIn(all.ledger, sheet), onOrderOf(all.ledger, sheet)]).toEqual([11, 0]);
    expect(reservedAmount(all.ledger.stock.get(itemKey(sheet))!)).toBe(6);
  });

  it('may be fewer than come, which is told; what is more comes in free', () => {
    const { ledger, codes } = receive(booked(expected), 13);
    expect(codes).toEqual(['more-than-ordered']);
    expect([amountIn(ledger, sheet), onOrderOf(ledger, sheet)]).toEqual([13, 0]);
    expect(reservedAmount(ledger.stock.get(itemKey(sheet))!)).toBe(6);
    // Where nothing was ordered nothing is told, unless it was said that it was.
    expect(receive(emptyLedger, 3).codes).toEqual([]);
    expect(receive(emptyLedger, 3, { purchase: 'may' }).codes).toEqual(['more-than-ordered']);
    expect(receive(booked(expected), 3, { purchase: 'april' }).codes).toEqual(['more-than-ordered']);
  });

  it('are withdrawn only as far as they are on order, and reversed only while they are', () => {
    const ledger = booked(expected);
    const withdraw = (amount: number) =>
      draft('withdraw', [lineOf(sheet, amount, 'withdraw', 'van-1', soon)]);
    expect(refused(ledger, withdraw(7))).toBe('not-on-order');
    const after = booked(expected, withdraw(2));
    expect(onOrderOf(after, sheet)).toBe(9);
    expect(refused(after, reversal(after, 1, about))).toBe('not-on-order');
    const back = must(book(after, reversal(after, 2, about)));
    expect(sameState(back, ledger)).toBe(true);
    expect(onOrderOf(must(book(back, reversal(back, 1, about))), sheet)).toBe(0);
  });

  it('are on order again when what came in is reversed', () => {
    const before = booked(expected);
    const came = receive(before, 8).ledger;
    expect(sameState(must(book(came, reversal(came, 2, about))), before)).toBe(true);
    // What was sawn meanwhile cannot be on its way.
    const sawn = must(book(came, draft('cut', [lineOf(sheet, 6, 'out', 'van-1')])));
    expect(refused(sawn, reversal(sawn, 2, about))).toContain('not-in-store');
  });

  it('are put to another day, and kept for another order before they come', () => {
    const goods = goodsOnOrder(booked(expected), { purchase: 'march' });
    const ledger = booked(expected, draft('postpone', postponedLines(goods, later.expected!)));
    expect(goodsOnOrder(ledger, {}).map(({ expected: day, amount }) => [day, amount])).toEqual([
      ['2026-03-11', 5],
      ['2026-03-11', 6],
    ]);
    expect(postponedLines(goodsOnOrder(ledger, {}), later.expected!)).toEqual([]);
    const kept = booked(expected, draft('reserve', [lineOf(sheet, 2, 'reserve', 'van-2', later)]));
    expect(goodsOnOrder(kept, { order: 'van-2' })).toMatchObject([{ amount: 2 }]);
    expect(refused(kept, draft('reserve', [lineOf(sheet, 2, 'reserve', 'van-2', later)]))).toBe(
      'not-on-order',
    );
    expect(refused(kept, draft('release', [lineOf(sheet, 2, 'release', 'van-2', later)]))).toBe('taken');
  });

  it('are sheets, edging and fittings under a purchase, and nothing else', () => {
    expect(refused(emptyLedger, draft('expect', [lineOf(offcut('A1'), 1, 'expect', undefined, soon)]))).toBe(
      'wrong-line',
    );
    expect(refused(emptyLedger, draft('expect', [lineOf(sheet, 1, 'expect')]))).toBe('wrong-line');
    const ledger = booked(draft('receive', [lineOf(sheet, 2, 'in')]), expected);
    expect(refused(ledger, draft('correct', [lineOf(sheet, 1, 'in', undefined, soon)]))).toBe('wrong-line');
    expect(refused(ledger, draft('issue', [lineOf(sheet, 1, 'out', undefined, soon)]))).toBe('wrong-line');
    const never = { ...soon, expected: '2026-02-30' };
    expect(refused(ledger, draft('expect', [lineOf(sheet, 1, 'expect', undefined, never)]))).toBe(
      'wrong-day',
    );
  });

  it('come in at most as many as come, whatever is on order: what comes is there', () => {
    fc.assert(
      fc.property(wishes, fc.integer({ min: 1, max: 20 }), fc.constantFrom(...items), (all, amount, item) => {
        if (item.item === 'offcut') return;
        const ledger = bookAll(all).at(-1)!;
        const before = [amountIn(ledger, item), onOrderOf(ledger, item)] as const;
        const { lines, findings } = receivedLines(ledger, item, amount, {});
        const after = must(book(ledger, { ...draft('receive', lines), date: '2026-12-31' }));
        expect(amountIn(after, item)).toBe(before[0] + amount);
        expect(onOrderOf(after, item)).toBe(Math.max(0, before[1] - amount));
        expect(findings.length).toBe(before[1] > 0 && amount > before[1] ? 1 : 0);
      }),
    );
  });

  it('are taken out of one after the other, the earliest first', () => {
    const ledger = booked(expected, draft('expect', [lineOf(sheet, 1, 'expect', undefined, april)]));
    const goods = goodsOnOrder(ledger, {}, sheet);
    expect(goods.map(({ amount }) => amount)).toEqual([6, 2, 3, 1]);
    const { taken, missing } = takeInOrder(goods, 12);
    expect(missing).toBe(0);
    const lines = taken.map((one) => onOrderLine(one, 'withdraw'));
    expect(lines.map((line) => [line.onOrder, 'count' in line && line.count])).toEqual([
      [soon, 6],
      [soon, 2],
      [later, 3],
      [april, 1],
    ]);
    expect(itemInWords(goods[0]!.item)).toContain('2500 × 1250');
  });
});

describe('a list', () => {
  const text = `board,finish,thickness,length,width,grain,fitting,edging,roll,rolls,pack,packs,count,supplier,expected
poplar-15,pale-grey,16.2,2500,1250,length,,,,,,,6,yard,2026-03-09
poplar-15,pale-grey,16.2,2500,1250,length,,,,,,,2,depot,2026-03-12
,,,,,,,grey-1,50,2,,,,post,2026-03-10
,,,,,,hinge,,,,10,3,30,post,
`;
  const expectedLines = (more = {}) =>
    must(expectListLines(text, 'list.csv', emptyLedger, { purchase: 'march', ...more }));

  it('is on order row by row, with whom and for when it says', () => {
    expect(expectedLines()).toEqual([
      lineOf(sheet, 6, 'expect', undefined, soon),
      lineOf(sheet, 2, 'expect', undefined, { purchase: 'march', supplier: 'depot', expected: '2026-03-12' }),
      lineOf(edging, 100_000, 'expect', undefined, {
        purchase: 'march',
        supplier: 'post',
        expected: '2026-03-10',
      }),
      lineOf(fitting, 30, 'expect', undefined, { purchase: 'march', supplier: 'post' }),
    ]);
    expect(expectedLines({ supplier: 'depot', expected: '2026-03-20', order: 'van-1' })).toEqual([
      lineOf(sheet, 2, 'expect', 'van-1', { purchase: 'march', supplier: 'depot', expected: '2026-03-20' }),
    ]);
  });

  it('comes in as what is on order, unless it is not meant', () => {
    const ledger = booked(draft('expect', expectedLines()));
    const lines = must(receiveListLines(text, 'list.csv', ledger));
    const after = must(book(ledger, draft('receive', lines)));
    expect(after.onOrder.size).toBe(0);
    expect(amountIn(after, sheet)).toBe(8);
    const other = must(receiveListLines(text, 'list.csv', ledger, {}, null));
    const beside = must(book(ledger, draft('receive', other)));
    expect(beside.onOrder.size).toBe(4);
    const again = receiveListLines(text, 'list.csv', ledger, {}, { purchase: 'april' });
    expect(again.findings.map(({ code }) => code)).toEqual(Array(3).fill('more-than-ordered'));
  });

  it('names the line of what cannot be on order, and of a day that is none', () => {
    const codes = (list: string) =>
      expectListLines(list, 'list.csv', emptyLedger, { purchase: 'march' }).findings.map(
        ({ code, place }) => `${code} ${place?.line}`,
      );
    expect(codes('fitting,count,expected\nhinge,2,soon\n')).toEqual(['wrong-day 2']);
    const board = 'poplar-15,pale-grey,16.2,700,400,length';
    expect(codes(`item,label,board,finish,thickness,length,width,grain\noffcut,A1,${board}\n`)).toEqual([
      'wrong-line 2',
    ]);
  });
});
