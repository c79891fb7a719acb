import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber, dayText, isWorkingDay, weekdayOf, workingDaysFrom } from '../../src/basics/calendar.ts';

const none: ReadonlySet<string> = new Set();
const MILLISECONDS_A_DAY = 86_400_000;

/** The same day by the calendar of the language, which shares no code with ours. */
function byDate(text: string): Date {
  return new Date(`${text}T00:00:00Z`);
}

describe('days', () => {
  it.each([
    '2026-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-04-31',
    '2026-1-1',
    '1900-02-29',
    '',
    '0000-01-01',
  ])('has no %s', (text) => expect(dayNumber(text)).toBeUndefined());

  it('are those of the calendar of the language, with its weekdays', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3_000_000 }), (number) => {
        const text = dayText(number);
        expect(dayNumber(text)).toBe(number);
        const date = byDate(text);
        expect(date.toISOString().slice(0, 10)).toBe(text);
        expect((date.getTime() - byDate('2000-01-01').getTime()) / MILLISECONDS_A_DAY).toBe(
          number - dayNumber('2000-01-01')!,
        );
        expect(weekdayOf(number)).toBe((date.getUTCDay() + 6) % 7);
      }),
    );
  });

  it('end with the year 9999', () => {
    expect(dayText(dayNumber('9999-12-31')!)).toBe('9999-12-31');
    expect(() => dayText(dayNumber('9999-12-31')! + 1)).toThrow('9999');
    expect(() => dayText(-1)).toThrow('-1');
  });
});

describe('working days', () => {
  it('leave out weekends and free days', () => {
    // 2026-05-01 is a Friday.
    const from = (day: string, step: 1 | -1, count: number, free = none) =>
      dayText(workingDaysFrom(dayNumber(day)!, step, count, free));
    expect(from('2026-05-04', -1, 1)).toBe('2026-05-01');
    expect(from('2026-05-04', -1, 1, new Set(['2026-05-01']))).toBe('2026-04-30');
    expect(from('2026-05-04', -1, 6)).toBe('2026-04-24');
    expect(from('2026-05-04', -1, 0)).toBe('2026-05-04');
    expect(from('2026-05-02', 1, 1)).toBe('2026-05-04');
  });

  it('are as many as were asked for, there and back', () => {
    const day = fc.integer({ min: dayNumber('2020-01-01')!, max: dayNumber('2040-01-01')! });
    const freeDays = fc.uniqueArray(fc.integer({ min: -60, max: 60 }), { maxLength: 20 });
    fc.assert(
      fc.property(
        day,
        fc.integer({ min: 0, max: 40 }),
        freeDays,
        fc.constantFrom(1 as const, -1 as const),
        (start, count, apart, step) => {
          const free = new Set(apart.map((days) => dayText(start + days)));
          const end = workingDaysFrom(start, step, count, free);
          let counted = 0;
          for (let at = start; at !== end; ) {
            at += step;
            if (isWorkingDay(at, free)) counted++;
          }
          expect(counted).toBe(count);
          if (count > 0) expect(isWorkingDay(end, free)).toBe(true);
        },
      ),
    );
  });

  it('are not sought for ever', () => {
    const free = new Set(Array.from({ length: 6000 }, (_, days) => dayText(700_000 + days)));
    expect(() => workingDaysFrom(700_000, 1, 1, free)).toThrow('no working day');
  });
});
