import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Booking,
  type BookingLine,
  bookingKinds,
  type Draft,
  type Ledger,
} from '../../src/model/store.ts';
import { reservedAmount, sameState } from '../../src/store/applyLine.ts';
import { book, emptyLedger, isDay, reversal } from '../../src/store/book.ts';
import { ledgerAfter, ledgerOnDay, replayBookings } from '../../src/store/index.ts';
import { amountOf, itemKey, itemOf, lineOf } from '../../src/store/items.ts';
import { bookingsOfPlan } from '../../src/store/planBookings.ts';
import { amountIn, bookAll, draft, edging, items, offcut, onOrderOf, sheet, wishes } from './histories.ts';

const about = { date: '2026-03-02', who: 'M. Beck', why: 'test' };

function booked(...drafts: Draft[]): Ledger {
  return drafts.reduce((ledger, one) => {
    const after = book(ledger, one);
    if (!after.ok) throw new Error(after.findings[0]!.message);
    return after.value;
  }, emptyLedger);
}

function refused(ledger: Ledger, one: Draft): string {
  const after = book(ledger, one);
  return after.ok ? 'taken' : after.findings.map(({ code }) => code).join(' ');
}

const fourSheets = draft('receive', [lineOf(sheet, 4, 'in')]);
const reserveThree = draft('reserve', [lineOf(sheet, 3, 'reserve', 'van-1')]);

describe('a booking', () => {
  it('changes the stock as its lines say, edging to the millimetre', () => {
    const ledger = booked(
      fourSheets,
      draft('receive', [lineOf(edging, 100_300, 'in'), lineOf(offcut('A1'), 1, 'in')]),
      draft('issue', [lineOf(edging, 100, 'out'), lineOf(sheet, 1, 'out')]),
    );
    expect(amountIn(ledger, sheet)).toBe(3);
    expect(amountIn(ledger, edging)).toBe(100_200);
    expect(ledger.bookings[1]!.lines[0]).toEqual({
      item: 'edging',
      edging: 'grey-1',
      metres: 100.3,
      move: 'in',
    });
  });

  it('never takes more than there is, and then changes nothing', () => {
    const ledger = booked(fourSheets);
    const wanted = draft('issue', [lineOf(sheet, 3, 'out'), lineOf(sheet, 2, 'out')]);
    expect(refused(ledger, wanted)).toBe('not-in-store');
    expect(amountIn(ledger, sheet)).toBe(4);
    expect(refused(ledger, draft('issue', [lineOf(offcut('A1'), 1, 'out')]))).toBe('not-in-store');
  });

  it('names everything that is wrong at once', () => {
    const wanted = draft('issue', [lineOf(sheet, 3, 'out'), lineOf(edging, 2, 'out')]);
    expect(refused(emptyLedger, wanted)).toBe('not-in-store not-in-store');
  });

  it('has no offcut twice, however its label is written', () => {
    const ledger = booked(draft('receive', [lineOf(offcut('a1'), 1, 'in')]));
    expect(refused(ledger, draft('put back', [lineOf(offcut('A1'), 1, 'in')]))).toBe('offcut-twice');
    const gone = book(ledger, draft('issue', [lineOf(offcut('a1'), 1, 'out')]));
    expect(gone.ok && refused(gone.value, draft('put back', [lineOf(offcut('A1'), 1, 'in')]))).toBe('taken');
  });

  it('takes out an offcut only as it is in the store', () => {
    const ledger = booked(draft('receive', [lineOf(offcut('A1'), 1, 'in')]));
    expect(refused(ledger, draft('issue', [lineOf(offcut('A1', 'rack 2'), 1, 'out')]))).toBe(
      'offcut-differs',
    );
  });

  it('lets what is reserved go to its order, and to another only when that is said', () => {
    const ledger = booked(fourSheets, reserveThree);
    const issue = (line: BookingLine) => draft('issue', [line], { order: 'van-2' });
    expect(refused(ledger, issue(lineOf(sheet, 1, 'out')))).toBe('taken');
    expect(refused(ledger, issue(lineOf(sheet, 2, 'out')))).toBe('reserved-for-others');
    expect(refused(ledger, issue(lineOf(sheet, 2, 'out', 'van-2')))).toBe('not-reserved');
    expect(refused(ledger, issue(lineOf(sheet, 2, 'out', 'van-1')))).toBe('taken');
    expect(refused(ledger, draft('reserve', [lineOf(sheet, 2, 'reserve', 'van-2')]))).toBe(
      'reserved-for-others',
    );
    expect(refused(ledger, draft('release', [lineOf(sheet, 4, 'release', 'van-1')]))).toBe('not-reserved');
    expect(refused(ledger, draft('reserve', [lineOf(sheet, 1, 'reserve')]))).toBe('order-missing');
  });

  it('keeps to the days of the calendar, which do not go back', () => {
    const ledger = booked(fourSheets);
    expect(refused(ledger, { ...fourSheets, date: '2026-03-01' })).toBe('day-goes-back');
    expect(refused(ledger, { ...fourSheets, date: '2026-02-29' })).toBe('wrong-day');
    expect(['2024-02-29', '2000-02-29', '2026-12-31'].every(isDay)).toBe(true);
    expect(['2026-02-29', '1900-02-29', '2026-04-31', '2026-13-01', '2026-00-10', '26-1-1'].some(isDay)).toBe(
      false,
    );
  });

  it('has only lines of its kind', () => {
    expect(refused(emptyLedger, draft('receive', [lineOf(sheet, 1, 'out')]))).toBe('wrong-line');
    expect(refused(emptyLedger, draft('put back', [lineOf(sheet, 1, 'in')]))).toBe('wrong-line');
    expect(refused(emptyLedger, draft('cut', [lineOf(sheet, 1, 'in')]))).toBe('wrong-line');
  });
});

describe('reversing', () => {
  it('restores, is done once, and can itself be reversed', () => {
    const before = booked(fourSheets, reserveThree);
    const issued = book(before, draft('issue', [lineOf(sheet, 2, 'out', 'van-1')], { order: 'van-1' }));
    const restored = book(
      (issued as { value: Ledger }).value,
      reversal((issued as { value: Ledger }).value, 3, about),
    );
    if (!restored.ok) throw new Error('not reversed');
    expect(sameState(restored.value, before)).toBe(true);
    expect([...restored.value.reversedBy]).toEqual([[3, 4]]);
    expect(refused(restored.value, reversal(restored.value, 3, about))).toBe('reversed-already');
    const again = book(restored.value, reversal(restored.value, 4, about));
    if (!again.ok) throw new Error('not brought back');
    expect(amountIn(again.value, sheet)).toBe(2);
    expect([...again.value.reversedBy]).toEqual([[4, 5]]);
    expect(refused(again.value, reversal(again.value, 5, about))).toBe('reverses-a-return');
    expect(refused(again.value, reversal(again.value, 3, about))).toBe('taken');
  });

  it('is refused where there is no such booking, or what it brought is gone', () => {
    const ledger = booked(fourSheets, draft('issue', [lineOf(sheet, 2, 'out')]));
    expect(refused(ledger, reversal(ledger, 1, about))).toBe('not-in-store');
    expect(refused(ledger, reversal(ledger, 9, about))).toBe('booking-unknown');
    expect(refused(ledger, { ...fourSheets, reverses: 1 })).toBe('booking-unknown');
    expect(refused(ledger, { ...fourSheets, kind: 'reverse', reverses: 1 })).toBe('reverse-differs');
  });
});

describe('any history', () => {
  it('has never less than nothing, and nothing reserved that is not there', () => {
    fc.assert(
      fc.property(wishes, (all) => {
        const entries = bookAll(all).flatMap(({ stock }) => [...stock.values()]);
        const wrong = entries.filter(
          (entry) =>
            entry.amount <= 0 ||
            reservedAmount(entry) > entry.amount ||
            [...entry.reserved.values()].some((amount) => amount <= 0) ||
            (entry.item.item === 'offcut' && entry.amount !== 1),
        );
        expect(wrong).toEqual([]);
      }),
    );
  });

  it('lets nothing appear or disappear: what came in less what went out is there', () => {
    fc.assert(
      fc.property(wishes, (all) => {
        const ledger = bookAll(all).at(-1)!;
        const lines = ledger.bookings.flatMap((booking) => booking.lines);
        for (const item of items) {
          const own = lines.filter((line) => itemKey(itemOf(line)) === itemKey(item));
          const sum = (move: string) =>
            own.filter((line) => line.move === move).reduce((total, line) => total + amountOf(line), 0);
          expect(amountIn(ledger, item)).toBe(sum('in') - sum('out'));
        }
      }),
    );
  });

  it('has never less than nothing on order, and what was expected has come, was withdrawn or is still on order', () => {
    fc.assert(
      fc.property(wishes, (all) => {
        const ledgers = bookAll(all);
        const goods = ledgers.flatMap(({ onOrder }) => [...onOrder.values()]);
        expect(goods.filter(({ amount }) => amount <= 0)).toEqual([]);
        const ledger = ledgers.at(-1)!;
        const lines = ledger.bookings.flatMap((booking) => booking.lines);
        for (const item of items) {
          const own = lines.filter(
            (line) => line.onOrder !== undefined && itemKey(itemOf(line)) === itemKey(item),
          );
          const sum = (move: string) =>
            own.filter((line) => line.move === move).reduce((total, line) => total + amountOf(line), 0);
          expect(onOrderOf(ledger, item)).toBe(sum('expect') - sum('withdraw') - sum('in') + sum('out'));
        }
      }),
    );
  });

  it('is restored by a reversal', () => {
    fc.assert(
      fc.property(wishes, (all) => {
        const ledgers = bookAll(all);
        const [before, after] = [ledgers.at(-2), ledgers.at(-1)!];
        if (before === undefined || after.bookings.at(-1)!.kind === 'reverse') return;
        const last = after.bookings.at(-1)!;
        const restored = book(after, reversal(after, last.number, { ...about, date: last.date }));
        expect(restored.ok && sameState(restored.value, before)).toBe(true);
      }),
    );
  });

  it('saws no sheet of a plan twice, whatever is reversed and brought back', () => {
    const plans = ['a'.repeat(64), 'b'.repeat(64)];
    const cut = fc.record(
      {
        plan: fc.constantFrom(...plans),
        copies: fc.subarray([1, 2, 3, 4], { minLength: 1, maxLength: 2 }),
      },
      { requiredKeys: ['plan'] },
    );
    const steps = fc.array(fc.oneof(cut, fc.record({ back: fc.nat(3) })), { maxLength: 12 });
    let taken = 0;
    fc.assert(
      fc.property(steps, (all) => {
        let ledger = booked(draft('receive', [lineOf(sheet, 99, 'in')]));
        let sawn = 0;
        for (const one of all) {
          const { length } = ledger.bookings;
          const sheets =
            'copies' in one && one.copies !== undefined
              ? [{ group: 'grey', number: 1, copies: one.copies }]
              : undefined;
          const count = sheets?.[0]?.copies.length ?? 4;
          const wanted =
            'back' in one
              ? reversal(ledger, Math.max(2, length - one.back), about)
              : draft('cut', [lineOf(sheet, count, 'out')], {
                  plan: one.plan,
                  ...(sheets === undefined ? {} : { sheets }),
                });
          const after = book(ledger, wanted);
          if (after.ok) ledger = after.value;
        }
        for (const plan of plans) {
          const cuts = bookingsOfPlan(ledger, plan);
          const copies = cuts.flatMap(({ sheets }) => sheets?.flatMap((own) => own.copies) ?? [1, 2, 3, 4]);
          expect(new Set(copies).size).toBe(copies.length);
          sawn += copies.length;
          if (cuts.length > 1) taken += 1;
        }
        // Every sheet that is sawn went out, and nothing else did.
        expect(amountIn(ledger, sheet)).toBe(99 - sawn);
      }),
      { numRuns: 300 },
    );
    expect(taken).toBeGreaterThan(10);
  });

  it('comes to the same when any beginning of it is replayed, after a booking and on a day', () => {
    fc.assert(
      fc.property(wishes, fc.nat(40), (all, cut) => {
        const ledgers = bookAll(all);
        const last = ledgers.at(-1)!;
        const number = Math.min(cut, last.bookings.length);
        const again = replayBookings(JSON.parse(JSON.stringify(last.bookings.slice(0, number))) as Booking[]);
        if (!again.ok) throw new Error(again.findings[0]!.message);
        expect(sameState(again.value, ledgers[number]!)).toBe(true);
        expect([...again.value.reversedBy]).toEqual([...ledgers[number]!.reversedBy]);
        expect(sameState(ledgerAfter(last, number), ledgers[number]!)).toBe(true);
        const day = last.bookings[number - 1]?.date ?? '2026-01-01';
        const onDay = last.bookings.filter(({ date }) => date <= day).length;
        expect(ledgerOnDay(last, day).bookings.length).toBe(onDay);
      }),
    );
  });

  it('takes bookings of every kind, so that these properties say something', () => {
    const kinds = new Map<string, number>();
    for (const all of fc.sample(wishes, { numRuns: 200, seed: 1 })) {
      for (const { kind } of bookAll(all).at(-1)!.bookings) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
    }
    expect([...kinds].filter(([, taken]) => taken < 5)).toEqual([]);
    expect([...kinds.keys()].sort()).toEqual([...bookingKinds].sort());
  });
});

it('a history with a gap or a broken rule is refused with its number', () => {
  const { bookings } = booked(fourSheets, reserveThree);
  expect(replayBookings([bookings[1]!]).findings[0]!.code).toBe('number-wrong');
  const wrong = { ...bookings[1]!, lines: [lineOf(sheet, 5, 'reserve', 'van-1')] };
  expect(replayBookings([bookings[0]!, wrong]).findings[0]!.place?.field).toBe('booking 2');
});
