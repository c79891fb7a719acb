import { describe, expect, it } from 'vitest';
import { passing, sawn, spread, tryAllPairs } from '../helpers/allChoices.ts';
import { demoLibrary, demoOrder } from '../helpers/demoVan.ts';

/**
 * A sample, spread evenly over what passes, for each layout in each vehicle. `npx tsx tests/library/countChoices.ts
 * --nest` saws every combination that passes and prints the count.
 */
const SAMPLE = 3;
const library = demoLibrary();
const base = demoOrder(library);
const cases = [...library.layouts.values()].flatMap((layout) =>
  layout.vehicles.map((vehicle) => [layout.id, vehicle, layout] as const),
);

describe.each(cases)('%s in %s', (_id, vehicle, layout) => {
  const sample = spread(passing(tryAllPairs({ layout, vehicle, base, library })), SAMPLE);

  it('can be sawn, whatever is chosen', () => {
    expect(sample).toHaveLength(SAMPLE);
    for (const one of sample) {
      const panels = one.furnished.furniture!.units.flatMap((unit) => unit.panels).length;
      expect(sawn(one, library), one.words.join(', ')).toEqual({ findings: [], panels });
    }
  });
});
