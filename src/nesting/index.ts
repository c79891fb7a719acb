import { makeRectangleProblem } from '../basics/rectangleProblem.ts';
import type { Bound, NestedSheet, NestFailure, NestOptions, NestOutcome } from '../model/nest.ts';
import type { SheetPattern } from '../model/patterns.ts';
import type { StockGroup } from '../model/stock.ts';
import { type Facts, makeFacts } from './facts.ts';
import { fewerSettings } from './fewerSettings.ts';
import { longestCutOf } from './longestCut.ts';
import type { Plan } from './plan.ts';
import { search } from './search.ts';
import { readTree } from './sheetCode.ts';
import { offcutWorth, TreeTidier } from './tidyTree.ts';

/**
 * Nests a stock group: finds sheets, and a tree of guillotine cuts on each, from which every demand comes out, at the
 * least cost that the work limit lets it find. What always holds: the trees keep the rules of `NestPiece`, the kerf,
 * the grain, the first cut, the longest cut (see `LongestCut`) and the turns of the saw; no more sheets of a size are used than there are; equal sheets
 * are merged; the same group, bound, seed and work limit give the same nest.
 *
 * Turns: the levels of stacks of a tree alternate between the two axes, and passing from one level to the next means
 * turning the pieces by a quarter. A saw with `turns` n gets trees of at most n + 1 levels, the cut that brings a
 * piece to its last size included. Trims are not counted: they leave the sheet in one piece.
 *
 * `bound` is only compared with: the search ends when it is reached. `patterns` are ways to cut a sheet that may be
 * started from, as the bound by patterns finds them: with many pieces of few sizes they are most of a good plan.
 */
export function nest(
  group: StockGroup,
  bound: Bound,
  options: NestOptions,
  patterns: readonly SheetPattern[] = [],
): NestOutcome {
  const problem = makeRectangleProblem(group);
  const longest = longestCutOf(group, problem.unitUm);
  const facts = makeFacts(problem, group.saw.turns, longest);
  const tooLarge = findTooLarge(longest === null ? facts : makeFacts(problem, group.saw.turns, null));
  if (tooLarge >= 0) return { ok: false, failure: { kind: 'too large', demand: tooLarge } };
  const cutTooLong = findTooLarge(facts);
  if (cutTooLong >= 0) return { ok: false, failure: { kind: 'cut too long', demand: cutTooLong } };
  if (facts.total === 0) {
    return { ok: true, nest: { sheets: [], costMinor: 0, bound, proved: true, moves: 0 } };
  }
  const price = (plan: Plan) =>
    plan.sheets.reduce((sum, sheet) => sum + group.sheets[sheet.sheet]!.priceMinor, 0);
  const isBest = (plan: Plan) =>
    price(plan) <= bound.costMinor && (facts.sheetKinds > 1 || plan.sheets.length <= bound.sheets);
  const isTidied = (plan: Plan) =>
    options.finish === 'tidy if proved' ? price(plan) === bound.costMinor : options.finish !== 'as found';
  const found = search(facts, {
    seed: options.seed,
    workLimit: options.workLimit,
    stop: () => options.stop?.() ?? false,
    isBest,
    patterns,
    gathers: options.finish !== 'as found',
    gathersLast: isTidied,
    improved: (plan, moves) =>
      options.progress?.({
        sheets: plan.sheets.length,
        costMinor: price(plan),
        boundSheets: bound.sheets,
        boundCostMinor: bound.costMinor,
        moves,
      }),
  });
  if (found.unplaced.length > 0) return { ok: false, failure: runOut(found.unplaced) };
  const costMinor = price(found.plan);
  return {
    ok: true,
    nest: {
      sheets: mergeEqual(tidyAll(group, facts, found.plan, isTidied(found.plan))),
      costMinor,
      bound,
      proved: costMinor === bound.costMinor,
      moves: found.moves,
    },
  };
}

/** First demand that fits no sheet of which there is any; −1 when all fit. */
function findTooLarge(facts: Facts): number {
  for (let kind = 0; kind < facts.kinds; kind++) {
    if (facts.problem.items.count[kind] === 0) continue;
    let fits = false;
    for (let sheet = 0; sheet < facts.sheetKinds; sheet++) {
      if (facts.ways[sheet * facts.kinds + kind] !== 0 && facts.sheetLimit[sheet]! > 0) fits = true;
    }
    if (!fits) return kind;
  }
  return -1;
}

function runOut(unplaced: readonly number[]): NestFailure {
  const counts = new Map<number, number>();
  for (const kind of unplaced) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const list = [...counts].map(([demand, count]) => ({ demand, count }));
  return { kind: 'sheets run out', unplaced: list.sort((a, b) => a.demand - b.demand) };
}

/** Every sheet as a tidy tree; with `settings` its pieces are exchanged for fewer fence settings first. */
function tidyAll(group: StockGroup, facts: Facts, plan: Plan, settings: boolean): NestedSheet[] {
  const tidier = new TreeTidier(facts, group.saw.leastOffcut);
  const known = new Map<string, NestedSheet>();
  const settled = settings ? fewerSettings(facts, plan, tidier) : plan;
  return settled.sheets.map(({ sheet, code }) => {
    const key = `${sheet} ${code.join()}`;
    const tidy = known.get(key) ?? {
      sheet,
      copies: 1,
      root: tidier.tidy(readTree(code, facts.w, facts.h), sheet),
    };
    known.set(key, tidy);
    return tidy;
  });
}

/** Equal sheets as copies of one; by kind of sheet, the fullest first. */
function mergeEqual(sheets: readonly NestedSheet[]): NestedSheet[] {
  const byKey = new Map<string, { sheet: NestedSheet; copies: number }>();
  for (const sheet of sheets) {
    const key = `${sheet.sheet} ${JSON.stringify(sheet.root)}`;
    const same = byKey.get(key);
    if (same) same.copies++;
    else byKey.set(key, { sheet, copies: 1 });
  }
  return [...byKey]
    .map(([key, { sheet, copies }]) => ({
      key,
      worth: offcutWorth(sheet.root),
      merged: { ...sheet, copies },
    }))
    .sort(
      (a, b) =>
        a.merged.sheet - b.merged.sheet ||
        a.worth - b.worth ||
        b.merged.copies - a.merged.copies ||
        (a.key < b.key ? -1 : 1),
    )
    .map(({ merged }) => merged);
}
