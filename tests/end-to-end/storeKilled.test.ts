import { type ChildProcess, spawn } from 'node:child_process';
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { beginStore, bookInStore, readStore } from '../../cli/store/ledgerFile.ts';
import { SeededRandom } from '../../src/basics/random.ts';
import type { Draft } from '../../src/model/store.ts';
import { temporaryFolder } from '../cli/temporaryFolder.ts';

/** As many kills as fit into some seconds; `PLYWRIGHT_KILLS=1000` for a long run, however long it takes. */
const asked = process.env['PLYWRIGHT_KILLS'];
const KILLS = Number(asked ?? 200);
const SECONDS = asked === undefined ? 8 : Number.POSITIVE_INFINITY;
/** A long run says every hundred kills how far it is, so that one that is ended early has shown something too. */
const SAID_EVERY = asked === undefined ? Number.POSITIVE_INFINITY : 100;
const keepBooking = resolve(import.meta.dirname, 'keepBooking.mjs');

function draftOf(why: string): Draft {
  return {
    date: '2026-03-02',
    kind: 'receive',
    who: 'M. Beck',
    why,
    lines: [{ item: 'fitting', fitting: 'hinge', count: 1, move: 'in' }],
  };
}

function bookOne(folder: string, why: string, waitSeconds = 10) {
  return bookInStore(folder, () => ({ ok: true, value: draftOf(why), findings: [] }), waitSeconds);
}

interface Booker {
  readonly child: ChildProcess;
  said: string;
  readonly ended: Promise<void>;
}

function startBooking(folder: string, name: string, piece: number): Booker {
  const child = spawn(process.execPath, [keepBooking, folder, name, String(piece)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const booker: Booker = { child, said: '', ended: new Promise((done) => child.on('close', () => done())) };
  child.stdout!.setEncoding('utf8').on('data', (text: string) => {
    booker.said += text;
  });
  return booker;
}

async function untilSaid(booker: Booker, word: string): Promise<void> {
  while (!booker.said.includes(word)) {
    if (booker.child.exitCode !== null) throw new Error(`a booking run ended by itself: ${booker.said}`);
    await pause(2);
  }
}

function confirmedBy(booker: Booker): string[] {
  return [...booker.said.matchAll(/^confirmed (.*)\n/gm)].map((match) => match[1]!);
}

describe('a store whose bookings are killed', () => {
  it('opens after each kill, holds all that was confirmed and nothing in half', async () => {
    const folder = temporaryFolder();
    expect((await beginStore(folder)).ok).toBe(true);
    const random = new SeededRandom(6);
    const confirmed = new Set<string>();
    let [torn, unconfirmed] = [0, 0];
    const until = performance.now() + SECONDS * 1000;
    // On a busy machine nothing may be confirmed within the time: then it goes on until something is, and one line is torn.
    const goesOn = () => performance.now() < until || confirmed.size === 0 || torn === 0;
    for (let kill = 1; kill <= KILLS && goesOn(); kill++) {
      const booker = startBooking(folder, `run-${kill}`, 1 + random.below(60));
      // At any moment, and every other time while a line is being written.
      await untilSaid(booker, kill % 2 === 0 ? 'begun' : 'writing');
      await pause(random.below(kill % 2 === 0 ? 60 : 4));
      booker.child.kill('SIGKILL');
      await booker.ended;
      expect(booker.said).not.toContain('refused');
      for (const why of confirmedBy(booker)) confirmed.add(why);
      const read = await readStore(folder);
      if (!read.ok) throw new Error(`after kill ${kill}: ${read.findings[0]!.message}`);
      if (read.value.torn !== '') torn++;
      const held = new Set(read.value.ledger.bookings.map(({ why }) => why));
      expect([...confirmed].filter((why) => !held.has(why))).toEqual([]);
      unconfirmed = held.size - confirmed.size;
      expect(unconfirmed).toBeLessThanOrEqual(kill);
      if (kill % SAID_EVERY === 0) {
        console.info(
          `${kill} kills, ${confirmed.size} bookings confirmed, 0 lost; ${unconfirmed} on the disk that nobody was told of, ${torn} lines torn`,
        );
      }
    }
    expect(confirmed.size).toBeGreaterThan(0);
    expect(torn).toBeGreaterThan(0);
    const after = await bookOne(folder, 'after all');
    expect(after.ok && after.value.booking.number).toBe(confirmed.size + unconfirmed + 1);
    expect((await readStore(folder)).findings).toEqual([]);
  }, 14_400_000);
});

describe('two that book at once', () => {
  it('wait for each other: every booking is there once, in one row', async () => {
    const folder = temporaryFolder();
    await beginStore(folder);
    const bookers = ['left', 'right', 'third'].map((name) => startBooking(folder, name, 40));
    for (const booker of bookers) await untilSaid(booker, `confirmed`);
    await pause(500);
    for (const booker of bookers) booker.child.kill('SIGKILL');
    for (const booker of bookers) await booker.ended;
    const read = await readStore(folder);
    const held = read.ok ? read.value.ledger.bookings.map(({ why }) => why) : [];
    expect(new Set(held).size).toBe(held.length);
    const confirmed = bookers.flatMap(confirmedBy);
    expect(confirmed.filter((why) => !held.includes(why))).toEqual([]);
    expect(held.length - confirmed.length).toBeLessThanOrEqual(3);
  });

  it('are told in words when the other does not end, and the other’s lock stays', async () => {
    const folder = temporaryFolder();
    await beginStore(folder);
    const lock = join(folder, 'lock');
    const held = { process: process.ppid, computer: hostname(), since: '2026-03-02T08:00:00Z', token: 'x' };
    writeFileSync(lock, JSON.stringify(held));
    const refused = await bookOne(folder, 'too early', 0.1);
    expect(refused.findings).toMatchObject([{ code: 'store-locked', place: { file: lock } }]);
    expect(refused.findings[0]!.found).toContain('since 2026-03-02T08:00:00Z by process');
    expect(readFileSync(lock, 'utf8')).toBe(JSON.stringify(held));
    // Of a run on another computer nobody can know whether it has ended.
    writeFileSync(lock, JSON.stringify({ ...held, process: 999_999_999, computer: 'elsewhere' }));
    expect((await bookOne(folder, 'too early', 0.1)).findings[0]!.code).toBe('store-locked');
    writeFileSync(lock, '');
    expect((await bookOne(folder, 'too early', 0.1)).findings[0]!.found).toContain('cannot be told');
  });

  it('take over the lock of a run that has ended, and say so', async () => {
    const folder = temporaryFolder();
    await beginStore(folder);
    const left = { process: 999_999_999, computer: hostname(), since: '2026-03-02T08:00:00Z', token: 'x' };
    writeFileSync(join(folder, 'lock'), JSON.stringify(left));
    // An earlier run had this run's number.
    const taking = { ...left, process: process.pid, token: 'y' };
    writeFileSync(join(folder, 'lock.taking'), JSON.stringify(taking));
    const both = await Promise.all([bookOne(folder, 'one'), bookOne(folder, 'two')]);
    expect(both.map(({ ok }) => ok)).toEqual([true, true]);
    const told = both.flatMap(({ findings }) => findings.map(({ code }) => code));
    expect(told).toEqual(['lock-left-behind']);
  });
});

describe('the file of a store', () => {
  it('is not made anew where there is one, and is missed in words where there is none', async () => {
    const folder = temporaryFolder();
    await beginStore(folder);
    await bookOne(folder, 'first');
    expect((await beginStore(folder)).findings[0]!.code).toBe('store-there');
    expect((await readStore(folder)).ok).toBe(true);
    expect((await readStore(join(folder, 'none'))).findings[0]!.code).toBe('folder-missing');
    expect((await bookOne(join(folder, 'none'), 'x')).findings[0]!.code).toBe('folder-missing');
  });

  it('loses a torn last line to the next booking, and nothing else', async () => {
    const folder = temporaryFolder();
    await beginStore(folder);
    await bookOne(folder, 'first');
    const path = join(folder, 'ledger.jsonl');
    const good = readFileSync(path);
    for (const rest of ['{"number":2,"da', '{"number":2,"date":"ä', '{"number\0\0\n']) {
      writeFileSync(path, Buffer.concat([good, Buffer.from(rest).subarray(0, -1)]));
      expect((await readStore(folder)).findings).toMatchObject([
        { code: 'booking-torn', place: { line: 3 } },
      ]);
      const booked = await bookOne(folder, 'second');
      expect(booked.findings[0]!.code).toBe('booking-torn');
      expect(readFileSync(path).subarray(0, good.length).equals(good)).toBe(true);
      const read = await readStore(folder);
      expect(read.ok && read.value.ledger.bookings.map(({ why }) => why)).toEqual(['first', 'second']);
    }
    writeFileSync(path, good.subarray(0, -1));
    await bookOne(folder, 'second');
    expect(readFileSync(path, 'utf8').split('\n')).toHaveLength(4);
    appendFileSync(path, '{"number":3,"why":"by hand"}\n');
    expect((await bookOne(folder, 'third')).findings[0]!.code).toBe('ledger-changed');
    expect(readFileSync(path, 'utf8')).toContain('by hand');
  });
});
