import type { FormulaScope } from '../basics/formulaScope.ts';
import type { UnitDefinition } from '../model/library.ts';

/** Conditions with sentences of their own, of a unit or a layout. */
export function checkMusts(musts: UnitDefinition['musts'], scope: FormulaScope, name: string): void {
  for (const must of musts) {
    if (scope.condition(must.that) !== false) continue;
    scope.findings.push({
      code: 'must-not-met',
      severity: 'error',
      message: `${name}: ${must.says}`,
      place: must.place,
      expected: must.that.text,
    });
  }
}
