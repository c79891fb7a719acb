import highs from 'highs';
import type { LinearSolver } from '../../src/model/linearSolver.ts';

/** Loads HiGHS, the solver for linear programmes; takes some 40 ms. */
export async function loadSolver(): Promise<LinearSolver> {
  // The package's types describe it as its CommonJS form is imported; its ES module exports the loader itself.
  const load = highs as unknown as typeof highs.default;
  return (await load()) as unknown as LinearSolver;
}
