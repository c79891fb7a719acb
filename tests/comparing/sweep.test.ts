import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sweepProgressText } from '../../cli/comparing/sweep.ts';
import { runsOf, sweepOf } from '../../src/comparing/sweep.ts';
import { sheetsFall, stepsText } from '../../src/documents/comparison/sweepList.ts';
import type { Design } from '../../src/model/comparison.ts';
import type { WorkedOut } from '../../src/model/sweep.ts';

/** A design of which only its sheets matter. */
function taking(grey: number, oak = 0, least = 1): WorkedOut {
  const group = (finish: string, sheets: number) => ({ board: 'ply', finish, sheets, leastSheets: least });
  const groups = [group('grey', grey), ...(oak === 0 ? [] : [group('oak', oak)])];
  return { ok: true, design: { groups } as unknown as Design };
}

const refused: WorkedOut = { ok: false, refused: 'too wide' };

describe('a sweep', () => {
  it('marks where sheets come and fall away', () => {
    const results = [taking(3), taking(3), taking(2, 1), refused, taking(2)];
    const { points } = sweepOf(
      ['w'],
      results.map((result, index) => ({ values: [String(index)], result })),
    );
    expect(points.map(({ steps }) => steps)).toEqual([
      [],
      [],
      [
        { sheets: -1, board: 'ply', finish: 'grey' },
        { sheets: 1, board: 'ply', finish: 'oak' },
      ],
      [],
      // Against the last point that can be built.
      [{ sheets: -1, board: 'ply', finish: 'oak' }],
    ]);
  });

  it('begins anew with every row of two parameters', () => {
    const values = [
      ['a', '1'],
      ['a', '2'],
      ['b', '1'],
      ['b', '2'],
    ];
    const results = [taking(3), taking(2), taking(5), taking(5)];
    const { points } = sweepOf(
      ['x', 'w'],
      values.map((own, index) => ({ values: own, result: results[index]! })),
    );
    expect(points.map(({ steps }) => steps.length)).toEqual([0, 1, 0, 0]);
    expect(points.map(({ stepsAcross }) => stepsAcross.map(({ sheets }) => sheets))).toEqual([
      [],
      [],
      [2],
      [3],
    ]);
    expect(runsOf(points).map((run) => run.length)).toEqual([1, 1, 1, 1]);
    expect(points.map(sheetsFall)).toEqual([false, true, false, false]);
    expect(stepsText(points[3]!, ['x', 'w'])).toBe('x: +3 ply grey');
  });

  it('tells steps along both parameters, over points that cannot be built', () => {
    const rows = ['a', 'b', 'c'].map((row) => ['1', '2'].map((column) => [row, column]));
    const results = [taking(4), taking(4), refused, taking(3), taking(2), taking(3)];
    const tried = rows.flat().map((values, index) => ({ values, result: results[index]! }));
    const { points } = sweepOf(['x', 'w'], tried);
    const text = (point: (typeof points)[number]) => stepsText(point, ['x', 'w']);
    expect(points.map(text)).toEqual(['', '', '', 'x: −1 ply grey', 'x: −2 ply grey', 'w: +1 ply grey']);
    expect(points.map(sheetsFall)).toEqual([false, false, false, true, true, false]);
  });

  it('adds its steps up to what the last point takes more than the first, and loses no point in its runs', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 20 }), (counts) => {
        const tried = counts.map((count, index) => ({ values: [String(index)], result: taking(count) }));
        const { points } = sweepOf(['w'], tried);
        const sum = points.flatMap(({ steps }) => steps).reduce((total, { sheets }) => total + sheets, 0);
        expect(sum).toBe(counts.at(-1)! - counts[0]!);
        expect(runsOf(points).flat()).toEqual(points);
      }),
    );
  });

  it('parts runs where only the least changes', () => {
    const results = [taking(3, 0, 2), taking(3, 0, 3), refused, refused];
    const { points } = sweepOf(
      ['w'],
      results.map((result, index) => ({ values: [String(index)], result })),
    );
    expect(runsOf(points).map((run) => run.length)).toEqual([1, 1, 2]);
  });

  it('says how much time is left, by the points that were worked out', () => {
    expect(sweepProgressText(10, 30, 0, 20)).toBe(
      '10 of 30 points; some 40 s left (Ctrl-C keeps what is done)',
    );
    expect(sweepProgressText(12, 30, 10, 4)).toContain('10 of them from the cache; some 36 s left');
    expect(sweepProgressText(10, 30, 10, 0)).not.toContain('left');
  });
});
