import { lowerBound } from '../../src/bounds/index.ts';
import { makePlan } from '../../src/cutPlans/index.ts';
import type { StockGroup } from '../../src/model/stock.ts';
import { nest } from '../../src/nesting/index.ts';
import { measurePlan } from '../../src/replay/index.ts';
import { assertNest } from '../helpers/assertNest.ts';
import { WORKSHOP_LISTS, workshopList } from './workshopLists.ts';

/** A panel for each demand, as a plan file needs them. */
function withParts(group: StockGroup): StockGroup {
  const parts = group.demands.map((demand, index) => ({
    id: `p${index + 1}`,
    name: `panel ${index + 1}`,
    unit: 'list',
    order: 'list',
    cutLengthUm: demand.lengthUm,
    cutWidthUm: demand.widthUm,
    finishedLengthUm: demand.lengthUm,
    finishedWidthUm: demand.widthUm,
    count: demand.count,
    grain: demand.grain,
    edging: { alongLength: [null, null], alongWidth: [null, null] },
  }));
  const demands = group.demands.map((demand, index) => ({
    ...demand,
    parts: [{ part: `p${index + 1}`, count: demand.count }],
  }));
  return { ...group, demands, parts: parts as unknown as StockGroup['parts'] };
}

/**
 * Sawing of the thirty workshop lists after `moves` moves each: cut plans, fence settings, turns, metres sawn, and the
 * offcuts kept with the sum of their squared areas, which is what is made large first.
 */
export function benchSawing(moves: number): void {
  const sums = {
    costMinor: 0,
    plans: 0,
    sheets: 0,
    cuts: 0,
    fenceSettings: 0,
    turns: 0,
    metres: 0,
    offcuts: 0,
    worth: 0,
  };
  for (let index = 0; index < WORKSHOP_LISTS; index++) {
    const group = withParts(workshopList(index));
    const { bound } = lowerBound(group, { solver: null, effort: 1e7 });
    const outcome = nest(group, bound, { seed: 1, workLimit: moves });
    if (!outcome.ok) throw new Error(`${group.id}: ${JSON.stringify(outcome.failure)}`);
    assertNest(group, outcome.nest);
    const plan = makePlan([{ group, nest: outcome.nest }], { job: 'list', currency: 'EUR', seed: 1 });
    const measure = measurePlan(plan)[0]!;
    sums.costMinor += outcome.nest.costMinor;
    sums.plans += plan.groups[0]!.sheets.length;
    sums.sheets += measure.sheets;
    sums.cuts += measure.cuts;
    sums.fenceSettings += measure.fenceSettings;
    sums.turns += measure.turns;
    sums.metres += measure.sawnUm / 1e6;
    for (const offcut of measure.offcuts) {
      const areaM2 = (offcut.lengthUm * offcut.widthUm) / 1e12;
      sums.offcuts += offcut.count;
      sums.worth += offcut.count * areaM2 * areaM2;
    }
  }
  for (const [name, value] of Object.entries(sums)) {
    console.log(`${name.padEnd(14)} ${Number.isInteger(value) ? value : value.toFixed(2)}`);
  }
}
