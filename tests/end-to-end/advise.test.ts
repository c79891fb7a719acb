import { expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { plankFiles, plankOrder } from '../helpers/plankLibrary.ts';
import { writeFiles } from './lists.ts';
import { plywright } from './plywright.ts';

const folder = temporaryFolder();
const order = 'planks.yaml';
// Four of 297 mm lie across a sheet, and two of 1238 mm along it, as tests/advising/planted.test.ts reckons.
const text = plankOrder({ length: 1238, depth: 300, rows: 8 });
writeFiles(folder, {
  ...Object.fromEntries(plankFiles()),
  [order]: text.replace('library: small', 'library: libraries/small'),
});

it('advises a change that saves what cutting the changed order takes less', async () => {
  const limits = ['--work', '100', '--json'];
  const run = await plywright(folder, ['advise', order, '--may', 'planks.depth=290..310', ...limits]);
  expect(run.code, run.stderr).toBe(0);
  const told = JSON.parse(run.stdout);
  expect(told.advice.length).toBe(1);
  const [{ settings, plan, sheets }] = told.advice;
  // The planks is 650 mm deep: the nearest value that saves goes before those beyond it.
  expect(settings).toEqual(['planks.depth=297']);
  expect(sheets).toMatchObject([{ board: 'poplar-15', sheetsBefore: 2, sheetsAfter: 1 }]);
  const cut = async (...set: string[]) => {
    const ended = await plywright(folder, ['cut', order, ...set, ...limits]);
    expect(ended.code, ended.stderr).toBe(0);
    const groups: { sheetCount: number; cost: number }[] = JSON.parse(ended.stdout).groups;
    return groups.reduce(
      (sum, { sheetCount, cost }) => ({ sheets: sum.sheets + sheetCount, cost: sum.cost + cost }),
      { sheets: 0, cost: 0 },
    );
  };
  const [before, after] = [await cut(), await cut('--set', settings[0])];
  expect([told.now.sheets, told.now.sheetsCostMinor]).toEqual([before.sheets, before.cost]);
  expect([plan.sheets, plan.sheetsCostMinor]).toEqual([after.sheets, after.cost]);
  expect(after.cost).toBeLessThan(before.cost);
});

it('says what is wrong with limits, with the nearest right word', async () => {
  const wrong = await plywright(folder, [
    'advise',
    order,
    '--may',
    'planks.dept=520..540',
    '--may',
    'plank.depth=1..2',
  ]);
  expect([wrong.code, wrong.stdout]).toEqual([1, '']);
  expect(wrong.stderr).toMatch(/--may planks\.dept=520\.\.540[\s\S]*depth/);
  expect(wrong.stderr).toMatch(/--may plank\.depth=1\.\.2[\s\S]*planks/);
  for (const [text, words] of [
    ['planks.depth=540..520', 'with its limits'],
    ['planks.depth', 'with its limits'],
    ['planks.depth=1..90000/0.1', 'at most 2000 values'],
  ] as const) {
    const run = await plywright(folder, ['advise', order, '--may', text]);
    expect([run.code, run.stderr]).toEqual([2, expect.stringContaining(words)]);
  }
});
