import { join } from 'node:path';
import { expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { plywright, projectFolder } from './plywright.ts';

const bench = join(projectFolder, 'parts-libraries/workshop-bench/orders/garage-bench.yaml');
const folder = temporaryFolder();

it('advises a change that saves what cutting the changed order takes less', async () => {
  const limits = ['--work', '100', '--json'];
  const run = await plywright(folder, ['advise', bench, '--may', 'desk.depth=520..540/10', ...limits]);
  expect(run.code, run.stderr).toBe(0);
  const told = JSON.parse(run.stdout);
  expect(told.advice.length).toBe(1);
  const [{ settings, plan, sheets }] = told.advice;
  // The desk is 650 mm deep: the nearest value that saves goes before those beyond it.
  expect(settings).toEqual(['desk.depth=530']);
  expect(sheets).toMatchObject([{ board: 'beech-30', sheetsBefore: 2, sheetsAfter: 1 }]);
  const cut = async (...set: string[]) => {
    const ended = await plywright(folder, ['cut', bench, ...set, ...limits]);
    expect(ended.code, ended.stderr).toBe(0);
    const groups: { sheetCount: number; cost: number }[] = JSON.parse(ended.stdout).jobs[0].groups;
    return groups.reduce(
      (sum, { sheetCount, cost }) => ({ sheets: sum.sheets + sheetCount, cost: sum.cost + cost }),
      { sheets: 0, cost: 0 },
    );
  };
  const [before, after] = [await cut(), await cut('--set', settings[0])];
  expect([told.now.sheets, told.now.sheetsCostMinor]).toEqual([before.sheets, before.cost]);
  expect([plan.sheets, plan.sheetsCostMinor]).toEqual([after.sheets, after.cost]);
  expect(after.cost).toBeLessThan(before.cost);
  // The board of the desk's top is bought for it alone.
  expect(told.panels[0]).toMatchObject({ board: 'beech-30', unit: 'desk', panels: ['top'], sheetsAfter: 1 });
  expect(told.sizes.map(({ board }: { board: string }) => board)).toContain('birch-18');
});

it('says what is wrong with limits, with the nearest right word', async () => {
  const wrong = await plywright(folder, [
    'advise',
    bench,
    '--may',
    'desk.dept=520..540',
    '--may',
    'dek.depth=1..2',
  ]);
  expect([wrong.code, wrong.stdout]).toEqual([1, '']);
  expect(wrong.stderr).toMatch(/--may desk\.dept=520\.\.540[\s\S]*depth/);
  expect(wrong.stderr).toMatch(/--may dek\.depth=1\.\.2[\s\S]*desk/);
  for (const [text, words] of [
    ['desk.depth=540..520', 'with its limits'],
    ['desk.depth', 'with its limits'],
    ['desk.depth=1..90000/0.1', 'at most 2000 values'],
  ] as const) {
    const run = await plywright(folder, ['advise', bench, '--may', text]);
    expect([run.code, run.stderr]).toEqual([2, expect.stringContaining(words)]);
  }
});
