import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { variationFromText, waysOf } from '../../src/basics/variations.ts';

describe('a variation', () => {
  it.each([
    ['bed_width=1200..1350/50', ['1200', '1250', '1300', '1350']],
    ['base cupboard.depth=480 .. 481/0.3', ['480', '480.3', '480.6', '480.9']],
    ['x=-1..1/1', ['-1', '0', '1']],
    ['x=5..5/1', ['5']],
    ['sink=small, large,small', ['small', 'large']],
  ])('%s has its values', (text, values) => {
    expect(variationFromText(text)?.values).toEqual(values);
  });

  it.each(['', '=1', 'x', 'x=', 'x=1,,2', 'x=2..1/1', 'x=1..2', 'x=1..2/0', 'x=0..1000000/1', 'x=a..b/1'])(
    'is not %j',
    (text) => {
      expect(variationFromText(text)).toBeUndefined();
    },
  );

  it('misses no step of a range, however fine', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1e6, max: 1e6 }),
        fc.integer({ min: 1, max: 5000 }),
        fc.integer({ min: 0, max: 200 }),
        (from, step, count) => {
          const to = from + step * count;
          const read = variationFromText(`x=${from / 1000}..${to / 1000}/${step / 1000}`);
          expect(read?.values).toHaveLength(count + 1);
          expect(Math.round(1000 * Number(read?.values.at(-1)))).toBe(to);
        },
      ),
    );
  });

  it('is tried with every value of every other', () => {
    const read = ['a=1,2', 'b=x,y,z'].map((text) => variationFromText(text)!);
    expect(waysOf(read).map((way) => way.join(' '))).toEqual([
      'a=1 b=x',
      'a=1 b=y',
      'a=1 b=z',
      'a=2 b=x',
      'a=2 b=y',
      'a=2 b=z',
    ]);
    expect(waysOf([])).toEqual([[]]);
  });
});
