import { describe, expect, it } from 'vitest';
import { readLibrary } from '../../src/library/index.ts';
import { readOrder } from '../../src/order/index.ts';
import { alone, libraryFiles, must } from '../helpers/demoVan.ts';

/** Common practice, no source: a shelf that is laid in is a millimetre or more shorter than the room it goes into. */
const LEAST_PLAY_UM = 1000;
const PINS_A_SHELF = 4;

describe.each([
  ['demo-van', 'demo-long'],
  ['workshop-bench', 'garage-bench'],
])('shelves on pins, in the library %s,', (folder, orderName) => {
  const root = `parts-libraries/${folder}`;
  const files = libraryFiles(root);
  const library = must(readLibrary(files, root));
  const path = `${root}/orders/${orderName}.yaml`;
  const order = must(readOrder(files.get(path)!, path, library));

  it('have play between the sides, each of them', () => {
    let shelves = 0;
    for (const { id } of library.units.values()) {
      const { unit } = alone(id, {}, library, order);
      const pins = unit?.fittings.find(({ fitting }) => fitting === 'shelf-pin')?.count ?? 0;
      if (!unit || pins === 0) continue;
      const loose = unit.panels.filter((panel) => {
        const held = (unit.hangings ?? []).filter(({ panels }) => panels.includes(panel.id));
        return (
          / shelf|^shelf/.test(panel.name) && held.reduce((sum, { gapUm }) => sum + gapUm, 0) >= LEAST_PLAY_UM
        );
      });
      expect(PINS_A_SHELF * loose.length, id).toBe(pins);
      shelves += loose.length;
    }
    expect(shelves).toBeGreaterThan(0);
  });
});
