import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { plywright, projectFolder } from './plywright.ts';

const order = join(projectFolder, 'parts-libraries/demo-van/orders/demo-short.yaml');
const bench = join(projectFolder, 'parts-libraries/workshop-bench/orders/garage-bench.yaml');
const folder = temporaryFolder();

async function panelsOf(...args: string[]): Promise<string> {
  const run = await plywright(folder, ['panels', ...args, '--csv']);
  expect(run.code, run.stderr).toBe(0);
  return run.stdout;
}

it('tries an order otherwise, by an option or a file that stands on it', async () => {
  mkdirSync(join(folder, 'mine'), { recursive: true });
  writeFileSync(join(folder, 'mine/base.yaml'), readFileSync(order));
  writeFileSync(
    join(folder, 'mine/slate-table.yaml'),
    'variant of: base.yaml\ntitle: Slate table\nchoices: { bed_width: 1230 }\nroles: { table: { finish: slate } }\n',
  );
  const plain = await panelsOf('mine/base.yaml');
  const variant = await panelsOf('mine/slate-table.yaml');
  expect(variant).not.toBe(plain);
  const set = ['bed_width=1230', 'table.finish=slate'];
  expect(await panelsOf('mine/base.yaml', ...set.flatMap((each) => ['--set', each]))).toBe(variant);
  expect(await panelsOf('mine/slate-table.yaml', '--set', 'bed_width=1240')).not.toBe(variant);
});

it('cuts it into a folder of its own, so that nobody saws by the wrong one', async () => {
  const cut = ['cut', order, '--work', '1', '--threads', '1', '--set', 'bed_width=1230'];
  const run = await plywright(folder, cut);
  expect(run.code, run.stderr).toBe(0);
  expect(readdirSync(join(folder, 'out'))).toEqual(['demo-short-what-if']);
  const plan = readFileSync(join(folder, 'out/demo-short-what-if/plan.json'), 'utf8');
  expect(plan).toContain('bed_width=1230');
});

it('tells what is wrong with a setting or a variant as it does of an order', async () => {
  const wrong = await plywright(folder, ['check', order, '--set', 'bed_wdth=1230']);
  expect(wrong.code).toBe(1);
  expect(wrong.stdout).toMatch(/--set bed_wdth=1230[\s\S]*bed_width/);
  writeFileSync(join(folder, 'a.yaml'), 'variant of: b.yaml\n');
  writeFileSync(join(folder, 'b.yaml'), 'variant of: a.yaml\n');
  const circle = await plywright(folder, ['check', 'a.yaml']);
  expect([circle.code, circle.stdout]).toEqual([1, expect.stringContaining('on no order')]);
  writeFileSync(join(folder, 'lost.yaml'), 'variant of: bb.yaml\n');
  const lost = await plywright(folder, ['check', 'lost.yaml']);
  expect([lost.code, lost.stdout]).toEqual([4, expect.stringMatching(/bb\.yaml[\s\S]*b\.yaml/)]);
  const list = await plywright(folder, ['cut', '--panels', 'a.csv', '--sheets', 'b.csv', '--set', 'a=1']);
  expect([list.code, list.stderr]).toEqual([2, expect.stringContaining('--set goes with an order')]);
});

it('tells what a setting means for a sawn order', async () => {
  const run = await plywright(folder, ['diff', bench, '--set', 'desk.depth=600', '--work', '1', '--json']);
  expect(run.code, run.stderr).toBe(0);
  const told = JSON.parse(run.stdout) as { before: string; after: string; panels: { change: string }[] };
  expect([told.before, told.after]).toEqual(['garage-bench', 'garage-bench-what-if']);
  expect(told.panels.some(({ change }) => change === 'changed')).toBe(true);
});
