import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { cutLists, panelList, sheetList, writeFiles } from './lists.ts';
import { type Ended, plywright, projectFolder } from './plywright.ts';

type Row = Readonly<Record<string, unknown>> & { item: string; amount: number };

/** A folder with a store, and what runs `plywright stock` in it. */
async function workshop() {
  const folder = temporaryFolder();
  const stock = (...args: string[]) => plywright(folder, ['stock', ...args]);
  const booked = async (...args: string[]) => {
    const run = await stock(...args, '--date', '2026-03-02', '--who', 'M. Beck');
    expect(run.code, `${args.join(' ')}\n${run.stderr}`).toBe(0);
    return run;
  };
  const rows = async (...args: string[]): Promise<Row[]> =>
    JSON.parse((await stock('show', '--json', ...args)).stdout).stock;
  expect((await stock('begin')).code).toBe(0);
  return { folder, stock, booked, rows };
}

const newSheet = ['--board', 'poplar-15', '--finish', 'pale-grey', '--thickness', '16.2'];
const large = ['--length', '2500', '--width', '1250', '--grain', 'length'];

function codes(run: Ended): string[] {
  return (JSON.parse(run.stdout).findings as { code: string }[]).map(({ code }) => code);
}

describe('plywright stock', () => {
  it('receives, reserves, issues, corrects and reverses, and shows any day', async () => {
    const { stock, booked, rows, folder } = await workshop();
    const first = await booked(
      'receive',
      'sheet',
      ...newSheet,
      ...large,
      '--count',
      '6',
      '--why',
      'note 4711',
    );
    expect(first.stdout).toContain('6 × sheet poplar-15 pale-grey 16.2 mm, 2500 × 1250');
    await booked('receive', 'edging', '--name', 'grey-1', '--metres', '50.25');
    await booked(
      'receive',
      'offcut',
      '--label',
      'A17',
      ...newSheet,
      '--length',
      '27 1/2 in',
      '--width',
      '400',
      '--grain',
      'length',
    );
    await booked('reserve', 'sheets', '--board', 'poplar-15', '--count', '4', '--order', 'van-1');
    const other = await stock('issue', 'sheet', '--count', '3', '--order', 'van-2', '--json');
    expect(other.code).toBe(1);
    expect(codes(other)).toEqual(['reserved-for-others']);
    await booked('issue', 'sheet', '--count', '3', '--order', 'van-2', '--from-reserved', 'van-1');
    await booked('correct', 'offcut', '--label', 'a17', '--place', 'rack 2');
    const [sheet, offcut, edging] = ['sheet', 'offcut', 'edging'].map(
      (item) => async () => (await rows()).find((row) => row.item === item),
    );
    expect(await sheet!()).toMatchObject({ amount: 3, free: 2, reserved: { 'van-1': 1 } });
    expect(await offcut!()).toMatchObject({ label: 'A17', length: 698.5, place: 'rack 2' });
    expect(await edging!()).toMatchObject({ amount: 50.25 });
    await booked('reverse', '5', '--why', 'wrong order');
    expect(await sheet!()).toMatchObject({ amount: 6, reserved: { 'van-1': 4 } });
    expect((await rows('--after', '4')).find((row) => row.item === 'sheet')).toMatchObject({ amount: 6 });
    expect(await rows('--on', '2026-03-01')).toEqual([]);
    const history = await stock('history');
    expect(history.stdout).toMatch(/^5 2026-03-02 issue · M\. Beck · for van-2 · REVERSED by 7$/m);
    expect(history.stdout).toContain('698.5 × 400; rack 2): in');
    const shown = await stock('show');
    expect(shown.stdout).toContain('rack 2');
    expect(`${shown.stdout}${history.stdout}`.split('\n').filter((line) => line.length > 80)).toEqual([]);
    expect(readFileSync(join(folder, 'store/ledger.jsonl'), 'utf8').trim().split('\n')).toHaveLength(8);
  });

  it('refuses in words what cannot be, with nothing booked', async () => {
    const { stock, booked, folder } = await workshop();
    await booked('receive', 'fitting', '--name', 'hinge', '--count', '20');
    const before = readFileSync(join(folder, 'store/ledger.jsonl'), 'utf8');
    const cases: [string[], number, string][] = [
      [['issue', 'fitting', '--name', 'hing', '--count', '2'], 1, 'nearest: hinge'],
      [['issue', 'fitting', '--name', 'hinge', '--count', '21'], 1, 'too little of fitting hinge'],
      [['receive', 'sheet', '--board', 'oak', '--count', '2'], 1, '--length is missing'],
      [['receive', 'fitting', '--name', 'hinge', '--count', '2', '--date', '2026-03-01'], 1, 'later day'],
      [['receive', 'fitting', '--name', 'hinge', '--count', '2', '--date', '2199-01-01'], 1, 'not come yet'],
      [['correct', 'fitting', '--name', 'hinge', '--count', '20'], 1, 'already'],
      [['reverse', '9'], 1, 'no booking 9'],
      [['show', '--after', '9'], 1, 'no booking 9'],
      [['cut', 'none.json'], 4, 'no such file'],
      [['show', '--store', 'stor'], 4, 'no store in this folder'],
      [['begin'], 4, 'a store in this folder already'],
      [['receive', 'board', '--count', '2'], 2, 'is not sheet, offcut'],
      [
        ['expect', 'purchase', 'may', '--count', '2'],
        2,
        "'may' goes with 'expect list', not with 'purchase'",
      ],
      [['withdraw', 'list', 'a.csv'], 2, "'a.csv' goes with 'withdraw purchase', not with 'list'"],
      [['receive', 'fitting', '--name', 'hinge'], 2, 'give --count'],
      [['receive', 'edging', '--name', 'grey', '--count', '1'], 2, 'in --metres'],
      [['reserve', 'fitting', '--name', 'hinge', '--count', '1'], 2, 'give --order'],
      [['show', '--on', '2026-02-30'], 2, 'a day such as'],
      [['recieve', 'sheet'], 2, 'Did you mean receive?'],
    ];
    for (const [args, code, words] of cases) {
      const run = await stock(...args);
      expect(run.code, args.join(' ')).toBe(code);
      expect(run.stderr.replace(/\s+/g, ' ')).toContain(words);
      expect(run.stdout).toBe('');
    }
    expect(readFileSync(join(folder, 'store/ledger.jsonl'), 'utf8')).toBe(before);
  });

  it('receives a whole list as one booking, or nothing of it', async () => {
    const { stock, booked, rows, folder } = await workshop();
    writeFiles(folder, {
      'edging.csv': 'edging,metres to buy,roll,rolls\ngrey-1,3.12,50,2\nash-1,10,50,1\n',
      'wrong.csv': 'fitting,count\nhinge,20\nlatch,many\n',
    });
    const run = await booked('receive', 'list', 'edging.csv');
    expect(run.stdout).toContain('100 m × edging grey-1: in');
    expect(await rows()).toMatchObject([
      { edging: 'ash-1', amount: 50 },
      { edging: 'grey-1', amount: 100 },
    ]);
    const wrong = await stock('receive', 'list', 'wrong.csv');
    expect(wrong.code).toBe(1);
    expect(wrong.stderr).toContain('wrong.csv:3');
    expect(JSON.parse((await stock('history', '--json')).stdout).bookings).toHaveLength(1);
    const cases: [string[], number, string][] = [
      [['list'], 2, 'receive list FILE'],
      [['list', 'none.csv'], 4, 'no such file'],
      [['list', 'edging.csv', '--count', '2'], 2, '--count stands in the list'],
      [['fitting', 'edging.csv', '--name', 'x', '--count', '2'], 2, "goes with 'receive list'"],
    ];
    for (const [args, code, words] of cases) {
      const ended = await stock('receive', ...args);
      expect([ended.code, ended.stderr.includes(words)], args.join(' ')).toEqual([code, true]);
    }
  });

  it('tells a last line that was written only in part, and goes on', async () => {
    const { stock, booked, folder } = await workshop();
    await booked('receive', 'fitting', '--name', 'hinge', '--count', '20');
    const path = join(folder, 'store/ledger.jsonl');
    writeFileSync(path, `${readFileSync(path, 'utf8')}{"number":2,"date":"2026-03`);
    const shown = await stock('show');
    expect(shown.code).toBe(0);
    expect(shown.stderr).toContain('written only in part');
    await booked('issue', 'fitting', '--name', 'hinge', '--count', '1');
    expect((await stock('show')).stderr).toBe('');
  });
});

describe('plywright stock cut', () => {
  it('takes out sheets and offcuts, books in what is kept, once, and can be reversed', async () => {
    const { folder, stock, booked, rows } = await workshop();
    const sheets = `${sheetList.replace('length,width,', 'name,kind,length,width,').replace('\n2500', '\nlarge,sheet,2500').replace('\n2440', '\nsmall,sheet,2440')}A17,offcut,800,700,length,1,\n`;
    writeFiles(folder, { 'panels.csv': panelList, 'sheets.csv': sheets });
    expect((await plywright(folder, [...cutLists])).code).toBe(0);
    const plan = 'out/panels/plan.json';
    const { groups } = JSON.parse(readFileSync(join(folder, plan), 'utf8'));
    const used = new Map<string, number>();
    for (const sheet of groups[0].sheets) used.set(sheet.stock, (used.get(sheet.stock) ?? 0) + sheet.copies);
    expect(used.get('A17')).toBe(1);
    const empty = await stock('cut', plan, '--json');
    expect(empty.code).toBe(1);
    expect(new Set(codes(empty))).toEqual(new Set(['not-in-store']));
    await booked('receive', 'sheet', ...large, '--count', '9');
    await booked(
      'receive',
      'sheet',
      '--length',
      '2440',
      '--width',
      '1220',
      '--grain',
      'length',
      '--count',
      '9',
    );
    await booked(
      'receive',
      'offcut',
      '--label',
      'A17',
      '--length',
      '800',
      '--width',
      '700',
      '--grain',
      'length',
    );
    await booked('reserve', 'sheet', '--length', '2500', '--count', '1', '--order', 'panels');
    const before = await rows();
    await booked('cut', plan, '--place', 'rack 1');
    const after = await rows();
    for (const [id, length] of [
      ['large', 2500],
      ['small', 2440],
    ] as const) {
      const row = after.find((one) => one.item === 'sheet' && one['length'] === length);
      expect(row?.amount).toBe(9 - (used.get(id) ?? 0));
    }
    expect(after.some((row) => row['label'] === 'A17')).toBe(false);
    const kept = after.filter((row) => row.item === 'offcut');
    const ofPlan = groups[0].sheets.flatMap((sheet: { copies: number; pieces: { is: string }[] }) =>
      Array.from({ length: sheet.copies }, () => sheet.pieces.filter(({ is }) => is === 'offcut')).flat(),
    );
    expect(kept.map((row) => row['length']).sort()).toEqual(
      ofPlan.map((piece: { length: number }) => piece.length).sort(),
    );
    for (const row of kept) {
      expect(row['place']).toBe('rack 1');
      expect(row['label']).toMatch(/^PW1\/PANELS\/.*\/OFF\/\d+\/.+\/\d+$/);
    }
    const twice = await stock('cut', plan, '--json');
    expect(codes(twice)).toEqual(['cut-twice']);
    await booked('reverse', '5');
    expect(await rows()).toEqual(before);
    await booked('cut', plan);
  });

  it('books nothing of a plan that cannot be sawn', async () => {
    const { folder, stock, booked } = await workshop();
    writeFiles(folder, { 'panels.csv': panelList, 'sheets.csv': sheetList });
    await plywright(folder, [...cutLists]);
    await booked('receive', 'sheet', ...large, '--count', '9');
    const path = join(folder, 'out/panels/plan.json');
    const plan = JSON.parse(readFileSync(path, 'utf8'));
    plan.groups[0].panels[0].count += 1;
    writeFileSync(path, JSON.stringify(plan));
    const run = await stock('cut', path);
    expect(run.code).toBe(3);
    expect(run.stderr).toContain('nothing was booked');
    expect(JSON.parse((await stock('history', '--json')).stdout).bookings).toHaveLength(1);
  });
});

describe('plywright cut --store', () => {
  const order = join(projectFolder, 'parts-libraries/demo-van/orders/demo-short.yaml');
  const short = ['--work', '200'];

  it('cuts from the offcuts that are free, says what they save, and can be booked', async () => {
    const { folder, stock, booked, rows } = await workshop();
    const board = [
      '--board',
      'poplar-raw-15',
      '--finish',
      'raw-poplar',
      '--thickness',
      '15',
      '--grain',
      'none',
    ];
    for (const label of ['R1', 'R2']) {
      await booked('receive', 'offcut', '--label', label, ...board, '--length', '2450', '--width', '1200');
    }
    await booked('reserve', 'offcut', '--label', 'R1', '--order', 'another-van');
    const run = await plywright(folder, ['cut', order, ...short, '--store', 'store', '--json']);
    expect(run.code, run.stderr).toBe(0);
    // All raw panels fit on the one free offcut, so that the one sheet at 64.00 is not opened.
    expect(JSON.parse(run.stdout).offcuts).toEqual({ offered: 1, used: 1, sheets: 1, costMinor: 6400 });
    const plan = JSON.parse(readFileSync(join(folder, 'out/demo-short/plan.json'), 'utf8'));
    for (const { board, finish, thickness, stock: stocks, sheets } of plan.groups) {
      for (const { id, kind, length, width, grain } of stocks) {
        const own = sheets.filter((sheet: { stock: string }) => sheet.stock === id);
        if (kind === 'offcut' || own.length === 0) continue;
        const count = own.reduce((sum: number, { copies }: { copies: number }) => sum + copies, 0);
        const size = [
          '--length',
          `${length}`,
          '--width',
          `${width}`,
          '--grain',
          grain,
          '--count',
          `${count}`,
        ];
        const of = ['--board', board, '--finish', finish, '--thickness', `${thickness}`];
        await booked('receive', 'sheet', ...of, ...size);
      }
    }
    await booked('cut', 'out/demo-short/plan.json');
    const labels = (await rows()).map((row) => row['label']);
    expect(labels).toContain('R1');
    expect(labels).not.toContain('R2');
    expect((await rows()).filter((row) => row.item === 'sheet')).toEqual([]);
    expect((await stock('history')).stdout).toContain('cut · M. Beck · for demo-short');
  });

  it('says so when no offcut fits, and when the store or the words are wrong', async () => {
    const { folder } = await workshop();
    const none = await plywright(folder, ['cut', order, ...short, '--store', 'store']);
    expect(none.stdout).toContain('The store has no offcut that fits');
    expect((await plywright(folder, ['cut', order, '--store', 'stor'])).code).toBe(4);
    const two = await plywright(folder, ['cut', order, order, '--store', 'store']);
    expect(two.code).toBe(2);
    expect(two.stderr).toContain('one order at a time');
  });
});

describe('what is on order', () => {
  type OnOrder = Row & { purchase: string; supplier: string | null; expected: string | null };
  const may = ['--purchase', 'may', '--supplier', 'yard'];
  const json = async (run: Promise<Ended>) => JSON.parse((await run).stdout);

  it('is booked, shown, put off, comes in part by part and is taken off', async () => {
    const { booked, stock, rows, folder } = await workshop();
    const onOrder = async (): Promise<OnOrder[]> => (await json(stock('show', '--json'))).onOrder;
    const six = ['sheet', ...newSheet, ...large, '--count', '6', '--order', 'van-1'];
    await booked('expect', ...six, ...may, '--expected', '2026-03-09');
    writeFileSync(join(folder, 'more.csv'), 'fitting,pack,packs,supplier\nhinge,10,2,post\nlatch,5,1,post\n');
    await booked('expect', 'list', 'more.csv', '--purchase', 'may');
    expect(await rows()).toEqual([]);
    expect(await onOrder()).toMatchObject([
      {
        item: 'sheet',
        amount: 6,
        purchase: 'may',
        supplier: 'yard',
        expected: '2026-03-09',
        reservedFor: 'van-1',
      },
      { fitting: 'hinge', amount: 20, supplier: 'post', expected: null, reservedFor: null },
      { fitting: 'latch', amount: 5 },
    ]);
    await booked('postpone', 'may', '--supplier', 'yard', '--expected', '2026-03-11');
    const shown = (await stock('show')).stdout;
    expect(shown).toContain('may with yard, expected on 2026-03-11');
    expect(shown).toContain('(6 for van-1)');
    const part = await booked('receive', 'sheet', '--board', 'poplar-15', '--count', '4');
    expect(part.stdout).toContain('reserved for van-1');
    expect(part.stdout).toContain('on order: 2 (2 for van-1) under may with yard, expected on 2026-03-11');
    await booked('withdraw', 'fitting', '--name', 'latch', '--count', '5', '--purchase', 'may');
    // More than was ordered comes in, and is told.
    const more = await booked('receive', 'sheet', '--board', 'poplar-15', '--count', '3');
    expect(more.stderr).toContain('More of sheet poplar-15');
    await booked('receive', 'purchase', 'may', '--supplier', 'post');
    expect(await onOrder()).toEqual([]);
    expect((await rows()).find(({ item }) => item === 'sheet')).toMatchObject({ amount: 7, free: 1 });
    // Reversed, it is on order again; history says when what was on order.
    await booked('reverse', '7');
    expect((await onOrder()).map(({ amount }) => amount)).toEqual([20]);
    const day = await json(stock('show', '--after', '2', '--json'));
    expect(day.onOrder).toHaveLength(3);
    expect((await stock('history')).stdout).toContain('no longer on order: may with post');
  });

  it('is told in words where it is not as was said', async () => {
    const { booked, stock } = await workshop();
    await booked('expect', 'fitting', '--name', 'hinge', '--count', '4', ...may);
    const date = ['--date', '2026-03-02', '--json'];
    const refused = async (...args: string[]) => codes(await stock(...args, ...date));
    expect(await refused('withdraw', 'fitting', '--name', 'hinge', '--count', '5', ...may)).toEqual([
      'not-on-order',
    ]);
    expect(await refused('withdraw', 'fitting', '--name', 'hing', '--count', '1', ...may)).toEqual([
      'not-on-order',
    ]);
    expect(await refused('receive', 'purchase', 'mai')).toEqual(['not-on-order']);
    expect(await refused('postpone', 'june', '--expected', '2026-03-09')).toEqual(['not-on-order']);
    expect((await stock('receive', 'purchase', 'mai', ...date)).stdout).toContain('"nearest": "may"');
    const misused = [
      ['expect', 'fitting', '--name', 'hinge', '--count', '4'],
      ['expect', 'offcut', '--label', 'A1', ...may],
      ['expect', 'list', 'x.csv'],
      ['receive', 'purchase'],
      ['receive', 'purchase', 'may', '--count', '3'],
      ['receive', 'fitting', '--name', 'hinge', '--count', '1', '--not-ordered', '--purchase', 'may'],
      ['withdraw', 'list', 'x.csv'],
      ['expect', 'fitting', '--name', 'hinge', '--count', '4', ...may, '--expected', '2026-02-30'],
    ];
    for (const args of misused) expect((await stock(...args)).code, args.join(' ')).toBe(2);
    const beside = await booked('receive', 'fitting', '--name', 'hinge', '--count', '2', '--not-ordered');
    expect(beside.stdout).toContain('on order: 4 under may with yard');
  });
});
