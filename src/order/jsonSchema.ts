import { z } from 'zod';
import { orderFile, variantFile } from './schema.ts';

/** The JSON Schema (draft 2020-12) of an order file, as a text that ends in a line break: for editors. */
export function orderJsonSchema(): string {
  return `${JSON.stringify(z.toJSONSchema(orderFile, { io: 'input' }), null, 2)}\n`;
}

/** The JSON Schema of a variant of an order, in the same form. */
export function variantJsonSchema(): string {
  return `${JSON.stringify(z.toJSONSchema(variantFile, { io: 'input' }), null, 2)}\n`;
}
