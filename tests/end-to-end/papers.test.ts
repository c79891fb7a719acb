import { appendFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { cutLists, panelList, sheetList, writeFiles } from './lists.ts';
import { plywright, start } from './plywright.ts';

function folderWithLists(): string {
  const folder = temporaryFolder();
  writeFiles(folder, { 'panels.csv': panelList, 'sheets.csv': sheetList });
  return folder;
}

/** Panels that keep the search busy for longer than any test waits: many sizes, and nothing to prove it best. */
function longList(): string {
  const rows = Array.from(
    { length: 150 },
    (_, i) => `p${i},${211 + ((i * 37) % 800)},${103 + ((i * 53) % 500)},3`,
  );
  return `name,length,width,count\n${rows.join('\n')}\n`;
}

describe('papers that are there already', () => {
  it('are replaced by the next run, while files of a person beside them stay', async () => {
    const folder = folderWithLists();
    expect((await plywright(folder, cutLists)).code).toBe(0);
    writeFileSync(join(folder, 'out/panels/notes.txt'), 'sharpen the blade');
    writeFiles(folder, { 'panels.csv': `${panelList}lid,400,300,1,none\n` });
    expect((await plywright(folder, cutLists)).code).toBe(0);
    expect(readFileSync(join(folder, 'out/panels/cutting-list.csv'), 'utf8')).toContain('lid');
    expect(readFileSync(join(folder, 'out/panels/notes.txt'), 'utf8')).toBe('sharpen the blade');
  });

  it('are not lost when a person has changed them, until --replace is given', async () => {
    const folder = folderWithLists();
    await plywright(folder, cutLists);
    const list = join(folder, 'out/panels/cutting-list.csv');
    appendFileSync(list, 'my own line\r\n');
    const refused = await plywright(folder, cutLists);
    expect(refused.code).toBe(4);
    expect(refused.stderr).toContain('cutting-list.csv');
    expect(refused.stderr).toContain('--replace');
    expect(readFileSync(list, 'utf8')).toContain('my own line');
    expect((await plywright(folder, [...cutLists, '--replace'])).code).toBe(0);
    expect(readFileSync(list, 'utf8')).not.toContain('my own line');
  });

  it('are never made out of a folder with other things in it', async () => {
    const folder = folderWithLists();
    writeFiles(folder, { 'out/panels/letter.txt': 'private' });
    const refused = await plywright(folder, cutLists);
    expect(refused.code).toBe(4);
    expect(refused.stderr).toContain('letter.txt');
    expect(readdirSync(join(folder, 'out/panels'))).toEqual(['letter.txt']);
  });
});

describe('a place that cannot be written to', () => {
  it.each([
    ['the folder of all jobs', { out: 'a file' }],
    ['the folder of the job', { 'out/panels': 'a file' }],
  ])('is found out before the search: a file in place of %s', async (_, files) => {
    const folder = folderWithLists();
    writeFiles(folder, files);
    const refused = await plywright(folder, cutLists);
    expect(refused.code).toBe(4);
    expect(refused.stderr).toContain('cannot be written here: a file with this name is in the way');
    expect(refused.stderr).toContain('--out');
    expect(refused.stderr).not.toMatch(/\bat .*\.js:\d+/);
    expect(readFileSync(join(folder, Object.keys(files)[0]!), 'utf8')).toBe('a file');
  });
});

describe('a run that is ended early', () => {
  it('by Ctrl-C keeps the best plan so far, which replays', async () => {
    const folder = temporaryFolder();
    writeFiles(folder, { 'panels.csv': longList(), 'sheets.csv': sheetList.replace(',2,60', ',,60') });
    const { child, ended } = start(folder, [...cutLists, '--time', '300']);
    setTimeout(() => child.kill('SIGINT'), 4000);
    const run = await ended;
    expect(run.code).toBe(0);
    expect(run.stdout).toContain('ended early');
    expect((await plywright(folder, ['replay', 'out/panels/plan.json'])).code).toBe(0);
  });

  it('by two Ctrl-C writes nothing', async () => {
    const folder = temporaryFolder();
    writeFiles(folder, { 'panels.csv': longList(), 'sheets.csv': sheetList.replace(',2,60', ',,60') });
    const { child, ended } = start(folder, [...cutLists, '--time', '300']);
    setTimeout(() => child.kill('SIGINT'), 3000);
    setTimeout(() => child.kill('SIGINT'), 3010);
    const run = await ended;
    if (run.code === 0) return; // The search was quicker than the second key: the papers are whole.
    expect(run.code).toBe(130);
    expect(existsSync(join(folder, 'out'))).toBe(false);
  });

  it('by force leaves nothing half-written, and the next run works', async () => {
    const folder = folderWithLists();
    for (const milliseconds of [150, 400, 700, 1000, 1300]) {
      const { child, ended } = start(folder, cutLists);
      const timer = setTimeout(() => child.kill('SIGKILL'), milliseconds);
      await ended;
      clearTimeout(timer);
      const job = join(folder, 'out/panels');
      if (existsSync(job)) {
        expect((await plywright(folder, ['replay', 'out/panels/plan.json'])).code).toBe(0);
      }
    }
    expect((await plywright(folder, cutLists)).code).toBe(0);
    expect(readdirSync(join(folder, 'out'))).toEqual(['panels']);
  });

  it('by --time ends soon after it, with papers', async () => {
    const folder = temporaryFolder();
    writeFiles(folder, { 'panels.csv': longList(), 'sheets.csv': sheetList.replace(',2,60', ',,60') });
    const told = JSON.parse((await plywright(folder, [...cutLists, '--time', '1', '--json'])).stdout);
    expect(told.groups[0].panels).toBe(450);
    expect(told.groups[0].seconds).toBeLessThan(10);
  });
});
