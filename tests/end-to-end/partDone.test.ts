import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { labelledPieces } from '../../src/documents/panelStickerPieces.ts';
import type { PlanFile } from '../../src/model/plan.ts';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { writeFiles } from './lists.ts';
import { plywright, projectFolder } from './plywright.ts';
import { sheetsOfPlan } from './storeFor.ts';

type Row = Readonly<Record<string, unknown>> & { item: string; amount: number };

const folder = temporaryFolder();
const demo = readFileSync(join(projectFolder, 'parts-libraries/demo-van/orders/demo-long.yaml'), 'utf8');
const short = ['--work', '100'];
const run = (...args: string[]) => plywright(folder, args);
async function done(...args: string[]) {
  const ended = await run(...args);
  expect(ended.code, `${args.join(' ')}\n${ended.stderr}`).toBe(0);
  return ended;
}
const plan = (name: string): PlanFile =>
  JSON.parse(readFileSync(join(folder, 'out', name, 'plan.json'), 'utf8'));
const rows = async (): Promise<Row[]> => JSON.parse((await done('stock', 'show', '--json')).stdout).stock;
const grey = 'poplar-15-pale-grey';
const ash = 'poplar-15-light-ash';

async function receive(of: PlanFile, date: string) {
  for (const sheet of sheetsOfPlan(of)) {
    await done('stock', 'receive', 'sheet', ...sheet, '--date', date);
  }
}

/** Boards in the store and in the plans that were sawn, in mm². */
function boardArea(list: readonly Row[]): number {
  return list
    .filter(({ item }) => item === 'sheet' || item === 'offcut')
    .reduce((sum, row) => sum + Number(row['length']) * Number(row['width']) * row.amount, 0);
}

describe('an order that is changed after some of its sheets are sawn', () => {
  beforeAll(async () => {
    writeFiles(folder, {
      'van.yaml': demo,
      'changed.yaml': demo
        .replace('sink: small', 'sink: large')
        .replace('bed_width: 1250', 'bed_width: 1300'),
    });
    await done('cut', 'van.yaml', ...short);
    await done('stock', 'begin');
    await receive(plan('van'), '2026-03-02');
  });

  it('has the sheets booked that are sawn, each once, with edging for their panels', async () => {
    const cut = ['stock', 'cut', 'out/van/plan.json', '--date', '2026-03-03'];
    const metres = ['--metres', '3', '--date', '2026-03-02'];
    await done('stock', 'receive', 'edging', '--name', 'pale-grey-19', ...metres);
    await done('stock', 'receive', 'fitting', '--name', 'hinge-110', '--count', '50', '--date', '2026-03-02');
    const first = await done(...cut, '--sheets', `${grey}/1`, '--order-file', 'van.yaml', '--place', 'rack');
    expect(first.stdout.replace(/\s+/g, ' ')).toContain(`Still to saw:`);
    expect(first.stderr.replace(/\s+/g, ' ')).toContain('too little of edging pale-grey-19');
    expect((await rows()).some(({ item }) => item === 'edging')).toBe(false);
    // Fittings go out with the last sheet.
    expect((await rows()).find(({ item }) => item === 'fitting')?.amount).toBe(50);
    const twice = await run(...cut, '--sheets', `${grey}/1`);
    expect(twice.code).toBe(1);
    expect(twice.stderr).toContain('sawn and booked already');
    await done(...cut, '--sheets', `${grey}/2,${ash}`);
    const { bookings } = JSON.parse((await done('stock', 'history', '--json')).stdout);
    expect(bookings.at(-1).sheets).toEqual([
      { group: grey, number: 2, copies: [1] },
      { group: ash, number: 1, copies: [1] },
    ]);
  });

  it('goes on from there: sawn panels are used, the others become offcuts, the rest is cut anew', async () => {
    const before = plan('van');
    const after = await done(
      'cut',
      'changed.yaml',
      '--after',
      'out/van/plan.json',
      '--store',
      'store',
      ...short,
    );
    expect(after.stdout.replace(/\s+/g, ' ')).toMatch(/already sawn: \d+ panels of the order \(3 sheets/);
    expect(after.stdout).toContain('of no use to the order any more');
    await done('replay', 'out/van-part-2/plan.json');
    const now = plan('van-part-2');
    const list = readCsv(readFileSync(join(folder, 'out/van-part-2/already-sawn.csv'), 'utf8'));
    // Every panel of the three sheets is used or left over, once.
    const sawn = labelledPieces(before, 'van').flatMap(({ is, group, sheet, code }) =>
      is === 'panel' && ((group.id === grey && sheet.number < 3) || group.id === ash) ? [code] : [],
    );
    expect(list.map((row) => row['label']).sort()).toEqual(sawn.sort());
    // Sawn panels and those still to saw are those of the changed order.
    const panels = (await done('panels', 'changed.yaml', '--json')).stdout;
    const wanted = new Map<string, number>();
    for (const { id, count } of JSON.parse(panels).panels) wanted.set(id, count);
    const planned = new Map<string, number>();
    for (const group of [...now.groups, ...now.sawn!.groups]) {
      for (const { id, count } of group.panels) planned.set(id, (planned.get(id) ?? 0) + count);
    }
    expect([...planned].sort()).toEqual([...wanted].sort());
    // No label is on two pieces of wood.
    const codes = labelledPieces(now, 'van').map(({ code }) => code);
    expect(new Set([...codes, ...sawn]).size).toBe(codes.length + sawn.length);
    expect(codes.filter((code) => !/^PW1\/VAN(-PART-2)?\//.test(code))).toEqual([]);
  });

  it('is booked like any other, and the boards add up', async () => {
    const now = plan('van-part-2');
    await receive(now, '2026-03-04');
    const before = boardArea(await rows());
    const cut = ['stock', 'cut', 'out/van-part-2/plan.json', '--date', '2026-03-05'];
    const first = now.groups[0]!.id;
    await done(...cut, '--sheets', `${first}/1`);
    const rest = await done(...cut, '--order-file', 'changed.yaml');
    expect(rest.stdout).toContain('All sheets of this plan are sawn.');
    expect((await run(...cut)).code).toBe(1);
    const kept = now.sawn!.groups.flatMap(({ left }) => left.filter((piece) => piece.kept));
    expect(kept.length).toBeGreaterThan(0);
    const there = await rows();
    const cutUp = now.groups.flatMap(({ stock, sheets }) =>
      stock.filter(({ id, kind }) => kind === 'offcut' && sheets.some((one) => one.stock === id)),
    );
    for (const { code } of kept) {
      const isThere = there.some((row) => row['label'] === code);
      expect(isThere).toBe(!cutUp.some(({ id }) => id === code));
    }
    // What came in and was not there before: sawn panels that are offcuts now. What went: panels, dust and waste.
    const areaOfLeft = kept.reduce((sum, { length, width }) => sum + length * width, 0);
    let gone = 0;
    for (const { stock, sheets } of now.groups) {
      for (const { stock: id, copies, pieces } of sheets) {
        const { length, width } = stock.find((one) => one.id === id)!;
        const offcuts = pieces.reduce(
          (sum, one) => (one.is === 'offcut' ? sum + one.length * one.width : sum),
          0,
        );
        gone += copies * (length * width - offcuts);
      }
    }
    expect(boardArea(there)).toBeCloseTo(before + areaOfLeft - gone, 0);
    const { bookings } = JSON.parse((await done('stock', 'history', '--json')).stdout);
    expect(bookings.at(-1)).toMatchObject({ kind: 'cut', order: 'van' });
    // All sheets of the plan are out: with nothing on hand nothing more can be cut.
    const none = await run('cut', 'van.yaml', '--store', 'store', '--sheets-on-hand', ...short);
    expect(none.code).toBe(1);
    expect(none.stderr.replace(/\s+/g, ' ')).toContain('leave --sheets-on-hand out');
    const over = await run(
      'cut',
      'changed.yaml',
      '--after',
      'out/van/plan.json',
      '--store',
      'store',
      ...short,
    );
    expect(over.stderr.replace(/\s+/g, ' ')).toContain(
      'go on from that plan: --after out/van-part-2/plan.json',
    );
  });

  it('says in words what cannot be', async () => {
    const cases: [string[], number, string][] = [
      [['van.yaml', '--after', 'out/van/plan.json'], 2, '--after needs --store'],
      [['van.yaml', '--sawn', 'x/1'], 2, '--sawn goes with --after'],
      [['van.yaml', '--whole-rows'], 2, '--whole-rows goes with --after'],
      [
        ['van.yaml', '--after', 'out/van/plan.json', '--sawn', 'poplar-15-pale-gray/1'],
        1,
        `nearest: ${grey}`,
      ],
      [['van.yaml', '--after', 'out/van/plan.json', '--sawn', `${grey}/99`], 1, 'no sheet'],
      [['van.yaml', '--after', 'none.json', '--sawn', 'x/1'], 4, 'no such file'],
    ];
    for (const [args, code, words] of cases) {
      const ended = await run('cut', ...args, ...short);
      expect(ended.stderr.replace(/\s+/g, ' '), args.join(' ')).toContain(words);
      expect(ended.code, args.join(' ')).toBe(code);
    }
    const all = Object.values(plan('van').groups).map(({ id }) => id);
    const sawn = await run(
      'cut',
      'van.yaml',
      '--after',
      'out/van/plan.json',
      '--sawn',
      all.join(','),
      ...short,
    );
    expect(sawn.code).toBe(1);
    expect(sawn.stderr).toContain('Every panel of the order is sawn already');
  });
});
