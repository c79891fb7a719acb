import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { type Ended, plywright, plywrightAlone, projectFolder } from './plywright.ts';

const order = (name: string) => join(projectFolder, `parts-libraries/demo-van/orders/${name}.yaml`);

function filesOf(folder: string): Record<string, string> {
  const files = readdirSync(folder, { withFileTypes: true, recursive: true }).filter((e) => e.isFile());
  const paths = files.map((e) => join(e.parentPath, e.name)).sort();
  return Object.fromEntries(paths.map((path) => [path.slice(folder.length), readFileSync(path, 'utf8')]));
}

interface Told {
  readonly groups: readonly (Readonly<Record<string, unknown>> & {
    readonly panels: number;
    readonly sheetCount: number;
    readonly bound: number;
    readonly proved: boolean;
    readonly cost: number;
    readonly boundCost: number;
  })[];
}

describe('the demo orders', () => {
  const folder = temporaryFolder();
  let run: Ended;
  let told: Told;

  beforeAll(async () => {
    run = await plywrightAlone(folder, ['cut', order('demo-long'), order('demo-short')]);
  });

  it('are cut together, each into its own folder', () => {
    expect(run.code, run.stderr).toBe(0);
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(['demo-long', 'demo-short']);
    expect(run.stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
  });

  it('give the same bytes again, each alone and with one thread', async () => {
    for (const name of ['demo-long', 'demo-short']) {
      const alone = ['cut', order(name), '--out', 'again', '--threads', '1', '--json'];
      const again = await plywright(folder, alone);
      expect(again.code, again.stderr).toBe(0);
      if (name === 'demo-long') told = JSON.parse(again.stdout);
      expect(filesOf(join(folder, 'again', name))).toEqual(filesOf(join(folder, 'out', name)));
    }
  });

  it('hold a whole interior: 60 to 120 panels in four stock groups or more', () => {
    const panels = told.groups.reduce((sum, group) => sum + group.panels, 0);
    expect(panels).toBeGreaterThanOrEqual(60);
    expect(panels).toBeLessThanOrEqual(120);
    expect(told.groups.length).toBeGreaterThanOrEqual(4);
    for (const group of told.groups) {
      for (const word of [
        'board',
        'finish',
        'thickness',
        'panels',
        'sheetCount',
        'bound',
        'proved',
        'yield',
        'seconds',
      ]) {
        expect(group).toHaveProperty(word);
      }
      expect(group.sheetCount).toBeGreaterThanOrEqual(group.bound);
      if (group.proved) expect(group.cost).toBe(group.boundCost);
    }
  });

  it('have no date, time or path of this machine in their papers', () => {
    for (const text of Object.values(filesOf(join(folder, 'out')))) {
      expect(text).not.toContain(projectFolder);
      expect(text).not.toContain(String(new Date().getFullYear()));
    }
  });

  it('have plans that replay', async () => {
    for (const name of ['demo-long', 'demo-short']) {
      expect((await plywright(folder, ['replay', `out/${name}/plan.json`])).code).toBe(0);
    }
  });

  it('print their panels as a table, as CSV and as JSON', async () => {
    const table = await plywright(folder, ['panels', order('demo-long')]);
    expect(table.code).toBe(0);
    expect(table.stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
    const { panels } = JSON.parse((await plywright(folder, ['panels', order('demo-long'), '--json'])).stdout);
    const csv = await plywright(folder, ['panels', order('demo-long'), '--csv']);
    expect(csv.stdout.trimEnd().split('\r\n')).toHaveLength(panels.length + 1);
    const plan = JSON.parse(readFileSync(join(folder, 'out/demo-long/plan.json'), 'utf8'));
    const listed = plan.groups.flatMap((g: { panels: unknown[] }) => g.panels);
    expect(panels).toHaveLength(listed.length);
  });

  it('are found right by check, as is their library', async () => {
    for (const path of [
      order('demo-long'),
      order('demo-short'),
      join(projectFolder, 'parts-libraries/demo-van'),
    ]) {
      expect(await plywright(folder, ['check', path])).toMatchObject({ code: 0, stderr: '' });
    }
  });

  it('are checked with their library, as is every formula in it, used or not', async () => {
    const library = join(folder, 'copy');
    cpSync(join(projectFolder, 'parts-libraries/demo-van'), library, { recursive: true });
    const unit = join(library, 'units/wardrobe.yaml');
    writeFileSync(unit, readFileSync(unit, 'utf8').replace('names:\n', 'names:\n  unused: (width\n'));
    writeFileSync(
      join(library, 'orders/demo-short.yaml'),
      readFileSync(order('demo-short'), 'utf8').replace('layout: rear-bed', 'layout: rear-bet'),
    );
    const run = await plywright(folder, ['check', 'copy']);
    expect(run.code).toBe(1);
    expect(run.stdout).toContain('copy/units/wardrobe.yaml');
    expect(run.stdout).toContain('nearest: rear-bed');
  });
});
