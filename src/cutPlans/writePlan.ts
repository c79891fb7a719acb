import { type PlanFile, planFile } from '../model/plan.ts';

const LINE_WIDTH = 160;

/** On one line, with spaces where a reader wants them. */
function writeFlat(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(writeFlat).join(', ')}]`;
  if (typeof value === 'object' && value !== null) {
    const fields = Object.entries(value).map(([key, inner]) => `${JSON.stringify(key)}: ${writeFlat(inner)}`);
    return fields.length === 0 ? '{}' : `{ ${fields.join(', ')} }`;
  }
  return JSON.stringify(value);
}

function depthOf(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 0;
  return 1 + Object.values(value).reduce((deepest: number, inner) => Math.max(deepest, depthOf(inner)), 0);
}

/** Things of at most two levels that fit stand on one line, so that a cut is a line and a change shows as one. */
function write(value: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (depthOf(value) <= 2) {
    const flat = writeFlat(value);
    if (indent.length + flat.length <= LINE_WIDTH) return flat;
  }
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    return `[\n${value.map((entry) => inner + write(entry, inner)).join(',\n')}\n${indent}]`;
  }
  const fields = Object.entries(value).map(
    ([key, field]) => `${inner}${JSON.stringify(key)}: ${write(field, inner)}`,
  );
  return `{\n${fields.join(',\n')}\n${indent}}`;
}

/**
 * The text of a plan file: JSON in the order of the schema, one cut a line, lengths in mm with at most three decimals,
 * a line feed at the end. The same plan always gives the same bytes. Throws when the plan is not as the schema says.
 */
export function writePlan(plan: PlanFile): string {
  return `${write(planFile.parse(plan), '')}\n`;
}
