import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { furnishOrder } from '../../src/pipeline/prepareOrder.ts';
import { readMix, simulateYear, summariseRuns } from '../../src/pipeline/simulateYear.ts';
import { scheduleOf, spreadOf } from '../../src/yearOfOrders/index.ts';
import { must } from '../helpers/demoVan.ts';
import { plankLibrary, plankOrder } from '../helpers/plankLibrary.ts';

const library = plankLibrary();

/**
 * Planks of 1238 by 297 mm, eight of which fill a sheet: two along 2480 mm and four across 1200 mm, with a kerf of 3.2 mm
 * between them, as tests/advising/planted.test.ts reckons.
 */
function orderOf(rows: number) {
  const text = plankOrder({ length: 1238, depth: 297, rows });
  return must(furnishOrder(text, `orders/planks-${rows}.yaml`, library));
}

function simulate(orders: string, rows: readonly number[], more = '', seed = 1) {
  const mix = must(readMix(`title: A year\n${more}orders:\n${orders}`, 'year.yaml'));
  const request = { mix, orders: rows.map(orderOf), library, file: 'year.yaml', workLimit: 200 };
  return must(simulateYear(request, seed, null));
}

function sheetsOf(run: ReturnType<typeof simulate>): number {
  return run.taken.reduce((sum, { sheets }) => sum + sheets, 0);
}

describe('a year of orders', () => {
  it('takes a sheet for each order that fills one, whenever they come', () => {
    for (const seed of [1, 2]) {
      const run = simulate('  - { order: a.yaml, count: 5 }\n', [8], '', seed);
      expect(run.cuttings.reduce((sum, { orders }) => sum + orders, 0)).toBe(5);
      expect(sheetsOf(run)).toBe(5);
      expect(run.taken).toMatchObject([
        { board: 'poplar-15', finish: 'oak', panels: 40, sheets: 5, costMinor: 5 * 11_000 },
      ]);
      // 8 × 1238 × 297 of 2500 × 1220 mm; the library's sheet is 2500.06 mm long.
      const [{ panelAreaUm2, sheetAreaUm2 }] = run.taken as [(typeof run.taken)[number]];
      expect(panelAreaUm2).toBe(5n * 8n * 1_238_000n * 297_000n);
      expect(sheetAreaUm2).toBe(5n * 2_500_000n * 1_220_000n);
    }
  });

  it('cuts half a sheet from the offcut of an earlier half', () => {
    const run = simulate('  - { order: a.yaml, weeks: [3, 20] }\n', [4]);
    expect(run.cuttings).toMatchObject([
      { week: 3, orders: 1, offcutsUsed: 0, offcutsMade: 1, offcutsInRack: 1 },
      { week: 20, orders: 1, offcutsUsed: 1, offcutsInRack: 0 },
    ]);
    expect(sheetsOf(run)).toBe(1);
  });

  it('takes another sheet where the offcut has gone, for age or want of room', () => {
    for (const keep of ['{ weeks: 16 }', '{ most: 0 }']) {
      const run = simulate('  - { order: a.yaml, weeks: [3, 20] }\n', [4], `keep offcuts: ${keep}\n`);
      expect(sheetsOf(run)).toBe(2);
      expect(run.cuttings.reduce((sum, { offcutsGone }) => sum + offcutsGone, 0)).toBeGreaterThan(0);
    }
    expect(
      sheetsOf(simulate('  - { order: a.yaml, weeks: [3, 20] }\n', [4], 'keep offcuts: { weeks: 17 }\n')),
    ).toBe(1);
  });

  it('pools orders of the weeks that are cut together', () => {
    const none = 'keep offcuts: { most: 0 }\n';
    const orders = '  - { order: a.yaml, weeks: [3] }\n  - { order: b.yaml, weeks: [4, 9] }\n';
    const apart = simulate(orders, [4, 2], none);
    expect([apart.cuttings.map(({ week }) => week), sheetsOf(apart)]).toEqual([[3, 4, 9], 3]);
    const together = simulate(orders, [4, 2], `cut together: 5\n${none}`);
    expect([together.cuttings.map(({ week }) => week), sheetsOf(together)]).toEqual([[5, 10], 2]);
  });

  it('is the same again with the same seed, and another with another', () => {
    const orders = '  - { order: a.yaml, count: 4 }\n';
    expect(simulate(orders, [3], '', 7)).toEqual(simulate(orders, [3], '', 7));
    expect(simulate(orders, [3], '', 7).cuttings).not.toEqual(simulate(orders, [3], '', 8).cuttings);
  });

  it('keeps account of every offcut, and every order is cut once, by its week or up to the cutting after it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9999 }), fc.integer({ min: 1, max: 52 }), (seed, together) => {
        const text = `title: A\ncut together: ${together}\norders: [{ order: a, count: 30 }]\n`;
        const mix = must(readMix(text, 'a.yaml'));
        const days = scheduleOf(mix, seed);
        const orders = days.flatMap((day) => day.orders.map((order) => ({ ...order, cut: day.week })));
        expect(orders.map(({ number }) => number).sort((a, b) => a - b)).toEqual(
          Array.from({ length: 30 }, (_, index) => index + 1),
        );
        for (const { week, cut } of orders) {
          expect(cut).toBeGreaterThanOrEqual(week);
          expect(cut - week).toBeLessThan(together);
        }
      }),
    );
    const run = simulate('  - { order: a.yaml, count: 6 }\n', [3], 'keep offcuts: { weeks: 20, most: 2 }\n');
    let rack = 0;
    for (const { offcutsUsed, offcutsMade, offcutsGone, offcutsInRack } of run.cuttings) {
      rack += offcutsMade - offcutsUsed - offcutsGone;
      expect(offcutsInRack).toBe(rack);
      expect(offcutsInRack).toBeLessThanOrEqual(2);
    }
  });

  it('tells the spread of runs', () => {
    // 2, 4 and 6: the mean is 4, squares of the differences 4 + 0 + 4, over n - 1 = 2, so the deviation is 2.
    expect(spreadOf([2, 4, 6])).toEqual({ least: 2, mean: 4, most: 6, deviation: 2 });
    const runs = [1, 2].map((seed) => simulate('  - { order: a.yaml, count: 3 }\n', [8], '', seed));
    expect(summariseRuns(runs)).toMatchObject({
      orders: 3,
      sheets: { least: 3, mean: 3, most: 3, deviation: 0 },
      finishes: [{ board: 'poplar-15', finish: 'oak' }],
    });
  });
});

describe('a mix that is wrong', () => {
  it.each([
    ['title: A\norders: []\n', /orders/],
    ['title: A\nweeks: 0\norders: [{ order: a }]\n', /week/],
    ['title: A\nweek: 5\norders: [{ order: a }]\n', /week/],
    ['title: A\nweeks: 5\norders: [{ order: a, weeks: [6] }]\n', /after the last/],
    ['title: A\norders: [{ order: a, count: 2, weeks: [6] }]\n', /not both/],
    ['title: A\norders: [{ order: a, set: [bed] }]\n', /set/],
    ['title: A\norders: [{ order: a, count: 600 }, { order: a, count: 600 }]\n', /1200 orders/],
  ])('is told with its place: %j', (text, words) => {
    const read = readMix(text, 'year.yaml');
    expect(read.ok).toBe(false);
    expect(JSON.stringify(read.findings)).toMatch(words);
    for (const { place } of read.findings) expect(place?.file).toBe('year.yaml');
  });
});
