import { mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { diskWriter } from '../../cli/files/papersFolder.ts';
import { temporaryFolder } from './temporaryFolder.ts';

const papers = new Map([
  ['plan.json', '{}\n'],
  ['cut-plans/poplar-1.svg', '<svg/>\n'],
]);
const later = new Map([['plan.json', '{"later":true}\n']]);

function read(...parts: string[]): string {
  return readFileSync(join(...parts), 'utf8');
}

describe('the folder of a job', () => {
  it('gets every paper, and a list of them', async () => {
    const place = temporaryFolder();
    const folder = join(place, 'deep', 'job');
    expect(await diskWriter.papers(folder, papers, 'keep edited')).toEqual([]);
    expect(read(folder, 'plan.json')).toBe('{}\n');
    expect(read(folder, 'cut-plans', 'poplar-1.svg')).toBe('<svg/>\n');
    expect(readdirSync(join(place, 'deep'))).toEqual(['job']);
  });

  it('is exchanged as a whole: papers of the last time that are no longer written go', async () => {
    const folder = join(temporaryFolder(), 'job');
    await diskWriter.papers(folder, papers, 'keep edited');
    expect(await diskWriter.papers(folder, later, 'keep edited')).toEqual([]);
    expect(read(folder, 'plan.json')).toContain('later');
    expect(readdirSync(folder).sort()).toEqual(['.plywright.json', 'plan.json']);
  });

  it('keeps files of a person beside the papers', async () => {
    const folder = join(temporaryFolder(), 'job');
    await diskWriter.papers(folder, papers, 'keep edited');
    writeFileSync(join(folder, 'notes.txt'), 'call the customer');
    mkdirSync(join(folder, 'photos'));
    writeFileSync(join(folder, 'photos', 'van.txt'), 'a picture');
    expect(await diskWriter.papers(folder, later, 'keep edited')).toEqual([]);
    expect(read(folder, 'notes.txt')).toBe('call the customer');
    expect(read(folder, 'photos', 'van.txt')).toBe('a picture');
  });

  it.each([
    ['edited', (folder: string) => writeFileSync(join(folder, 'plan.json'), 'mine')],
    [
      'exchanged for a link',
      (folder: string) => {
        rmSync(join(folder, 'plan.json'));
        symlinkSync('/dev/null', join(folder, 'plan.json'));
      },
    ],
  ])('does not lose a paper that was %s', async (_, change) => {
    const folder = join(temporaryFolder(), 'job');
    await diskWriter.papers(folder, papers, 'keep edited');
    change(folder);
    const findings = await diskWriter.papers(folder, later, 'keep edited');
    expect(findings.map((f) => f.code)).toEqual(['papers-edited']);
    expect(findings[0]!.found).toBe('plan.json');
    expect(findings[0]!.advice).toContain('--replace');
    expect(readdirSync(folder).sort()).toEqual(['.plywright.json', 'cut-plans', 'plan.json']);
    expect(await diskWriter.papers(folder, later, 'replace edited')).toEqual([]);
    expect(read(folder, 'plan.json')).toContain('later');
  });

  it('is not made out of a folder that holds other things, unless told to', async () => {
    const folder = join(temporaryFolder(), 'job');
    mkdirSync(folder);
    writeFileSync(join(folder, 'letters.txt'), 'private');
    const findings = await diskWriter.papers(folder, papers, 'keep edited');
    expect(findings.map((f) => f.code)).toEqual(['folder-not-ours']);
    expect(readdirSync(folder)).toEqual(['letters.txt']);
    expect(await diskWriter.papers(folder, papers, 'replace edited')).toEqual([]);
    expect(read(folder, 'letters.txt')).toBe('private');
    expect(read(folder, 'plan.json')).toBe('{}\n');
  });

  it('takes an empty folder', async () => {
    const folder = join(temporaryFolder(), 'job');
    mkdirSync(folder);
    expect(await diskWriter.papers(folder, papers, 'keep edited')).toEqual([]);
  });

  it('does not write where a file or a link is in the way', async () => {
    const place = temporaryFolder();
    writeFileSync(join(place, 'file'), 'x');
    symlinkSync(place, join(place, 'link'));
    for (const name of ['file', 'link', join('file', 'job')]) {
      const findings = await diskWriter.papers(join(place, name), papers, 'replace edited');
      expect(findings.map((f) => f.code)).toEqual(['cannot-write']);
    }
    expect(readdirSync(place).sort()).toEqual(['file', 'link']);
  });

  it('is brought back when a run was killed between its two renames', async () => {
    const place = temporaryFolder();
    const folder = join(place, 'job');
    await diskWriter.papers(folder, papers, 'keep edited');
    writeFileSync(join(folder, 'notes.txt'), 'keep me');
    const { renameSync } = await import('node:fs');
    renameSync(folder, join(place, `.job.old-${process.pid}`));
    mkdirSync(join(place, `.job.new-${process.pid}`));
    expect(await diskWriter.papers(folder, later, 'keep edited')).toEqual([]);
    expect(read(folder, 'notes.txt')).toBe('keep me');
    expect(readdirSync(place)).toEqual(['job']);
  });

  it('refuses a path that leads out of the folder, as a fault of the program', async () => {
    const folder = join(temporaryFolder(), 'job');
    for (const path of ['../x.csv', '/etc/x', 'a//b', 'a b.csv', '.hidden', 'a/../b']) {
      await expect(diskWriter.papers(folder, new Map([[path, 'x']]), 'keep edited')).rejects.toThrow(
        'unsafe path',
      );
    }
  });
});
