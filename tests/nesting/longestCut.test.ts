import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bound } from '../../src/model/nest.ts';
import type { Trim } from '../../src/model/stock.ts';
import { nest } from '../../src/nesting/index.ts';
import { assertNest } from '../helpers/assertNest.ts';
import { smallStockGroup, stockGroup } from '../helpers/stockGroups.ts';

const noBound: Bound = { sheets: 0, costMinor: 0, certificate: { method: 'area' } };
const noTrim: Trim = { left: 0, right: 0, near: 0, far: 0 };

/** Pieces on sheets of 1000 × 500 mm with a longest cut of 600 mm. */
function outcomeOf(
  demands: readonly (readonly [number, number, number])[],
  trim: Trim = noTrim,
  longestCutUm = 600_000,
) {
  const group = stockGroup({
    demands: demands.map(([length, width, count]) => [length, width, count, 'length'] as const),
    sheets: [{ lengthMm: 1000, widthMm: 500, trim }],
    saw: { longestCutUm },
  });
  const outcome = nest(group, noBound, { seed: 1, workLimit: 2000 });
  if (outcome.ok) assertNest(group, outcome.nest);
  return outcome;
}

const tooLong = { ok: false, failure: { kind: 'cut too long', demand: 0 } };

describe('the longest cut of the saw', () => {
  it('lets a longer piece come only from between two first cuts or the edges of the sheet', () => {
    expect(outcomeOf([[900, 500, 1]]).ok).toBe(true);
    expect(outcomeOf([[900, 499, 1]])).toEqual(tooLong);
    expect(outcomeOf([[600, 499, 1]]).ok).toBe(true);
    expect(outcomeOf([[600.1, 499, 1]])).toEqual(tooLong);
    expect(outcomeOf([[1000, 500, 2]]).ok).toBe(true);
  });

  it('counts the trims as cuts, as long as the sheet is where they are sawn', () => {
    expect(outcomeOf([[300, 300, 1]], { ...noTrim, left: 10_000, right: 10_000 }).ok).toBe(true);
    expect(outcomeOf([[300, 300, 1]], { ...noTrim, near: 10_000 })).toEqual(tooLong);
    // Before rips the ends are trimmed first, so that the edges are 980 mm long when they are trimmed.
    const all = { left: 10_000, right: 10_000, near: 10_000, far: 10_000 };
    expect(outcomeOf([[900, 470, 1]], all, 980_000).ok).toBe(true);
    expect(outcomeOf([[900, 470, 1]], all, 979_000)).toEqual(tooLong);
    expect(outcomeOf([[1000, 480, 1]], { ...noTrim, near: 10_000, far: 10_000 }, 999_000)).toEqual(tooLong);
  });

  it('crosscuts first where a rip along the whole sheet is too long', () => {
    // One crosscut, then a rip of 700 mm.
    const sheets = (longestCutUm: number) => {
      const outcome = outcomeOf(
        [
          [700, 250, 2],
          [300, 500, 1],
        ],
        noTrim,
        longestCutUm,
      );
      return outcome.ok ? outcome.nest.costMinor : outcome.failure.kind;
    };
    expect(sheets(700_000)).toBe(1);
    expect(sheets(699_000)).toBe('cut too long');
  });

  it('does not let a blank be parted by a longer cut', () => {
    const group = stockGroup({
      demands: [[900, 500, 1, 'length']],
      sheets: [{ lengthMm: 1000, widthMm: 500 }],
      saw: { longestCutUm: 600_000 },
    });
    const pieces = [
      { part: 'a', alongUm: 250_000, acrossUm: 900_000 },
      { part: 'b', alongUm: 250_000, acrossUm: 900_000 },
    ];
    const blank = { run: 'row', follows: 'width' as const, pieces };
    const demands = group.demands.map((demand) => ({ ...demand, blank }));
    expect(nest({ ...group, demands }, noBound, { seed: 1, workLimit: 100 })).toEqual(tooLong);
  });

  it('is obeyed in small groups in which it matters, and changes nothing where it does not', () => {
    let mattered = 0;
    fc.assert(
      fc.property(smallStockGroup, fc.integer({ min: 0, max: 1000 }), (group, seed) => {
        const without = nest(saw(group, null), noBound, { seed, workLimit: 200 });
        expect(nest(saw(group, 1_000_000), noBound, { seed, workLimit: 200 })).toEqual(without);
        const longest = saw(group, 13_000);
        const outcome = nest(longest, noBound, { seed, workLimit: 200 });
        if (!outcome.ok) return;
        assertNest(longest, outcome.nest);
        if (JSON.stringify(outcome) !== JSON.stringify(without)) mattered++;
      }),
      { numRuns: 300, seed: 7 },
    );
    expect(mattered).toBeGreaterThan(30);
  });

  it('holds inside the sheet, too: long sheets, cut across first, with many small pieces', () => {
    const size = fc.integer({ min: 20, max: 60 }).map((tenths) => tenths / 10);
    const demand = fc.tuple(size, size, fc.integer({ min: 1, max: 6 }));
    fc.assert(
      fc.property(fc.array(demand, { minLength: 2, maxLength: 6 }), fc.nat(1000), (demands, seed) => {
        const group = stockGroup({
          demands,
          sheets: [{ lengthMm: 30, widthMm: 8 }],
          saw: { kerfUm: 300, longestCutUm: 10_000 },
        });
        const outcome = nest(group, noBound, { seed, workLimit: 300 });
        expect(outcome.ok).toBe(true);
        if (outcome.ok) assertNest(group, outcome.nest);
      }),
      { numRuns: 100 },
    );
  });
});

function saw<G extends { saw: object }>(group: G, longestCutUm: number | null): G {
  return { ...group, saw: { ...group.saw, longestCutUm } };
}
