import { z } from 'zod';
import { planFile } from '../model/plan.ts';

/** The JSON Schema (draft 2020-12) of the plan file as text, for programs that read plans; ends with a line feed. */
export function planSchemaText(): string {
  const schema = z.toJSONSchema(planFile, { target: 'draft-2020-12' });
  return `${JSON.stringify({ title: 'plywright plan file', ...schema }, null, 2)}\n`;
}
