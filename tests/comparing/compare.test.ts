import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compare } from '../../src/comparing/index.ts';
import type { ComparedFigure, Design } from '../../src/model/comparison.ts';

const plain: Design = {
  name: 'a',
  title: 'A',
  layout: 'Galley',
  vehicle: 'Van',
  currency: 'EUR',
  alike: 1,
  units: 3,
  panels: 30,
  groups: [
    {
      board: 'ply',
      finish: 'grey',
      panels: 20,
      sheets: 3,
      leastSheets: 2,
      proved: false,
      costMinor: 30_000,
      yield: 0.7,
    },
    {
      board: 'ply',
      finish: 'oak',
      panels: 10,
      sheets: 1,
      leastSheets: 1,
      proved: true,
      costMinor: 12_000,
      yield: 0.4,
    },
  ],
  yield: 0.6,
  offcuts: { count: 2, areaM2: 1.5 },
  edgingMetres: 40,
  pricedBy: 'estimate',
  materialMinor: 60_000,
  workMinor: 40_000,
  netMinor: 110_000,
  furnitureKg: 100,
  leftKg: 60,
  frontKg: 45,
  payloadLeftKg: 500,
  seats: 2,
  sleepingPlaces: 2,
  sawnMetres: 120,
  cuts: 90,
  fenceSettings: 50,
};

function rowsOf(designs: readonly Design[]) {
  const { rows } = compare(designs);
  return (figure: ComparedFigure, finish?: string) =>
    rows.find((row) => row.figure === figure && (finish === undefined || row.of?.finish === finish));
}

describe('designs side by side', () => {
  it('have their figures in rows, sheets with the least there can be', () => {
    const row = rowsOf([plain, { ...plain, name: 'b', groups: plain.groups.slice(0, 1) }]);
    expect(row('sheets')).toMatchObject({ values: [4, 3], least: [3, 2], differs: true, best: [1] });
    expect(row('sheets of', 'grey')).toMatchObject({
      values: [3, 3],
      least: [2, 2],
      differs: false,
      best: [],
    });
    expect(row('sheets of', 'oak')).toMatchObject({ values: [1, 0], differs: true, best: [] });
    expect(row('sheets cost')?.values).toEqual([42_000, 30_000]);
    expect(row('left share')).toMatchObject({ values: [0.6, 0.6], differs: false });
  });

  it('are best where less, more or even is better', () => {
    const row = rowsOf([
      plain,
      { ...plain, yield: 0.7, netMinor: 120_000, leftKg: 45, sleepingPlaces: 3 },
      { ...plain, leftKg: 55, units: 9, seats: null },
    ]);
    expect(row('yield')?.best).toEqual([1]);
    expect(row('net')?.best).toEqual([0, 2]);
    expect(row('left share')?.best).toEqual([1, 2]);
    expect(row('sleeping places')?.best).toEqual([1]);
    expect(row('units')).toMatchObject({ differs: true, best: [] });
    expect(row('seats')).toMatchObject({ values: [2, 2, null], differs: true, best: [] });
  });

  it('are as good as each other where they read the same', () => {
    const row = rowsOf([
      { ...plain, yield: 0.68797, furnitureKg: 100.04 },
      { ...plain, yield: 0.68811, furnitureKg: 99.96 },
      { ...plain, yield: 0.6874, furnitureKg: 100 },
    ]);
    expect(row('yield')).toMatchObject({ differs: true, best: [0, 1] });
    expect(row('furniture mass')).toMatchObject({ differs: false, best: [] });
  });

  it('leave out what none of them has', () => {
    const room = { ...plain, payloadLeftKg: null, seats: null, sleepingPlaces: null };
    const row = rowsOf([room, { ...room, pricedBy: 'material' as const }]);
    expect(row('payload left')).toBeUndefined();
    expect(row('seats')).toBeUndefined();
    expect(row('work')?.values).toEqual([40_000, null]);
    expect(rowsOf([{ ...room, pricedBy: 'material' }])('net')).toBeUndefined();
  });

  it('mark no best where all are equal, and never one that is worse than another', () => {
    const design = fc.record({
      yield: fc.double({ min: 0, max: 1, noNaN: true }),
      netMinor: fc.integer({ min: 0, max: 5 }),
      cuts: fc.integer({ min: 0, max: 3 }),
      payloadLeftKg: fc.option(fc.integer({ min: -3, max: 3 })),
    });
    fc.assert(
      fc.property(fc.array(design, { minLength: 1, maxLength: 6 }), (parts) => {
        const row = rowsOf(parts.map((part, index) => ({ ...plain, name: String(index), ...part })));
        for (const [figure, sign] of [
          ['net', 1],
          ['cuts', 1],
          ['payload left', -1],
        ] as const) {
          const own = row(figure);
          if (own === undefined) continue;
          expect(own.best.length > 0).toBe(new Set(own.values.filter((value) => value !== null)).size > 1);
          for (const best of own.best) {
            for (const value of own.values) {
              if (value !== null) expect(sign * (value - own.values[best]!)).toBeGreaterThanOrEqual(0);
            }
          }
        }
      }),
    );
  });
});
