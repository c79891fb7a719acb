import { checkFormula } from '../basics/formulaScope.ts';
import type { Finding } from '../model/finding.ts';
import type { Formula, Library } from '../model/library.ts';

function isFormula(value: object): value is Formula {
  return 'text' in value && typeof value.text === 'string' && 'place' in value;
}

function collect(value: unknown, into: Formula[]): void {
  if (typeof value !== 'object' || value === null) return;
  if (isFormula(value)) into.push(value);
  else for (const inner of value instanceof Map ? value.values() : Object.values(value)) collect(inner, into);
}

/**
 * What is wrong with the formulas of a library's units and layouts before any order gives their names a value: their
 * form, with the character. The line itself only meets the formulas that an order needs.
 */
export function checkLibraryFormulas(library: Library): Finding[] {
  const formulas: Formula[] = [];
  collect(library.units, formulas);
  collect(library.layouts, formulas);
  return formulas.flatMap((formula) => checkFormula(formula) ?? []);
}
