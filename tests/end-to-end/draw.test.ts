import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { plywright, projectFolder } from './plywright.ts';

const demo = join(projectFolder, 'parts-libraries/demo-van');
const order = join(demo, 'orders/demo-short.yaml');

describe('plywright draw', () => {
  it('writes the layout and every unit of an order, and the same again', async () => {
    const folder = temporaryFolder();
    const run = await plywright(folder, ['draw', order]);
    expect(run.code).toBe(0);
    const drawings = join(folder, 'out/demo-short/drawings');
    const names = readdirSync(drawings).filter((name) => name.endsWith('.svg'));
    expect(names).toEqual(expect.arrayContaining(['layout.svg', 'bed-base.svg', 'bed-base-page-2.svg']));
    const before = names.map((name) => readFileSync(join(drawings, name), 'utf8'));
    for (const svg of before) expect(svg).toMatch(/^<\?xml [\s\S]*<\/svg>\n$/);
    expect((await plywright(folder, ['draw', order])).code).toBe(0);
    expect(names.map((name) => readFileSync(join(drawings, name), 'utf8'))).toEqual(before);
  });

  it('leaves room for the papers of the same order, which leave the drawings where they are', async () => {
    const folder = temporaryFolder();
    const bench = join(projectFolder, 'parts-libraries/workshop-bench/orders/garage-bench.yaml');
    expect((await plywright(folder, ['draw', bench])).code).toBe(0);
    const cut = await plywright(folder, ['cut', bench, '--work', '1']);
    expect(cut.code, cut.stderr).toBe(0);
    for (const name of ['plan.json', 'drawings/layout.svg']) {
      expect(existsSync(join(folder, 'out/garage-bench', name)), name).toBe(true);
    }
    expect((await plywright(folder, ['draw', bench])).code).toBe(0);
    expect((await plywright(folder, ['cut', bench, '--work', '1'])).code).toBe(0);
  });

  it('draws all units of a library as the page of units shows them', async () => {
    const folder = temporaryFolder();
    const run = await plywright(folder, ['draw', '--all-units', '--library', 'workshop-bench', '--json']);
    expect(run.code, run.stderr).toBe(0);
    const { files } = JSON.parse(run.stdout) as { files: string[] };
    expect(files).toEqual(['out/workshop-bench/drawings/units.svg']);
    expect(readFileSync(join(folder, files[0]!), 'utf8')).toBe(
      readFileSync(join(projectFolder, 'tests/pictures/golden/units-for-a-workshop-1.svg'), 'utf8'),
    );
  });

  it('draws one unit by itself with its parameters set', async () => {
    const folder = temporaryFolder();
    const asked = [
      'draw',
      '--unit',
      'base-cupboard',
      '--library',
      demo,
      '--set',
      'width=450',
      '--set',
      'hand=right',
    ];
    const run = await plywright(folder, [...asked, '--out', 'jobs', '--json']);
    expect(run.code).toBe(0);
    const { files } = JSON.parse(run.stdout) as { files: string[] };
    expect(files).toEqual(
      ['base-cupboard.svg', 'base-cupboard-page-2.svg'].map((name) => `jobs/base-cupboard/drawings/${name}`),
    );
    expect(readFileSync(join(folder, files[0]!), 'utf8')).toContain('>450<');
  });

  it('draws in German and in inches where asked to', async () => {
    const folder = temporaryFolder();
    const wishes = ['--language', 'de', '--lengths', 'inches-32', '--set', 'width=508'];
    const run = await plywright(folder, ['draw', '--unit', 'base-cupboard', '--library', demo, ...wishes]);
    expect(run.code, run.stderr).toBe(0);
    const svg = readFileSync(join(folder, 'out/base-cupboard/drawings/base-cupboard.svg'), 'utf8');
    expect(svg).toContain('>Von links<');
    expect(svg).toContain('>20"<');
  });

  it.each([
    [['--unit', 'base-cupbord'], 'base-cupboard'],
    [['--unit', 'base-cupboard', '--set', 'wdth=450'], 'width'],
    [['--unit', 'base-cupboard', '--set', 'width=4500'], 'from 250 up to'],
    [['--unit', 'base-cupboard', '--set', 'hand=middle'], 'left, right'],
    [['--unit', 'base-cupboard', '--set', 'width=450 +'], 'width=450 +'],
  ])('says what is wrong with a unit and writes nothing: %j', async (asked, words) => {
    const folder = temporaryFolder();
    const run = await plywright(folder, ['draw', '--library', demo, ...asked]);
    expect(run.code).toBe(1);
    expect(run.stderr).toContain(words);
    expect(existsSync(join(folder, 'out'))).toBe(false);
  });

  it.each([
    [['draw'], 'give an order, or a unit'],
    [['draw', '--all-units', '--set', 'width=3'], 'belongs to an order or a unit'],
    [['draw', '--unit', 'a', '--set', 'width'], 'a name and a value'],
    [['draw', '--unit', 'a', '--all-units'], 'one of the two'],
  ])('is not understood without what it needs: %j', async (args, words) => {
    const run = await plywright(temporaryFolder(), args);
    expect(run.code).toBe(2);
    expect(run.stderr).toContain(words);
  });
});
