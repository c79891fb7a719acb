import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { exchangeAll, type FolderMoves, type ReadyFolder } from '../../cli/files/exchangeFolders.ts';
import { diskWriter } from '../../cli/files/papersFolder.ts';
import { temporaryFolder } from './temporaryFolder.ts';

/** Three folders, the second of them new, each with what is to take its place. */
function threeFolders(place: string): ReadyFolder[] {
  return ['a', 'b', 'c'].map((name) => {
    const ready = {
      folder: join(place, name),
      fresh: join(place, `.${name}.new-1`),
      old: join(place, `.${name}.old-1`),
    };
    if (name !== 'b') {
      mkdirSync(ready.folder);
      writeFileSync(join(ready.folder, 'paper'), `old ${name}`);
    }
    mkdirSync(ready.fresh);
    writeFileSync(join(ready.fresh, 'paper'), `new ${name}`);
    return ready;
  });
}

/** What stands in each folder that is there. */
function contents(place: string): Record<string, string> {
  const names = readdirSync(place).filter((name) => !name.startsWith('.'));
  return Object.fromEntries(
    names.sort().map((name) => [name, readFileSync(join(place, name, 'paper'), 'utf8')]),
  );
}

/** Renames, but fails at the n-th time and, where `andThen` is given, at that one too. */
function failingAt(time: number, andThen = 0): FolderMoves {
  let times = 0;
  return {
    rename: async (from, to) => {
      times += 1;
      if (times === time || times === andThen) throw Object.assign(new Error('full'), { code: 'ENOSPC' });
      renameSync(from, to);
    },
  };
}

describe('exchanging several folders', () => {
  it('puts every new folder in its place', async () => {
    const place = temporaryFolder();
    expect(await exchangeAll(threeFolders(place))).toBeNull();
    expect(contents(place)).toEqual({ a: 'new a', b: 'new b', c: 'new c' });
    expect(readdirSync(place).sort()).toEqual(['a', 'b', 'c']);
  });

  it('leaves all as they were when any of the renames fails', async () => {
    // Two renames for a and for c, one for b, which was not there.
    for (let time = 1; time <= 5; time++) {
      const place = temporaryFolder();
      const failure = await exchangeAll(threeFolders(place), failingAt(time));
      const folder = join(place, time <= 2 ? 'a' : time === 3 ? 'b' : 'c');
      expect({ time, failure }).toEqual({ time, failure: { folder, reason: 'the disk is full' } });
      expect({ time, ...contents(place) }).toEqual({ time, a: 'old a', c: 'old c' });
      // The new folders are all still there, to be cleared away or tried again.
      expect(readdirSync(place).filter((name) => name.includes('.old-'))).toEqual([]);
    }
  });

  it('says where a folder is that cannot be put back', async () => {
    const place = temporaryFolder();
    // The second rename of a fails, and so does the one that would bring it back.
    const failure = await exchangeAll(threeFolders(place), failingAt(2, 3));
    expect(failure!.reason).toBe(
      `the disk is full; what was there before is now in ${join(place, '.a.old-1')}`,
    );
    expect(readFileSync(join(place, '.a.old-1', 'paper'), 'utf8')).toBe('old a');
  });
});

describe('papers of several jobs', () => {
  const papers = (text: string) => new Map([['plan.json', text]]);

  it('are all written, or none when one folder cannot be made ready', async () => {
    const place = temporaryFolder();
    const folders = (text: string) =>
      ['first', 'second'].map((name) => ({ folder: join(place, name), papers: papers(text) }));
    expect(await diskWriter.allPapers(folders('1'), 'keep edited')).toEqual([]);
    writeFileSync(join(place, 'second', 'plan.json'), 'mine');
    const findings = await diskWriter.allPapers(folders('2'), 'keep edited');
    expect(findings.map((finding) => [finding.code, finding.place?.file])).toEqual([
      ['papers-edited', join(place, 'second')],
    ]);
    expect(readFileSync(join(place, 'first', 'plan.json'), 'utf8')).toBe('1');
    expect(readdirSync(place).sort()).toEqual(['first', 'second']);
    expect(await diskWriter.allPapers(folders('3'), 'replace edited')).toEqual([]);
    expect(readFileSync(join(place, 'first', 'plan.json'), 'utf8')).toBe('3');
    expect(readFileSync(join(place, 'second', 'plan.json'), 'utf8')).toBe('3');
  });
});
