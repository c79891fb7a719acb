import { createHash } from 'node:crypto';
import { cpSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { auditLedger, bookingsIn, type ShownEntry, type ShownOnOrder } from './auditLedger.ts';
import { plywright, projectFolder } from './plywright.ts';

/**
 * The demonstration month: six vans in four finishes and a store with offcuts. Two vans are bought and cut together, four
 * apart; what is ordered is on order until it comes; a panel is spoiled; one order is changed after half of its sheets. After every step the books are added up again
 * from the files alone.
 */
// Each step runs several commands; a machine that does other things meanwhile must not fail them.
vi.setConfig({ testTimeout: 900_000, hookTimeout: 900_000 });

const folder = temporaryFolder();
const soon = ['--work', '1', '--threads', '2'];
const together = ['heron', 'curlew'];
const apart = ['plover', 'avocet', 'dunlin', 'knot'];
const order = (name: string) => `month/${name}.yaml`;
const apartPlan = (name: string) => `out/purchase-second/plans/${name}.json`;
const pooledPlan = 'out/purchase-first/plan.json';

async function ran(...args: string[]): Promise<string> {
  const run = await plywright(folder, args);
  expect(run.code, `plywright ${args.join(' ')}\n${run.stdout}${run.stderr}`).toBe(0);
  return run.stdout;
}

async function told<T>(...args: string[]): Promise<T> {
  return JSON.parse(await ran(...args, '--json')) as T;
}

function shown(): Promise<{
  readonly stock: readonly ShownEntry[];
  readonly onOrder: readonly ShownOnOrder[];
}> {
  return told('stock', 'show');
}

async function stock(): Promise<readonly ShownEntry[]> {
  return (await shown()).stock;
}

/** The books after a step; gives the panels that a plan file has given so far. */
async function audited(): Promise<(plan: string) => number> {
  const { stock, onOrder } = await shown();
  const panels = auditLedger(folder, stock, onOrder);
  return (plan) => {
    const text = readFileSync(join(folder, plan), 'utf8');
    return panels.get(createHash('sha256').update(text).digest('hex')) ?? 0;
  };
}

interface Plan {
  readonly groups: readonly {
    readonly id: string;
    readonly board: string;
    readonly finish: string;
    readonly stock: readonly { id: string; kind: string; length: number; width: number }[];
    readonly panels: readonly { readonly count: number }[];
    readonly sheets: readonly { readonly number: number; readonly stock: string; readonly copies: number }[];
  }[];
  readonly sawn?: { readonly groups: readonly { readonly panels: readonly { readonly count: number }[] }[] };
}

const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);
const planIn = (path: string) => JSON.parse(readFileSync(join(folder, path), 'utf8')) as Plan;
const panelsOf = (groups: Plan['groups']) =>
  sum(groups.flatMap(({ panels }) => panels.map(({ count }) => count)));
const listIn = (path: string) => readCsv(readFileSync(join(folder, path), 'utf8'));

interface Way {
  readonly cut: string;
  readonly total: number;
  readonly groups: readonly { sheets: number; offcuts: number; least: number; panels: number }[];
}

interface Bought {
  readonly purchase: {
    readonly ways: readonly Way[];
    readonly lines: readonly { readonly toBuy: number; readonly onOrder: number }[];
  };
}

async function buy(name: string, way: string, orders: readonly string[], date: string) {
  const asked = ['buy', ...orders.map(order), '--name', name, '--cut', way, '--date', date];
  const { purchase } = await told<Bought>(...asked, '--store', 'store', '--reserve', '--expect', ...soon);
  const ways = new Map(purchase.ways.map((one) => [one.cut, one]));
  for (const { groups } of purchase.ways) {
    for (const { sheets, offcuts, least } of groups) expect(sheets + offcuts).toBeGreaterThanOrEqual(least);
  }
  return { together: ways.get('together')!, apart: ways.get('apart')! };
}

/** All that is on order of a purchase has come in. */
async function received(name: string, date: string): Promise<void> {
  await ran('stock', 'receive', 'purchase', `purchase-${name}`, '--date', date);
  const left = (await shown()).onOrder.filter(({ purchase }) => purchase === `purchase-${name}`);
  expect(left).toEqual([]);
}

/** Number of a panel of the plan that is cut together for which the same plan keeps an offcut that is large enough. */
function spoiledPanel(): string {
  const offcuts = listIn('out/purchase-first/offcuts-kept.csv');
  const size = (row: Record<string, string>, key: string) => Number(row[key]);
  const found = listIn('out/purchase-first/cutting-list.csv').find(
    (panel) =>
      panel['count'] === '1' &&
      offcuts.some(
        (offcut) =>
          ['board', 'finish'].every((key) => offcut[key] === panel[key]) &&
          size(offcut, 'length') > size(panel, 'cut length') + 50 &&
          size(offcut, 'width') > size(panel, 'cut width') + 50,
      ),
  );
  return found!['number']!;
}

function amountIn(there: readonly ShownEntry[], of: Readonly<Record<string, unknown>>): number {
  return there.find((entry) => Object.entries(of).every(([key, value]) => entry[key] === value))?.amount ?? 0;
}

async function amount(item: string, of: Readonly<Record<string, unknown>>): Promise<number> {
  return amountIn(await stock(), { item, ...of });
}

beforeAll(async () => {
  cpSync(join(projectFolder, 'parts-libraries/demo-van/orders/month'), join(folder, 'month'), {
    recursive: true,
  });
  await ran('stock', 'begin');
  const onRack = ['--place', 'rack 1', '--date', '2026-03-01'];
  const ash = ['--board', 'poplar-15', '--finish', 'light-ash', '--thickness', '16.2', '--grain', 'length'];
  const slate = ['--board', 'poplar-20', '--finish', 'slate', '--thickness', '21.6', '--grain', 'none'];
  const offcut = (label: string, board: string[], length: string, width: string) =>
    ran(
      'stock',
      'receive',
      'offcut',
      '--label',
      label,
      ...board,
      '--length',
      length,
      '--width',
      width,
      ...onRack,
    );
  await offcut('A1', ash, '900', '500');
  await offcut('A2', slate, '1200', '640');
  await ran('stock', 'receive', 'edging', '--name', 'pale-grey-19', '--metres', '40', '--date', '2026-03-01');
});

interface Changes {
  readonly sawn: { readonly sheets: number; readonly panels: number; readonly used: number };
  readonly panels: readonly { readonly change: string; readonly count: number }[];
  readonly material: readonly { readonly id: string; readonly toBuy: number }[];
}

describe('a month in the workshop', () => {
  const before = apartPlan('plover');
  const after = 'month/changed/plover.yaml';
  const half = 'poplar-15-pale-grey';
  let changes: Changes;
  /** Panels of the changed order. */
  const wanted = () =>
    sum(changes.panels.filter(({ change }) => change !== 'no longer needed').map(({ count }) => count));

  it('buys two vans that are cut together: both ways side by side with their bounds, and all of it comes in', async () => {
    const ways = await buy('first', 'together', together, '2026-03-02');
    const panels = (way: Way) => sum(way.groups.map((group) => group.panels));
    expect(panels(ways.together)).toBe(panels(ways.apart));
    expect(ways.together.total).toBeLessThan(ways.apart.total);
    await audited();
    expect((await shown()).onOrder.length).toBeGreaterThan(5);
    // The same again, before it has come: all of it is on order.
    const again = [
      'buy',
      ...together.map(order),
      '--name',
      'first',
      '--out',
      'again',
      '--date',
      '2026-03-03',
    ];
    const { purchase } = await told<Bought>(...again, '--store', 'store', ...soon);
    expect(purchase.lines.map(({ toBuy }) => toBuy)).toEqual(purchase.lines.map(() => 0));
    expect(purchase.lines.some(({ onOrder }) => onOrder > 0)).toBe(true);
    await received('first', '2026-03-09');
    await audited();
    const there = await stock();
    for (const { board, finish, length, count } of listIn('out/purchase-first/purchase-sheets.csv')) {
      const size = { item: 'sheet', board, finish, length: Number(length) };
      expect(amountIn(there, size), JSON.stringify(size)).toBe(Number(count));
    }
  });

  it('cuts two vans together with their edging and fittings, and a panel anew that was spoiled', async () => {
    const cut = ['stock', 'cut', pooledPlan, '--order', 'purchase-first', '--place', 'rack 2'];
    const date = ['--date', '2026-03-16'];
    const other = await plywright(folder, [...cut, ...date, '--order-file', order('plover')]);
    expect([other.code, other.stderr]).toEqual([1, expect.stringContaining('no panel of the order plover')]);
    await ran(...cut, ...date, ...together.flatMap((name) => ['--order-file', order(name)]));
    // All that was bought for the two vans has gone into them; what is left of packs and rolls is free.
    const left = (await stock()).filter(({ item }) => item === 'edging' || item === 'fitting');
    expect(left.map(({ amount, free }) => amount - free)).toEqual(left.map(() => 0));
    const used = listIn('out/purchase-first/purchase-fittings.csv').find(
      ({ fitting }) => fitting === 'hinge',
    )!;
    expect(amountIn(left, { fitting: 'hinge' })).toBe(Number(used['count']) - Number(used['needed']));
    const given = await audited();
    expect(given(pooledPlan)).toBe(panelsOf(planIn(pooledPlan).groups));
    const why = 'a corner torn out';
    await ran('recut', pooledPlan, spoiledPanel(), '--store', 'store', '--why', why, ...soon);
    const recut = 'out/purchase-first-recut-1/plan.json';
    await ran('stock', 'cut', recut, '--date', '2026-03-17');
    expect((await audited())(recut)).toBe(1);
    const last = bookingsIn(folder).at(-1)!;
    expect(last.recut!.spoiled).toHaveLength(1);
    expect(last.lines.every(({ item }) => item === 'offcut')).toBe(true);
  });

  it('buys four vans that are cut apart, with what is left in the store', async () => {
    const ways = await buy('second', 'apart', apart, '2026-03-18');
    const panels = sum(apart.map((name) => panelsOf(planIn(apartPlan(name)).groups)));
    expect(sum(ways.apart.groups.map((group) => group.panels))).toBe(panels);
    await received('second', '2026-03-25');
    // What has come is kept for those for whom it was ordered.
    const ash = (await shown()).stock.filter(
      ({ item, finish }) => item === 'sheet' && finish === 'light-ash',
    );
    expect(ash.every(({ free }) => free === 0)).toBe(true);
    await audited();
  });

  it('saws half of the sheets of an order and tells what a late change of it means', async () => {
    await ran(
      ...['stock', 'cut', before, '--sheets', half, '--order-file', order('plover')],
      ...['--date', '2026-03-26'],
    );
    const sawn = (await audited())(before);
    const plan = planIn(before);
    expect(sawn).toBe(panelsOf(plan.groups.filter(({ id }) => id === half)));
    changes = await told<Changes>(
      'diff',
      order('plover'),
      after,
      '--plan',
      before,
      '--store',
      'store',
      ...soon,
    );
    expect(changes.sawn.panels).toBe(sawn);
    const all = sum(plan.groups.flatMap(({ sheets }) => sheets.map(({ copies }) => copies)));
    expect(changes.sawn.sheets / all).toBeGreaterThan(0.4);
    // All light ash in the store is kept for others.
    const short = changes.material.find(({ id, toBuy }) => id.startsWith('poplar-15-light-ash') && toBuy > 0);
    expect(short).toBeDefined();
  });

  it('cuts the rest of the changed order, as was told beforehand, and books it with its edging and fittings', async () => {
    const cut = await told<{ groups: readonly { panels: number }[] }>(
      ...['cut', after, '--after', before, '--store', 'store', ...soon],
    );
    const part = 'out/plover-part-2';
    const kept = sum(
      planIn(`${part}/plan.json`).sawn!.groups.flatMap(({ panels }) => panels.map(({ count }) => count)),
    );
    expect(kept).toBe(changes.sawn.used);
    const left = wanted() - kept;
    expect(sum(cut.groups.map(({ panels }) => panels))).toBe(left);
    for (const list of ['sheets-to-buy', 'edging-to-buy']) {
      await ran('stock', 'receive', 'list', `${part}/${list}.csv`, '--date', '2026-03-27');
    }
    const hinges = await amount('fitting', { fitting: 'hinge' });
    await ran('stock', 'cut', `${part}/plan.json`, '--order-file', after, '--date', '2026-03-30');
    expect((await audited())(`${part}/plan.json`)).toBe(left);
    // The van's hinges have gone out with its last sheet, once.
    const listed = listIn(`${part}/fittings.csv`).find(({ fitting }) => fitting === 'hinge')!;
    expect(hinges - (await amount('fitting', { fitting: 'hinge' }))).toBe(Number(listed['count']));
  });

  it('prices the changed order', async () => {
    const quoted = await told<{
      quotations: readonly { sums: { totalMinor: number; netMinor: number; vatMinor: number } }[];
    }>('quote', after, ...soon, '--date', '2026-03-30');
    const { totalMinor, netMinor, vatMinor } = quoted.quotations[0]!.sums;
    expect(totalMinor).toBe(netMinor + vatMinor);
    // 20 %, as the library states it, to the cent.
    expect(Math.abs(vatMinor - netMinor / 5)).toBeLessThanOrEqual(0.5);
    const rows = listIn('out/plover/quotation/quotation.csv').filter(({ line }) => line !== '');
    expect(sum(rows.map((row) => Math.round(Number(row['amount']) * 100)))).toBe(totalMinor);
  });

  it('cuts the other vans, reverses a booking and books it again, and keeps the books', async () => {
    for (const name of ['avocet', 'dunlin', 'knot']) {
      await ran('stock', 'cut', apartPlan(name), '--order-file', order(name), '--date', '2026-04-02');
    }
    const given = await audited();
    for (const name of ['avocet', 'dunlin', 'knot']) {
      expect(given(apartPlan(name)), name).toBe(panelsOf(planIn(apartPlan(name)).groups));
    }
    const before = await stock();
    const last = bookingsIn(folder).length;
    await ran('stock', 'reverse', String(last), '--why', 'booked too early', '--date', '2026-04-02');
    await ran('stock', 'cut', apartPlan('knot'), '--order-file', order('knot'), '--date', '2026-04-07');
    const sorted = (entries: readonly ShownEntry[]) => entries.map((one) => JSON.stringify(one)).sort();
    expect(sorted(await stock())).toEqual(sorted(before));
  });
});
