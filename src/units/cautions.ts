import type { FormulaScope } from '../basics/formulaScope.ts';
import type { CautionUse } from '../model/library.ts';

/** The cautions whose condition holds, each once. */
export function cautionsThatHold(uses: readonly CautionUse[] | undefined, scope: FormulaScope): string[] {
  const held = (uses ?? []).filter(({ when }) => scope.condition(when) === true);
  return [...new Set(held.map(({ caution }) => caution))];
}
