import { cpSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { pdfText } from '../documents/book/pdfText.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { plywright, projectFolder } from './plywright.ts';

const demoOrders = join(projectFolder, 'parts-libraries/demo-van/orders');
const benchLibrary = join(projectFolder, 'parts-libraries/workshop-bench');
/** Many runs of the command, each some seconds of work. */
const LONG = 180_000;
/** A short search by the clock is enough where what is bought must add up whatever the plans. */
const quick = ['--time', '0.02', '--date', '2026-03-02'];

/** Changes to a text, each of which must stand there. */
function changed(text: string, changes: readonly (readonly [string, string])[]): string {
  return changes.reduce((before, [what, by]) => {
    if (!before.includes(what)) throw new Error(`there is no ${what}`);
    return before.replace(what, by);
  }, text);
}

/** A folder with the library of the workshop, its suppliers added, and orders of it that begin on some days. */
function workshop(
  orders: Readonly<Record<string, string>>,
  ...sheets: (readonly [string, string])[]
): string {
  const folder = temporaryFolder();
  const library = join(folder, 'bench');
  cpSync(benchLibrary, library, { recursive: true });
  writeFileSync(
    join(library, 'suppliers.yaml'),
    'yard: { title: The yard, delivery days: 4, delivery price: 30, free delivery from: 100000 }\n',
  );
  const change = (path: string, ...changes: (readonly [string, string])[]) =>
    writeFileSync(join(library, path), changed(readFileSync(join(library, path), 'utf8'), changes));
  change('library.yaml', ['currency: EUR', 'currency: EUR\nfree days: [2026-05-01]']);
  change('sheets.yaml', ['price: 96.00', 'price: 96.00, supplier: yard, pack: 2'], ...sheets);
  change('fittings.yaml', [
    'pack: 100',
    'pack: 100, supplier: yard, price breaks: [{ from: 200, price: 0.03 }]',
  ]);
  const order = readFileSync(join(benchLibrary, 'orders/garage-bench.yaml'), 'utf8');
  for (const [name, start] of Object.entries(orders)) {
    const text = changed(order, [
      ['library: workshop-bench', 'library: ./bench'],
      ['saw: rail-saw', `saw: rail-saw${start === '' ? '' : `\nstart: ${start}`}`],
    ]);
    writeFileSync(join(folder, `${name}.yaml`), text);
  }
  return folder;
}

type Line = {
  item: string;
  edging?: string;
  fitting?: string;
  board?: string;
  length?: number;
  needed: number;
  spare: number;
  fromStore: number;
  keptForOthers: number;
  toBuy: number;
  quantities: { units: number; price: number }[];
};

interface Told {
  readonly purchase: {
    readonly folder: string;
    readonly papers: readonly string[];
    readonly cut: string;
    readonly ways: readonly {
      readonly cut: string;
      readonly total: number;
      readonly goods: number;
      readonly groups: readonly {
        board: string;
        finish: string;
        panels: number;
        sheets: number;
        offcuts: number;
        least: number;
        proved: boolean;
      }[];
    }[];
    readonly lines: readonly Line[];
    readonly suppliers: readonly {
      supplier: string;
      orderBy: string | null;
      goods: number;
      delivery: number;
      tooLate: object | null;
    }[];
  };
  readonly booked: { number: number; lines: readonly object[] } | null;
  readonly findings: readonly { code: string; severity: string }[];
}

async function bought(folder: string, ...args: string[]): Promise<Told> {
  const run = await plywright(folder, ['buy', ...args, ...quick, '--json', '--replace']);
  expect(run.code, run.stderr).toBe(0);
  return JSON.parse(run.stdout);
}

function csv(folder: string, told: Told, name: string): Record<string, string>[] {
  return readCsv(readFileSync(join(folder, told.purchase.folder, `${name}.csv`), 'utf8'));
}

const sum = (numbers: readonly number[]) => numbers.reduce((all, each) => all + each, 0);
const minor = (text: string) => Math.round(Number(text) * 100);

/** Everything that a purchase says of itself agrees. */
function addsUp(folder: string, told: Told): void {
  const { lines, suppliers, ways, cut } = told.purchase;
  const chosen = ways.find((way) => way.cut === cut)!;
  for (const line of lines) {
    expect(line.fromStore + line.toBuy).toBeGreaterThanOrEqual(line.needed + line.spare);
    if (line.item !== 'edging')
      expect(sum(line.quantities.map(({ units }) => units))).toBeGreaterThanOrEqual(line.toBuy);
  }
  expect(sum(lines.flatMap(({ quantities }) => quantities.map(({ price }) => price)))).toBe(chosen.goods);
  expect(sum(suppliers.map(({ goods }) => goods))).toBe(chosen.goods);
  expect(sum(suppliers.map(({ goods, delivery }) => goods + delivery))).toBe(chosen.total);
  const listed = ['sheets', 'edging', 'fittings'].flatMap((kind) => csv(folder, told, `purchase-${kind}`));
  expect(sum(listed.map((row) => minor(row['price']!)))).toBe(chosen.goods);
  const all = csv(folder, told, 'purchase-ways').find(
    (row) => row['ordered'] === 'yes' && row['board'] === 'all',
  )!;
  expect(minor(all['total']!)).toBe(chosen.total);
  // The sheets that are bought or taken from the store are those of the plans.
  const sheets = lines.filter(({ item }) => item === 'sheet');
  expect(sum(sheets.map(({ needed }) => needed))).toBe(sum(chosen.groups.map((group) => group.sheets)));
}

describe('plywright buy', { timeout: LONG }, () => {
  it('shows both ways to cut, orders one of them and writes lists, requests and a plan that can be sawn', async () => {
    const folder = workshop({ one: '', two: '2026-05-11' });
    const told = await bought(
      folder,
      ...['one.yaml', 'two.yaml', '--name', 'June rooms', '--start', '2026-05-04'],
      ...['--spare', '2 sheets', '--spare-why', 'veneer tears'],
    );
    expect(told.purchase.folder).toBe(join('out', 'purchase-june-rooms'));
    addsUp(folder, told);
    const [together, apart] = ['together', 'apart'].map(
      (cut) => told.purchase.ways.find((way) => way.cut === cut)!,
    );
    expect(sum(together!.groups.map(({ panels }) => panels))).toBe(
      sum(apart!.groups.map(({ panels }) => panels)),
    );
    for (const way of [together!, apart!]) {
      for (const group of way.groups)
        expect(group.sheets + group.offcuts).toBeGreaterThanOrEqual(group.least);
    }
    // May 1 is free in the library: four working days before Thursday, 30 April, are Friday the 24th.
    expect(
      told.purchase.suppliers.map(({ supplier, orderBy, tooLate }) => [supplier, orderBy, tooLate]),
    ).toEqual([
      ['yard', '2026-04-24', null],
      [null, null, null],
    ]);
    // Two sheets to spare of each board and finish.
    const spare = sum(told.purchase.lines.filter(({ item }) => item === 'sheet').map((line) => line.spare));
    expect(spare).toBe(2 * together!.groups.length);
    const written = (path: string) => readFileSync(join(folder, told.purchase.folder, path));
    const paper = pdfText(written('purchase.pdf')).join('\n');
    expect(paper).toContain('veneer tears');
    expect(paper).toContain('1 of ');
    const request = pdfText(written('request-yard.pdf')).join('\n');
    expect(request).toContain('The yard');
    expect(request).toContain('2026-04-30');
    for (const row of csv(folder, told, 'purchase-sheets')) {
      expect(request.includes(row['sheet']!)).toBe(row['supplier'] === 'yard');
    }
    const replayed = await plywright(folder, ['replay', join(told.purchase.folder, 'plan.json')]);
    expect(replayed.code, replayed.stderr).toBe(0);
    const plan = JSON.parse(written('plan.json').toString());
    const named = new Set(
      plan.groups.flatMap((group: { panels: { order: string }[] }) => group.panels.map(({ order }) => order)),
    );
    expect(named).toEqual(new Set(['one', 'two']));
  });

  it(
    'gives the same bytes again',
    async () => {
      const folder = workshop({ one: '2026-04-01' });
      const args = ['buy', 'one.yaml', '--work', '0', '--date', '2026-03-02'];
      for (const out of ['a', 'b']) expect((await plywright(folder, [...args, '--out', out])).code).toBe(0);
      const files = readdirSync(join(folder, 'a/purchase-one'), {
        recursive: true,
        withFileTypes: true,
      }).filter((entry) => entry.isFile());
      expect(files.length).toBeGreaterThan(8);
      for (const file of files) {
        const path = join(file.parentPath, file.name);
        expect(readFileSync(path.replace('/a/', '/b/')).equals(readFileSync(path)), path).toBe(true);
      }
    },
    LONG,
  );

  it('cut apart keeps a plan for each order; papers can be German', async () => {
    const folder = workshop({ one: '', two: '' });
    const told = await bought(folder, 'one.yaml', 'two.yaml', '--cut', 'apart', '--language', 'de');
    expect(told.purchase.cut).toBe('apart');
    addsUp(folder, told);
    expect(told.purchase.papers.filter((path) => path.endsWith('.json'))).toEqual([
      'plans/one.json',
      'plans/two.json',
    ]);
    const { folder: out } = told.purchase;
    expect(out).toBe(join('out', 'purchase-one-and-1-more'));
    expect((await plywright(folder, ['replay', join(out, 'plans/two.json')])).code).toBe(0);
    const text = pdfText(readFileSync(join(folder, out, 'purchase.pdf'))).join('\n');
    expect(text).toContain('Zusammen oder getrennt zuschneiden');
    expect(text).not.toContain('together');
    // Sheets come in packs of two, screws are cheaper from 200 on.
    for (const row of csv(folder, told, 'purchase-sheets')) {
      if (row['supplier'] === 'yard') expect(Number(row['count']) % 2).toBe(0);
    }
    const screws = csv(folder, told, 'purchase-fittings').find((row) => row['fitting'] === 'wood-screw')!;
    expect(Number(screws['count'])).toBeGreaterThanOrEqual(Math.max(200, Number(screws['needed'])));
    expect(screws['price each']).toBe('0.03');
    expect(told.purchase.suppliers.map(({ supplier, orderBy }) => [supplier, orderBy])).toEqual([
      ['yard', null],
      [null, null],
    ]);
  });

  it(
    'takes what the store has, leaves what it keeps for others, and reserves the rest once',
    async () => {
      const folder = workshop({ one: '2026-04-01', two: '2026-04-01' });
      const stock = async (...args: string[]) => {
        const run = await plywright(folder, ['stock', ...args, '--json']);
        expect(run.code, run.stderr).toBe(0);
        return JSON.parse(run.stdout);
      };
      const date = ['--date', '2026-03-02'];
      await stock('begin');
      const rack = `item,label,board,finish,thickness,length,width,grain,count,edging,metres,fitting
sheet,,birch-18,oiled-birch,17.6,2500,1250,length,3,,,
offcut,R7,birch-18,oiled-birch,17.6,1200,700,length,1,,,
edging,,,,,,,,,beech-strip-33,1.5,
fitting,,,,,,,,1000,,,wood-screw
fitting,,,,,,,,3,,,shelf-pin
`;
      writeFileSync(join(folder, 'rack.csv'), rack);
      await stock('receive', 'list', 'rack.csv', ...date);
      await stock('reserve', 'sheet', '--board', 'birch-18', '--count', '1', '--order', 'another', ...date);

      const args = [
        'one.yaml',
        'two.yaml',
        '--store',
        'store',
        '--name',
        'march',
        '--reserve',
        '--who',
        'B. Yer',
      ];
      const told = await bought(folder, ...args);
      addsUp(folder, told);
      const line = (is: (line: Line) => boolean) => told.purchase.lines.find(is)!;
      expect(line(({ board, length }) => board === 'birch-18' && length === 2500)).toMatchObject({
        fromStore: 2,
        keptForOthers: 1,
      });
      const edging = line((each) => each.edging === 'beech-strip-33');
      expect(edging).toMatchObject({ fromStore: 1500 });
      expect(edging.toBuy).toBeGreaterThanOrEqual(edging.needed - 1500);
      const screws = line((each) => each.fitting === 'wood-screw');
      expect(screws).toMatchObject({ toBuy: 0, quantities: [] });
      const together = told.purchase.ways.find(({ cut }) => cut === 'together')!;
      expect(sum(together.groups.map(({ offcuts }) => offcuts))).toBe(1);

      // Sheets and offcuts are kept for what is cut together, all else for each order.
      type Row = {
        item: string;
        label?: string;
        fitting?: string;
        amount: number;
        reserved: Record<string, number>;
      };
      const rows: Row[] = (await stock('show')).stock;
      expect(rows.find(({ item }) => item === 'sheet')!.reserved).toEqual({
        another: 1,
        'purchase-march': 2,
      });
      expect(rows.find(({ label }) => label === 'R7')!.reserved).toEqual({ 'purchase-march': 1 });
      const kept = rows.find(({ fitting }) => fitting === 'wood-screw')!.reserved;
      expect(kept).toEqual({ one: screws.needed / 2, two: screws.needed / 2 });

      // What is kept for the purchase is its own: nothing more is to be reserved.
      const again = await bought(folder, ...args);
      expect(again.booked).toBeNull();
      expect(
        again.purchase.lines.find(({ board, length }) => board === 'birch-18' && length === 2500),
      ).toMatchObject({ keptForOthers: 1 });

      // Once the goods are there, the cut takes what was kept for it.
      for (const kind of ['sheets', 'edging', 'fittings']) {
        await stock('receive', 'list', join(again.purchase.folder, `purchase-${kind}.csv`), ...date);
      }
      const there: Row[] = (await stock('show')).stock;
      const pins = again.purchase.lines.find(({ fitting }) => fitting === 'shelf-pin')!;
      const ordered = sum(pins.quantities.map(({ units }) => units));
      expect(there.find(({ fitting }) => fitting === 'shelf-pin')!.amount).toBe(3 + ordered);
      await stock('cut', join(again.purchase.folder, 'plan.json'), ...date);
      const after: Row[] = (await stock('show')).stock;
      expect(after.find(({ label }) => label === 'R7')).toBeUndefined();
      for (const { item, reserved } of after) {
        if (item === 'sheet' || item === 'offcut')
          expect(Object.keys(reserved)).not.toContain('purchase-march');
      }
    },
    LONG,
  );

  it('hands out what is on hand once when orders are cut apart, to the one that begins first', async () => {
    const folder = workshop({ late: '2026-06-01', early: '2026-05-04' });
    await plywright(folder, ['stock', 'begin']);
    const size = ['--thickness', '17.6', '--length', '1500', '--width', '900', '--grain', 'length'];
    const offcut = ['--label', 'R7', '--board', 'birch-18', '--finish', 'oiled-birch', ...size];
    await plywright(folder, ['stock', 'receive', 'offcut', ...offcut, '--date', '2026-03-02']);
    const told = await bought(
      folder,
      'late.yaml',
      'early.yaml',
      '--cut',
      'apart',
      '--store',
      'store',
      '--reserve',
    );
    addsUp(folder, told);
    const rows = JSON.parse((await plywright(folder, ['stock', 'show', '--json'])).stdout).stock;
    expect(rows[0].reserved).toEqual({ early: 1 });
  });

  it('tells what is wrong and writes nothing', async () => {
    const folder = workshop({ one: '', two: '' }, ['price: 185.00', 'price: 185.00, count: 2']);
    const told = async (...args: string[]) => {
      const run = await plywright(folder, ['buy', ...args]);
      expect(existsSync(join(folder, 'out'))).toBe(false);
      return `${run.code} ${run.stderr}`.replace(/\s+/g, ' ');
    };
    expect(await told('one.yaml', '--spare', '5%')).toMatch(/^2 .*--spare needs --spare-why/);
    expect(await told('one.yaml', '--spare', 'some', '--spare-why', 'x')).toMatch(/^2 .*5% of bought/);
    expect(await told('one.yaml', '--reserve')).toMatch(/^2 .*--reserve needs --store/);
    expect(await told('one.yaml', '--start', '2026-02-30')).toMatch(/^2 .*a day such as/);
    expect(await told('one.yaml', 'one.yaml')).toMatch(/^1 .*named twice/);
    expect(await told('one.yaml', join(demoOrders, 'demo-long.yaml'))).toMatch(/^1 .*another library/);
    expect(await told('one.yaml', '--saw', 'rail-saww')).toMatch(/^1 .*nearest: rail-saw/);
    expect(await told('one.yaml', '--store', 'none')).toMatch(/^\d .*no store in this folder/);
    // Each order takes both sheets that can be had; for two orders it is too little.
    expect(await told('one.yaml', 'two.yaml', '--cut', 'apart', ...quick)).toMatch(/^1 .*2 missing/);
  });

  it('says in words what comes too late, and from when on work can begin', async () => {
    const folder = workshop({ one: '2026-03-05' });
    const run = await plywright(folder, ['buy', 'one.yaml', ...quick]);
    expect(run.code).toBe(0);
    const said = run.stdout.replace(/\s+/g, ' ');
    // Four working days from Monday, 2 March: there on Friday the 6th.
    expect(said).toContain('comes too late for one: it had to be ordered by 2026-02-26');
    expect(said).toContain('work begun on 2026-03-09 at the earliest');
  });
});
