import type { SeededRandom } from '../../src/basics/random.ts';
import { makeStockGroups } from '../../src/demands/index.ts';
import { matchLists, readPanelList, readSheetList } from '../../src/lists/index.ts';
import type { Part } from '../../src/model/part.ts';
import type { Job } from '../../src/pipeline/job.ts';
import type { SawWithTrim } from '../../src/pipeline/prepareList.ts';

/** Plain lists as a person would hand them in, and the saw they are meant for. */
export interface RandomList {
  readonly panels: string;
  readonly sheets: string;
  readonly saw: SawWithTrim;
  /** How many rows of matched fronts are added, which plain lists have no column for. */
  readonly rows: number;
}

const SHEETS = [
  [2500, 1250],
  [2440, 1220],
  [2520, 1720],
  [1525, 1525],
  [3050, 1300],
  [997, 991],
] as const;
const PRIMES = [53, 97, 101, 199, 293, 397, 499, 601, 797, 997, 1201, 1499, 1999];

function pick<T>(random: SeededRandom, all: readonly T[]): T {
  return all[random.below(all.length)]!;
}

function drawSaw(random: SeededRandom): SawWithTrim {
  // Kerf and trims are rounded up to whole tenths of a millimetre: with a micrometre more, what fitted does not any more.
  const trim = () => pick(random, [0, 0, 1_000, 10_000, 12_500, 10_001]);
  const even = trim();
  const unequal = random.below(3) === 0;
  return {
    name: 'test saw',
    kerfUm: pick(random, [0, 100, 2_200, 3_200, 3_200, 3_201, 3_199, 4_400, 60_000]),
    firstCut: pick(random, ['rip', 'crosscut', 'either', 'either']),
    turns: pick(random, [null, null, null, 1, 2, 3]),
    smallestPartUm: pick(random, [0, 0, 50_000]),
    leastOffcut: { lengthUm: 400_000, widthUm: 200_000 },
    longestCutUm: pick(random, [null, null, null, null, null, 2_510_000, 1_500_000]),
    cuttingHeightUm: pick(random, [null, 45_000, 60_000]),
    trimUm: unequal
      ? { left: trim(), right: trim(), near: trim(), far: trim() }
      : { left: even, right: even, near: even, far: even },
  };
}

/**
 * Sizes that programs go wrong on: as large as the sheet or what its trims leave, that less a kerf, a tenth or a
 * thousandth of a millimetre more or less, a half or a third of it with kerfs between, primes, narrower than the kerf.
 */
function drawSize(
  random: SeededRandom,
  whole: number,
  trims: number,
  kerf: number,
  tooLarge: boolean,
): number {
  const clear = whole - trims;
  const hair = pick(random, tooLarge ? [-0.001, 0, 0.001, 0.1] : [-0.1, -0.001, 0, 0, 0]);
  const parts = 2 + random.below(4);
  switch (random.below(9)) {
    case 0:
      return (tooLarge && random.below(4) === 0 ? whole : clear) + hair;
    case 1:
      return clear - kerf + hair;
    case 2:
    case 3:
      return Math.floor(((clear - (parts - 1) * kerf) / parts) * 10) / 10 + hair;
    case 4:
      return pick(random, PRIMES);
    case 5:
      return Math.max(0.1, kerf + hair - random.below(2));
    case 6:
      return 300 + hair;
    default:
      return (500 + random.below(9_000)) / 10;
  }
}

/** Draws a list; how hard it is to nest is kept small, how awkward it is not: few lists are long, one in 200 very long. */
export function drawList(random: SeededRandom): RandomList {
  const saw = drawSaw(random);
  const priced = random.below(2) === 0;
  const grained = random.below(2) === 0;
  const thickness = pick(random, [15, 15, 21.6]);
  const [length, width] = pick(random, SHEETS);
  const sheets = ['name,length,width,grain,count,price,thickness', sheetLine('large', length, width)];
  if (random.below(2) === 0) {
    const [otherLength, otherWidth] = pick(random, SHEETS);
    const count = pick(random, ['', '', '1', '3']);
    sheets.push(sheetLine('other', otherLength, otherWidth, count));
  }
  if (random.below(4) === 0) sheets.push(sheetLine('rest', 900, 700, '2'));

  function sheetLine(name: string, long: number, wide: number, count = ''): string {
    const grain = grained ? pick(random, ['length', 'length', 'width']) : 'none';
    const price = priced ? pick(random, ['60', '79.95', '0.01']) : '';
    return [name, long, wide, grain, count, price, thickness].join(',');
  }

  const kerf = saw.kerfUm / 1000;
  // Most lists fit by a hair, since one that does not is refused as a whole.
  const tooLarge = random.below(6) === 0;
  const alike = random.below(200) === 0;
  const panels = ['name,length,width,count,grain,thickness'];
  const kinds = alike ? 1 : 1 + random.below(pick(random, [2, 4, 4, 10]));
  for (let kind = 1; kind <= kinds; kind++) {
    const count = alike ? 1000 + random.below(3000) : pick(random, [1, 1, 1, 2, 2, 3, 4, 7, 24]);
    const strip = random.below(10) === 0;
    const size: [number, number] = alike
      ? [97 + random.below(60), 53 + random.below(40)]
      : [
          strip && random.below(2) === 0
            ? length - (saw.trimUm.left + saw.trimUm.right) / 1000
            : drawSize(random, length, (saw.trimUm.left + saw.trimUm.right) / 1000, kerf, tooLarge),
          strip
            ? pick(random, [3, 12, 50, 50.1])
            : drawSize(random, width, (saw.trimUm.near + saw.trimUm.far) / 1000, kerf, tooLarge),
        ];
    if (random.below(tooLarge ? 4 : 12) === 0) size.reverse();
    const grain = pick(random, ['none', 'none', 'none', 'none', 'length', tooLarge ? 'width' : 'length']);
    const line = (name: string, more: number) =>
      panels.push([name, ...size.map((one) => (one + more).toFixed(3)), count, grain, thickness].join(','));
    line(`panel ${kind}`, 0);
    // Sizes that a micrometre or a tenth of a millimetre tells apart.
    if (!alike && random.below(12) === 0) line(`panel ${kind} again`, pick(random, [-0.001, 0.001, -0.1]));
  }
  const rows = random.below(3) === 0 ? 1 + random.below(3) : 0;
  return { panels: `${panels.join('\n')}\n`, sheets: `${sheets.join('\n')}\n`, saw, rows };
}

/** The lists as a job, or null with the codes of what they were refused for. */
export function jobOfList(list: RandomList, random: SeededRandom): { job: Job | null; refused: string[] } {
  const parts = readPanelList(list.panels, 'panels.csv');
  const supplies = readSheetList(list.sheets, 'sheets.csv');
  if (!parts.ok || !supplies.ok)
    return { job: null, refused: [...parts.findings, ...supplies.findings].map(({ code }) => code) };
  const matched = matchLists(parts.value, supplies.value, { panels: 'panels.csv', sheets: 'sheets.csv' });
  if (!matched.ok) return { job: null, refused: matched.findings.map(({ code }) => code) };
  const rows = Array.from({ length: list.rows }, (_, row) => drawRow(random, matched.value.parts[0]!, row));
  const stock = makeStockGroups([...matched.value.parts, ...rows.flat()], matched.value.sheets, list.saw);
  const errors = stock.findings.filter(({ severity }) => severity === 'error').map(({ code }) => code);
  if (errors.length > 0) return { job: null, refused: errors };
  return {
    job: { name: 'random', title: 'Random list', currency: 'EUR', groups: stock.groups },
    refused: [],
  };
}

/** A row of fronts of one board, the first as wide as any. */
function drawRow(random: SeededRandom, like: Part, row: number): Part[] {
  const follows = pick(random, ['length', 'width'] as const);
  const across = 2000 + random.below(2500);
  const count = 1 + random.below(3);
  return Array.from({ length: 2 + random.below(3) }, (_, position) => {
    const along = 1000 + random.below(2500);
    const narrower = across - (position > 0 && random.below(3) === 0 ? random.below(across - 600) : 0);
    const [length, width] = follows === 'length' ? [along, narrower] : [narrower, along];
    return {
      ...like,
      id: `row ${row} front ${position}`,
      name: `front ${position}`,
      cutLengthUm: length * 100,
      cutWidthUm: width * 100,
      finishedLengthUm: length * 100,
      finishedWidthUm: width * 100,
      grain: 'length',
      count,
      match: { run: `row ${row}`, position, follows },
    };
  });
}
