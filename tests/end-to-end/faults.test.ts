import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { cutLists, panelList, sheetList, writeFiles } from './lists.ts';
import { type Ended, plywrightAlone, projectFolder } from './plywright.ts';

const preload = resolve(import.meta.dirname, 'preload.mjs');
const bench = join(projectFolder, 'parts-libraries/workshop-bench/orders/garage-bench.yaml');

function withFault(folder: string, args: readonly string[], fault: string): Promise<Ended> {
  return plywrightAlone(folder, args, { NODE_OPTIONS: `--import ${preload}`, FAULT: fault });
}

/** A list that no search is done with before the fault comes. */
function longList(): string {
  const rows = Array.from(
    { length: 150 },
    (_, i) => `p${i},${211 + ((i * 37) % 800)},${103 + ((i * 53) % 500)},3`,
  );
  return `name,length,width,count\n${rows.join('\n')}\n`;
}

function folderWithLists(panels = panelList): string {
  const folder = temporaryFolder();
  writeFiles(folder, { 'panels.csv': panels, 'sheets.csv': sheetList });
  return folder;
}

function expectTold(run: Ended, code: number, ...words: string[]): void {
  const said = run.stdout + run.stderr;
  expect(run.code, said).toBe(code);
  for (const word of words) expect(said).toContain(word);
  expect(said).not.toMatch(/has a fault|\n\s+at .+:\d+:\d+/);
}

describe('threads of the search', () => {
  it.each([
    [
      'are killed',
      'kill-threads=50',
      'A thread of the search was ended from outside, so no papers were written',
    ],
    ['run out of memory', 'little-memory=6', 'Memory ran out, so no papers were written'],
  ])('that %s: a sentence, exit code 5, and the papers of before stay', async (_, fault, said) => {
    const folder = folderWithLists();
    expect((await plywrightAlone(folder, [...cutLists, '--work', '1'])).code).toBe(0);
    const before = readFileSync(join(folder, 'out/panels/plan.json'), 'utf8');
    writeFileSync(join(folder, 'panels.csv'), longList());
    expectTold(await withFault(folder, [...cutLists, '--work', '1000000000'], fault), 5, said);
    expect(readFileSync(join(folder, 'out/panels/plan.json'), 'utf8')).toBe(before);
    expect(readdirSync(join(folder, 'out'))).toEqual(['panels']);
  });

  it('that are killed in a sweep leave what is done, and the same command goes on', async () => {
    const folder = temporaryFolder();
    const sweep = [
      'sweep',
      bench,
      '--vary',
      'bench_width=2200,2300',
      '--work',
      '20',
      '--threads',
      '1',
      '--cache',
      'kept',
    ];
    const ended = await withFault(folder, sweep, 'kill-threads=1');
    expectTold(ended, 5, 'ended from outside');
    expect((await plywrightAlone(folder, sweep)).code).toBe(0);
  });
});

describe('the clock of the computer', () => {
  it('that was set back is told, and the days of the ledger do not go back', async () => {
    const folder = temporaryFolder();
    const receive = ['stock', 'receive', 'fitting', '--name', 'hinge', '--count', '2'];
    const days = async (...more: string[]) => {
      const lines = readFileSync(join(folder, 'store/ledger.jsonl'), 'utf8').trim().split('\n').slice(1);
      return [...more, ...lines.map((line) => (JSON.parse(line) as { date: string }).date)];
    };
    expect((await plywrightAlone(folder, ['stock', 'begin'])).code).toBe(0);
    // Far ahead, as after a flat battery; what was booked then cannot be taken back, but booked on.
    expectTold(await withFault(folder, receive, 'clock=2031-05-04T12:00:00Z'), 0, '2031-05-04');
    expectTold(
      await plywrightAlone(folder, receive),
      1,
      'A later day has been booked already',
      'clock',
      '--date 2031-05-04',
    );
    expectTold(await plywrightAlone(folder, [...receive, '--date', '2031-05-05']), 1, 'not come yet');
    expectTold(await plywrightAlone(folder, [...receive, '--date', '2031-05-04']), 0);
    expect(await days()).toEqual(['2031-05-04', '2031-05-04']);
  });
});

describe('a place that cannot be written', () => {
  /** The command as somebody who may not write everywhere, which the first user of a system may. */
  const asOther = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
  const command = join(projectFolder, 'cli/bin/plywright.js');
  const canRun = spawnSync(process.execPath, [command, '--version'], { ...asOther, cwd: '/' }).status === 0;
  if (!canRun)
    console.log('folders that can only be read are not tried: no other user can run the command here');

  function runAsOther(folder: string, args: readonly string[]): Promise<Ended> {
    const child = spawn(process.execPath, [command, ...args], { ...asOther, cwd: folder });
    let [stdout, stderr] = ['', ''];
    child.stdout.on('data', (text) => (stdout += text));
    child.stderr.on('data', (text) => (stderr += text));
    return new Promise((done) => child.on('close', (code, signal) => done({ code, signal, stdout, stderr })));
  }

  it.skipIf(!canRun)('is told before the search, and nothing is left', async () => {
    const folder = folderWithLists();
    mkdirSync(join(folder, 'out'));
    for (const path of [folder, join(folder, 'out')]) chmodSync(path, 0o555);
    try {
      expectTold(await runAsOther(folder, cutLists), 4, 'permission is denied');
      expectTold(await runAsOther(folder, ['stock', 'begin']), 4, 'permission is denied');
      expect(readdirSync(folder).sort()).toEqual(['out', 'panels.csv', 'sheets.csv']);
      expect(readdirSync(join(folder, 'out'))).toEqual([]);
      chmodSync(join(folder, 'panels.csv'), 0o000);
      expectTold(await runAsOther(folder, cutLists), 4, 'permission is denied', 'panels.csv');
    } finally {
      for (const path of [folder, join(folder, 'out')]) chmodSync(path, 0o755);
    }
  });

  it.each(['list units --library workshop-bench', '--help'])(
    'is the output itself: what %s prints is lost, and the exit code says so',
    (words) => {
      if (!statSync('/dev/full', { throwIfNoEntry: false })) return;
      const shell = `"${process.execPath}" "${command}" ${words} > /dev/full`;
      const run = spawnSync('/bin/sh', ['-c', shell], { cwd: projectFolder, encoding: 'utf8' });
      expect(run.status).toBe(4);
      expect(run.stderr).toBe(
        'What is to be printed cannot be written where the output goes: the disk is full.\n',
      );
    },
  );
});

describe('a disk that is full', () => {
  const disk = temporaryFolder();
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=200k', 'tmpfs', disk]).status === 0;
  if (!mounted) console.log('a full disk is not tried for real: no small disk can be mounted here');

  it.skipIf(!mounted)('is told, nothing is half-written, and all that was confirmed is there', async () => {
    try {
      const folder = folderWithLists();
      const store = ['--store', join(disk, 'store')];
      const receive = ['stock', 'receive', 'fitting', '--name', 'hinge', '--count', '2', ...store];
      expect((await plywrightAlone(folder, ['stock', 'begin', ...store])).code).toBe(0);
      expect((await plywrightAlone(folder, receive)).code).toBe(0);
      const ledger = readFileSync(join(disk, 'store/ledger.jsonl'), 'utf8');
      // Room for some of the papers only.
      spawnSync('dd', ['if=/dev/zero', `of=${join(disk, 'filler')}`, 'bs=1k', 'count=120']);
      const cut = await plywrightAlone(folder, [...cutLists, '--out', join(disk, 'out'), '--work', '1']);
      expectTold(cut, 4, 'the disk is full');
      expect(readdirSync(join(disk, 'out'))).toEqual([]);
      spawnSync('dd', ['if=/dev/zero', `of=${join(disk, 'filler')}`, 'bs=1k', 'count=400']);
      expectTold(
        await plywrightAlone(folder, [...receive, '--why', 'x'.repeat(1900)]),
        4,
        'the disk is full',
      );
      expect(readFileSync(join(disk, 'store/ledger.jsonl'), 'utf8')).toBe(ledger);
      spawnSync('rm', [join(disk, 'filler')]);
      expect((await plywrightAlone(folder, receive)).code).toBe(0);
    } finally {
      spawnSync('umount', [disk]);
    }
  });
});
