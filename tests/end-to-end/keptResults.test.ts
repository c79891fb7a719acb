import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { plankFiles, plankOrder } from '../helpers/plankLibrary.ts';
import { writeFiles } from './lists.ts';
import { plywright } from './plywright.ts';

const folder = temporaryFolder();
const order = 'planks.yaml';
writeFiles(folder, {
  ...Object.fromEntries(plankFiles()),
  [order]: plankOrder({ length: 1238, depth: 300, rows: 8 }).replace(
    'library: small',
    'library: libraries/small',
  ),
});
const asked = [order, '--vary', 'planks.depth=297,300', '--work', '100'];

function kept(cache: string): number {
  const path = join(folder, cache);
  if (!existsSync(path)) return 0;
  return readdirSync(path, { recursive: true }).filter((file) => String(file).endsWith('.json')).length;
}

async function run(args: readonly string[]): Promise<string> {
  const ended = await plywright(folder, args);
  expect(ended.code, ended.stderr).toBe(0);
  return ended.stdout;
}

const compared = ['compare', ...asked, '--json', '--cache', 'kept'];
let first: string;

beforeAll(async () => {
  first = await run(compared);
});

it('keeps results for another comparison, each under its own name', async () => {
  expect(kept('kept')).toBe(2);
  expect(await run(compared)).toBe(first);
  const names: readonly string[] = JSON.parse(first).designs.map(({ name }: { name: string }) => name);
  expect(names).toEqual(['planks, planks.depth=297', 'planks, planks.depth=300']);
});

it('keeps results of a comparison for a sweep', async () => {
  const swept = await run(['sweep', ...asked, '--json', '--cache', 'kept']);
  expect(kept('kept')).toBe(2);
  expect(swept).toBe(await run(['sweep', ...asked, '--json', '--cache', 'other']));
});

it('keeps nothing that depends on the clock, and compares all the same where nothing can be kept', async () => {
  await run(['compare', order, '--time', '1', '--cache', 'clock']);
  expect(kept('clock')).toBe(0);
  const ended = await plywright(folder, ['compare', order, '--work', '100', '--cache', order]);
  expect([ended.code, ended.stderr]).toEqual([0, expect.stringContaining('--cache')]);
  expect(ended.stdout).toContain('sheets');
});
