import { cpSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { labelledPieces } from '../../src/documents/panelStickerPieces.ts';
import type { PlanFile } from '../../src/model/plan.ts';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { pdfText } from '../documents/book/pdfText.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { writeFiles } from './lists.ts';
import { plywright, projectFolder } from './plywright.ts';
import { sheetsOfPlan } from './storeFor.ts';

const order = join(projectFolder, 'parts-libraries/demo-van/orders/demo-short.yaml');
const short = ['--work', '200', '--seed', '1'];

/** A van that is cut once; each test has its papers in a folder of its own. */
const cutOnce = temporaryFolder();
beforeAll(async () => {
  const ended = await plywright(cutOnce, ['cut', order, ...short]);
  expect(ended.code, ended.stderr).toBe(0);
});

function cutVan() {
  const folder = temporaryFolder();
  const run = (...args: string[]) => plywright(folder, args);
  const done = async (...args: string[]) => {
    const ended = await run(...args);
    expect(ended.code, `${args.join(' ')}\n${ended.stderr}`).toBe(0);
    return ended;
  };
  const plan = (name: string): PlanFile =>
    JSON.parse(readFileSync(join(folder, 'out', name, 'plan.json'), 'utf8'));
  cpSync(join(cutOnce, 'out'), join(folder, 'out'), { recursive: true });
  return { folder, run, done, plan };
}

/** The first panel of a plan that a test is true of, with its number. */
function panelWhere(plan: PlanFile, fits: (panel: PlanFile['groups'][number]['panels'][number]) => boolean) {
  const panels = plan.groups.flatMap((group) => group.panels);
  const index = panels.findIndex(fits);
  return { panel: panels[index]!, number: index + 1 };
}

describe('plywright recut', () => {
  it('cuts spoiled panels anew from offcuts of the plan, under their old labels', async () => {
    const { folder, done, plan } = cutVan();
    const before = plan('demo-short');
    const small = panelWhere(before, ({ width, length }) => width < 200 && length < 400);
    const other = panelWhere(before, ({ id }) => id !== small.panel.id);
    const codes = labelledPieces(before, 'demo-short')
      .filter((piece) => piece.is === 'panel' && piece.ending.panel === other.panel.id)
      .map(({ code }) => code);
    writeFiles(folder, { 'scanned.txt': `\n  ${codes[0]!.toLowerCase()}  \n\n` });
    const recut = ['recut', 'out/demo-short/plan.json', String(small.number), '--labels', 'scanned.txt'];
    const run = await done(...recut, '--why', 'corner torn out', '--papers', 'labels,book', ...short);
    expect(run.stdout.replace(/\s+/g, ' ')).toContain(`${small.number}/1 ${small.panel.name}`);
    const after = plan('demo-short-recut-1');
    await done('replay', 'out/demo-short-recut-1/plan.json');
    const pieces = labelledPieces(after, 'demo-short-recut-1');
    const spoiled = labelledPieces(before, 'demo-short').flatMap((piece) =>
      piece.is === 'panel' && [small.panel.id, other.panel.id].includes(piece.ending.panel)
        ? [piece.code]
        : [],
    );
    expect(pieces.flatMap(({ is, code }) => (is === 'panel' ? [code] : [])).sort()).toEqual(spoiled.sort());
    expect([...after.recut!.spoiled].sort()).toEqual(spoiled);
    for (const { is, code } of pieces) if (is !== 'panel') expect(code).toMatch(/^PW1\/DEMO-SHORT-RECUT-1\//);
    // Nothing was bought: offcuts of the plan were large enough.
    const fresh = after.groups.flatMap(({ stock, sheets }) =>
      sheets.filter((sheet) => stock.find(({ id }) => id === sheet.stock)?.kind === 'sheet'),
    );
    expect(fresh).toEqual([]);
    const list = readCsv(readFileSync(join(folder, 'out/demo-short-recut-1/cutting-list.csv'), 'utf8'));
    expect(list.map((row) => Number(row['number'])).sort((a, b) => a - b)).toEqual(
      [small.number, other.number].sort((a, b) => a - b),
    );
    const labels = pdfText(readFileSync(join(folder, 'out/demo-short-recut-1/labels.pdf'))).join('\n');
    for (const code of spoiled) expect(labels.replaceAll('\n', '')).toContain(code);
    const book = readFileSync(join(folder, 'out/demo-short-recut-1/book.html'), 'utf8');
    expect(book).toContain('Spoiled panels');
    expect(book).toContain('Why: corner torn out');
    // The next recut has another number, and leaves the offcuts that the first cuts up alone.
    await done(...recut, ...short);
    const used = (one: PlanFile) =>
      one.groups
        .flatMap(({ stock, sheets }) =>
          stock.filter(({ id, kind }) => kind === 'offcut' && sheets.some((sheet) => sheet.stock === id)),
        )
        .map(({ id }) => id);
    const again = used(plan('demo-short-recut-2'));
    expect(used(after).length).toBeGreaterThan(0);
    expect(again.filter((id) => used(after).includes(id))).toEqual([]);
  });

  it('is booked as any cut, with what was spoiled and why, and can be spoiled again', async () => {
    const { done, run, plan } = cutVan();
    const before = plan('demo-short');
    await done('stock', 'begin');
    for (const sheet of sheetsOfPlan(before)) {
      await done('stock', 'receive', 'sheet', ...sheet, '--date', '2026-03-02');
    }
    const early = await run('recut', 'out/demo-short/plan.json', '1', '--store', 'store', ...short);
    expect(early.code, early.stderr).toBe(0);
    await done('stock', 'cut', 'out/demo-short/plan.json', '--date', '2026-03-03', '--place', 'rack 4');
    const recut = ['recut', 'out/demo-short/plan.json', '1', '--store', 'store', '--why', 'scratched'];
    const made = await done(...recut, ...short);
    expect(made.stdout.replace(/\s+/g, ' ')).toContain('rack 4');
    const name = 'demo-short-recut-2';
    const spoiled = plan(name).recut!.spoiled;
    await done('stock', 'cut', `out/${name}/plan.json`, '--date', '2026-03-04');
    const { bookings } = JSON.parse((await done('stock', 'history', '--json')).stdout);
    expect(bookings.at(-1)).toMatchObject({
      kind: 'cut',
      order: 'demo-short',
      why: 'scratched',
      recut: { number: 2, spoiled },
    });
    expect((await done('stock', 'history')).stdout.replace(/\s+/g, ' ')).toContain(
      `spoiled, cut anew: ${spoiled[0]}`,
    );
    expect((await run('stock', 'cut', `out/${name}/plan.json`, '--date', '2026-03-04')).code).toBe(1);
    const again = await done('recut', `out/${name}/plan.json`, '1', '--store', 'store', ...short);
    expect(again.stdout).toContain('recut 3');
    expect(plan('demo-short-recut-3').before).toMatchObject({ job: 'demo-short' });
    expect(plan('demo-short-recut-3').recut!.spoiled).toEqual(spoiled);
  });

  it('says that the grain of a matched front does not run on, and offers the whole blank', async () => {
    const { done, plan } = cutVan();
    const before = plan('demo-short');
    const group = before.groups.find(({ runs }) => runs.length > 0)!;
    const [row] = group.runs;
    const alone = await done('recut', 'out/demo-short/plan.json', row!.panels[0]!, ...short);
    expect(alone.stdout.replace(/\s+/g, ' ')).toContain('add --whole-rows');
    expect(plan('demo-short-recut-1').groups.flatMap(({ runs }) => runs)).toEqual([]);
    const whole = await done('recut', 'out/demo-short/plan.json', row!.panels[0]!, '--whole-rows', ...short);
    expect(whole.stdout).not.toContain('--whole-rows');
    expect(plan('demo-short-recut-2').groups.flatMap(({ runs }) => runs)).toEqual([row]);
  });

  it('refuses in words what is no panel, with nothing written', async () => {
    const { folder, run } = cutVan();
    writeFiles(folder, {
      'empty.txt': '\n',
      'other.txt': 'PW1/OTHER/GREY/1/1\nPW1/DEMO-SHORT/GREY/OFF/1/A/1\n',
    });
    const plan = 'out/demo-short/plan.json';
    const cases: [string[], number, string][] = [
      [[plan, 'left side'], 1, 'panels are called `left side`'],
      [[plan, '9999'], 1, 'is no panel of this plan'],
      [[plan, '1/2'], 1, 'is made once'],
      [[plan, '--labels', 'empty.txt'], 1, 'no text of a label'],
      [[plan, '--labels', 'other.txt'], 1, 'other.txt:2'],
      [[plan, '--labels', 'none.txt'], 4, 'no such file'],
      [['none.json', '1'], 4, 'no such file'],
      [[order, '1'], 1, 'not JSON'],
      [[plan], 2, 'name a panel'],
      [[plan, '1', '--sheets-on-hand'], 2, '--sheets-on-hand needs --store'],
      [[plan, '1', '--store', 'none'], 4, 'no store in this folder'],
    ];
    for (const [args, code, words] of cases) {
      const ended = await run('recut', ...args, ...short);
      expect(ended.stderr.replace(/\s+/g, ' '), args.join(' ')).toContain(words);
      expect(ended.code, args.join(' ')).toBe(code);
      expect(ended.stdout).toBe('');
    }
    expect(existsSync(join(folder, 'out/demo-short-recut-1'))).toBe(false);
  });
});
