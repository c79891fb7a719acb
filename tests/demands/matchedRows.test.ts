import { describe, expect, it } from 'vitest';
import { makeStockGroups } from '../../src/demands/index.ts';
import type { Part } from '../../src/model/part.ts';
import { part, saw, supply } from '../helpers/parts.ts';

function front(position: number, lengthMm: number, widthMm: number, more: Partial<Part> = {}): Part {
  const match = { run: 'fronts', position, follows: 'width' } as const;
  return part(`front ${position}`, lengthMm, widthMm, { match, ...more });
}

describe('matched rows', () => {
  it('become one blank with a kerf between the fronts', () => {
    const fronts = [front(1, 600, 300), front(0, 600, 400), front(2, 600, 200)];
    const { groups, findings } = makeStockGroups(fronts, [supply(2500, 1250)], saw());
    expect(findings).toEqual([]);
    expect(groups[0]!.demands).toEqual([
      {
        lengthUm: 600_000,
        // 400 + 300 + 200 + 2 · 3.2
        widthUm: 906_400,
        count: 1,
        grain: 'length',
        parts: [
          { part: 'front 0', count: 1 },
          { part: 'front 1', count: 1 },
          { part: 'front 2', count: 1 },
        ],
        blank: {
          run: 'fronts',
          follows: 'width',
          pieces: [
            { part: 'front 0', alongUm: 400_000, acrossUm: 600_000 },
            { part: 'front 1', alongUm: 300_000, acrossUm: 600_000 },
            { part: 'front 2', alongUm: 200_000, acrossUm: 600_000 },
          ],
        },
      },
    ]);
  });

  it('are as wide as their widest front', () => {
    const drawers = [0, 1].map((position) =>
      part(`drawer ${position}`, 200, 500 - position * 20, {
        match: { run: 'drawers', position, follows: 'length' },
        count: 3,
      }),
    );
    const { groups } = makeStockGroups(drawers, [supply(2500, 1250)], saw());
    expect(groups[0]!.demands).toMatchObject([{ lengthUm: 403_200, widthUm: 500_000, count: 3 }]);
  });

  it('too long for every sheet are split into the longest that fit, with a warning', () => {
    const fronts = [0, 1, 2, 3].map((position) => front(position, 600, 400));
    // 1250 less trims leaves 1230: three fronts take 1206.4, four do not fit.
    const { groups, findings } = makeStockGroups(fronts, [supply(2500, 1250)], saw());
    expect(groups[0]!.demands.map((demand) => demand.parts.map((entry) => entry.part))).toEqual([
      ['front 0', 'front 1', 'front 2'],
      ['front 3'],
    ]);
    expect(groups[0]!.demands[1]!.blank).toBeUndefined();
    expect(findings).toMatchObject([{ code: 'matched-row-too-long', severity: 'warning' }]);
    expect(findings[0]!.message).toContain('"front 0", "front 1", "front 2" | "front 3"');
  });

  it('end where a front is missing, and two pieces of one row get names that differ', () => {
    const fronts = [0, 1, 3, 4].map((position) => front(position, 600, 300));
    const { groups, findings } = makeStockGroups(fronts, [supply(2500, 1250)], saw());
    expect(groups[0]!.demands.map((demand) => demand.blank?.run)).toEqual(['fronts', 'fronts (2)']);
    expect(findings).toEqual([]);
  });

  it('of panels wanted unequally often, or twice in one place, are not rows', () => {
    const uneven = [front(0, 600, 300), front(1, 600, 300, { count: 2 })];
    const made = makeStockGroups(uneven, [supply(2500, 1250)], saw());
    expect(made.groups[0]!.demands).toMatchObject([{ count: 3 }]);
    expect(made.findings).toMatchObject([{ code: 'matched-row-uneven', severity: 'warning' }]);
    const twice = [front(0, 600, 300), front(0, 600, 310, { id: 'other' })];
    expect(makeStockGroups(twice, [supply(2500, 1250)], saw()).findings[0]!.code).toBe('matched-row-uneven');
  });

  it('do not join over orders, and mean nothing where there is no grain', () => {
    const orders = [front(0, 600, 300, { order: 'a' }), front(1, 600, 300, { order: 'b' })];
    expect(
      makeStockGroups(orders, [supply(2500, 1250)], saw()).groups[0]!.demands.every((d) => !d.blank),
    ).toBe(true);
    const plain = [0, 1].map((position) => front(position, 600, 300, { grain: 'none' }));
    const made = makeStockGroups(plain, [supply(2500, 1250)], saw());
    expect(made.groups[0]!.demands).toMatchObject([{ count: 2, grain: 'none' }]);
    expect(made.findings).toEqual([]);
  });
});
