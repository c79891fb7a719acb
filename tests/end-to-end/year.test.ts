import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { plankFiles, plankOrder } from '../helpers/plankLibrary.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { writeFiles } from './lists.ts';
import { plywright } from './plywright.ts';

const folder = temporaryFolder();
writeFiles(folder, {
  ...Object.fromEntries(plankFiles()),
  'orders/planks.yaml': plankOrder({ length: 1238, depth: 297, rows: 4 }).replace(
    'library: small',
    'library: ../libraries/small',
  ),
  'year.yaml': `title: A year of planks
cut together: 2
keep offcuts: { most: 0 }
orders:
  - { order: orders/planks.yaml, weeks: [1, 30, 30, 40] }
  - { order: orders/planks.yaml, count: 2, set: [planks.rows=8] }
`,
});

it('simulates a year, tells it and writes its lists, the same again', async () => {
  const run = await plywright(folder, ['year', 'year.yaml', '--runs', '2', '--csv', 'lists']);
  expect(run.code, run.stderr).toBe(0);
  expect(run.stdout).toContain('A year of planks\n6 orders in 52 weeks, 2 runs (seeds 1 to 2)');
  expect(run.stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
  const sheets = readCsv(readFileSync(join(folder, 'lists/year-sheets.csv'), 'utf8'));
  // Eight planks fill a sheet, so that halves of weeks 1 and 40 take one each and those of week 30 one between them,
  // whatever is cut with them.
  expect(sheets.map(({ seed, panels, sheets: count }) => [seed, panels, count])).toEqual([
    ['1', '32', '5'],
    ['2', '32', '5'],
  ]);
  const again = await plywright(folder, ['year', 'year.yaml', '--runs', '2', '--csv', 'lists']);
  expect([again.code, again.stdout]).toEqual([0, run.stdout]);
  const json = await plywright(folder, ['year', 'year.yaml', '--runs', '2', '--json']);
  expect(JSON.parse(json.stdout)).toMatchObject({
    ok: true,
    summary: { orders: 6, sheets: { least: 5, mean: 5, most: 5, deviation: 0 } },
    runs: [{ seed: 1 }, { seed: 2, taken: [{ board: 'poplar-15', sheets: 5, sheetAreaM2: 15.25 }] }],
  });
});

it('says what is wrong with a mix or an order of it, and writes nothing', async () => {
  writeFiles(folder, {
    'wrong.yaml': 'title: A\norders:\n  - { order: orders/planks.yaml, cont: 2 }\n',
    'lost.yaml': 'title: A\norders:\n  - { order: orders/plank.yaml }\n',
    'set.yaml': 'title: A\norders:\n  - { order: orders/planks.yaml, set: [planks.row=2] }\n',
  });
  const wrong = await plywright(folder, ['year', 'wrong.yaml', '--csv', 'none']);
  expect([wrong.code, wrong.stderr]).toEqual([
    1,
    expect.stringMatching(/wrong\.yaml[\s\S]*cont[\s\S]*count/),
  ]);
  const lost = await plywright(folder, ['year', 'lost.yaml', '--csv', 'none']);
  expect([lost.code, lost.stderr]).toEqual([4, expect.stringMatching(/plank\.yaml/)]);
  const set = await plywright(folder, ['year', 'set.yaml', '--csv', 'none']);
  expect([set.code, set.stderr]).toEqual([1, expect.stringMatching(/planks\.row=2[\s\S]*rows/)]);
  expect(existsSync(join(folder, 'none'))).toBe(false);
});
