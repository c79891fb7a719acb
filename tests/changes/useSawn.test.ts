import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitsAsSawn, matchPanels } from '../../src/changes/matchPanels.ts';
import { stillToSaw, useSawn } from '../../src/changes/useSawn.ts';
import type { Part } from '../../src/model/part.ts';
import { part } from '../helpers/parts.ts';

function uses(old: readonly Part[], wanted: readonly Part[], sawn: readonly number[]) {
  const found = useSawn(new Map(old.map((panel, index) => [panel, sawn[index]!])), matchPanels(old, wanted));
  return found.map(({ before, after, count }) => [before.name, after?.name ?? null, count]);
}

describe('sawn pieces of a changed order', () => {
  it('serve the panel they were sawn as before any other', () => {
    const old = [part('side', 720, 560, { count: 2 }), part('shelf', 720, 560)];
    const wanted = [part('shelf', 720, 560, { count: 3 }), part('side', 720, 560)];
    expect(uses(old, wanted, [2, 1])).toEqual([
      ['shelf', 'shelf', 1],
      ['side', 'side', 1],
      ['side', 'shelf', 1],
    ]);
  });

  it('serve nothing where the saw would have to cut them again', () => {
    const old = [part('door', 600, 400), part('rail', 500, 80)];
    const wanted = [part('door', 600, 390), part('rail', 500, 80, { finish: 'ash' })];
    expect(uses(old, wanted, [1, 1])).toEqual([
      ['door', null, 1],
      ['rail', null, 1],
    ]);
  });

  it('are all in one use, never more than a panel needs, and what is left to saw is the rest', () => {
    const panels = fc.array(
      fc.record({
        name: fc.constantFrom('a', 'b', 'c'),
        length: fc.constantFrom(300, 400),
        width: fc.constantFrom(200, 300),
        count: fc.integer({ min: 1, max: 4 }),
        grain: fc.constantFrom('length' as const, 'none' as const),
      }),
      { maxLength: 5 },
    );
    const made = (
      list: { name: string; length: number; width: number; count: number; grain: 'length' | 'none' }[],
    ) => list.map(({ name, length, width, count, grain }) => part(name, length, width, { count, grain }));
    fc.assert(
      fc.property(panels, panels, fc.array(fc.nat(4), { minLength: 5, maxLength: 5 }), (a, b, some) => {
        const [old, wanted] = [made(a), made(b)];
        const sawn = new Map(old.map((panel, index) => [panel, Math.min(panel.count, some[index]!)]));
        const found = useSawn(sawn, matchPanels(old, wanted));
        for (const [panel, count] of sawn) {
          const own = found.filter(({ before }) => before === panel);
          expect(own.reduce((sum, use) => sum + use.count, 0)).toBe(count);
        }
        for (const { before, after } of found) if (after) expect(fitsAsSawn(before, after)).toBe(true);
        const left = stillToSaw(wanted, found);
        for (const panel of wanted) {
          const used = found.filter(({ after }) => after === panel).reduce((sum, use) => sum + use.count, 0);
          expect(left.get(panel)).toBe(panel.count - used);
          expect(left.get(panel)).toBeGreaterThanOrEqual(0);
        }
        // Nothing that would serve is left over while something is still to be sawn.
        for (const { before, after } of found) {
          if (after !== null) continue;
          for (const panel of wanted) if (left.get(panel)! > 0) expect(fitsAsSawn(before, panel)).toBe(false);
        }
      }),
    );
  });
});
