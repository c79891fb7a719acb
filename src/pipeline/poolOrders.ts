import { makeStockGroups } from '../demands/index.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { Panel } from '../model/furniture.ts';
import type { Library } from '../model/library.ts';
import type { Part } from '../model/part.ts';
import type { SheetSupply, StockGroup } from '../model/stock.ts';
import type { Job, OrderedFurniture } from './job.ts';
import { suppliesOf } from './prepareOrder.ts';

/** How orders that are cut together are called. */
export interface PoolName {
  readonly name: string;
  readonly title: string;
}

/** Parts that may share sheets: of one saw, and of all orders or, where one wants sheets of its own, of that one. */
interface Pool {
  readonly saw: string;
  readonly ownOf: string | null;
  readonly parts: Part[];
}

/** A panel with an id and a row of matched fronts that no other order has. */
function pooledPart(panel: Panel): Part {
  const { match } = panel;
  return {
    ...panel,
    id: `${panel.order}/${panel.id}`,
    ...(match === undefined ? {} : { match: { ...match, run: `${panel.order}: ${match.run}` } }),
  };
}

function poolsOf(orders: readonly OrderedFurniture[]): Pool[] {
  const pools = new Map<string, Pool>();
  for (const { order, furniture } of orders) {
    for (const panel of furniture.units.flatMap((unit) => unit.panels)) {
      const ownOf = order.ownSheets?.includes(panel.role) ? order.id : null;
      const key = JSON.stringify([order.saw, ownOf]);
      const pool = pools.get(key) ?? { saw: order.saw, ownOf, parts: [] };
      pools.set(key, pool);
      pool.parts.push(pooledPart(panel));
    }
  }
  return [...pools.values()];
}

/** Groups of several pools with ids of their own: the order, or else the saw, is added where one is there already. */
function withOwnId(group: StockGroup, pool: Pool, taken: Set<string>): StockGroup {
  const wanted = pool.ownOf === null ? [group.id, `${group.id}-${pool.saw}`] : [`${group.id}-${pool.ownOf}`];
  let id = wanted.find((each) => !taken.has(each)) ?? wanted.at(-1)!;
  for (let again = 2; taken.has(id); again++) id = `${wanted.at(-1)}-${again}`;
  taken.add(id);
  return { ...group, id };
}

/**
 * Several orders of one library as one job, their panels pooled by board and finish. Each panel keeps the order that it
 * is for. Rows of matched fronts stay the rows of their order; panels of an order's `ownSheets` share sheets with no other
 * order, and orders for different saws share none. Sheets and offcuts `onHand` go to the first pool that can use them:
 * what is for all orders before what is for one.
 */
export function poolOrders(
  orders: readonly OrderedFurniture[],
  library: Library,
  { name, title }: PoolName,
  onHand: readonly SheetSupply[] = [],
): Checked<Job> {
  const pools = poolsOf(orders).sort((a, b) => Number(a.ownOf !== null) - Number(b.ownOf !== null));
  const taken = new Set<string>();
  const groups: StockGroup[] = [];
  const findings: Finding[] = [];
  let left = onHand;
  for (const pool of pools) {
    const saw = library.saws.get(pool.saw);
    if (saw === undefined) throw new Error(`the saw ${pool.saw} is not in the library`);
    const made = makeStockGroups(pool.parts, [...suppliesOf(library), ...left], saw);
    findings.push(...made.findings);
    groups.push(...made.groups.map((group) => withOwnId(group, pool, taken)));
    const uses = (supply: SheetSupply) =>
      made.groups.some(
        (group) =>
          group.board === supply.board &&
          group.finish === supply.finish &&
          group.thicknessUm === supply.thicknessUm,
      );
    left = left.filter((supply) => !uses(supply));
  }
  if (findings.some(({ severity }) => severity === 'error')) return { ok: false, findings };
  return { ok: true, value: { name, title, currency: library.currency, groups, library }, findings };
}
