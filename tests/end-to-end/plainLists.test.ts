import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { cutLists, panelList, sheetList, writeFiles } from './lists.ts';
import { type Ended, plywright, plywrightAlone } from './plywright.ts';

/** Every file under a folder with its text. */
function filesOf(folder: string): Record<string, string> {
  const entries = readdirSync(folder, { withFileTypes: true, recursive: true }).filter((e) => e.isFile());
  return Object.fromEntries(
    entries
      .map((e) => join(e.parentPath, e.name))
      .sort()
      .map((path) => [path.slice(folder.length + 1), readFileSync(path, 'utf8')]),
  );
}

describe('a plain list', () => {
  const folder = temporaryFolder();
  let run: Ended;

  beforeAll(async () => {
    writeFiles(folder, { 'panels.csv': panelList, 'sheets.csv': sheetList });
    run = await plywrightAlone(folder, cutLists);
  });

  it('is cut, with a summary that fits a terminal and says what its figures are of', () => {
    expect(run).toMatchObject({ code: 0, stderr: '' });
    expect(run.stdout).toContain('24 panels from 3 sheets');
    expect(run.stdout).toContain('proved best');
    expect(run.stdout).toContain('yield: area of the panels as sawn, of the area of the raw sheets');
    expect(run.stdout).toContain('Papers in out/panels/');
    expect(run.stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
    expect(run.stdout).not.toContain('\u001b');
  });

  it('gets its papers, and nothing else is left in the folder', () => {
    expect(readdirSync(folder).sort()).toEqual(['out', 'panels.csv', 'sheets.csv']);
    const papers = Object.keys(filesOf(join(folder, 'out/panels')));
    expect(papers.filter((path) => !path.startsWith('cut-plans/'))).toEqual([
      '.plywright.json',
      'cutting-list.csv',
      'edging-list.csv',
      'edging-to-buy.csv',
      'offcuts-kept.csv',
      'plan.json',
      'saw-steps.csv',
      'sheets-to-buy.csv',
    ]);
    expect(papers.filter((path) => /^cut-plans\/.*-\d+\.svg$/.test(path)).length).toBeGreaterThanOrEqual(2);
  });

  it('gives the same bytes for the same seed, however many threads there are', async () => {
    for (const [out, threads] of [
      ['one', '1'],
      ['two', '2'],
    ] as const) {
      const again = await plywright(folder, [...cutLists, '--out', out, '--threads', threads, '--seed', '1']);
      expect(again.code).toBe(0);
      expect(filesOf(join(folder, out))).toEqual(filesOf(join(folder, 'out')));
    }
  });

  it('gives the same bytes from two seeds, which much work is shared by, whichever thread has which', async () => {
    for (const threads of ['1', '2']) {
      const args = [...cutLists, '--out', `much-${threads}`, '--threads', threads, '--work', '400000'];
      expect((await plywright(folder, args)).code).toBe(0);
    }
    expect(filesOf(join(folder, 'much-2'))).toEqual(filesOf(join(folder, 'much-1')));
  });

  it('has a plan that replays', async () => {
    const replayed = await plywright(folder, ['replay', 'out/panels/plan.json']);
    expect(replayed).toMatchObject({ code: 0, stderr: '' });
    expect(replayed.stdout).toContain('The plan can be sawn');
  });

  it('has a plan in which no fence can be moved by 0.1 mm unseen: sheet and cut are named', async () => {
    const plan = JSON.parse(readFileSync(join(folder, 'out/panels/plan.json'), 'utf8'));
    const sheet = plan.groups[0].sheets[0];
    const step = sheet.steps.findIndex((s: { fence?: number }) => s.fence !== undefined);
    sheet.steps[step].fence = Math.round(sheet.steps[step].fence * 10 + 1) / 10;
    writeFiles(folder, { 'moved.json': JSON.stringify(plan) });
    const replayed = await plywright(folder, ['replay', 'moved.json']);
    expect(replayed.code).toBe(3);
    expect(replayed.stderr).toMatch(new RegExp(`sheet 1, cut ${step + 1}\\b`));
    expect(replayed.stdout).toBe('');
  });

  it('says the same to programs with --json, and nothing else', async () => {
    const told = await plywright(folder, [...cutLists, '--json']);
    expect(told).toMatchObject({ code: 0, stderr: '' });
    const document = JSON.parse(told.stdout);
    expect(document).toMatchObject({ ok: true, exitCode: 0, seed: 1, endedEarly: false, findings: [] });
    expect(document.jobs).toMatchObject([{ name: 'panels', folder: 'out/panels' }]);
    expect(document.groups).toHaveLength(1);
    expect(document.groups[0]).toMatchObject({
      board: '',
      finish: '',
      thickness: 0,
      panels: 24,
      sheetCount: 3,
      bound: 3,
      proved: true,
      withinPercent: 0,
    });
    expect(document.groups[0].yield).toBeGreaterThan(0.8);
    expect(document.groups[0].seconds).toBeGreaterThan(0);
  });
});

describe('what a list may hold', () => {
  it('takes inches, and any kerf from zero', async () => {
    const folder = temporaryFolder();
    writeFiles(folder, {
      'panels.csv': 'Name,Width,Length,Count\r\nshelf,"11 3/4 in","23.5""",8\r\ntop,300,"1 1/2 in",2\r\n',
      'sheets.csv': 'length,width\n96 in,48 in\n',
    });
    for (const kerf of ['0', '1/8 in', '3.2']) {
      const told = await plywright(folder, [
        ...cutLists,
        '--json',
        '--trim',
        '0',
        '--kerf',
        kerf,
        '--out',
        kerf.replace(/\W/g, ''),
      ]);
      expect(told.stderr).toBe('');
      const { groups, jobs } = JSON.parse(told.stdout);
      expect(groups[0]).toMatchObject({ panels: 10, sheetCount: 1, proved: true });
      const plan = JSON.parse(readFileSync(join(folder, jobs[0].folder, 'plan.json'), 'utf8'));
      expect(plan.groups[0].panels[0]).toMatchObject({ length: 596.9, width: 298.5 });
      expect(plan.groups[0].saw.kerf).toBe({ '0': 0, '1/8 in': 3.2, '3.2': 3.2 }[kerf]);
    }
  });

  it('prints any name a person may give, and spoils no paper with it', async () => {
    const folder = temporaryFolder();
    const names = ['=1+1', 'a "b" <c> & d', 'two\nlines', 'comma, comma', "it's"];
    const quoted = names.map((name) => `"${name.replaceAll('"', '""')}",300,200`).join('\n');
    writeFiles(folder, { 'panels.csv': `name,length,width\n${quoted}\n`, 'sheets.csv': sheetList });
    const run = await plywright(folder, cutLists);
    expect(run.code).toBe(0);
    const files = filesOf(join(folder, 'out/panels'));
    const list = files['cutting-list.csv']!;
    expect(list).toContain("'=1+1");
    expect(list).toContain('"a ""b"" <c> & d"');
    expect(list).toContain('"comma, comma"');
    for (const [path, text] of Object.entries(files)) {
      if (path.endsWith('.svg')) expect(text).not.toContain('<c>');
    }
    const names_ = JSON.parse(files['plan.json']!).groups[0].panels.map((p: { name: string }) => p.name);
    expect(names_).toContain('a "b" <c> & d');
  });

  it('keeps matching boards apart, each with its own sheets', async () => {
    const folder = temporaryFolder();
    writeFiles(folder, {
      'panels.csv': 'name,length,width,board,thickness\nside,700,500,ply,15\nback,700,500,ply,4\n',
      'sheets.csv': 'length,width,board,thickness\n2500,1220,ply,15\n2500,1220,ply,4\n',
    });
    const { groups } = JSON.parse((await plywright(folder, [...cutLists, '--json'])).stdout);
    expect(groups.map((g: { thickness: number; sheetCount: number }) => [g.thickness, g.sheetCount])).toEqual(
      [
        [15, 1],
        [4, 1],
      ],
    );
  });
});
