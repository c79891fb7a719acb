import { describe, expect, it } from 'vitest';
import type { PlanGroup, PlanPanel } from '../../src/model/plan.ts';
import { findingsAfter } from './goodPlan.ts';

type Size = readonly [length: number, width: number, count: number, grain: 'length' | 'none'];
type Row = { readonly follows: 'length' | 'width'; readonly panels: string[] };

/**
 * The most sheets that the certificate proves, which says that every piece is worth 1 and leaves it to the replay how many of
 * them a sheet of `sheet` holds; a kerf of 3.2 between them, no trims.
 */
function proved(sizes: Readonly<Record<string, Size>>, sheet: readonly [number, number], rows: Row[] = []) {
  const kinds = rows.length > 0 ? 1 : new Set(Object.values(sizes).map((size) => size.join())).size;
  const findings = findingsAfter((group) => {
    const [like] = group.panels;
    group.panels = Object.entries(sizes).map(
      ([id, [length, width, count, grain]]): PlanPanel => ({ ...like!, id, length, width, count, grain }),
    );
    group.runs = rows.map((row): PlanGroup['runs'][number] => ({ name: 'row', ...row }));
    const trim = { left: 0, right: 0, near: 0, far: 0 };
    Object.assign(group.stock[0]!, { length: sheet[0], width: sheet[1], trim, count: null });
    group.sheets = [];
    group.bound = {
      sheets: 99,
      cost: 0,
      certificate: {
        method: 'pattern prices',
        denominator: 1,
        prices: Array.from({ length: kinds }, () => 1),
        sheetValues: [99],
        limited: [],
        grid: 1,
      },
    };
  });
  const told = findings.map(({ message }) => /certificate proves only (\d+) sheets/.exec(message)?.[1]);
  return Number(told.find((sheets) => sheets !== undefined));
}

describe('what a certificate is held against', () => {
  it('is panels with their grain, the longer side being the length of those without', () => {
    // Along the sheet two of 590 by 200 lie above each other; turned, four stand side by side.
    expect(proved({ a: [590, 200, 4, 'length'] }, [1000, 600])).toBe(2);
    expect(proved({ a: [590, 200, 4, 'none'] }, [1000, 600])).toBe(1);
    expect(proved({ a: [200, 590, 4, 'none'] }, [1000, 600])).toBe(1);
  });

  it('is all panels of one size together', () => {
    const one: Size = [590, 200, 2, 'length'];
    expect(proved({ a: one, b: one }, [1000, 600])).toBe(2);
  });

  it('is the blank of a row across the grain, with a kerf between its fronts', () => {
    // A blank of 500 by 703.2. The fronts do not count once more.
    const fronts = { a: [500, 400, 4, 'length'], b: [470, 300, 5, 'length'] } as const;
    const rows: Row[] = [{ follows: 'width', panels: ['a', 'b'] }];
    expect(proved(fronts, [1003.2, 1409.6], rows)).toBe(1);
    expect(proved(fronts, [1003.2, 1409.5], rows)).toBe(2);
    expect(proved(fronts, [1003.1, 1409.6], rows)).toBe(2);
  });

  it('is the blank of a row along the grain', () => {
    // A blank of 973.2 by 400.
    const fronts = { a: [500, 400, 2, 'length'], b: [470, 300, 2, 'length'] } as const;
    const rows: Row[] = [{ follows: 'length', panels: ['a', 'b'] }];
    expect(proved(fronts, [973.2, 803.2], rows)).toBe(1);
    expect(proved(fronts, [973.2, 803.1], rows)).toBe(2);
    expect(proved(fronts, [1949.6, 803.1], rows)).toBe(1);
    expect(proved(fronts, [1949.5, 803.1], rows)).toBe(2);
  });

  it.each([
    ['length', { length: 0 }],
    ['width', { width: 0 }],
  ])('has a %s', (_what, size) => {
    const messages = findingsAfter((group) => {
      Object.assign(group.panels[0]!, size);
      // Nothing can be proved then, so that it is no news that this is not.
      group.bound.sheets = 99;
    }).map(({ message }) => message);
    expect(messages.at(-1)).toBe('Group ply-grey: a panel or a run of panels has no length or no width.');
  });

  it('leaves out panels of a row that are not listed', () => {
    const messages = findingsAfter((group) => void group.runs[0]!.panels.push('window')).map(
      ({ message }) => message,
    );
    expect(messages).toEqual([
      'Group ply-grey: run "fronts" names a panel "window" that is not listed.',
      expect.stringContaining('must be front 0, front 1, window in this order'),
    ]);
  });
});
