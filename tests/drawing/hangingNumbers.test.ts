import { describe, expect, it } from 'vitest';
import { textBox } from '../../src/drawing/drawing.ts';
import { drawLayout } from '../../src/drawing/index.ts';
import { hangsAbove } from '../../src/drawing/layoutMeasures.ts';
import { demoOrders, demoPlan } from '../helpers/demoPlan.ts';
import { measure, words } from './drawingTools.ts';

describe('the numbers of what hangs above, in the plan of a layout', () => {
  it.each(demoOrders)('stand away from the words of what is below: %s', (name) => {
    const { ordered } = demoPlan(name);
    const { furniture, library, order } = ordered;
    const vehicle = library.vehicles.get(order.vehicle)!;
    const hanging = furniture.units.flatMap((unit, index) =>
      hangsAbove(unit, vehicle) ? [String(index + 1)] : [],
    );
    const [page] = drawLayout(furniture, vehicle, library.finishes, {
      measure,
      words,
      job: 'test',
      titles: new Map(),
      page: 'A3',
    });
    const texts = page!.shapes.flatMap((shape) =>
      shape.kind === 'text' && shape.layer === 'numbers' ? [shape] : [],
    );
    // The plan is drawn first: the first text that is a unit's number alone is its own there.
    const numbers = hanging.map((number) => texts.find(({ text }) => text === number));
    expect(numbers.filter((number) => number !== undefined).length).toBeGreaterThan(0);
    for (const number of numbers) {
      if (number === undefined) continue;
      const own = textBox(number);
      for (const other of texts) {
        if (other === number) continue;
        const box = textBox(other);
        const beside = Math.max(box.x0 - own.x1, own.x0 - box.x1);
        const over = Math.max(box.y0 - own.y1, own.y0 - box.y1);
        expect(Math.max(beside, over), `${number.text} and ${other.text}`).toBeGreaterThan(1);
      }
    }
  });
});
