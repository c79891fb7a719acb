import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { JSDOM } from 'jsdom';
import { beforeAll, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { type Ended, plywright, projectFolder, start } from './plywright.ts';

const bench = join(projectFolder, 'parts-libraries/workshop-bench/orders/garage-bench.yaml');
const folder = temporaryFolder();
const asked = ['sweep', bench, '--vary', 'bench_width=2200..2500/100', '--work', '20', '--threads', '1'];

interface Told {
  readonly points: readonly {
    readonly values: readonly string[];
    readonly result: {
      readonly ok: boolean;
      readonly refused?: string;
      readonly design?: Record<string, unknown>;
    };
  }[];
}

function kept(cache: string): string[] {
  const path = join(folder, cache);
  if (!existsSync(path)) return [];
  return readdirSync(path, { recursive: true })
    .map(String)
    .filter((file) => file.endsWith('.json'));
}

let whole: Ended;

beforeAll(async () => {
  whole = await plywright(folder, [...asked, '--json', '--cache', 'two', '--out', 'whole']);
});

it('goes on after it was killed, and says the same bytes', async () => {
  const killed = start(folder, [...asked, '--json', '--cache', 'one']);
  while (kept('one').length < 1 && killed.child.exitCode === null) await wait(20);
  killed.child.kill('SIGKILL');
  await killed.ended;
  const before = kept('one').length;
  expect(before).toBeLessThan(4);
  const resumed = await plywright(folder, [...asked, '--json', '--cache', 'one', '--out', 'resumed']);
  expect([resumed.code, whole.code]).toEqual([0, 0]);
  expect(resumed.stdout).toBe(whole.stdout);
  const csv = (name: string) => readFileSync(join(folder, name, 'sweep.csv'), 'utf8');
  expect(csv('resumed')).toBe(csv('whole'));
  const page = readFileSync(join(folder, 'whole/sweep.html'), 'utf8');
  expect(page).toBe(readFileSync(join(folder, 'resumed/sweep.html'), 'utf8'));
  const { document } = new JSDOM(page).window;
  expect(document.querySelectorAll('figure svg.plot')).toHaveLength(3);
  expect(document.querySelectorAll('tbody tr')).toHaveLength(4);
  expect(document.querySelectorAll('script, link, img, [style], svg style')).toHaveLength(0);
  expect(kept('one').sort()).toEqual(kept('two').sort());
  const { points } = JSON.parse(whole.stdout) as Told;
  expect(points).toHaveLength(4);
  expect(points.filter(({ result }) => !result.ok).map(({ values }) => values)).toEqual([['2500']]);
  expect(readCsv(csv('whole')).at(-1)?.['refused']).toMatch(/2400/);
});

it('has the figures of plywright cut, from the cache too, and does not trust a torn file', async () => {
  const cut = await plywright(folder, ['cut', bench, '--set', 'bench_width=2300', '--work', '20', '--json']);
  const { groups } = JSON.parse(cut.stdout) as { groups: Record<string, unknown>[] };
  for (const file of kept('one').slice(0, 2)) writeFileSync(join(folder, 'one', file), '{"torn');
  const run = await plywright(folder, [...asked, '--json', '--cache', 'one']);
  const point = (JSON.parse(run.stdout) as Told).points[1]!;
  expect(point.values).toEqual(['2300']);
  const own = point.result.design!['groups'] as Record<string, unknown>[];
  expect(own.map(({ sheets }) => sheets)).toEqual(groups.map(({ sheetCount }) => sheetCount));
  expect(own.map(({ leastSheets }) => leastSheets)).toEqual(groups.map(({ bound }) => bound));
  expect(own.map(({ costMinor }) => costMinor)).toEqual(groups.map(({ cost }) => cost));
});

it('keeps nothing of one seed or order for another', async () => {
  await plywright(folder, [...asked, '--seed', '2', '--cache', 'two']);
  expect(kept('two')).toHaveLength(8);
});

it.each([
  [['sweep', bench], 2, '--vary'],
  [['sweep', bench, '--vary', 'bench_wdth=1900..2000/50'], 1, 'bench_width'],
  [['sweep', bench, '--vary', 'a=1', '--vary', 'b=1', '--vary', 'c=1'], 2, 'twice'],
  [[...asked, '--cache', bench], 4, '--cache'],
] as const)('tells %j', async (args, code, text) => {
  const run = await plywright(folder, args);
  expect([run.code, run.stderr]).toEqual([code, expect.stringContaining(text)]);
});
