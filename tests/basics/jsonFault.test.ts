import fc from 'fast-check';
import { expect, it } from 'vitest';
import { jsonFault } from '../../src/basics/jsonFault.ts';
import { mutations } from '../helpers/mutateText.ts';

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

it('finds the first character that is not JSON', () => {
  const places: readonly (readonly [string, number])[] = [
    ['', 0],
    ['{"a": 1,}', 8],
    ['[1 2]', 3],
    ['{"a" 1}', 5],
    ['{"a":, 1}', 5],
    ['[1]]', 3],
    ['\ufeff{}', 0],
    ['["a\nb"]', 1],
    ['01', 1],
  ];
  for (const [text, at] of places) expect([text, jsonFault(text)]).toEqual([text, at]);
  expect(jsonFault('['.repeat(100_000))).toBe(100_000);
  expect(jsonFault(`"${'a\\n'.repeat(100_000)}`)).toBe(0);
});

it('finds one just where JSON.parse does not read a text', () => {
  const values = [
    fc.string(),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.boolean(),
    fc.constant(null),
  ];
  fc.assert(
    fc.property(fc.object({ values }), fc.constantFrom(0, 2), mutations, (value, indent, mutate) => {
      const text = JSON.stringify(value, null, indent);
      expect(jsonFault(text)).toBe(null);
      const changed = mutate(text);
      expect(jsonFault(changed) === null).toBe(isJson(changed));
    }),
  );
});
