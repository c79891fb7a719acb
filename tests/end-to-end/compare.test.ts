import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { JSDOM } from 'jsdom';
import { beforeAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { plywright, projectFolder } from './plywright.ts';

const bench = join(projectFolder, 'parts-libraries/workshop-bench/orders/garage-bench.yaml');
const folder = temporaryFolder();
const few = ['--work', '100', '--threads', '1'];

interface Told {
  readonly designs: readonly (Record<string, unknown> & {
    readonly name: string;
    readonly groups: readonly Record<string, unknown>[];
  })[];
  readonly rows: readonly { figure: string; values: readonly (number | null)[] }[];
  readonly findings: readonly { code: string; message: string }[];
}

async function json<T>(args: readonly string[]): Promise<T> {
  const run = await plywright(folder, [...args, '--json']);
  expect(run.code, run.stderr).toBe(0);
  return JSON.parse(run.stdout) as T;
}

let told: Told;

beforeAll(async () => {
  writeFileSync(join(folder, 'bench.yaml'), readFileSync(bench));
  writeFileSync(
    join(folder, 'short-bench.yaml'),
    'variant of: bench.yaml\ntitle: "Short <b>bench</b>"\nchoices: { bench_width: 1500 }\n',
  );
  const orders = ['bench.yaml', 'short-bench.yaml', '--vary', 'wall_shelves=1,2'];
  told = await json(['compare', ...orders, ...few, '--out', 'designs']);
});

describe('plywright compare', () => {
  it('has a design for every order and value, each under its own name', () => {
    expect(told.designs.map(({ name }) => name)).toEqual([
      'bench, wall_shelves=1',
      'bench, wall_shelves=2',
      'short-bench, wall_shelves=1',
      'short-bench, wall_shelves=2',
    ]);
  });

  it('has the figures of plywright cut', async () => {
    type Cut = { groups: Record<string, unknown>[] };
    const cut = await json<Cut>(['cut', 'short-bench.yaml', '--set', 'wall_shelves=1', ...few]);
    const own = told.designs[2]!;
    const keys = ['board', 'finish', 'panels', 'proved', 'yield'];
    const pick = (group: Record<string, unknown>) => keys.map((key) => group[key]);
    expect(own.groups.map(pick)).toEqual(cut.groups.map(pick));
    expect(own.groups.map(({ sheets }) => sheets)).toEqual(cut.groups.map(({ sheetCount }) => sheetCount));
    expect(own.groups.map(({ leastSheets }) => leastSheets)).toEqual(cut.groups.map(({ bound }) => bound));
    expect(own.groups.map(({ costMinor }) => costMinor)).toEqual(cut.groups.map(({ cost }) => cost));
    const sawings = cut.groups.map((group) => group['sawings'] as Record<string, number>);
    const sum = (key: string) => sawings.reduce((total, each) => total + each[key]!, 0);
    expect([own['cuts'], own['fenceSettings']]).toEqual([sum('cuts'), sum('fenceSettings')]);
    const papers = join(folder, 'out/short-bench-what-if');
    const column = (list: string, key: string) =>
      readCsv(readFileSync(join(papers, `${list}.csv`), 'utf8')).map((row) => Number(row[key]));
    const total = (values: readonly number[]) => values.reduce((all, each) => all + each, 0);
    expect(own['edgingMetres']).toBeCloseTo(total(column('edging-to-buy', 'metres to buy')), 2);
    expect(own['furnitureKg']).toBeCloseTo(total(column('mass-by-unit', 'total')), 2);
    expect(own['leftKg']).toBeCloseTo(total(column('mass-by-unit', 'left')), 2);
    const offcuts = column('offcuts-kept', 'count');
    expect((own['offcuts'] as { count: number }).count).toBe(total(offcuts));
  });

  it('writes lists that say the same', () => {
    expect(readdirSync(join(folder, 'designs')).sort()).toEqual([
      '.plywright.json',
      'compared-designs.csv',
      'compared-sheets.csv',
      'comparison.html',
    ]);
    const rows = readCsv(readFileSync(join(folder, 'designs/compared-designs.csv'), 'utf8'));
    expect(rows.map(({ design }) => design)).toEqual(told.designs.map(({ name }) => name));
    expect(rows.map(({ panels }) => Number(panels))).toEqual(told.designs.map(({ panels }) => panels));
    const sheets = readCsv(readFileSync(join(folder, 'designs/compared-sheets.csv'), 'utf8'));
    expect(sheets).toHaveLength(told.designs.reduce((sum, { groups }) => sum + groups.length, 0));
  });

  it('writes a page that needs nothing and says whose every column is', () => {
    const html = readFileSync(join(folder, 'designs/comparison.html'), 'utf8');
    const { document } = new JSDOM(html).window;
    const heads = [...document.querySelectorAll('thead th')].map((head) => head.textContent);
    expect(heads).toEqual(['figure', ...told.designs.map(({ name }) => name)]);
    for (const row of document.querySelectorAll('tbody tr')) {
      expect(row.querySelectorAll('td')).toHaveLength(told.designs.length);
    }
    expect(document.querySelectorAll('.card svg')).toHaveLength(told.designs.length);
    expect(document.querySelectorAll('figure svg.plot').length).toBeGreaterThan(1);
    const policy = document.querySelector('meta[http-equiv]')!.getAttribute('content')!;
    const styles = [...document.querySelectorAll('style')].map((style) => style.textContent!);
    const hash = createHash('sha256').update(styles[0]!, 'utf8').digest('base64');
    expect(styles).toHaveLength(1);
    expect(policy).toContain(`style-src 'sha256-${hash}'`);
    expect(document.querySelectorAll('script, link, img, [style], [src], b')).toHaveLength(0);
    expect(html).not.toMatch(/https?:\/\/(?!www\.w3\.org\/)/);
  });

  it('compares layouts in every place they are drawn for, and tells which cannot be built', async () => {
    const asked = ['compare', '--library', 'workshop-bench', '--layouts', 'all', '--vehicles', 'all'];
    const layouts = await json<Told>([
      ...asked,
      '--set',
      'bench_width=2300',
      ...few,
      '--out',
      'rooms',
      '--language',
      'de',
    ]);
    const names = layouts.designs.map(({ name }) => name);
    const left = layouts.findings.filter(({ code }) => code === 'left-out');
    expect(names.length + left.length).toBe(2);
    expect(names).toContain('bench-and-desk-garage');
    const page = readFileSync(join(folder, 'rooms/comparison.html'), 'utf8');
    expect(page).toContain('<html lang="de">');
    expect(page).toContain('Entwürfe im Vergleich');
    const again = await plywright(folder, ['check', 'rooms/orders/bench-and-desk-garage.yaml']);
    expect(again.code, again.stdout).toBe(0);
  });

  it.each([
    [['compare'], 2, 'give order files'],
    [['compare', 'bench.yaml', '--vehicles', 'garage'], 2, 'goes with --layouts'],
    [['compare', 'bench.yaml', '--vary', 'x'], 2, 'FROM..TO/STEP'],
    [['compare', 'bench.yaml', '--set', 'bench_wdth=1'], 1, 'bench_width'],
    [['compare', '--library', 'workshop-bench', '--layouts', 'bench-and-dsk'], 1, 'bench-and-desk'],
    [['compare', 'bench.yaml', '--vary', 'bench_width=1,2'], 1, 'cannot be built'],
    [['compare', 'benhc.yaml'], 4, 'bench.yaml'],
  ] as const)('tells %j', async (args, code, text) => {
    const run = await plywright(folder, args);
    expect([run.code, run.stderr]).toEqual([code, expect.stringContaining(text)]);
  });
});
