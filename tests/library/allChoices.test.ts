import { afterAll, describe, expect, it } from 'vitest';
import {
  canBeHadWithTwoMore,
  choiceWords,
  countLine,
  endWords,
  pairsHad,
  passing,
  type Tried,
  tryAllPairs,
  tryPairsLeft,
} from '../helpers/allChoices.ts';
import { demoLibrary, demoOrder } from '../helpers/demoVan.ts';

const library = demoLibrary();
const base = demoOrder(library);
/** What a layout or a unit says itself. Anything else would be furniture that does not fit, found by chance. */
const refusals = ['must-not-met', 'out-of-range', 'count-wrong'];

const cases = [...library.layouts.values()].flatMap((layout) =>
  layout.vehicles.map((vehicle) => [layout.id, vehicle, layout] as const),
);
const all: Tried[] = [];
/** Values that can be had in one of the vehicles at least, by layout. */
const hadIn = new Map([...library.layouts.keys()].map((id) => [id, new Set<string>()]));
afterAll(() => console.log(countLine('all layouts and vehicles', all)));

describe.each(cases)('%s in %s', (id, vehicle, layout) => {
  const asked = { layout, vehicle, base, library };
  const tried = tryAllPairs(asked);
  const passed = passing(tried);
  // A pair that no combination with it passes is tried once more, all else as by default.
  const left = tryPairsLeft(asked, passed);
  const each = [...tried, ...left];
  all.push(...each);
  const had = new Set([...passed, ...passing(left)].flatMap(({ words }) => words));
  for (const word of had) hadIn.get(id)!.add(word);

  it('passes with its defaults', () => {
    expect(tried[0]!.order.choices.size).toBe(0);
    expect(tried[0]!.errors).toEqual([]);
  });

  it('passes every check with every pair of choices, or is refused with the reason', () => {
    console.log(countLine(`${id} in ${vehicle}`, each));
    const unexplained = each.flatMap(({ words, errors }) =>
      errors
        .filter(({ code, message }) => !refusals.includes(code) || message.length < 20)
        .map(({ message }) => `${words.join(', ')}: ${message}`),
    );
    expect(unexplained).toEqual([]);
  });

  it('can be had with most pairs of choices', () => {
    const { had, all: total } = pairsHad(layout, [...passed, ...passing(left)]);
    console.log(`${id} in ${vehicle}: ${had} of ${total} pairs of choices can be had`);
    expect(had / total).toBeGreaterThan(0.6);
  });

  it('can be had with each word of each choice', () => {
    expect(choiceWords(layout).filter((word) => !had.has(word))).toEqual([]);
  });
});

describe.each([...library.layouts.values()].map((layout) => [layout.id, layout] as const))(
  '%s',
  (id, layout) => {
    it('can be had with the least and the most of each number, in one of its vehicles', () => {
      const open = endWords(layout).filter((word) => !hadIn.get(id)!.has(word));
      const vehicle = layout.vehicles[0]!;
      const never = open.filter((word) => !canBeHadWithTwoMore({ layout, vehicle, base, library }, word));
      expect(never).toEqual([]);
    });
  },
);
