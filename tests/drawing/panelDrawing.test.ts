import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BenchPanel, panelOnBench } from '../../src/basics/panelOnBench.ts';
import { de } from '../../src/documents/words/de.ts';
import { boxesOverlap, type Drawing, type TextShape, textBox } from '../../src/drawing/drawing.ts';
import { drawPanels } from '../../src/drawing/panelDrawing.ts';
import { type DrawnPanel, edgeHoleKinds, holeKinds } from '../../src/drawing/panelFigure.ts';
import { spread } from '../../src/drawing/runningDimensions.ts';
import { demoOrders } from '../helpers/demoPlan.ts';
import { demoLibrary, demoOrder, furnish } from '../helpers/demoVan.ts';
import { measure, words } from './drawingTools.ts';

const library = demoLibrary();
const options = { measure, words, job: 'demo', titles: new Map<string, string>() };

function textsOf(drawing: Drawing): TextShape[] {
  return drawing.shapes.filter((shape): shape is TextShape => shape.kind === 'text');
}

/** Texts on other texts, and whatever lies outside the frame. */
function faultsOf(drawing: Drawing): string[] {
  const texts = textsOf(drawing);
  const overlaps = texts.flatMap((one, index) =>
    texts
      .slice(0, index)
      .filter((other) => boxesOverlap(textBox(one), textBox(other)))
      .map((other) => `${one.text} on ${other.text}`),
  );
  const frame = { x0: 20, y0: 10, x1: drawing.widthMm - 10, y1: drawing.heightMm - 10 };
  const points = drawing.shapes.flatMap((shape): (readonly [number, number])[] => {
    if (shape.kind === 'text') {
      const { x0, y0, x1, y1 } = textBox(shape);
      return [
        [x0, y0],
        [x1, y1],
      ];
    }
    if (shape.kind === 'circle') return [[shape.x, shape.y]];
    if (shape.kind === 'line') {
      return [
        [shape.x0, shape.y0],
        [shape.x1, shape.y1],
      ];
    }
    if (shape.kind === 'lines') {
      return shape.segments.flatMap(([x0, y0, x1, y1]) => [[x0, y0] as const, [x1, y1] as const]);
    }
    return shape.kind === 'polygon' ? [...shape.points] : [];
  });
  const outside = points.filter(
    ([x, y]) => x < frame.x0 - 0.01 || y < frame.y0 - 0.01 || x > frame.x1 + 0.01 || y > frame.y1 + 0.01,
  );
  return [...overlaps, ...outside.map(([x, y]) => `outside at ${x}, ${y}`)];
}

function drawnOf(name: string): DrawnPanel[] {
  const { furniture } = furnish(demoOrder(library, name), library);
  return furniture!.units.flatMap((unit) =>
    unit.panels.map((panel) => ({
      bench: panelOnBench(panel, unit.panels, library.edgings),
      names: [`${panel.number} ${panel.name}, ${unit.name}`],
      thicknessUm: panel.thicknessUm,
      grain: panel.grain,
      count: panel.count,
    })),
  );
}

describe.each(['demo-long', 'demo-short'] as const)('the panels of %s on paper', (name) => {
  const panels = drawnOf(name);
  const pages = drawPanels(panels, options);

  it('have no text on another and stay inside the frame, in German too', () => {
    const german = drawPanels(panels, { ...options, words: de.drawings });
    const inches = drawPanels(panels, { ...options, units: 'inches' });
    for (const page of [...pages, ...german, ...inches]) expect(faultsOf(page)).toEqual([]);
  });

  it('have each hole lettered, or another just like it close by', () => {
    for (const panel of panels) {
      const [page] = drawPanels([panel], options);
      const letters = page!.shapes.filter(
        (shape): shape is TextShape => shape.kind === 'text' && shape.layer === 'holes',
      );
      const kinds = [...holeKinds(panel.bench.holes), ...edgeHoleKinds(panel.bench)];
      for (const { letter, holes } of kinds) {
        const written = letters.filter(({ text }) => text === letter).length;
        expect(written, `${panel.names[0]}, ${letter}`).toBeGreaterThanOrEqual(Math.ceil(holes.length / 2));
      }
    }
  });

  it('have the letters of the holes at each distance, where there are others to take it for', () => {
    const panel = panels.find(({ names }) => /top, (galley|left) locker/.test(names[0]!))!;
    const [page] = drawPanels([panel], options);
    const texts = textsOf(page!).filter(({ layer }) => layer === 'dimensions');
    const hinge = panel.bench.holes.find(({ name }) => name.includes('hinge plate'))!;
    const figure = texts.find(({ text, reads }) => text === String(hinge.nearUm / 1000) && reads !== 'up')!;
    const before = texts.filter(({ y, x }) => Math.abs(y - figure.y) < 0.01 && x < figure.x);
    const [kind] = holeKinds(panel.bench.holes).filter(({ holes }) => holes.includes(hinge));
    expect(before.map(({ text }) => text)).toContain(kind!.letter);
  });

  it('come out the same for the same panels', () => {
    expect(drawPanels(panels, options)).toEqual(pages);
  });
});

describe.each(demoOrders)('the distances of the panels of %s', (name) => {
  it('show every hole and every distance of each panel', () => {
    for (const panel of drawnOf(name)) {
      const [page, ...more] = drawPanels([panel], options);
      expect(more).toEqual([]);
      const { bench } = panel;
      const circles = page!.shapes.filter((shape) => shape.kind === 'circle' && shape.layer === 'holes');
      expect(circles).toHaveLength(bench.holes.length);
      const printed = new Set(textsOf(page!).map(({ text }) => text));
      const inEdges = bench.edgeHoles.map(({ side, leftUm, nearUm }) =>
        side === 'left' || side === 'right' ? nearUm : leftUm,
      );
      const distances = [...bench.holes.flatMap(({ leftUm, nearUm }) => [leftUm, nearUm]), ...inEdges];
      const missing = distances.filter((um) => !printed.has(String(Math.round(um / 100) / 10)));
      expect(missing, panel.names[0]).toEqual([]);
    }
  });
});

/** Panels of any size, from narrow strips to a whole sheet, drilled anywhere within. */
const anyPanel: fc.Arbitrary<DrawnPanel> = fc
  .tuple(
    fc.integer({ min: 20_000, max: 3_000_000 }),
    fc.integer({ min: 20_000, max: 1_250_000 }),
    fc.boolean(),
  )
  .chain(([lengthUm, widthUm, edged]) => {
    const hole = fc.record({
      name: fc.string({ minLength: 1, maxLength: 30 }).map((text) => `hole ${text}`),
      leftUm: fc.integer({ min: 9000, max: lengthUm - 9000 }),
      nearUm: fc.integer({ min: 9000, max: widthUm - 9000 }),
      diameterUm: fc.integer({ min: 1000, max: 18_000 }),
      depthUm: fc.oneof(fc.constant(null), fc.integer({ min: 1000, max: 15_000 })),
      face: fc.constant('top' as const),
      goes: fc.constantFrom('in from above' as const, 'in from below' as const, 'through' as const),
    });
    const corner = (leftUm: number, nearUm: number) => ({ leftUm, nearUm });
    const edgeHole = fc
      .record({
        side: fc.constantFrom('left' as const, 'right' as const, 'near' as const, 'far' as const),
        share: fc.double({ min: 0, max: 1, noNaN: true }),
        depthUm: fc.integer({ min: 1000, max: 20_000 }),
        diameterUm: fc.integer({ min: 1000, max: 8000 }),
      })
      .map(({ side, share, depthUm, diameterUm }) => {
        const along = (most: number) => Math.round(share * most);
        const leftUm = side === 'left' ? 0 : side === 'right' ? lengthUm : along(lengthUm);
        const nearUm = side === 'near' ? 0 : side === 'far' ? widthUm : along(widthUm);
        return {
          name: 'screw',
          side,
          leftUm,
          nearUm,
          belowUm: 8100,
          depthUm,
          diameterUm,
          face: 'left' as const,
        };
      });
    const drilled = fc.record({
      holes: fc.array(hole, { maxLength: 60 }),
      edgeHoles: fc.array(edgeHole, { maxLength: 12 }),
    });
    const bench = drilled.map(({ holes, edgeHoles }): BenchPanel => {
      const edging = edged ? 'grey' : null;
      return {
        lengthUm,
        widthUm,
        faceUp: 'top',
        sides: { left: 'left', right: 'right', near: 'front', far: 'back' },
        edging: { left: edging, right: edging, near: edging, far: edging },
        outline: [corner(0, 0), corner(lengthUm, 0), corner(lengthUm, widthUm), corner(0, widthUm)],
        shaped: false,
        cutOuts: [],
        holes,
        edgeHoles,
        grooves: [],
        sawn: { left: [0, lengthUm], near: [0, widthUm] },
        sawnOutline: null,
        scribing: { left: 0, right: 0, near: 0, far: 0 },
        marksFromSawn: { left: null, near: null },
      };
    });
    return fc.record({
      bench,
      names: fc.array(
        fc.string({ minLength: 1, maxLength: 60 }).map((text) => `1 ${text}`),
        { minLength: 1, maxLength: 3 },
      ),
      thicknessUm: fc.constant(16_200),
      grain: fc.constantFrom('length' as const, 'none' as const),
      count: fc.integer({ min: 1, max: 40 }),
    });
  });

describe('any panels on paper', () => {
  it('have no text on another and stay inside the frame', () => {
    fc.assert(
      fc.property(fc.array(anyPanel, { minLength: 1, maxLength: 4 }), (panels) => {
        for (const page of drawPanels(panels, options)) expect(faultsOf(page)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it('are cut short and say so where no page has room for all that is to be said', () => {
    const holes = Array.from({ length: 500 }, (_, index) => ({
      name: `hole of its own kind ${String.fromCodePoint(97 + (index % 26))}${index}x`,
      leftUm: 20_000 + index * 1700,
      nearUm: 20_000 + ((index * 7919) % 560) * 1000,
      diameterUm: 3000 + index * 10,
      depthUm: null,
      face: 'top' as const,
      goes: 'through' as const,
    }));
    const [plain] = drawnOf('demo-long');
    const bench = { ...plain!.bench, lengthUm: 900_000, widthUm: 600_000, holes };
    const names = Array.from({ length: 80 }, (_, index) => `${index} a panel like all the others`);
    const [page, ...more] = drawPanels([{ ...plain!, names, bench }], options);
    expect(more).toEqual([]);
    expect(faultsOf(page!)).toEqual([]);
    expect(textsOf(page!).map(({ text }) => text)).toContain(words.panel.noRoom);
  });
});

describe('figures of running dimensions', () => {
  it('stay where they are when they have room, and part evenly when they have not', () => {
    expect(spread([0, 10, 20], 3, [-5, 25])).toEqual([0, 10, 20]);
    expect(spread([0, 1, 10], 3, [-5, 25])).toEqual([-1, 2, 10]);
    expect(spread([0, 0, 0], 3, [0, 25])).toEqual([0, 3, 6]);
    expect(spread([0, 1, 2], 3, [0, 5])).toBeNull();
  });

  it('keep their order, their pitch and the ends of the row, and move no further than they must', () => {
    const wanted = fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(wanted, (values) => {
        const sorted = values.toSorted((a, b) => a - b);
        const places = spread(sorted, 3, [-3, 103]);
        expect(places).not.toBeNull();
        places!.forEach((place, index) => {
          expect(place).toBeGreaterThanOrEqual(-3 - 1e-9);
          expect(place).toBeLessThanOrEqual(103 + 1e-9);
          if (index > 0) expect(place - places![index - 1]!).toBeGreaterThanOrEqual(3 - 1e-9);
        });
        const clear = sorted.every((value, index) => index === 0 || value - sorted[index - 1]! >= 3);
        if (clear) expect(places).toEqual(sorted.map((value) => expect.closeTo(value, 9)));
      }),
    );
  });
});
