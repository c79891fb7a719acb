import { describe, expect, it } from 'vitest';
import { type Box, boxesOverlap, type Drawing, type Segment, textBox } from '../../src/drawing/drawing.ts';
import { boxAround } from '../../src/drawing/labels.ts';
import { drawUnit, drawUnitOnOnePage } from '../../src/drawing/unitViews.ts';
import { drawLayout } from '../../src/drawing/vehicleViews.ts';
import { readLibrary } from '../../src/library/index.ts';
import type { Library } from '../../src/model/library.ts';
import type { Order } from '../../src/model/order.ts';
import { readOrder } from '../../src/order/index.ts';
import { demoOrders } from '../helpers/demoPlan.ts';
import { alone, demoLibrary, demoOrder, furnish, libraryFiles, must } from '../helpers/demoVan.ts';
import { measure, words } from './drawingTools.ts';

const van = demoLibrary();
const benchRoot = 'parts-libraries/workshop-bench';
const benchFiles = libraryFiles(benchRoot);
const bench = must(readLibrary(benchFiles, benchRoot));
const benchPath = `${benchRoot}/orders/garage-bench.yaml`;
const benchOrder = must(readOrder(benchFiles.get(benchPath)!, benchPath, bench));

const options = { measure, words, job: 'Demonstration', titles: new Map<string, string>() };

/** The part of a line within a box, as a box; null where none is. */
function within([x0, y0, x1, y1]: Segment, box: Box): Box | null {
  let [from, to] = [0, 1];
  for (const [at, by, low, high] of [
    [x0, x1 - x0, box.x0, box.x1],
    [y0, y1 - y0, box.y0, box.y1],
  ] as const) {
    if (by === 0) {
      if (at <= low || at >= high) return null;
      continue;
    }
    const [a, b] = [(low - at) / by, (high - at) / by].sort((p, q) => p - q);
    from = Math.max(from, a!);
    to = Math.min(to, b!);
  }
  if (from >= to) return null;
  const xs = [x0 + from * (x1 - x0), x0 + to * (x1 - x0)].sort((a, b) => a - b);
  const ys = [y0 + from * (y1 - y0), y0 + to * (y1 - y0)].sort((a, b) => a - b);
  return { x0: xs[0]!, x1: xs[1]!, y0: ys[0]!, y1: ys[1]! };
}

/** Lines and outlines of a drawing, each with its place in the order of drawing. */
function linesOf({ shapes }: Drawing): { readonly line: Segment; readonly index: number }[] {
  return shapes.flatMap((shape, index) => {
    const lines = (): Segment[] => {
      if (shape.kind === 'line') return [[shape.x0, shape.y0, shape.x1, shape.y1]];
      if (shape.kind === 'lines') return [...shape.segments];
      const circle = shape.kind === 'circle';
      if (!circle && (shape.kind !== 'rect' || shape.stroke === null)) return [];
      const { x0, y0, x1, y1 } = circle
        ? boxAround([shape.x, shape.y], 2 * shape.radiusMm, 2 * shape.radiusMm)
        : shape.box;
      return [
        [x0, y0, x1, y0],
        [x1, y0, x1, y1],
        [x1, y1, x0, y1],
        [x0, y1, x0, y0],
      ];
    };
    return lines().map((line) => ({ line, index }));
  });
}

/** What crosses the figures of dimensions in a drawing: lines that are not covered by white drawn later, and other texts. */
function crossed(drawing: Drawing): string[] {
  const { shapes, title } = drawing;
  const grounds = shapes.flatMap((shape, index) =>
    shape.kind === 'rect' && shape.fill === 0 ? [{ box: shape.box, index }] : [],
  );
  const covered = (part: Box, from: number) =>
    grounds.some(
      ({ box, index }) =>
        index > from && box.x0 <= part.x0 && box.y0 <= part.y0 && box.x1 >= part.x1 && box.y1 >= part.y1,
    );
  const texts = shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : []));
  const lines = linesOf(drawing);
  return texts
    .filter(({ layer }) => layer === 'dimensions')
    .flatMap((text) => {
      const box = textBox(text);
      // Beside its letters there is white, below them their own dimension line.
      const around =
        text.reads === 'across'
          ? { ...box, x0: box.x0 - 0.3, x1: box.x1 + 0.3 }
          : { ...box, y0: box.y0 - 0.3, y1: box.y1 + 0.3 };
      const through = lines.filter(({ line, index }) => {
        const part = within(line, around);
        return part !== null && !covered(part, index);
      });
      const over = texts.filter((other) => other !== text && boxesOverlap(box, textBox(other)));
      return [
        ...through.map(
          ({ line }) => `${title}: line ${line.map((mm) => mm.toFixed(1))} through ${text.text}`,
        ),
        ...over.map((other) => `${title}: ${other.text} on ${text.text}`),
      ];
    });
}

function unitsOf(library: Library, order: Order) {
  return [...library.units.keys()].flatMap((id) => alone(id, {}, library, order).unit ?? []);
}

describe('no line and no text lies on a figure of a dimension', () => {
  it.each([
    ['the demonstration van', van, demoOrder(van)],
    ['the workshop bench', bench, benchOrder],
  ] as const)('in the drawings of each unit of %s', (_, library, order) => {
    for (const units of ['mm', 'inches'] as const) {
      const all = unitsOf(library, order).flatMap((unit) => {
        const one = drawUnitOnOnePage(unit, { ...options, units });
        return [...drawUnit(unit, { ...options, units }), ...(one === null ? [] : [one])];
      });
      expect(all.flatMap(crossed)).toEqual([]);
    }
  });

  it.each([
    ...demoOrders.map((name) => [name, van, demoOrder(van, name)] as const),
    ['garage-bench', bench, benchOrder] as const,
  ])('in the drawings of the units and the layout of %s', (_, library, order) => {
    const furniture = furnish(order, library).furniture!;
    const vehicle = library.vehicles.get(order.vehicle)!;
    for (const units of ['mm', 'inches'] as const) {
      const drawn = furniture.units.flatMap((unit) => {
        const one = drawUnitOnOnePage(unit, { ...options, units });
        return [...drawUnit(unit, { ...options, units }), ...(one === null ? [] : [one])];
      });
      const layouts = (['A3', 'A4'] as const).flatMap((page) =>
        drawLayout(furniture, vehicle, library.finishes, { ...options, units, page }),
      );
      expect([...drawn, ...layouts].flatMap(crossed)).toEqual([]);
    }
  });
});
