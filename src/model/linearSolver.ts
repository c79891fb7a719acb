/**
 * The part of a loaded HiGHS that is used, so that `src/` neither loads it nor depends on its package: the edge loads
 * it and hands it in. Everything here is synchronous. A second model must not be run inside a callback, and every
 * model must be disposed of.
 */
export interface LinearSolver {
  createModel(source: LinearModelData): LinearModel;
}

/** A matrix by columns: column j holds `indices` and `values` from `starts[j]` to `starts[j + 1]` (excluded). */
export interface ColumnMatrix {
  readonly format: 'csc';
  readonly numRows: number;
  readonly numCols: number;
  readonly starts: Int32Array;
  readonly indices: Int32Array;
  readonly values: Float64Array;
}

/** Minimise `colCost · x` with `rowLower ≤ matrix · x ≤ rowUpper` and `colLower ≤ x ≤ colUpper`. */
export interface LinearModelData {
  readonly numCols: number;
  readonly numRows: number;
  readonly colCost: Float64Array;
  readonly colLower: Float64Array;
  readonly colUpper: Float64Array;
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
  readonly matrix: ColumnMatrix;
  /** 1 for a column that must be whole, 0 for one that need not; absent when none must. */
  readonly integrality?: Int32Array;
}

export interface LinearModel {
  readonly options: { set(values: Readonly<Record<string, boolean | number | string>>): unknown };
  addCols(columns: {
    readonly cost: Float64Array;
    readonly lower: Float64Array;
    readonly upper: Float64Array;
    readonly matrix: ColumnMatrix;
  }): unknown;
  run(): unknown;
  /** 7: solved to the end; 14: stopped by a limit, perhaps with an answer. */
  getModelStatus(): number;
  getObjectiveValue(): number;
  getSolution(): {
    readonly colValue: Float64Array;
    readonly rowDual: Float64Array;
    readonly colDual: Float64Array;
  };
  setSolution(start: { readonly colValue: Float64Array }): unknown;
  dispose(): void;
}
