import { expect, test } from 'vitest';
import { libraryJsonSchemas } from '../../src/library/jsonSchemas.ts';
import { orderJsonSchema, variantJsonSchema } from '../../src/order/jsonSchema.ts';
import { mixJsonSchema } from '../../src/yearOfOrders/index.ts';

const schemas = [
  ...libraryJsonSchemas(),
  ['order.schema.json', orderJsonSchema()] as const,
  ['variant.schema.json', variantJsonSchema()] as const,
  ['order-mix.schema.json', mixJsonSchema()] as const,
];

test.each(schemas)('%s is published as it is (`vitest -u` writes it anew)', async (name, text) => {
  await expect(text).toMatchFileSnapshot(`../../schemas/${name}`);
});
