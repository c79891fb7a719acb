import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { libraryJsonSchemas } from '../../src/library/jsonSchemas.ts';
import { orderJsonSchema } from '../../src/order/jsonSchema.ts';
import { smallLibrary, smallOrder } from '../helpers/smallLibrary.ts';

const schemas = new Map([...libraryJsonSchemas(), ['order.schema.json', orderJsonSchema()]]);

/** What a reader of the schema other than this program makes of it. */
function accepts(name: string, value: unknown): boolean {
  const text = schemas.get(`${name}.schema.json`)!;
  return z.fromJSONSchema(JSON.parse(text)).safeParse(value).success;
}

function fileOf(path: string): unknown {
  return parse(smallLibrary().get(`libraries/small/${path}`)!);
}

test.each([
  ['library', 'library.yaml'],
  ['boards', 'boards.yaml'],
  ['finishes', 'finishes.yaml'],
  ['edgings', 'edgings.yaml'],
  ['fittings', 'fittings.yaml'],
  ['sheets', 'sheets.yaml'],
  ['saws', 'saws.yaml'],
  ['vehicle', 'vehicles/van-short.yaml'],
  ['unit', 'units/base-door.yaml'],
  ['layout', 'layouts/galley.yaml'],
])('the schema of %s takes a right file and refuses others', (name, path) => {
  expect(accepts(name, fileOf(path))).toBe(true);
  expect(accepts(name, path === 'sheets.yaml' ? [{}] : { titel: 'x' })).toBe(false);
  expect(accepts(name, 'text')).toBe(false);
});

test('the schema of drilling takes a right file and refuses others', () => {
  const hole = { along: 0, across: 0, diameter: 35, depth: 'through' };
  expect(accepts('drilling', { cup: { title: 'Cup', holes: { cup: hole } } })).toBe(true);
  expect(accepts('drilling', { cup: { title: 'Cup', holes: { cup: { ...hole, depth: 'deep' } } } })).toBe(
    false,
  );
  expect(accepts('drilling', { cup: { title: 'Cup' } })).toBe(false);
});

test('the schema of suppliers takes a right file and refuses others', () => {
  expect(accepts('suppliers', { yard: { title: 'Yard', 'delivery days': 3, contact: ['Lane 1'] } })).toBe(
    true,
  );
  expect(accepts('suppliers', { yard: { title: 'Yard', 'delivery days': 2.5 } })).toBe(false);
  expect(accepts('suppliers', { yard: { title: 'Yard' } })).toBe(false);
});

test('the schema of rates takes a right file and refuses others', () => {
  const rates = { hour: 50, sawing: { metre: 7, cut: '6 s' }, charge: { sheets: 'share' }, VAT: 20 };
  expect(accepts('rates', rates)).toBe(true);
  expect(accepts('rates', { ...rates, sawing: { meter: 7 } })).toBe(false);
  expect(accepts('rates', { ...rates, VAT: '20 %' })).toBe(false);
});

test('the schema of an order', () => {
  expect(accepts('order', parse(smallOrder))).toBe(true);
  expect(accepts('order', parse(smallOrder.replace('saw:', 'saww:')))).toBe(false);
});

test('schemas name their draft and what they are of, and end in a line break', () => {
  for (const text of schemas.values()) {
    expect(text.endsWith('}\n')).toBe(true);
    expect(JSON.parse(text)).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title: expect.any(String),
      description: expect.any(String),
    });
  }
});

test('patterns need no flags beyond unicode', () => {
  for (const text of schemas.values()) {
    for (const [, pattern] of text.matchAll(/"pattern": ("(?:[^"\\]|\\.)*")/g)) {
      expect(() => new RegExp(JSON.parse(pattern!), 'u')).not.toThrow();
    }
  }
});
