import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { resultCache } from '../../cli/comparing/resultCache.ts';
import { diskWriter } from '../../cli/files/papersFolder.ts';
import { bookInStore } from '../../cli/store/ledgerFile.ts';
import { readPlan } from '../../src/basics/readPlan.ts';
import type { Draft } from '../../src/model/store.ts';
import { readOrder } from '../../src/order/index.ts';
import { readLibraryTexts } from '../../src/pipeline/prepareOrder.ts';
import { checksum } from '../../src/store/checksum.ts';
import { readLedgerText } from '../../src/store/ledgerText.ts';
import { readMix } from '../../src/yearOfOrders/index.ts';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { demoLibrary } from '../helpers/demoVan.ts';
import { secondReplay } from '../secondReplay/secondReplay.ts';
import { meaningOf } from './meaning.ts';

const kept = join(import.meta.dirname, 'version-1');
const text = (file: string) => readFileSync(join(kept, file), 'utf8');

/**
 * The files of version 1 are kept as they were written: people have such files, on disks and on labels. They are never made
 * anew; where a reader no longer finds in them what `meaning.json` says, the reader is wrong.
 */
describe('files of version 1', () => {
  it('mean what they meant', () => {
    expect(meaningOf(kept)).toMatchObject(JSON.parse(text('meaning.json')));
  });

  it.each(['plan.json', 'recut-plan.json', 'part-2-plan.json'])(
    'can be sawn, by both replays: %s',
    (file) => {
      expect(secondReplay(text(file))).toBeNull();
    },
  );

  it('have a ledger that can be booked on', async () => {
    const store = temporaryFolder();
    cpSync(join(kept, 'ledger.jsonl'), join(store, 'ledger.jsonl'));
    const line = { item: 'fitting', fitting: 'carcass-screw', count: 50, move: 'out' } as const;
    const draft: Draft = { date: '2026-03-06', kind: 'issue', who: 'M. Beck', why: '', lines: [line] };
    const booked = await bookInStore(store, () => ({ ok: true, value: draft, findings: [] }));
    expect(booked.ok && booked.value.booking.number).toBe(7);
    expect(readFileSync(join(store, 'ledger.jsonl'), 'utf8').startsWith(text('ledger.jsonl'))).toBe(true);
  });

  it('have a list of papers by which papers are known as they were written', async () => {
    const folder = join(temporaryFolder(), 'job');
    mkdirSync(folder);
    cpSync(join(kept, 'plan.json'), join(folder, 'plan.json'));
    writeFileSync(join(folder, '.plywright.json'), text('papers.json'));
    expect(await diskWriter.look(folder, 'keep edited')).toEqual([]);
    writeFileSync(join(folder, 'plan.json'), 'mine');
    expect((await diskWriter.look(folder, 'keep edited')).map(({ code }) => code)).toEqual(['papers-edited']);
  });
});

describe('a file of another version', () => {
  const line = (version: unknown) => `file version: ${version}\n`;

  it.each<
    [string, (version: unknown) => { readonly ok: boolean; readonly findings: readonly { code: string }[] }]
  >([
    ['an order', (v) => readOrder(`${line(v)}anything: else\n`, 'an-order.yaml', demoLibrary())],
    [
      'a variant',
      (v) =>
        readOrder(`${line(v)}variant of: order.yaml\n`, 'a-variant.yaml', demoLibrary(), {
          below: [{ text: text('order.yaml').replace('file version: 1', ''), file: 'order.yaml' }],
          set: [],
        }),
    ],
    ['a mix', (v) => readMix(`${line(v)}anything: else\n`, 'mix.yaml')],
    [
      'a library',
      (v) =>
        readLibraryTexts(
          new Map([
            ['lib/library.yaml', `${line(v)}anything: else\n`],
            ['lib/boards.yaml', 'quite: other\n'],
            ['lib/novel.yaml', 'a: b\n'],
          ]),
          'lib',
        ),
    ],
    [
      'a plan',
      (v) => readPlan(JSON.stringify({ format: 'plywright plan', version: v, novel: [] }), 'plan.json'),
    ],
    [
      'a ledger',
      (v) => {
        const body = JSON.stringify({ format: 'plywright store', version: v });
        const first = `${body.slice(0, -1)},"check":"${checksum(body)}"}`;
        return readLedgerText(`${first}\n${'{"novel":1,"check":"00000000"}'}\n`, 'ledger.jsonl');
      },
    ],
  ])('is refused in one finding, whatever else is in it: %s', (what, read) => {
    for (const version of [2, 0, 'x', 10]) {
      const { ok, findings } = read(version);
      const others =
        what === 'a variant' ? findings.filter(({ code }) => code === 'other-version') : findings;
      expect(ok).toBe(false);
      expect(others).toMatchObject([{ code: 'other-version', found: String(version), expected: '1' }]);
      expect((others[0] as { message?: string }).message).toContain('this plywright reads version 1');
    }
  });

  it('is a list of papers: nothing is replaced unless it is asked for', async () => {
    const folder = join(temporaryFolder(), 'job');
    const papers = new Map([['plan.json', '{}\n']]);
    await diskWriter.papers(folder, papers, 'keep edited');
    const list = join(folder, '.plywright.json');
    writeFileSync(list, readFileSync(list, 'utf8').replace('"version": 1', '"version": 2'));
    const findings = await diskWriter.papers(folder, papers, 'keep edited');
    expect(findings.map(({ code }) => code)).toEqual(['folder-not-ours']);
    expect(findings[0]!.message).toContain('another version of plywright');
    expect(await diskWriter.papers(folder, papers, 'replace edited')).toEqual([]);
  });

  it('is a result in the cache: it is worked out anew, as one that was changed or torn', async () => {
    const folder = temporaryFolder();
    const cache = resultCache(folder);
    const result = { ok: false, refused: 'too wide' } as never;
    await cache.keep('abcd', result);
    expect(await cache.read('abcd')).toEqual(result);
    const file = join(folder, 'ab', 'abcd.json');
    const whole = readFileSync(file, 'utf8');
    for (const other of [
      whole.replace('result 2', 'result 1'),
      whole.replace('too wide', 'too deep'),
      whole.slice(0, -9),
      '',
      'null',
      '{"__proto__":{"format":"plywright result 2"}}',
    ]) {
      writeFileSync(file, other);
      expect(await cache.read('abcd')).toBeNull();
    }
  });
});
