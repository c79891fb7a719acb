import { describe, expect, it } from 'vitest';
import { unitOf } from '../../src/drawing/stepTable.ts';
import type { Library } from '../../src/model/library.ts';
import type { SheetSupply } from '../../src/model/stock.ts';
import type { OrderedFurniture } from '../../src/pipeline/job.ts';
import { provePlan } from '../../src/pipeline/makePapers.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { poolOrders } from '../../src/pipeline/poolOrders.ts';
import { furnishOrder } from '../../src/pipeline/prepareOrder.ts';
import { demoFiles, demoLibrary, demoRoot, must } from '../helpers/demoVan.ts';

const library = demoLibrary();

/** A demonstration order under another name, with changes to its text. */
function order(id: string, name: string, ...changes: (readonly [string, string])[]): OrderedFurniture {
  let text = demoFiles().get(`${demoRoot}/orders/${name}.yaml`)!;
  for (const [before, after] of changes) {
    if (!text.includes(before)) throw new Error(`the order has no ${before}`);
    text = text.replace(before, after);
  }
  return must(furnishOrder(text, `orders/${id}.yaml`, library));
}

function pool(
  orders: readonly OrderedFurniture[],
  onHand: readonly SheetSupply[] = [],
  of: Library = library,
) {
  return must(poolOrders(orders, of, { name: 'month', title: 'Two vans' }, onHand));
}

function prove(job: ReturnType<typeof pool>) {
  const nests = job.groups.map((group) => {
    const outcome = nestGroup(group, null, { seed: 1, workLimit: 0 });
    if (!outcome.ok) throw new Error(group.id);
    return outcome.nest;
  });
  return provePlan(job, nests, 1);
}

const one = order('one', 'two-singles-long');
const two = order('two', 'two-singles-long');
const short = order('three', 'demo-short', ['saw: rail-saw', 'saw: panel-saw']);

describe('orders that are cut together', () => {
  const job = pool([one, two, short]);
  const proven = prove(job);

  it('have one stock group for each board and finish, with the panels of all of them', () => {
    expect(job.groups.map(({ id }) => id)).toEqual([...new Set(job.groups.map(({ id }) => id))]);
    const all = [one, two, short].flatMap(({ furniture }) => furniture.units.flatMap((unit) => unit.panels));
    const kinds = new Set(all.map(({ board, finish }) => `${board} ${finish}`));
    expect(job.groups).toHaveLength(kinds.size);
    const parts = job.groups.flatMap((group) => group.parts);
    expect(parts).toHaveLength(all.length);
    expect(new Set(parts.map(({ id }) => id)).size).toBe(all.length);
    for (const part of parts) expect(part.id.startsWith(`${part.order}/`)).toBe(true);
  });

  it('make a plan that can be sawn, in which every panel still has its order', () => {
    expect(proven.ok).toBe(true);
    if (!proven.ok) return;
    const orders = new Set(proven.plan.groups.flatMap(({ panels }) => panels.map((panel) => panel.order)));
    expect(orders).toEqual(new Set(['one', 'two', 'three']));
    // Sheets are really shared.
    const group = proven.plan.groups.find(({ id }) => id === 'poplar-15-deep-blue')!;
    const orderOf = new Map(group.panels.map((panel) => [panel.id, panel.order]));
    const shared = group.sheets.filter(
      ({ pieces }) =>
        new Set(pieces.flatMap((p) => (p.is === 'panel' ? [orderOf.get(p.panel)] : []))).size > 1,
    );
    expect(shared.length).toBeGreaterThan(0);
  });

  it('have the order on every panel of their cut plans, also where a board is for one of them only', () => {
    if (!proven.ok) throw new Error('not proven');
    const alone = proven.plan.groups.filter(
      ({ panels }) => new Set(panels.map((one) => one.order)).size === 1,
    );
    expect(alone.length).toBeGreaterThan(0);
    for (const group of proven.plan.groups) {
      for (const panel of group.panels) expect(unitOf(panel, group).split(', ')).toContain(panel.order);
    }
  });

  it('keep the rows of matched fronts of each order together', () => {
    const wood = [order('one', 'demo-long'), order('two', 'demo-long')];
    const joined = pool(wood);
    const group = joined.groups.find(({ id }) => id === 'poplar-15-light-ash')!;
    const blanks = group.demands.flatMap(({ blank }) => blank ?? []);
    expect(blanks.length).toBeGreaterThan(1);
    const orderOf = new Map(group.parts.map((part) => [part.id, part.order]));
    for (const { run, pieces } of blanks) {
      const orders = new Set(pieces.map(({ part }) => orderOf.get(part)));
      expect(orders.size).toBe(1);
      expect(run.startsWith(`${[...orders][0]}: `)).toBe(true);
    }
    const plan = prove(joined);
    expect(plan.ok && plan.plan.groups.flatMap(({ runs }) => runs).length).toBe(
      2 *
        (wood[0] === undefined
          ? 0
          : pool([wood[0]]).groups.flatMap(({ demands }) => demands.filter((d) => d.blank)).length),
    );
  });

  it('share no sheet where one of them wants its own, and are still proved as one plan', () => {
    const own = order('own', 'two-singles-long', ['count: 1', 'count: 1\nown sheets: [front]']);
    const joined = pool([own, two]);
    const fronts = joined.groups.filter(({ finish }) => finish === 'deep-blue');
    expect(fronts.map(({ id, parts }) => [id, [...new Set(parts.map((part) => part.order))]])).toEqual([
      ['poplar-15-deep-blue', ['two']],
      ['poplar-15-deep-blue-own', ['own']],
    ]);
    expect(joined.groups.filter(({ finish }) => finish === 'pale-grey')).toHaveLength(1);
    expect(prove(joined).ok).toBe(true);
  });

  it('share no sheet where they are for different saws', () => {
    const joined = pool([one, order('rail', 'two-singles-long', ['saw: panel-saw', 'saw: rail-saw'])]);
    expect(joined.groups.filter(({ finish }) => finish === 'deep-blue').map(({ id }) => id)).toEqual([
      'poplar-15-deep-blue',
      'poplar-15-deep-blue-rail-saw',
    ]);
    expect(new Set(joined.groups.map(({ saw }) => saw.name)).size).toBe(2);
  });

  it('take what is on hand once', () => {
    const own = order('own', 'two-singles-long', ['count: 1', 'count: 1\nown sheets: [front]']);
    const offcut: SheetSupply = {
      id: 'A1',
      board: 'poplar-15',
      finish: 'deep-blue',
      thicknessUm: library.boards.get('poplar-15')!.thicknessUm,
      lengthUm: 900_000,
      widthUm: 600_000,
      grain: 'none',
      priceMinor: null,
      count: 1,
      kind: 'offcut',
    };
    const joined = pool([own, two], [offcut]);
    const offered = joined.groups.filter(({ sheets }) => sheets.some(({ id }) => id === 'A1'));
    expect(offered.map(({ id }) => id)).toEqual(['poplar-15-deep-blue']);
  });
});
