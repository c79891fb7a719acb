import { expect, it } from 'vitest';
import { SeededRandom } from '../../src/basics/random.ts';
import type { StockGroup } from '../../src/model/stock.ts';
import { drawList, jobOfList } from './randomList.ts';

/** Sizes that programs go wrong on, each told from what is to be nested. */
const AWKWARD: Readonly<Record<string, (group: StockGroup) => boolean>> = {
  'as large as the sheet': (group) => anySize(group, (size, room) => size === room),
  'the sheet less a kerf': (group) =>
    anySize(group, (size, room) => group.saw.kerfUm > 0 && size === room - group.saw.kerfUm),
  'a tenth of a millimetre less than the sheet': (group) =>
    anySize(group, (size, room) => size < room && size >= room - 100),
  'halves of the sheet with the kerf between': (group) =>
    anySize(group, (size, room) => size === Math.floor((room - group.saw.kerfUm) / 200) * 100),
  'a prime number of millimetres': (group) => anySize(group, (size) => isPrime(size / 1000)),
  'narrower than the blade': (group) => anySize(group, (size) => size < group.saw.kerfUm),
  'thousands alike': (group) => group.demands.some(({ count }) => count >= 1000),
  'very long and narrow': (group) =>
    group.demands.some(
      ({ lengthUm, widthUm }) => Math.max(lengthUm, widthUm) > 100 * Math.min(lengthUm, widthUm),
    ),
};

function anySize({ demands, sheets }: StockGroup, fits: (size: number, room: number) => boolean): boolean {
  return demands.some(({ lengthUm, widthUm }) =>
    sheets.some(({ lengthUm: long, widthUm: wide, trim }) =>
      [long - trim.left - trim.right, wide - trim.near - trim.far].some(
        (room) => fits(lengthUm, room) || fits(widthUm, room),
      ),
    ),
  );
}

function isPrime(value: number): boolean {
  if (!Number.isInteger(value) || value < 2) return false;
  for (let part = 2; part * part <= value; part++) if (value % part === 0) return false;
  return true;
}

it('random lists hold every awkward size, and few are too long', () => {
  const missing = new Set(Object.keys(AWKWARD));
  let micrometreApart = 0;
  let kerfByMicrometre = 0;
  let tooLarge = 0;
  let jobs = 0;
  for (let seed = 1; seed <= 1200; seed++) {
    const random = new SeededRandom(seed);
    const list = drawList(random);
    if (hasSizesApart(list.panels)) micrometreApart += 1;
    const { job, refused } = jobOfList(list, random);
    if (refused.includes('panel-too-large')) tooLarge += 1;
    if (job === null) continue;
    jobs += 1;
    if (list.saw.kerfUm % 100 !== 0) kerfByMicrometre += 1;
    for (const name of missing) if (job.groups.some(AWKWARD[name]!)) missing.delete(name);
  }
  expect([...missing]).toEqual([]);
  expect(kerfByMicrometre).toBeGreaterThan(10);
  expect(micrometreApart).toBeGreaterThan(10);
  expect(tooLarge).toBeGreaterThan(10);
  expect(jobs).toBeGreaterThan(600);
});

/** Whether two rows of a list differ by a thousandth of a millimetre. */
function hasSizesApart(panels: string): boolean {
  const lengths = panels
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => Math.round(Number(line.split(',')[1]) * 1000));
  return lengths.some((one, index) => lengths.slice(index + 1).some((other) => Math.abs(one - other) === 1));
}
