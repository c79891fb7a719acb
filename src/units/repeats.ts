import type { FormulaScope } from '../basics/formulaScope.ts';
import type { Repeat } from '../model/library.ts';

/** More of one thing than any piece of furniture holds: a repeat beyond it is a slip of the pen. */
const MOST_REPEATS = 200;

/** How many times a repeat runs, with the scope and the name's ending of each; one without an ending when it does not. */
export function runs(repeat: Repeat | null, scope: FormulaScope): { scope: FormulaScope; ending: string }[] {
  if (repeat === null) return [{ scope, ending: '' }];
  const count = scope.count(repeat.count, MOST_REPEATS) ?? 0;
  return Array.from({ length: count }, (_, index) => ({
    scope: scope.with(repeat.counter, index + 1),
    ending: ` ${index + 1}`,
  }));
}
