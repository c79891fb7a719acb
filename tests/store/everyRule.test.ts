import { describe, expect, it } from 'vitest';
import type { Draft, Ledger, OffcutItem } from '../../src/model/store.ts';
import { sameState, sameStock } from '../../src/store/applyLine.ts';
import { book, emptyLedger, reversal } from '../../src/store/book.ts';
import { changeOffcutLines, correctionLines, issueLines } from '../../src/store/draftLines.ts';
import { replayBookings } from '../../src/store/index.ts';
import { amountInWords, itemInWords, lineOf, markInWords, markOf } from '../../src/store/items.ts';
import {
  changeOnOrder,
  goodsOnOrder,
  nearestPurchase,
  postponedLines,
  receivedLines,
  sameOnOrder,
} from '../../src/store/onOrder.ts';
import { draft, edging, fitting, ledgerAfterAll, marks, offcut, otherSheet, sheet } from './histories.ts';

const about = { date: '2026-03-02', who: 'M. Beck', why: 'test' };
const [soon, later, april] = [marks[0]!, marks[1]!, marks[2]!];
const SHEET = 'sheet poplar-15 pale-grey 16.2 mm, 2500 × 1250';
const fourSheets = draft('receive', [lineOf(sheet, 4, 'in')]);
const reserveThree = draft('reserve', [
  lineOf(sheet, 2, 'reserve', 'van-1'),
  lineOf(sheet, 1, 'reserve', 'van-2'),
]);

/** What is told of a booking that is refused, without empty fields. */
function told(ledger: Ledger, one: Draft) {
  const after = book(ledger, one);
  return after.ok
    ? []
    : after.findings.map(({ code, severity: _error, ...finding }) => ({ code, ...finding }));
}

describe('a refused booking says what is there and what to do', () => {
  it('where too little is there', () => {
    const ledger = ledgerAfterAll(fourSheets);
    expect(told(ledger, draft('issue', [lineOf(sheet, 5, 'out')]))).toEqual([
      {
        code: 'not-in-store',
        message: `The store has too little of ${SHEET}.`,
        found: '4 there',
        expected: '5',
        advice: 'count what is there; if it is more, correct the stock first',
      },
    ]);
    expect(told(ledger, draft('issue', [lineOf(edging, 2500, 'out')]))).toMatchObject([
      { message: 'The store has too little of edging grey-1.', found: '0 m there', expected: '2.5 m' },
    ]);
    expect(told(ledger, draft('issue', [lineOf(sheet, 4, 'out')]))).toEqual([]);
    expect(told(ledger, draft('issue', [lineOf(offcut('A1'), 1, 'out')]))).toEqual([
      { code: 'not-in-store', message: 'The store has no offcut labelled A1.' },
    ]);
  });

  it('where it is kept for others', () => {
    const ledger = ledgerAfterAll(fourSheets, reserveThree);
    const kept = {
      code: 'reserved-for-others',
      message: `Too little of ${SHEET} is free.`,
      found: '4 there, of them reserved: 2 for van-1, 1 for van-2',
    };
    expect(told(ledger, draft('issue', [lineOf(sheet, 3, 'out')]))).toEqual([
      {
        ...kept,
        expected: '3 free',
        advice: 'name the order it was reserved for, or release 2 of it first',
      },
    ]);
    // All that is there is still not too much.
    expect(told(ledger, draft('reserve', [lineOf(sheet, 4, 'reserve', 'van-3')]))).toMatchObject([
      { ...kept, expected: '4 free' },
    ]);
    const one = ledgerAfterAll(draft('receive', [lineOf(offcut('A1'), 1, 'in', 'van-1')]));
    expect(told(one, draft('issue', [lineOf(offcut('A1'), 1, 'out')]))).toMatchObject([
      { code: 'reserved-for-others', found: '1 there, of them reserved: 1 for van-1' },
    ]);
    expect(told(ledger, draft('issue', [lineOf(sheet, 3, 'out', 'van-1')]))).toEqual([
      {
        code: 'not-reserved',
        message: `Less of ${SHEET} is reserved for van-1.`,
        found: '2',
        expected: '3',
      },
    ]);
    expect(told(ledger, draft('release', [lineOf(sheet, 1, 'release', 'van-3')]))).toMatchObject([
      { code: 'not-reserved', found: '0', expected: '1' },
    ]);
    expect(told(emptyLedger, draft('release', [lineOf(sheet, 1, 'release', 'van-3')]))).toMatchObject([
      { code: 'not-reserved', found: '0', expected: '1' },
    ]);
    expect(told(ledger, draft('release', [lineOf(sheet, 1, 'release')]))).toEqual([
      { code: 'order-missing', message: `It is not said for which order ${SHEET} is reserved.` },
    ]);
  });

  it('where an offcut is there already, or is another', () => {
    const ledger = ledgerAfterAll(draft('receive', [lineOf(offcut('a1'), 1, 'in')]));
    const there = 'offcut a1 (poplar-15 pale-grey 16.2 mm, 700 × 400; rack 1)';
    expect(told(ledger, draft('put back', [lineOf(offcut('A1'), 1, 'in')]))).toEqual([
      {
        code: 'offcut-twice',
        message: 'An offcut labelled A1 is in the store already.',
        found: there,
        advice: 'give the new one another label, or take the old one out first',
      },
    ]);
    expect(told(ledger, draft('issue', [lineOf(offcut('a1', 'rack 2'), 1, 'out')]))).toEqual([
      {
        code: 'offcut-differs',
        message: 'The offcut in the store is another than the booking says.',
        found: there,
        expected: there.replace('rack 1', 'rack 2'),
      },
    ]);
  });

  it('where the day is wrong', () => {
    const ledger = ledgerAfterAll(fourSheets);
    expect(told(ledger, { ...fourSheets, date: '2026-02-29' })).toEqual([
      {
        code: 'wrong-day',
        message: 'The day is not one of the calendar.',
        found: '2026-02-29',
        expected: 'a day such as 2026-03-02',
      },
    ]);
    const never = { ...soon, expected: '2026-02-30' };
    expect(told(ledger, draft('expect', [lineOf(sheet, 1, 'expect', undefined, never)]))).toEqual([
      {
        code: 'wrong-day',
        message: 'The day on which goods are expected is not one of the calendar.',
        found: '2026-02-30',
        expected: 'a day such as 2026-03-02',
      },
    ]);
    expect(told(ledger, { ...fourSheets, date: '2026-03-01' })).toEqual([
      {
        code: 'day-goes-back',
        message: 'A later day has been booked already.',
        found: '2026-03-01',
        expected: '2026-03-02 or later, the day of booking 1',
        advice: expect.stringContaining('book it with --date 2026-03-02'),
      },
    ]);
  });

  it('where it reverses what cannot be', () => {
    const ledger = ledgerAfterAll(fourSheets);
    expect(told(ledger, { ...fourSheets, kind: 'reverse', lines: [lineOf(sheet, 4, 'out')] })).toEqual([
      { code: 'booking-unknown', message: 'It is not said which booking is reversed.' },
    ]);
    expect(told(ledger, reversal(ledger, 7, about))).toEqual([
      { code: 'booking-unknown', message: 'There is no booking 7 to reverse.', expected: '1 to 1' },
    ]);
    expect(told(emptyLedger, reversal(emptyLedger, 1, about))).toMatchObject([{ expected: 'none yet' }]);
    const back = ledgerAfterAll(fourSheets, reversal(ledger, 1, about));
    expect(told(back, reversal(back, 1, about))).toEqual([
      {
        code: 'reversed-already',
        message: 'Booking 1 is reversed already.',
        found: 'booking 2 reverses it',
        advice: 'to have it back, reverse booking 2',
      },
    ]);
    const again = ledgerAfterAll(fourSheets, reversal(ledger, 1, about), reversal(back, 2, about));
    expect(told(again, reversal(again, 3, about))).toEqual([
      {
        code: 'reverses-a-return',
        message: 'Booking 3 only brings back booking 1.',
        advice: 'reverse booking 1',
      },
    ]);
  });

  it('where a sheet is sawn twice', () => {
    const plan = 'a'.repeat(64);
    const cut = (sheets: Draft['sheets']) =>
      draft('cut', [lineOf(sheet, 1, 'out')], { plan, ...(sheets && { sheets }) });
    const first = { group: 'grey', number: 1, copies: [1, 2] };
    const second = { group: 'white', number: 2, copies: [1] };
    const ledger = ledgerAfterAll(fourSheets, cut([first, second]));
    expect(told(ledger, cut([{ ...first, copies: [2, 3] }]))).toEqual([
      {
        code: 'cut-twice',
        message: 'This plan is booked already, as booking 2 of 2026-03-02.',
        advice: 'if that one was wrong, reverse it: plywright stock reverse 2',
      },
    ]);
    // One sheet of several in common is enough, and each of group, number and copy can be another.
    expect(told(ledger, cut([{ ...first, copies: [3] }, second]))).toHaveLength(1);
    expect(told(ledger, cut([{ ...first, copies: [3] }]))).toEqual([]);
    expect(told(ledger, cut([{ ...first, number: 3 }]))).toEqual([]);
    expect(told(ledger, cut([{ ...first, group: 'white' }]))).toEqual([]);
    expect(told(ledger, cut(undefined))).toHaveLength(1);
  });

  it('where goods are not on order, or not so many', () => {
    const ledger = ledgerAfterAll(draft('expect', [lineOf(sheet, 2, 'expect', 'van-1', soon)]));
    expect(told(ledger, draft('withdraw', [lineOf(sheet, 3, 'withdraw', 'van-1', soon)]))).toEqual([
      {
        code: 'not-on-order',
        message: `Less of ${SHEET} is on order for van-1: march with yard, expected on 2026-03-09.`,
        found: '2 on order',
        expected: '3',
        advice: 'what is on order stands in `plywright stock show`',
      },
    ]);
    expect(
      told(ledger, draft('withdraw', [lineOf(edging, 1500, 'withdraw', undefined, april)])),
    ).toMatchObject([
      {
        message: 'Less of edging grey-1 is on order: april.',
        found: '0 m on order',
        expected: '1.5 m',
      },
    ]);
    expect(told(ledger, draft('withdraw', [lineOf(sheet, 1, 'withdraw', 'van-1')]))).toEqual([
      { code: 'wrong-line', message: `It is not said under which purchase ${SHEET} is on order.` },
    ]);
    const free = ledgerAfterAll(draft('expect', [lineOf(sheet, 2, 'expect', undefined, soon)]));
    expect(told(free, draft('reserve', [lineOf(sheet, 1, 'reserve', undefined, soon)]))).toEqual([
      { code: 'wrong-line', message: `It is not said for which order ${SHEET} is reserved.` },
    ]);
  });
});

describe('what is written', () => {
  it('has the fields that were said, and no others', () => {
    const plan = 'b'.repeat(64);
    const sheets = [{ group: 'grey', number: 1, copies: [1] }];
    const recut = { number: 2, spoiled: ['label'] };
    const all = draft('cut', [lineOf(sheet, 1, 'out')], { order: 'van-1', plan, sheets, recut });
    const ledger = ledgerAfterAll(fourSheets, all);
    expect(ledger.bookings).toStrictEqual([
      { number: 1, ...fourSheets },
      { number: 2, ...all },
    ]);
    expect(lineOf(sheet, 4, 'in')).toStrictEqual({ ...sheet, count: 4, move: 'in' });
    expect(lineOf(fitting, 4, 'out', 'van-1', april)).toStrictEqual({
      ...fitting,
      count: 4,
      move: 'out',
      onOrder: { purchase: 'april' },
      reservedFor: 'van-1',
    });
    expect(markOf({ ...soon })).toStrictEqual(soon);
    const expected = ledgerAfterAll(draft('expect', [lineOf(sheet, 2, 'expect', undefined, april)]));
    expect([...expected.onOrder.values()]).toStrictEqual([{ item: sheet, amount: 2, purchase: 'april' }]);
  });

  it('undoes lines from the last to the first', () => {
    // The offcut went out of one place and came in at another.
    const moved = changeOffcutLines(
      ledgerAfterAll(draft('receive', [lineOf(offcut('A1'), 1, 'in', 'van-1')])),
      offcut('A1') as OffcutItem,
      offcut('A1', 'rack 5') as OffcutItem,
    );
    expect(moved).toEqual([
      lineOf(offcut('A1'), 1, 'out', 'van-1'),
      lineOf(offcut('A1', 'rack 5'), 1, 'in', 'van-1'),
    ]);
    const before = ledgerAfterAll(draft('receive', [lineOf(offcut('A1'), 1, 'in', 'van-1')]));
    const after = book(before, draft('correct', moved));
    const back = after.ok ? book(after.value, reversal(after.value, 2, about)) : after;
    expect(back.ok && sameState(back.value, before)).toBe(true);
    expect(changeOffcutLines(emptyLedger, offcut('A1') as OffcutItem, offcut('A1') as OffcutItem)).toEqual([
      lineOf(offcut('A1'), 1, 'out'),
      lineOf(offcut('A1'), 1, 'in'),
    ]);
  });

  it('has a history without gaps, whose place is told', () => {
    const { bookings } = ledgerAfterAll(fourSheets, reserveThree);
    expect(replayBookings([bookings[0]!, { ...bookings[1]!, number: 3 }])).toEqual({
      ok: false,
      findings: [
        {
          code: 'number-wrong',
          severity: 'error',
          message: 'Booking 3 stands where 2 should.',
          place: { file: '', field: 'booking 3' },
        },
      ],
    });
    expect(replayBookings(bookings)).toMatchObject({ ok: true, findings: [] });
  });
});

describe('lines for what a person says', () => {
  it('take out what is kept for the orders first, then what is free', () => {
    const ledger = ledgerAfterAll(fourSheets, reserveThree);
    expect(issueLines(ledger, sheet, 4, ['van-2', undefined, 'van-1', 'van-2'])).toEqual([
      lineOf(sheet, 1, 'out', 'van-2'),
      lineOf(sheet, 2, 'out', 'van-1'),
      lineOf(sheet, 1, 'out'),
    ]);
    expect(issueLines(ledger, sheet, 2, ['van-1'])).toEqual([lineOf(sheet, 2, 'out', 'van-1')]);
    expect(issueLines(ledger, sheet, 2, ['van-3'])).toEqual([lineOf(sheet, 2, 'out')]);
    expect(issueLines(emptyLedger, sheet, 2, ['van-1'])).toEqual([lineOf(sheet, 2, 'out')]);
  });

  it('bring an amount to what was counted', () => {
    const ledger = ledgerAfterAll(
      fourSheets,
      reserveThree,
      draft('receive', [lineOf(edging, 50_000, 'in'), lineOf(offcut('A1'), 1, 'in', 'van-1')]),
    );
    const corrected = (item: Parameters<typeof correctionLines>[1], counted: number) => {
      const lines = correctionLines(ledger, item, counted);
      if (lines.ok) {
        expect(lines.findings).toEqual([]);
        return lines.value;
      }
      return lines.findings.map(({ code, message }) => `${code}: ${message}`);
    };
    expect(corrected(sheet, 6)).toEqual([lineOf(sheet, 2, 'in')]);
    expect(corrected(sheet, 3)).toEqual([lineOf(sheet, 1, 'out')]);
    expect(corrected(sheet, 4)).toEqual([`nothing-to-correct: The store has 4 of ${SHEET} already.`]);
    expect(corrected(edging, 50_000)).toEqual([
      'nothing-to-correct: The store has 50 m of edging grey-1 already.',
    ]);
    expect(corrected(fitting, 12)).toEqual([lineOf(fitting, 12, 'in')]);
    // What is gone of an offcut is gone for its order.
    expect(corrected(offcut('A1'), 0)).toEqual([lineOf(offcut('A1'), 1, 'out', 'van-1')]);
    expect(corrected(offcut('A2'), 1)).toEqual([lineOf(offcut('A2'), 1, 'in')]);
  });
});

describe('goods on order', () => {
  const ledger = () =>
    ledgerAfterAll(
      draft('expect', [
        lineOf(fitting, 5, 'expect', undefined, april),
        lineOf(sheet, 3, 'expect', undefined, later),
        lineOf(sheet, 2, 'expect', 'van-1', { ...soon, supplier: 'depot' }),
        lineOf(edging, 4_000, 'expect', undefined, { purchase: 'may' }),
        lineOf(otherSheet, 1, 'expect', undefined, soon),
      ]),
    );

  it('come the earliest first, those without a day last, and as far as they are meant', () => {
    const names = (wish: Parameters<typeof goodsOnOrder>[1], item?: Parameters<typeof goodsOnOrder>[2]) =>
      goodsOnOrder(ledger(), wish, item).map(({ amount }) => amount);
    expect(names({})).toEqual([2, 1, 3, 5, 4_000]);
    expect(names({ supplier: 'yard' })).toEqual([1, 3]);
    expect(names({ purchase: 'march' })).toEqual([2, 1, 3]);
    expect(names({ purchase: 'march', supplier: 'yard' }, sheet)).toEqual([3]);
    expect(names({ order: 'van-1' })).toEqual([2]);
    expect(names({}, sheet)).toEqual([2, 3]);
    // The other way round as well: an order that was there before is not kept by chance.
    const turned = ledgerAfterAll(
      draft('expect', [
        lineOf(sheet, 1, 'expect', undefined, soon),
        lineOf(sheet, 2, 'expect', undefined, later),
        lineOf(sheet, 3, 'expect', undefined, april),
      ]),
    );
    expect(goodsOnOrder(turned, {}).map(({ amount }) => amount)).toEqual([1, 2, 3]);
  });

  it('are known by a purchase that is nearly named', () => {
    expect(nearestPurchase(ledger(), 'marsh')).toBe('march');
    expect(nearestPurchase(ledger(), 'december-2031')).toBeUndefined();
  });

  it('keep their day, supplier and order apart', () => {
    const moved = postponedLines(goodsOnOrder(ledger(), { order: 'van-1' }), '2026-03-20');
    expect(moved).toStrictEqual([
      lineOf(sheet, 2, 'withdraw', 'van-1', { ...soon, supplier: 'depot' }),
      lineOf(sheet, 2, 'expect', 'van-1', { ...soon, supplier: 'depot', expected: '2026-03-20' }),
    ]);
  });

  it('are kept apart by fitting, supplier and order', () => {
    const other = { item: 'fitting', fitting: 'latch' } as const;
    const two = ledgerAfterAll(
      draft('receive', [lineOf(fitting, 2, 'in'), lineOf(other, 3, 'in')]),
      draft('expect', [
        lineOf(sheet, 1, 'expect', undefined, soon),
        lineOf(sheet, 2, 'expect', undefined, { ...soon, supplier: 'depot' }),
      ]),
    );
    expect([...two.stock.values()].map(({ amount }) => amount)).toEqual([2, 3]);
    expect(goodsOnOrder(two, {}).map(({ amount }) => amount)).toEqual([1, 2]);
  });

  it('stay as they are where a line is refused', () => {
    const onOrder = new Map(ledger().onOrder);
    const wrong = changeOnOrder(onOrder, lineOf(sheet, 9, 'reserve', 'van-1', later));
    expect(wrong?.code).toBe('not-on-order');
    expect(sameOnOrder(onOrder, ledger().onOrder)).toBe(true);
  });

  it('come in, and what is more is told', () => {
    const { lines, findings } = receivedLines(ledger(), sheet, 9, {});
    expect(lines).toStrictEqual([
      lineOf(sheet, 2, 'in', 'van-1', { ...soon, supplier: 'depot' }),
      lineOf(sheet, 3, 'in', undefined, later),
      lineOf(sheet, 4, 'in'),
    ]);
    expect(findings).toEqual([
      {
        code: 'more-than-ordered',
        severity: 'warning',
        message: `More of ${SHEET} has come than is on order.`,
        found: '9 came in',
        expected: '5 on order',
        advice: expect.stringContaining('it was booked in as free'),
      },
    ]);
    // Exactly what is due of the first, nothing of the next.
    expect(receivedLines(ledger(), sheet, 2, {}).lines).toHaveLength(1);
  });
});

describe('whether two stores come to the same', () => {
  const base = () =>
    ledgerAfterAll(
      draft('receive', [lineOf(sheet, 4, 'in'), lineOf(offcut('A1'), 1, 'in')]),
      draft('reserve', [lineOf(sheet, 2, 'reserve', 'van-1')]),
      draft('expect', [lineOf(sheet, 2, 'expect', undefined, soon)]),
    );
  const also = (...drafts: Draft[]) =>
    drafts.reduce((ledger, one) => {
      const after = book(ledger, one);
      if (!after.ok) throw new Error(after.findings[0]!.message);
      return after.value;
    }, base());

  it('is told by what is there, for whom, and what is on order', () => {
    expect(sameState(base(), base())).toBe(true);
    const others: [string, Ledger][] = [
      ['more of one', also(draft('receive', [lineOf(sheet, 1, 'in')]))],
      ['an item more', also(draft('receive', [lineOf(fitting, 1, 'in')]))],
      [
        'another item',
        also(draft('issue', [lineOf(offcut('A1'), 1, 'out')]), draft('receive', [lineOf(fitting, 1, 'in')])),
      ],
      [
        'an offcut in another place',
        also(
          draft('issue', [lineOf(offcut('A1'), 1, 'out')]),
          draft('put back', [lineOf(offcut('A1', 'rack 2'), 1, 'in')]),
        ),
      ],
      ['more kept', also(draft('reserve', [lineOf(sheet, 1, 'reserve', 'van-1')]))],
      ['kept for one more', also(draft('reserve', [lineOf(sheet, 1, 'reserve', 'van-2')]))],
      [
        'kept for another',
        also(
          draft('release', [lineOf(sheet, 2, 'release', 'van-1')]),
          draft('reserve', [lineOf(sheet, 2, 'reserve', 'van-2')]),
        ),
      ],
      ['none kept', also(draft('release', [lineOf(sheet, 2, 'release', 'van-1')]))],
    ];
    for (const [what, other] of others) {
      expect(sameStock(base().stock, other.stock), what).toBe(false);
      expect(sameStock(other.stock, base().stock), what).toBe(false);
      expect(sameState(base(), other), what).toBe(false);
      expect(sameOnOrder(base().onOrder, other.onOrder), what).toBe(true);
    }
    const expected: [string, Ledger][] = [
      ['more of one', also(draft('expect', [lineOf(sheet, 1, 'expect', undefined, soon)]))],
      ['one more', also(draft('expect', [lineOf(sheet, 1, 'expect', undefined, april)]))],
      ['none', also(draft('withdraw', [lineOf(sheet, 2, 'withdraw', undefined, soon)]))],
      ['on another day', also(draft('postpone', postponedLines(goodsOnOrder(base(), {}), '2026-04-01')))],
    ];
    for (const [what, other] of expected) {
      expect(sameStock(base().stock, other.stock), what).toBe(true);
      expect(sameOnOrder(base().onOrder, other.onOrder), what).toBe(false);
      expect(sameOnOrder(other.onOrder, base().onOrder), what).toBe(false);
      expect(sameState(base(), other), what).toBe(false);
    }
  });
});

it('items, amounts and purchases are said in words', () => {
  expect(itemInWords({ ...sheet, board: '', finish: '', thickness: 0 })).toBe('sheet 2500 × 1250');
  expect(itemInWords({ ...sheet, thickness: 0 })).toBe('sheet poplar-15 pale-grey, 2500 × 1250');
  expect(itemInWords(offcut('A1', ''))).toBe('offcut A1 (poplar-15 pale-grey 16.2 mm, 700 × 400)');
  expect([itemInWords(edging), itemInWords(fitting)]).toEqual(['edging grey-1', 'fitting hinge']);
  expect([amountInWords(edging, 12_500), amountInWords(sheet, 3)]).toEqual(['12.5 m', '3']);
  expect(markInWords(soon)).toBe('march with yard, expected on 2026-03-09');
  expect(markInWords(april)).toBe('april');
});
