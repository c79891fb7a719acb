import { describe, expect, it } from 'vitest';
import { boxShape, panelShape } from '../../src/basics/massShape.ts';
import type { Panel, PlacedUnit } from '../../src/model/furniture.ts';
import { demoLibrary, demoOrder, furnish } from '../helpers/demoVan.ts';
import { box, weighedPanel, weighedUnit } from '../helpers/weighedFurniture.ts';

/** A side 15 thick, 300 deep and 400 high; its length runs up. Lengths in mm. */
function side(more: Partial<Panel> = {}): [Panel, PlacedUnit] {
  const at = box([0, 15], [0, 300], [0, 400]);
  const panel: Panel = {
    ...weighedPanel('side', at, 1),
    box: at,
    lengthAxis: 'z',
    widthAxis: 'y',
    thicknessAxis: 'x',
    finishedLengthUm: 400_000,
    finishedWidthUm: 300_000,
    ...more,
  };
  return [panel, weighedUnit('unit', [panel], [], at)];
}

const point = (lengthMm: number, widthMm: number) => ({
  alongLengthUm: lengthMm * 1000,
  alongWidthUm: widthMm * 1000,
});

describe('mass spread over a panel', () => {
  it('lies in the middle of a rectangle', () => {
    const shape = panelShape(...side());
    expect([shape.centre('x'), shape.centre('y'), shape.centre('z')]).toEqual([7500, 150_000, 200_000]);
    expect(shape.shareBelow('z', 100_000)).toBe(0.25);
    expect(shape.shareBelow('y', -1)).toBe(0);
    expect(shape.shareBelow('y', 400_000)).toBe(1);
  });

  it('lies a third up and in where the wall makes it a triangle', () => {
    const shape = panelShape(...side({ outline: [point(0, 0), point(0, 300), point(400, 0)] }));
    expect(shape.centre('x')).toBe(7500);
    expect(shape.centre('y')).toBeCloseTo(100_000, 6);
    expect(shape.centre('z')).toBeCloseTo(400_000 / 3, 6);
    // Above half its height is a quarter of a triangle.
    expect(shape.shareBelow('z', 200_000)).toBeCloseTo(0.75, 12);
    expect(shape.shareBelow('x', 3000)).toBeCloseTo(0.2, 12);
  });

  it('leaves an opening empty', () => {
    // The upper half of 300 × 400 open but for 50 at each side: 2 of 3 parts of it.
    const opening = {
      name: 'o',
      alongLength: [200_000, 400_000] as const,
      alongWidth: [50_000, 250_000] as const,
    };
    const shape = panelShape(...side({ cutOuts: [opening] }));
    expect(shape.centre('y')).toBeCloseTo(150_000, 6);
    // 60 000 mm² below, 20 000 above: (60 · 100 + 20 · 300) / 80.
    expect(shape.centre('z')).toBeCloseTo(150_000, 6);
    expect(shape.shareBelow('z', 200_000)).toBeCloseTo(0.75, 12);
  });

  it('has its centre where its shares say, for every panel of an order, also along the wall and in turned units', () => {
    const library = demoLibrary();
    const { furniture } = furnish(demoOrder(library), library);
    const units = furniture!.units;
    const panels = units.flatMap((unit) => unit.panels.map((panel) => [panel, unit] as const));
    expect(panels.filter(([panel]) => panel.outline !== undefined).length).toBeGreaterThan(3);
    expect(panels.filter(([panel]) => panel.cutOuts.length > 0).length).toBeGreaterThan(3);
    for (const [panel, unit] of panels) {
      const shape = panelShape(panel, unit);
      for (const axis of ['x', 'y', 'z'] as const) {
        const [from, to] = panel.placeBox[axis];
        expect(shape.shareBelow(axis, from)).toBeCloseTo(0, 9);
        expect(shape.shareBelow(axis, to)).toBeCloseTo(1, 9);
        // The centre is the end less the area under the shares.
        const steps = 200;
        const step = (to - from) / steps;
        let area = 0;
        for (let at = 0; at < steps; at++) area += shape.shareBelow(axis, from + (at + 0.5) * step) * step;
        expect(Math.abs(to - area - shape.centre(axis)), `${panel.id} ${axis}`).toBeLessThan(step);
      }
    }
  });
});

describe('mass spread over a box', () => {
  it('lies in its middle', () => {
    const shape = boxShape(box([100, 300], [0, 10], [0, 10]));
    expect(shape.centre('x')).toBe(200_000);
    expect(shape.shareBelow('x', 150_000)).toBe(0.25);
  });
});
