import type { PoolChoice, PoolSheet } from '../model/covering.ts';
import type { LinearModel, LinearModelData, LinearSolver } from '../model/linearSolver.ts';
import type { RectangleProblem } from '../model/rectangles.ts';

export interface CoveringRequest {
  readonly solver: LinearSolver;
  readonly problem: RectangleProblem;
  /** Sheets known how to cut; the same ones may be given twice. */
  readonly pool: readonly PoolSheet[];
  /** Only a choice that costs less than this is wanted, in minor units; null for the cheapest. */
  readonly below: number | null;
  /** Greatest number of nodes of the branch and bound: the same limit gives the same choice on every machine. */
  readonly nodes: number;
}

/** The solver's word for "solved to the end". */
const SOLVED = 7;
/** Slack for figures that come from the solver, as a part of the dearest sheet. */
const EPSILON = 1e-6;

/**
 * Chooses sheets from a pool, each as often as wanted, so that every piece is on one of them and no more sheets of a
 * kind are used than there are, at least cost: set covering, the integer master of the pattern programme. In go the
 * problem and the pool; out comes the choice, checked in whole numbers, or null when there is none or none that is
 * cheap enough was found within the nodes. A choice may hold more pieces than are wanted: leave the surplus out.
 *
 * The relaxation is solved first, and sheets whose reduced cost shows that no choice cheap enough uses them are left
 * out (reduced cost fixing).
 */
export function coverFromPool(request: CoveringRequest): PoolChoice | null {
  const { problem, below } = request;
  const pool = distinctSheets(request.pool);
  if (pool.length === 0) return null;
  const dearest = problem.sheets.reduce((most, sheet) => Math.max(most, sheet.costMinor), 0) || 1;
  const relaxed = solve(request, pool, dearest, 'relaxed');
  if (!relaxed) return null;
  if (below !== null && relaxed.cost * dearest >= below - EPSILON * dearest) return null;
  const room = below === null ? Number.POSITIVE_INFINITY : below / dearest - relaxed.cost + EPSILON;
  const kept = pool.filter((_, column) => relaxed.reducedCosts[column]! <= room);
  const whole = solve(request, kept, dearest, 'whole');
  if (!whole) return null;
  const chosen = kept
    .map(({ id }, column) => ({ id, copies: Math.round(whole.values[column]!) }))
    .filter(({ copies }) => copies > 0);
  const costMinor = checkedCost(problem, kept, chosen);
  if (costMinor === null || (below !== null && costMinor >= below)) return null;
  return { chosen, costMinor, cheapest: whole.finished };
}

/** One of all sheets that hold the same pieces: the one given first. */
function distinctSheets(pool: readonly PoolSheet[]): PoolSheet[] {
  const seen = new Set<string>();
  return pool.filter(({ sheet, counts }) => {
    const sorted = counts.toSorted((a, b) => a.item - b.item);
    const key = `${sheet}:${sorted.map(({ item, count }) => `${item}x${count}`).join()}`;
    return !seen.has(key) && seen.add(key);
  });
}

interface Answer {
  readonly cost: number;
  readonly values: Float64Array;
  readonly reducedCosts: Float64Array;
  readonly finished: boolean;
}

function solve(
  { solver, problem, nodes }: CoveringRequest,
  pool: readonly PoolSheet[],
  dearest: number,
  columns: 'relaxed' | 'whole',
): Answer | null {
  const model = solver.createModel(programme(problem, pool, dearest, columns));
  try {
    // Costs are multiples of their common divisor, so a smaller gap than that proves a choice cheapest.
    const step = problem.sheets.reduce((g, sheet) => greatestCommonDivisor(g, sheet.costMinor), 0) || 1;
    model.options.set({
      output_flag: false,
      random_seed: 0,
      mip_max_nodes: nodes,
      mip_rel_gap: 0,
      mip_abs_gap: (0.99 * step) / dearest,
    });
    model.run();
    const finished = model.getModelStatus() === SOLVED;
    if (columns === 'relaxed' && !finished) return null;
    const solution = solutionOf(model);
    if (!solution || solution.colValue.length !== pool.length) return null;
    const { colValue, colDual } = solution;
    return { cost: model.getObjectiveValue(), values: colValue, reducedCosts: colDual, finished };
  } finally {
    model.dispose();
  }
}

/** The solver throws where it has no answer to read: nothing found within the nodes. */
function solutionOf(model: LinearModel): ReturnType<LinearModel['getSolution']> | null {
  try {
    return model.getSolution();
  } catch {
    return null;
  }
}

/** Rows: one per item, at least its count; then one per kind of sheet of which there are so many only. */
function programme(
  problem: RectangleProblem,
  pool: readonly PoolSheet[],
  dearest: number,
  columns: 'relaxed' | 'whole',
): LinearModelData {
  const { kinds, count } = problem.items;
  const lower: number[] = Array.from(count);
  const upper: number[] = new Array<number>(kinds).fill(Number.POSITIVE_INFINITY);
  const rowOfSheet = problem.sheets.map((sheet) => {
    if (sheet.count < 0) return -1;
    lower.push(0);
    return upper.push(sheet.count) - 1;
  });
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const { sheet, counts } of pool) {
    for (const { item, count: copies } of counts) {
      indices.push(item);
      values.push(copies);
    }
    const row = rowOfSheet[sheet]!;
    if (row >= 0) {
      indices.push(row);
      values.push(1);
    }
    starts.push(indices.length);
  }
  const data = {
    numCols: pool.length,
    numRows: lower.length,
    colCost: Float64Array.from(pool, ({ sheet }) => problem.sheets[sheet]!.costMinor / dearest),
    colLower: new Float64Array(pool.length),
    colUpper: Float64Array.from(pool, ({ counts }) =>
      counts.reduce((most, c) => Math.max(most, Math.ceil(count[c.item]! / c.count)), 0),
    ),
    rowLower: Float64Array.from(lower),
    rowUpper: Float64Array.from(upper),
    matrix: {
      format: 'csc',
      numRows: lower.length,
      numCols: pool.length,
      starts: Int32Array.from(starts),
      indices: Int32Array.from(indices),
      values: Float64Array.from(values),
    },
  } as const;
  return columns === 'relaxed' ? data : { ...data, integrality: new Int32Array(pool.length).fill(1) };
}

/** What a choice costs in minor units; null when it lacks a piece or takes more sheets than there are. */
function checkedCost(
  problem: RectangleProblem,
  pool: readonly PoolSheet[],
  chosen: PoolChoice['chosen'],
): number | null {
  const byId = new Map(pool.map((one) => [one.id, one]));
  const left = Array.from(problem.items.count);
  const sheetsLeft = problem.sheets.map((sheet) =>
    sheet.count < 0 ? Number.POSITIVE_INFINITY : sheet.count,
  );
  let cost = 0;
  for (const { id, copies } of chosen) {
    const { sheet, counts } = byId.get(id)!;
    for (const { item, count } of counts) left[item]! -= copies * count;
    sheetsLeft[sheet]! -= copies;
    cost += copies * problem.sheets[sheet]!.costMinor;
  }
  return left.some((n) => n > 0) || sheetsLeft.some((n) => n < 0) ? null : cost;
}

function greatestCommonDivisor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}
