import { describe, expect, it } from 'vitest';
import { drawDimension } from '../../src/drawing/dimensions.ts';
import { boxesOverlap, textBox } from '../../src/drawing/drawing.ts';
import { Sketch } from '../../src/drawing/sketch.ts';
import { measure } from './drawingTools.ts';

/** A dimension of 109.1 mm that is so many mm long on the page. */
function drawn(longMm: number, reads: 'across' | 'up') {
  const sketch = new Sketch(measure);
  const onPage = (um: number) => 40 + (um / 109_100) * longMm;
  const line = { lineMm: 30, fromMm: reads === 'across' ? 20 : 40, onPage, units: 'mm' } as const;
  const isDrawn = drawDimension(sketch, [0, 109_100], { reads, ...line });
  return { isDrawn, shapes: sketch.shapes };
}

describe('a dimension', () => {
  it.each(['across', 'up'] as const)(
    'has no line through its figure, however little room it has (%s)',
    (reads) => {
      let broken = 0;
      for (let longMm = 4; longMm < 14; longMm += 0.1) {
        const { isDrawn, shapes } = drawn(longMm, reads);
        const at = shapes.findIndex(({ kind }) => kind === 'text');
        expect(at >= 0).toBe(isDrawn);
        const figure = shapes[at];
        if (figure?.kind !== 'text') continue;
        const box = textBox(figure);
        // The letters themselves are 0.2 mm away from any line, or the line is covered beside them.
        const near = { x0: box.x0 - 0.2, x1: box.x1 + 0.2, y0: box.y0 + 0.1, y1: box.y1 - 0.3 };
        const across =
          reads === 'across'
            ? near
            : { ...near, x0: box.x0 + 0.1, x1: box.x1 - 0.3, y0: box.y0 - 0.2, y1: box.y1 + 0.2 };
        const through = shapes.findLastIndex(
          (shape) =>
            shape.kind === 'line' &&
            boxesOverlap(across, {
              x0: Math.min(shape.x0, shape.x1) - 0.09,
              x1: Math.max(shape.x0, shape.x1) + 0.09,
              y0: Math.min(shape.y0, shape.y1) - 0.09,
              y1: Math.max(shape.y0, shape.y1) + 0.09,
            }),
        );
        if (through < 0) continue;
        broken++;
        const cover = shapes.findIndex(({ kind, layer }) => kind === 'rect' && layer === 'dimensions');
        expect(cover).toBeGreaterThan(through);
        expect(cover).toBeLessThan(at);
      }
      expect(broken).toBeGreaterThan(0);
    },
  );
});
