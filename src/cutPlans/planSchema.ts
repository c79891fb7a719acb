import { z } from 'zod';
import { planFile } from '../model/plan.ts';

const LINE_WIDTH = 110;

/** JSON indented by two, lists of plain values on one line where they fit after `before` characters. */
function write(value: unknown, indent: string, before: number): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    const flat = `[${value.map((entry) => JSON.stringify(entry)).join(', ')}]`;
    const plain = value.every((entry) => typeof entry !== 'object');
    if (plain && before + flat.length + 1 <= LINE_WIDTH) return flat;
    return `[\n${value.map((entry) => inner + write(entry, inner, inner.length)).join(',\n')}\n${indent}]`;
  }
  const fields = Object.entries(value).map(([key, field]) => {
    const name = `${inner}${JSON.stringify(key)}: `;
    return name + write(field, inner, name.length);
  });
  return fields.length === 0 ? '{}' : `{\n${fields.join(',\n')}\n${indent}}`;
}

/** The JSON Schema (draft 2020-12) of the plan file as text, for programs that read plans; ends with a line feed. */
export function planSchemaText(): string {
  const schema = z.toJSONSchema(planFile, {
    target: 'draft-2020-12',
    // Without this a pair might have one entry or three.
    override: ({ jsonSchema }) => {
      if (jsonSchema.prefixItems === undefined) return;
      jsonSchema.minItems = jsonSchema.prefixItems.length;
      jsonSchema.maxItems = jsonSchema.prefixItems.length;
    },
  });
  return `${write({ title: 'plywright plan file', ...schema }, '', 0)}\n`;
}
