import type { Facts } from './facts.ts';
import { encodeSheet, layOut, type SheetCode } from './sheetCode.ts';
import { SheetTrees } from './sheetTrees.ts';

/** Sheets with their trees, as numbers. Every item of the problem is on one of them unless said otherwise. */
export interface Plan {
  readonly sheets: readonly SheetCode[];
  /** Sum of the sheets' costs, in the search's cost (see `Facts.sheetCost`). */
  readonly cost: number;
}

/** What lies open in the trees. */
export function takePlan(trees: SheetTrees): Plan {
  const sheets: SheetCode[] = [];
  for (let place = 0; place < trees.places; place++) {
    if (trees.pieces(place) > 0) sheets.push(encodeSheet(trees, place));
  }
  return { sheets, cost: sheets.reduce((sum, s) => sum + trees.facts.sheetCost[s.sheet]!, 0) };
}

/** Most integers that the trees of all sheets may take together: 64 MiB, and as much again for their copies. */
const MOST_INTEGERS = 1 << 24;

/** How many pieces a sheet must have room for, when `places` sheets share the memory. */
export function piecesPerSheet(facts: Facts, places: number): number {
  const byArea = Math.floor(facts.greatestSheet / Math.max(1, facts.leastItemArea));
  const byMemory = Math.max(24, Math.floor(MOST_INTEGERS / (24 * places)) - 1);
  return Math.max(1, Math.min(facts.total, byArea, byMemory));
}

/** Trees with the plan laid out on the first places, and room on each sheet for the most that the plan has on one. */
export function layOutPlan(facts: Facts, plan: Plan, places: number): SheetTrees {
  const most = plan.sheets.reduce((all, { code }) => Math.max(all, code.length), 0);
  const trees = new SheetTrees(facts, places, 1 + Math.max(most, piecesPerSheet(facts, places)));
  plan.sheets.forEach((sheet, place) => {
    layOut(trees, place, sheet);
  });
  return trees;
}
