import { mkdirSync, readdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { diskWriter } from '../../cli/files/papersFolder.ts';
import { diskReader } from '../../cli/files/reader.ts';
import { beginStore, bookInStore, readStore } from '../../cli/store/ledgerFile.ts';
import type { Draft } from '../../src/model/store.ts';
import { faultyDisk } from './faultyDisk.ts';
import { temporaryFolder } from './temporaryFolder.ts';

vi.mock('node:fs/promises', async (original) => {
  const { faultyDisk: disk } = await import('./faultyDisk.ts');
  return disk.over(await original());
});

const papersOf = (version: string) =>
  new Map([
    ['plan.json', `{"version":"${version}"}\n`],
    ['cutting-list.csv', `name\r\n${version}\r\n`],
    ['cut-plans/ply-1.svg', `<svg>${version}</svg>\n`],
    ['cut-plans/ply-2.svg', `<svg>${version} too</svg>\n`],
  ]);
const NOTES = 'call the customer\n';

/** Every file under a folder with its text, but the list of papers. */
function contentOf(folder: string): Record<string, string> {
  return Object.fromEntries(
    readdirSync(folder, { recursive: true })
      .map(String)
      .filter((path) => path !== '.plywright.json' && statSync(join(folder, path)).isFile())
      .sort()
      .map((path) => [path, readFileSync(join(folder, path), 'utf8')]),
  );
}

function wanted(version: string): Record<string, string> {
  return Object.fromEntries([...papersOf(version), ['notes.txt', NOTES] as const].sort());
}

/** What a run that has ended left of its locks, as of a process that is no more: this one goes on. */
function asOfEndedRun(store: string): void {
  const ended = 999_999_999;
  for (const name of readdirSync(store)) {
    if (!name.startsWith('lock')) continue;
    const path = join(store, name);
    writeFileSync(path, readFileSync(path, 'utf8').replace(`"process":${process.pid}`, `"process":${ended}`));
    renameSync(path, join(store, name.replace(`.${process.pid}-`, `.${ended}-`)));
  }
}

async function folderWithPapers(): Promise<string> {
  const folder = join(temporaryFolder(), 'job');
  expect(await diskWriter.papers(folder, papersOf('one'), 'keep edited')).toEqual([]);
  writeFileSync(join(folder, 'notes.txt'), NOTES);
  return folder;
}

/** What work comes back with; null when the power was cut, whatever it would have said after that. */
async function untilCut<T>(work: Promise<T>): Promise<T | null> {
  const answer = await work.catch((error: unknown) => {
    if ((error as Error).name === 'PowerCut') return null;
    throw error;
  });
  return faultyDisk.struck ? null : answer;
}

describe('a power cut while a job’s papers are written', () => {
  it.each([
    ['all that was written lasts', false],
    ['what was not synced is lost', true],
  ])('leaves the old ones or the new ones, whole, with the person’s own files: %s', async (_, forget) => {
    let [cuts, between] = [0, 0];
    for (let operations = 0; ; operations++) {
      const folder = await folderWithPapers();
      faultyDisk.begin(operations);
      const answer = await untilCut(diskWriter.papers(folder, papersOf('two'), 'keep edited'));
      const struck = faultyDisk.struck;
      faultyDisk.restart({ forget });
      const beside = readdirSync(join(folder, '..')).filter((name) => name !== 'job');
      if (readdirSync(join(folder, '..')).includes('job')) {
        const content = contentOf(folder);
        const version = content['plan.json']!.includes('two') ? 'two' : 'one';
        expect(content, `after ${operations}`).toEqual(wanted(version));
        // What was confirmed is there.
        if (answer !== null) expect([version, answer, beside]).toEqual(['two', [], []]);
      } else {
        // Between two renames: the old papers lie beside, whole, and whoever misses them hears where.
        between++;
        const old = beside.find((name) => name.startsWith('.job.old-'))!;
        expect(contentOf(join(folder, '..', old))).toEqual(wanted('one'));
        const read = await diskReader.text(join(folder, 'plan.json'), 'plan');
        expect(read.findings[0]!.found).toBe(join(folder, '..', old));
      }
      expect(await diskWriter.papers(folder, papersOf('three'), 'keep edited')).toEqual([]);
      expect(contentOf(folder)).toEqual(wanted('three'));
      expect(readdirSync(join(folder, '..'))).toEqual(['job']);
      if (!struck) break;
      cuts++;
    }
    // A folder, two within, five files of three operations each, the person's own, two renames and what is cleared away.
    expect(cuts).toBeGreaterThan(20);
    expect(between).toBe(1);
  });
});

describe('an error of the disk while a job’s papers are written', () => {
  it.each([
    ['ENOSPC', 'the disk is full'],
    ['EROFS', 'the disk can only be read'],
    ['EIO', 'the disk or its connection has a fault'],
  ])('is told, and the old ones stay: %s at any operation', async (code, said) => {
    let told = 0;
    for (let at = 0; ; at++) {
      const folder = await folderWithPapers();
      faultyDisk.failAt(at, code);
      const findings = await diskWriter.papers(folder, papersOf('two'), 'keep edited');
      const { struck } = faultyDisk;
      const operation = faultyDisk.done[at];
      faultyDisk.restart({ forget: false });
      if (findings.length > 0) {
        told++;
        expect(findings).toMatchObject([{ code: 'cannot-write', place: { file: folder } }]);
        expect(findings[0]!.message).toContain(said);
        expect(contentOf(folder), operation).toEqual(wanted('one'));
        expect(readdirSync(join(folder, '..')), operation).toEqual(['job']);
      } else {
        // The list of a folder that could not be synced, or an old folder that could not be cleared away: the new papers are there.
        expect(['sync', 'rm', undefined]).toContain(operation);
        expect(contentOf(folder)).toEqual(wanted('two'));
      }
      if (!struck) break;
    }
    expect(told).toBeGreaterThan(15);
  });
});

function draftOf(why: string): Draft {
  const line = { item: 'fitting', fitting: 'hinge', count: 1, move: 'in' } as const;
  return { date: '2026-03-02', kind: 'receive', who: 'M. Beck', why, lines: [line] };
}

const bookOne = (folder: string, why: string) =>
  bookInStore(folder, () => ({ ok: true, value: draftOf(why), findings: [] }), 1);

async function bookedIn(folder: string): Promise<readonly string[]> {
  const read = await readStore(folder);
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.value.ledger.bookings.map(({ why }) => why);
}

describe('a power cut while something is booked', () => {
  it.each([
    ['all that was written lasts', false],
    ['what was not synced is lost', true],
  ])('leaves all that was confirmed, and the next booking follows it: %s', async (_, forget) => {
    for (let operations = 0; ; operations++) {
      const folder = join(temporaryFolder(), 'store');
      await beginStore(folder);
      await bookOne(folder, 'first');
      const good = readFileSync(join(folder, 'ledger.jsonl'), 'utf8');
      faultyDisk.begin(operations);
      const answer = await untilCut(bookOne(folder, 'second'));
      const struck = faultyDisk.struck;
      // Of a file that is only added to, a disk keeps what was synced before.
      faultyDisk.restart({ forget: false });
      if (forget && answer === null) writeFileSync(join(folder, 'ledger.jsonl'), good);
      asOfEndedRun(folder);
      const held = await bookedIn(folder);
      if (answer?.ok) expect(held).toEqual(['first', 'second']);
      else expect(['first', 'first,second']).toContain(held.join());
      const next = await bookOne(folder, 'third');
      expect(next.ok && next.value.booking.number, `after ${operations}`).toBe(held.length + 1);
      expect(await bookedIn(folder)).toEqual([...held, 'third']);
      expect(readdirSync(folder)).toEqual(['ledger.jsonl']);
      if (!struck) break;
    }
  });

  it('leaves a store that was begun, or none that stands in the way of another', async () => {
    for (let operations = 0; ; operations++) {
      const folder = join(temporaryFolder(), 'store');
      faultyDisk.begin(operations);
      const answer = await untilCut(beginStore(folder));
      const struck = faultyDisk.struck;
      faultyDisk.restart({ forget: true });
      if (answer === null) {
        const again = await beginStore(folder);
        expect(again.ok || again.findings[0]!.code === 'store-there').toBe(true);
      }
      expect(await bookedIn(folder)).toEqual([]);
      expect((await bookOne(folder, 'first')).ok, `after ${operations}`).toBe(true);
      if (!struck) break;
    }
  });
});

describe('an error of the disk while something is booked', () => {
  it('is told, and nothing is booked, or it is there', async () => {
    for (let at = 0; ; at++) {
      const folder = join(temporaryFolder(), 'store');
      await beginStore(folder);
      await bookOne(folder, 'first');
      faultyDisk.failAt(at, 'ENOSPC');
      const answer = await bookOne(folder, 'second').catch((error: unknown) => error);
      const { struck } = faultyDisk;
      const operation = faultyDisk.done[at];
      faultyDisk.restart({ forget: false });
      expect(answer, `${operation} ${at}: ${String(answer)}`).not.toBeInstanceOf(Error);
      const booked = answer as Awaited<ReturnType<typeof bookOne>>;
      expect(await bookedIn(folder)).toEqual(booked.ok ? ['first', 'second'] : ['first']);
      if (!booked.ok) expect(booked.findings.at(-1)!.message).toContain('the disk is full');
      if (!struck) break;
    }
  });
});

describe('a file that vanishes while it is read', () => {
  it('is missed by name, also out of a library', async () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'units'));
    writeFileSync(join(folder, 'library.yaml'), 'title: a');
    writeFileSync(join(folder, 'units', 'shelf.yaml'), 'title: b');
    const whole = await diskReader.library(folder);
    expect(whole.ok).toBe(true);
    const codes = new Set<string>();
    for (let at = 0; at < 40; at++) {
      faultyDisk.vanishAt(at);
      const read = await diskReader.library(folder);
      const { struck } = faultyDisk;
      faultyDisk.restart({ forget: false });
      if (!read.ok) {
        for (const finding of read.findings) codes.add(finding.code);
        expect(read.findings[0]!.message).not.toContain('system answered');
      }
      if (!struck) break;
    }
    expect([...codes].sort()).toEqual(['file-missing', 'folder-missing']);
  });
});
