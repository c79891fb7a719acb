import { describe, expect, it } from 'vitest';
import { readLibrary } from '../../src/library/index.ts';
import { demoLibrary, libraryFiles, must } from '../helpers/demoVan.ts';

/**
 * Lead holes of wood screws: EN 1995-1-1 (Eurocode 5), 10.4.5: for the shank as wide as it, for the thread about 0.7 of the
 * shank's diameter. From memory. That the hole through the panel held is half a millimetre wider is common practice, no
 * source. The libraries call a screw by its diameter and length, as in `4 × 40`.
 */
const workshop = must(
  readLibrary(libraryFiles('parts-libraries/workshop-bench'), 'parts-libraries/workshop-bench'),
);
const screws = [demoLibrary(), workshop].flatMap(({ fittings }) =>
  [...fittings.values()].flatMap(({ title, screw }) => (screw === undefined ? [] : [{ title, screw }])),
);

describe('the holes of screws', () => {
  it.each(screws)('$title', ({ title, screw }) => {
    const [, diameter, length] = /(\d+) × (\d+)/.exec(title)!.map(Number);
    expect(screw.lengthUm).toBe(length! * 1000);
    expect(screw.intoUm).toBe(Math.round(diameter! * 0.7 * 1000));
    expect(screw.throughUm).toBeGreaterThan(diameter! * 1000);
    expect(screw.throughUm).toBeLessThanOrEqual(diameter! * 1000 + 500);
  });

  it('are those of three screws', () => expect(screws).toHaveLength(3));
});
