import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { materialChanges, type Taken, takenBy } from '../../src/changes/materialChanges.ts';

function taken(id: string, amount: number, more: Partial<Taken> = {}): Taken {
  return { item: 'fitting', id, board: '', finish: '', amount, priceMinor: amount * 100, ...more };
}

describe('material of a changed order', () => {
  it('is to be bought as far as the new order takes more than the old, where there is no store', () => {
    const rows = materialChanges(
      [taken('hinge', 10), taken('latch', 4)],
      [taken('hinge', 12), taken('stay', 2)],
    );
    expect(rows.map(({ id, before, after, toBuy }) => [id, before, after, toBuy])).toEqual([
      ['hinge', 10, 12, 2],
      ['latch', 4, 0, 0],
      ['stay', 0, 2, 2],
    ]);
  });

  it('is to be bought as far as it is neither done nor there, where there is a store', () => {
    const there = ({ id }: Taken) => (id === 'hinge' ? 5 : 0);
    const rows = materialChanges(
      [taken('hinge', 10)],
      [taken('hinge', 12), taken('stay', 2)],
      [taken('hinge', 3)],
      there,
    );
    expect(rows.map(({ id, done, there: own, toBuy }) => [id, done, own, toBuy])).toEqual([
      ['hinge', 3, 5, 4],
      ['stay', 0, 0, 2],
    ]);
  });

  it('counts what is on order as there, and costs what the rest is sold for', () => {
    const buying = {
      coming: ({ id }: Taken) => (id === 'hinge' ? 4 : 0),
      costMinor: ({ id }: Taken, amount: number) => (id === 'stay' ? null : amount * 90),
    };
    const after = [taken('hinge', 12), taken('stay', 2), taken('latch', 4)];
    const rows = materialChanges([], after, [], ({ id }) => (id === 'latch' ? 4 : 5), buying);
    expect(rows.map(({ id, coming, toBuy, toBuyMinor }) => [id, coming, toBuy, toBuyMinor])).toEqual([
      ['hinge', 4, 3, 270],
      ['stay', 0, 0, 0],
      ['latch', 0, 0, 0],
    ]);
    const alone = materialChanges([taken('hinge', 1)], after, [], null, buying);
    expect(alone.map(({ coming, toBuy, toBuyMinor }) => [coming, toBuy, toBuyMinor])).toEqual([
      [null, 11, 990],
      [null, 2, null],
      [null, 4, 360],
    ]);
  });

  it('never has offcuts to be bought, and adds up what several groups take', () => {
    const offcut = taken('A17', 1, { item: 'offcut', priceMinor: 0 });
    const rows = materialChanges([], [offcut, taken('hinge', 2), taken('hinge', 3)]);
    expect(rows.map(({ id, after, toBuy, priceAfterMinor }) => [id, after, toBuy, priceAfterMinor])).toEqual([
      ['A17', 1, 0, 0],
      ['hinge', 5, 5, 500],
    ]);
  });

  it('has edging in whole mm, rounded up, priced by the metre', () => {
    const edging = {
      edging: 'grey',
      strips: 1,
      lengthUm: 1_500_001,
      rolls: 1,
      rollM: 50,
      priceMinorPerM: 55,
      setUps: 1,
    };
    // 1.501 m × 0.55 = 0.82555
    expect(takenBy({ sheets: [], edgings: [edging], fittings: [] })).toMatchObject([
      { item: 'edging', amount: 1501, priceMinor: 83 },
    ]);
  });

  it('keeps every amount, buys nothing of what stays as it was, and never less than is missing', () => {
    const list = fc.array(fc.record({ id: fc.constantFrom('a', 'b', 'c'), amount: fc.nat(20) }), {
      maxLength: 6,
    });
    const of = (rows: readonly { id: string; amount: number }[], id: string) =>
      rows.filter((row) => row.id === id).reduce((sum, { amount }) => sum + amount, 0);
    fc.assert(
      fc.property(list, list, list, fc.option(fc.nat(20)), (a, b, c, there) => {
        const [before, after, done] = [a, b, c].map((rows) =>
          rows.map(({ id, amount }) => taken(id, amount)),
        );
        const found = materialChanges(before!, after!, done!, there === null ? null : () => there);
        for (const row of found) {
          expect([row.before, row.after]).toEqual([of(a, row.id), of(b, row.id)]);
          const covered = there === null ? row.before : of(c, row.id) + there;
          expect(row.toBuy).toBe(Math.max(0, row.after - covered));
        }
        expect(found.map(({ id }) => id).sort()).toEqual(
          [...new Set([...a, ...b].map(({ id }) => id))].sort(),
        );
        for (const row of materialChanges(before!, before!)) expect(row.toBuy).toBe(0);
      }),
    );
  });
});
