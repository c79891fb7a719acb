import highs from 'highs';
import type { LinearSolver } from '../../src/model/linearSolver.ts';

/** A freshly loaded HiGHS. The package's types call the loader's module what it exports. */
export async function loadSolver(): Promise<LinearSolver> {
  return (highs as unknown as () => Promise<LinearSolver>)();
}
