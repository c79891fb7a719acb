import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisFaces } from '../../../src/basics/boxes.ts';
import { panelOnBench } from '../../../src/basics/panelOnBench.ts';
import { numberPanels } from '../../../src/documents/cuttingList.ts';
import { asciiText, dxfText, exactMm, layerName } from '../../../src/documents/dxf/dxfText.ts';
import { dxfFiles } from '../../../src/documents/dxf/index.ts';
import { holeLayer, panelDxf } from '../../../src/documents/dxf/panelDxf.ts';
import { sawSheet } from '../../../src/drawing/sawnSheet.ts';
import type { Panel } from '../../../src/model/furniture.ts';
import type { Axis } from '../../../src/model/geometry.ts';
import { demoPlan } from '../../helpers/demoPlan.ts';
import { readDxf } from './readDxf.ts';

const mm = (um: number) => um / 1000;

/** A circle of a hole on the bench, as the file should have it. */
const circle = (layer: string, leftUm: number, nearUm: number, diameterUm: number) => ({
  layer,
  x: mm(leftUm),
  y: mm(nearUm),
  radius: diameterUm / 2000,
});

describe.each(['demo-long', 'demo-short'] as const)('DXF of %s', (name) => {
  const { plan, ordered } = demoPlan(name);
  const files = dxfFiles(plan, ordered);
  const panels = ordered.furniture.units.flatMap((unit) => unit.panels.map((panel) => ({ panel, unit })));

  it('has a file for each panel, whose outline, openings and holes are the panel’s own', () => {
    const panelFiles = files.filter((file) => file.of === 'panel');
    expect(panelFiles).toHaveLength(panels.length);
    let holes = 0;
    let inEdges = 0;
    let shaped = 0;
    for (const [index, { panel }] of numberPanels(plan).entries()) {
      const found = panels.find((other) => other.panel.id === panel.id)!;
      const bench = panelOnBench(found.panel, found.unit.panels, ordered.library.edgings);
      const read = readDxf(panelFiles[index]!.text);
      expect(read.version).toBe('AC1009');
      const lowLeft = bench.sides.left === axisFaces[found.panel.lengthAxis][0];
      const lowNear = bench.sides.near === axisFaces[found.panel.widthAxis][0];
      const onBench = ([along, across]: readonly number[]) => [
        mm(Math.round(1000 * (lowLeft ? along! : panel.finishedLength - along!))),
        mm(Math.round(1000 * (lowNear ? across! : panel.finishedWidth - across!))),
      ];
      const on = (layer: string) => read.polygons.filter((polygon) => polygon.layer === layer);
      expect(on('OUTLINE').map(({ points }) => points)).toEqual([
        bench.outline.map(({ leftUm, nearUm }) => [mm(leftUm), mm(nearUm)]),
      ]);
      // The rectangle around it is the finished size, as the plan says it by its own route.
      const [xs, ys] = [0, 1].map((axis) => on('OUTLINE')[0]!.points.map((point) => point[axis as 0 | 1]!));
      expect([Math.min(...xs!), Math.max(...xs!)]).toEqual([0, panel.finishedLength]);
      expect([Math.min(...ys!), Math.max(...ys!)]).toEqual([0, panel.finishedWidth]);
      const sawn = on('SAWN-SIZE')[0]!.points;
      expect(sawn[2]![0] - sawn[0]![0]).toBeCloseTo(panel.length, 9);
      expect(sawn[2]![1] - sawn[0]![1]).toBeCloseTo(panel.width, 9);
      // What is cut by hand lies on the sawn part, and is there exactly where the plan has it.
      const byHand = panel.byHand?.outline ?? [];
      expect(on('SAWN-SHAPE').map(({ points }) => points.length)).toEqual(
        byHand.length === 0 ? [] : [byHand.length],
      );
      const planned = byHand.map(([along, across]) => [
        lowLeft ? sawn[0]![0] + along : sawn[2]![0] - along,
        lowNear ? sawn[0]![1] + across : sawn[2]![1] - across,
      ]);
      for (const [x, y] of on('SAWN-SHAPE').flatMap(({ points }) => points)) {
        const isPlanned = planned.some((at) => Math.abs(at[0]! - x) < 1e-9 && Math.abs(at[1]! - y) < 1e-9);
        expect(isPlanned, `${panel.id} at ${x}, ${y}`).toBe(true);
      }
      expect(on('CUT-OUT').map(({ points }) => [points[0], points[2]])).toEqual(
        bench.cutOuts.map(({ left, near }) => [
          [mm(left[0]), mm(near[0])],
          [mm(left[1]), mm(near[1])],
        ]),
      );
      expect(read.circles).toEqual(
        bench.holes.map((hole) => circle(holeLayer(hole), hole.leftUm, hole.nearUm, hole.diameterUm)),
      );
      // Holes in edges run from the edge inwards, as deep and wide as they are, wherever the bench has turned them.
      const edgeHoles = found.panel.edgeHoles ?? [];
      const drilled = read.polygons.filter(({ layer }) => layer.startsWith('EDGE-HOLE-'));
      expect(drilled).toHaveLength(edgeHoles.length);
      edgeHoles.forEach((hole, at) => {
        const [lowX, lowY, highX, highY] = [...drilled[at]!.points[0]!, ...drilled[at]!.points[2]!];
        const inEnd = axisFaces[found.panel.lengthAxis].includes(hole.face);
        const [deep, wide] = inEnd ? [highX! - lowX!, highY! - lowY!] : [highY! - lowY!, highX! - lowX!];
        expect(deep).toBeCloseTo(mm(hole.depthUm), 2);
        expect(wide).toBeCloseTo(mm(hole.diameterUm), 2);
        const most = inEnd ? panel.finishedLength : panel.finishedWidth;
        expect(inEnd ? [lowX, highX] : [lowY, highY]).toSatisfy(
          ([from, to]: [number, number]) => Math.abs(from) < 0.01 || Math.abs(to - most) < 0.01,
        );
        const middle = inEnd ? (lowY! + highY!) / 2 : (lowX! + highX!) / 2;
        const along = mm(hole.alongUm);
        expect(middle).toBeCloseTo(onBench(inEnd ? [0, along] : [along, 0])[inEnd ? 1 : 0]!, 2);
      });
      inEdges += edgeHoles.length;
      // Without the bench between: the panel's own figures, counted from the edges that lie on the left and near.
      const own = found.panel.holes.map((hole) => onBench([hole.alongLengthUm, hole.alongWidthUm].map(mm)));
      expect(read.circles.map(({ x, y }) => [x, y])).toEqual(own);
      const corners = (found.panel.outline ?? []).map((corner) =>
        onBench([corner.alongLengthUm, corner.alongWidthUm].map(mm)),
      );
      if (corners.length > 0) {
        const points = on('OUTLINE')[0]!.points;
        expect(points).toHaveLength(corners.length);
        expect(points).toEqual(expect.arrayContaining(corners));
        shaped += 1;
      }
      holes += read.circles.length;
    }
    expect(holes).toBeGreaterThan(400);
    expect(inEdges).toBeGreaterThan(60);
    expect(shaped).toBe(panels.filter(({ panel }) => panel.outline !== undefined).length);
  });

  it('has a file for each cut plan, with every piece as it is sawn and a line for every cut', () => {
    const sheetFiles = files.filter((file) => file.of === 'sheet');
    const sheets = plan.groups.flatMap((group) => group.sheets.map((sheet) => ({ group, sheet })));
    expect(sheetFiles).toHaveLength(sheets.length);
    for (const [index, { group, sheet }] of sheets.entries()) {
      const sawn = sawSheet(group, sheet);
      const read = readDxf(sheetFiles[index]!.text);
      const pieces = read.polygons.filter(({ layer }) => ['PANELS', 'OFFCUTS', 'WASTE'].includes(layer));
      expect(pieces.map(({ points }) => [...points[0]!, ...points[2]!])).toEqual(
        sawn.ends.map(({ piece: { rect } }) => [mm(rect.x0), mm(rect.y0), mm(rect.x1), mm(rect.y1)]),
      );
      expect(read.polygons.filter(({ layer }) => layer === 'PANELS')).toHaveLength(
        sheet.pieces.filter((piece) => piece.is === 'panel').length,
      );
      expect(read.lines.map(({ layer }) => layer)).toEqual(
        sheet.steps.map((step) => `CUT-${step.cut.toUpperCase()}`),
      );
      // Every cut lies on a border of what it gives.
      for (const [step, { from, to }] of read.lines.entries()) {
        const gives = sawn.cuts[step]!.gives.map(({ rect }) => rect);
        const borders =
          from.x === to.x ? gives.flatMap(({ x0, x1 }) => [x0, x1]) : gives.flatMap(({ y0, y1 }) => [y0, y1]);
        expect(borders.map(mm)).toContain(from.x === to.x ? from.x : from.y);
      }
    }
  });

  it('is the same for the same plan, in plain letters and with names of layers that R12 knows', () => {
    expect(dxfFiles(plan, ordered)).toEqual(files);
    for (const { text } of files) {
      expect(text).toMatch(/^[\u0020-\u007e\r\n]*$/);
      expect(text.endsWith('  0\r\nEOF\r\n')).toBe(true);
      for (const layer of readDxf(text).layers) expect(layer).toMatch(/^[A-Z0-9$_-]{1,31}$/);
    }
  });
});

/** A panel of any size in any position, with holes, openings and perhaps a corner cut off, all within it. */
const anyPanel: fc.Arbitrary<Panel> = fc
  .record({
    lengthUm: fc.integer({ min: 50_000, max: 3_000_000 }),
    widthUm: fc.integer({ min: 50_000, max: 1_250_000 }),
    axes: fc.constantFrom<readonly [Axis, Axis, Axis]>(
      ['x', 'y', 'z'],
      ['y', 'x', 'z'],
      ['x', 'z', 'y'],
      ['z', 'x', 'y'],
      ['y', 'z', 'x'],
      ['z', 'y', 'x'],
    ),
    cut: fc.boolean(),
    at: fc.integer({ min: -500_000, max: 500_000 }),
  })
  .chain(({ lengthUm, widthUm, axes: [lengthAxis, widthAxis, thicknessAxis], cut, at }) => {
    const [low, high] = axisFaces[thicknessAxis];
    const along = (most: number) => fc.integer({ min: 0, max: most });
    const extent = (most: number) =>
      fc.tuple(fc.integer({ min: 0, max: most - 1 }), fc.integer({ min: 1, max: most })).map(([a, b]) => {
        return a < b ? ([a, b] as const) : ([b - 1, a + 1] as const);
      });
    return fc
      .record({
        holes: fc.array(
          fc.record({
            name: fc.string(),
            alongLengthUm: along(lengthUm),
            alongWidthUm: along(widthUm),
            diameterUm: fc.integer({ min: 1, max: 80_000 }),
            depthUm: fc.oneof(fc.constant(null), fc.integer({ min: 1, max: 16_000 })),
            face: fc.constantFrom(low, high),
          }),
          { maxLength: 30 },
        ),
        cutOuts: fc.array(
          fc.record({ name: fc.string(), alongLength: extent(lengthUm), alongWidth: extent(widthUm) }),
          { maxLength: 4 },
        ),
      })
      .map(({ holes, cutOuts }): Panel => {
        const box = { x: [0, 0], y: [0, 0], z: [0, 0] } as Record<Axis, readonly [number, number]>;
        box[lengthAxis] = [at, at + lengthUm];
        box[widthAxis] = [-at, widthUm - at];
        box[thicknessAxis] = [0, 16_200];
        const corner = (alongLengthUm: number, alongWidthUm: number) => ({ alongLengthUm, alongWidthUm });
        const outline = [
          corner(0, 0),
          corner(lengthUm, 0),
          corner(lengthUm - 20_000, widthUm),
          corner(0, widthUm),
        ];
        const face = (axis: Axis, end: 0 | 1) => ({ face: axisFaces[axis][end], edging: null, lengthUm: 1 });
        return {
          id: 'unit/panel',
          number: 1,
          name: 'panel',
          baseName: 'panel',
          unit: 'unit',
          order: 'order',
          role: 'carcass',
          board: 'board',
          finish: 'finish',
          thicknessUm: 16_200,
          finishedLengthUm: lengthUm,
          finishedWidthUm: widthUm,
          cutLengthUm: lengthUm,
          cutWidthUm: widthUm,
          grain: 'length',
          edging: { alongLength: [null, null], alongWidth: [null, null] },
          count: 1,
          box,
          placeBox: box,
          lengthAxis,
          widthAxis,
          thicknessAxis,
          edges: [face(widthAxis, 0), face(widthAxis, 1), face(lengthAxis, 0), face(lengthAxis, 1)],
          cutOuts,
          holes,
          ...(cut ? { outline } : {}),
          housings: [],
          massKg: 1,
        };
      });
  });

describe('DXF of any panel', () => {
  it('has its outline, openings and holes to the µm, as they are or all seen from the other face', () => {
    fc.assert(
      fc.property(anyPanel, (panel) => {
        const bench = panelOnBench(panel, [panel], new Map());
        const drawing = panelDxf({
          bench,
          number: 1,
          name: 'panel',
          unit: 'unit',
          job: 'job',
          count: 1,
          board: 'board',
          finish: 'finish',
          thicknessUm: 16_200,
          grain: 'length',
          standsInUnit: true,
        });
        const read = readDxf(dxfText(drawing));
        const um = (figure: number) => Math.round(figure * 1000);
        const { finishedLengthUm: length, finishedWidthUm: width } = panel;
        const seen = (turned: 'as it is' | 'turned') => {
          const v = (alongWidth: number) => (turned === 'turned' ? width - alongWidth : alongWidth);
          const outline = panel.outline?.map((one) => [one.alongLengthUm, v(one.alongWidthUm)]) ?? [
            [0, 0],
            [length, 0],
            [length, width],
            [0, width],
          ];
          return {
            holes: panel.holes.map((hole) => [hole.alongLengthUm, v(hole.alongWidthUm), hole.diameterUm]),
            outline: outline.toSorted((a, b) => a[0]! - b[0]! || a[1]! - b[1]!),
            cutOuts: panel.cutOuts.map(({ alongLength: [a, b], alongWidth: [c, d] }) => [
              a,
              b,
              Math.min(v(c), v(d)),
              Math.max(v(c), v(d)),
            ]),
          };
        };
        const found = {
          holes: read.circles.map(({ x, y, radius }) => [um(x), um(y), um(radius * 2)]),
          outline: read.polygons
            .find(({ layer }) => layer === 'OUTLINE')!
            .points.map(([x, y]) => [um(x), um(y)])
            .toSorted((a, b) => a[0]! - b[0]! || a[1]! - b[1]!),
          cutOuts: read.polygons
            .filter(({ layer }) => layer === 'CUT-OUT')
            .map(({ points: [a, , c] }) => [um(a![0]), um(c![0]), um(a![1]), um(c![1])]),
        };
        expect([seen('as it is'), seen('turned')]).toContainEqual(found);
        const below = read.circles.filter(({ layer }) => layer.endsWith('-BELOW'));
        const otherFace = panel.holes.filter((hole) => hole.depthUm !== null && hole.face !== bench.faceUp);
        expect(below).toHaveLength(otherFace.length);
      }),
      { numRuns: 200 },
    );
  });
});

describe('DXF as text', () => {
  it('prints every µm exactly', () => {
    expect([0, 1, -1, 412_300, -25_400, 17_500, 12_345_678].map(exactMm)).toEqual([
      '0.0',
      '0.001',
      '-0.001',
      '412.3',
      '-25.4',
      '17.5',
      '12345.678',
    ]);
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), (um) => {
        expect(exactMm(um)).toMatch(/^-?\d+\.\d{1,4}$/);
        expect(Number(exactMm(um))).toBe(um / 1000);
        expect(Number(exactMm(um / 2))).toBe(um / 2000);
      }),
    );
    expect(() => exactMm(0.3)).toThrow();
  });

  it('writes letters that R12 has', () => {
    expect(asciiText('Tür „Größe“ 3 × 4 – ½')).toBe('Tur ?Grosse? 3 x 4 - 1?2');
    expect(layerName('hole-12.5 deep é')).toBe('HOLE-12_5-DEEP-E');
    expect(layerName('')).toBe('0');
  });

  it('keeps any shapes through another reader', () => {
    const point = fc.tuple(fc.integer({ min: -5e6, max: 5e6 }), fc.integer({ min: -5e6, max: 5e6 }));
    const layer = fc.constantFrom('OUTLINE', 'HOLE-35-DEEP-13', 'A$_-9');
    const shape = fc.oneof(
      fc.record({
        kind: fc.constant('polygon' as const),
        layer,
        points: fc.array(point, { minLength: 3, maxLength: 40 }),
      }),
      fc.record({ kind: fc.constant('line' as const), layer, from: point, to: point }),
      fc.record({
        kind: fc.constant('circle' as const),
        layer,
        middle: point,
        diameterUm: fc.integer({ min: 1, max: 1e6 }),
      }),
      fc.record({
        kind: fc.constant('text' as const),
        layer,
        text: fc.string({ minLength: 1 }).map((text) => `a ${text} b`),
        at: point,
        heightUm: fc.integer({ min: 1, max: 1e5 }),
      }),
    );
    fc.assert(
      fc.property(fc.array(shape, { maxLength: 30 }), fc.string(), (shapes, about) => {
        const read = readDxf(dxfText({ about: [about], shapes }));
        const of = <K extends string>(kind: K) =>
          shapes.flatMap((one) => (one.kind === kind ? [one as Extract<typeof one, { kind: K }>] : []));
        expect(read.polygons).toEqual(
          of('polygon').map(({ layer, points }) => ({
            layer,
            points: points.map(([x, y]) => [mm(x), mm(y)]),
          })),
        );
        expect(read.circles).toEqual(
          of('circle').map(({ layer, middle: [x, y], diameterUm }) => circle(layer, x, y, diameterUm)),
        );
        expect(read.lines).toMatchObject(
          of('line').map(({ layer, from, to }) => ({
            layer,
            from: { x: mm(from[0]), y: mm(from[1]) },
            to: { x: mm(to[0]), y: mm(to[1]) },
          })),
        );
        expect(read.texts).toHaveLength(of('text').length);
      }),
      { numRuns: 100 },
    );
  });
});
