import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeInOrder } from '../../src/basics/takeInOrder.ts';

const parts = [
  { name: 'first', amount: 6 },
  { name: 'empty', amount: 0 },
  { name: 'second', amount: 2 },
  { name: 'third', amount: 3 },
];

describe('taking in order', () => {
  it('takes the first parts whole and splits the last', () => {
    expect(takeInOrder(parts, 7)).toEqual({
      taken: [
        { name: 'first', amount: 6 },
        { name: 'second', amount: 1 },
      ],
      rest: [
        { name: 'second', amount: 1 },
        { name: 'third', amount: 3 },
      ],
      missing: 0,
    });
  });

  it('takes all there is where that is too little, and nothing where nothing is wanted', () => {
    const all = parts.filter(({ amount }) => amount > 0);
    expect(takeInOrder(parts, 13)).toEqual({ taken: all, rest: [], missing: 2 });
    expect(takeInOrder(parts, 0)).toEqual({ taken: [], rest: all, missing: 0 });
    expect(takeInOrder([], 3)).toEqual({ taken: [], rest: [], missing: 3 });
  });

  it('loses nothing, and touches no part before the one ahead of it is used up', () => {
    const amounts = fc.array(fc.nat(9), { maxLength: 6 });
    fc.assert(
      fc.property(amounts, fc.nat(60), (list, amount) => {
        const given = list.map((each, place) => ({ place, amount: each }));
        const { taken, rest, missing } = takeInOrder(given, amount);
        const sum = (of: readonly { readonly amount: number }[]) =>
          of.reduce((all, one) => all + one.amount, 0);
        expect(sum(taken) + missing).toBe(amount);
        expect(sum(taken) + sum(rest)).toBe(sum(given));
        expect(missing > 0 && rest.length > 0).toBe(false);
        expect([...taken, ...rest].every((part) => part.amount > 0)).toBe(true);
        expect(taken.at(-1)?.place ?? -1).toBeLessThanOrEqual(rest[0]?.place ?? given.length);
      }),
    );
  });
});
