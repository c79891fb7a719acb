import { describe, expect, it } from 'vitest';
import { drawRows, type Row } from '../../src/drawing/dimensionRows.ts';
import { drawDimension, placeFigure } from '../../src/drawing/dimensions.ts';
import { boxesOverlap, type Shape, textBox } from '../../src/drawing/drawing.ts';
import { ExtensionLines } from '../../src/drawing/extensionLines.ts';
import { Sketch } from '../../src/drawing/sketch.ts';
import type { Extent } from '../../src/model/geometry.ts';
import { measure } from './drawingTools.ts';

/** A dimension of 109.1 mm that is so many mm long on the page. */
function drawn(longMm: number, reads: 'across' | 'up') {
  const sketch = new Sketch(measure);
  const onPage = (um: number) => 40 + (um / 109_100) * longMm;
  const line = { lineMm: 30, fromMm: reads === 'across' ? 20 : 40, onPage, units: 'mm' } as const;
  const extensions = new ExtensionLines();
  const isDrawn = drawDimension(sketch, [0, 109_100], { reads, extensions, ...line });
  extensions.draw(sketch);
  return { isDrawn, shapes: sketch.shapes };
}

function linesOf(shapes: readonly Shape[]) {
  return shapes.flatMap((shape) => (shape.kind === 'line' ? [shape] : []));
}

describe('a dimension', () => {
  it.each(['across', 'up'] as const)(
    'has no line through its figure, however little room it has (%s)',
    (reads) => {
      let broken = 0;
      for (let longMm = 4; longMm < 14; longMm += 0.1) {
        const { isDrawn, shapes } = drawn(longMm, reads);
        const figure = shapes.find(({ kind }) => kind === 'text');
        expect(figure !== undefined).toBe(isDrawn);
        if (figure?.kind !== 'text') continue;
        const box = textBox(figure);
        const near =
          reads === 'across'
            ? { ...box, x0: box.x0 - 0.2, x1: box.x1 + 0.2, y1: box.y1 - 0.2 }
            : { ...box, y0: box.y0 - 0.2, y1: box.y1 + 0.2, x1: box.x1 - 0.2 };
        const lines = linesOf(shapes).map((shape) => ({
          x0: Math.min(shape.x0, shape.x1) - 0.09,
          x1: Math.max(shape.x0, shape.x1) + 0.09,
          y0: Math.min(shape.y0, shape.y1) - 0.09,
          y1: Math.max(shape.y0, shape.y1) + 0.09,
        }));
        expect(lines.filter((line) => boxesOverlap(near, line))).toEqual([]);
        // Two extension lines and the one between the arrows, unless one is in pieces or ends before the figure beside it.
        if (lines.length > 3 || (reads === 'up' && lines.every(({ x0 }) => x0 > 29.5))) broken++;
      }
      expect(broken).toBeGreaterThan(0);
    },
  );
});

describe('a figure between its arrows', () => {
  it('stands in the middle, or as near to it as is clear of what crosses', () => {
    expect(placeFigure([0, 30], 8, [])).toEqual({ at: 15, clear: true });
    expect(placeFigure([0, 30], 8, [5, 40])).toEqual({ at: 15, clear: true });
    expect(placeFigure([0, 30], 8, [14])).toEqual({ at: 18.6, clear: true });
    expect(placeFigure([0, 30], 8, [17])).toEqual({ at: 12.4, clear: true });
    expect(placeFigure([0, 30], 8, [12, 18])).toEqual({ at: 7.4, clear: true });
  });

  it('stays in the middle where nothing is clear', () => {
    expect(placeFigure([0, 10], 8, [5])).toEqual({ at: 5, clear: false });
    expect(placeFigure([0, 30], 8, [7, 14, 21])).toEqual({ at: 15, clear: false });
  });
});

describe('extension lines', () => {
  function pieces(boxes: readonly (readonly [from: number, to: number])[], upwards = false) {
    const extensions = new ExtensionLines();
    const sketch = new Sketch(measure);
    extensions.add(upwards ? [10, 0, -10, 0] : [0, 10, 0, 30]);
    for (const [from, to] of boxes) {
      extensions.keepClear(
        upwards ? { x0: from, x1: to, y0: -1, y1: 1 } : { x0: -1, x1: 1, y0: from, y1: to },
      );
    }
    extensions.draw(sketch);
    return linesOf(sketch.shapes).map(({ x0, y0, x1, y1 }) => (upwards ? [x0, x1] : [y0, y1]));
  }

  it('are broken at figures, drop a short beginning and keep their end', () => {
    expect(pieces([])).toEqual([[10, 30]]);
    expect(pieces([[15, 18]])).toEqual([
      [10, 15],
      [18, 30],
    ]);
    expect(
      pieces([
        [11, 14],
        [13, 20],
        [26, 29.5],
      ]),
    ).toEqual([
      [20, 26],
      [29.5, 30],
    ]);
    expect(pieces([[40, 50]])).toEqual([[10, 30]]);
    expect(pieces([[-5, -2]], true)).toEqual([
      [10, -2],
      [-5, -10],
    ]);
  });

  it('of the same place are drawn once', () => {
    const extensions = new ExtensionLines();
    const sketch = new Sketch(measure);
    extensions.add([0, 10, 0, 30]);
    extensions.add([0, 10, 0, 30]);
    extensions.draw(sketch);
    expect(sketch.shapes).toHaveLength(1);
  });
});

describe('rows of dimensions', () => {
  const chain = (...ends: number[]): Row => ({
    chains: [ends.slice(1).map((to, index): Extent => [ends[index]! * 1000, to * 1000])],
  });

  /** The figures below a view, row by row from the view outwards. */
  function figures(...rows: Row[]): string[] {
    const sketch = new Sketch(measure);
    const extensions = new ExtensionLines();
    const view = {
      box: { x0: 20, x1: 120, y0: 10, y1: 60 },
      x: (um: number) => 20 + um / 10_000,
      y: () => 0,
    };
    drawRows(sketch, { below: rows, left: [] }, { view, across: 1, reduction: 10, units: 'mm', extensions });
    const texts = sketch.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : []));
    const lines = [...new Set(texts.map(({ y }) => y))].sort((a, b) => a - b);
    return lines.map((at) =>
      texts
        .filter(({ y }) => y === at)
        .map(({ text }) => text)
        .join(' '),
    );
  }

  it('stand in the order in which no line passes through a figure, the overall dimension outside', () => {
    const whole = chain(0, 1000);
    // The line at 40 would pass through the figure of 80, which has no room beside it.
    expect(figures(chain(0, 80, 1000), chain(40, 960), whole)).toEqual(['920', '80 920', '1000']);
    expect(figures(chain(40, 960), chain(0, 80, 1000), whole)).toEqual(['920', '80 920', '1000']);
  });

  it('stay as they are where figures can move aside, or where another order is no better', () => {
    const whole = chain(0, 1000);
    expect(figures(chain(0, 300, 700, 1000), chain(150, 850), whole)).toEqual(['300 400 300', '700', '1000']);
  });

  it('of openings of two panels that begin at the same place are told in one, from the view itself', () => {
    const opening = (fromUm: number, from: number, to: number): Row => ({
      ...chain(0, from, to, 482.8),
      running: [{ fromUm, places: [from * 1000, to * 1000] }],
    });
    const view = {
      box: { x0: 20, x1: 120, y0: 10, y1: 60 },
      x: () => 0,
      y: (um: number) => 60 - um / 20_000,
    };
    const drawnLeft = (rows: readonly Row[]) => {
      const sketch = new Sketch(measure);
      const extensions = new ExtensionLines();
      drawRows(
        sketch,
        { below: [], left: rows },
        { view, across: 1, reduction: 20, units: 'mm', extensions },
      );
      return {
        circles: sketch.shapes.flatMap((shape) => (shape.kind === 'circle' ? [[shape.x, shape.y]] : [])),
        figures: sketch.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])),
      };
    };
    const told = drawnLeft([opening(0, 412.8, 452.8), opening(0, 372.8, 452.8)]);
    expect(told.circles).toEqual([[20, 60]]);
    expect([...told.figures].sort()).toEqual(['372.8', '412.8', '452.8']);
    // From another place each has its own row.
    expect(drawnLeft([opening(0, 412.8, 452.8), opening(100_000, 372.8, 452.8)]).circles).toHaveLength(2);
  });
});
