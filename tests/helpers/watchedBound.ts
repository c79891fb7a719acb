import { vi } from 'vitest';
import { GuillotineTable, type TableRequest } from '../../src/basics/guillotineTable.ts';
import type { LinearModel, LinearModelData, LinearSolver } from '../../src/model/linearSolver.ts';

/** What the bound by patterns asked for, in order. */
export interface Watched {
  /** Tables that were asked for, also where there was none for so little work. */
  readonly tables: TableRequest[];
  /** Steps of all pricings together. */
  work: number;
  pricings: number;
  readonly models: WatchedModel[];
  disposed: number;
}

export interface WatchedModel {
  /** What a piece of each item costs that is not cut. */
  readonly slack: readonly number[];
  /** The most of each limited kind of sheet, after the least of each item. */
  readonly limits: readonly number[];
  /** Patterns that were added, each time; a pattern as its price and the entries of its column. */
  readonly added: {
    readonly cost: number;
    readonly rows: readonly number[];
    readonly values: readonly number[];
  }[][];
  solved: number;
}

/** Runs `prove` with a solver that is watched, and with all tables watched. */
export function watchBound<T>(
  solver: LinearSolver,
  prove: (watched: LinearSolver, seen: Watched) => T,
): { readonly result: T; readonly seen: Watched } {
  const seen: Watched = { tables: [], work: 0, pricings: 0, models: [], disposed: 0 };
  const make = GuillotineTable.make;
  const evaluate = GuillotineTable.prototype.evaluate;
  const made = vi.spyOn(GuillotineTable, 'make').mockImplementation((problem, request) => {
    seen.tables.push(request);
    return make.call(GuillotineTable, problem, request);
  });
  const priced = vi.spyOn(GuillotineTable.prototype, 'evaluate').mockImplementation(function (
    this: GuillotineTable,
    prices,
  ) {
    seen.pricings += 1;
    seen.work += this.work;
    return evaluate.call(this, prices);
  });
  try {
    const result = prove(
      { createModel: (source) => watchModel(solver.createModel(source), source, seen) },
      seen,
    );
    return { result, seen };
  } finally {
    made.mockRestore();
    priced.mockRestore();
  }
}

function watchModel(model: LinearModel, source: LinearModelData, seen: Watched): LinearModel {
  const upper = source.rowUpper.slice(source.numCols);
  const own: WatchedModel = { slack: [...source.colCost], limits: [...upper], added: [], solved: 0 };
  seen.models.push(own);
  return {
    options: model.options,
    addCols(columns) {
      const { starts, indices, values } = columns.matrix;
      own.added.push(
        Array.from(columns.cost, (cost, c) => ({
          cost,
          rows: [...indices.slice(starts[c], starts[c + 1])],
          values: [...values.slice(starts[c], starts[c + 1])],
        })),
      );
      return model.addCols(columns);
    },
    run() {
      own.solved += 1;
      return model.run();
    },
    getModelStatus: () => model.getModelStatus(),
    getObjectiveValue: () => model.getObjectiveValue(),
    getSolution: () => model.getSolution(),
    setSolution: (start) => model.setSolution(start),
    dispose() {
      seen.disposed += 1;
      model.dispose();
    },
  };
}
