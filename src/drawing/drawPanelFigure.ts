import type { BenchPanel } from '../basics/panelOnBench.ts';
import type { Extent, Um } from '../model/geometry.ts';
import { type Box, boxesOverlap, type Stroke } from './drawing.ts';
import type { DrawingWords } from './drawingWords.ts';
import { drawHole } from './drawnHoles.ts';
import { drawLetters, edgeHoleRect, letteredHoles, type OnPage } from './holeLetters.ts';
import { printLength, printSize } from './lengthsInWords.ts';
import { HAIRLINE, LINE_PITCH, NARROW, NORMAL, plainText, SMALL, WIDE } from './lettering.ts';
import {
  type DrawnPanel,
  HEAD_GAP_MM,
  LINE_MM,
  type PanelDrawingOptions,
  type PanelFigure,
  SIDE_NAME_MM,
} from './panelFigure.ts';
import { drawEdging, type PageSide } from './pieces.ts';
import { drawOrigin, drawRunningDimensions } from './runningDimensions.ts';
import type { Sketch } from './sketch.ts';

/** Along an edge, taken by the line of its edging. */
const STRIP_MM = 1;
/** Narrower than this two lines of a hole would run into one. */
const LEAST_DRILL_MM = 0.5;
const HIDDEN_GROOVE: Stroke = { widthMm: 0.13, dashMm: [1.2, 0.6] };

/** Where the lines of edging lie along the sides of a panel. */
function edgedStrips({ edging }: BenchPanel, box: Box): Box[] {
  const strips: readonly (readonly [string | null, Box])[] = [
    [edging.left, { ...box, x1: box.x0 + STRIP_MM }],
    [edging.right, { ...box, x0: box.x1 - STRIP_MM }],
    [edging.far, { ...box, y1: box.y0 + STRIP_MM }],
    [edging.near, { ...box, y0: box.y1 - STRIP_MM }],
  ];
  return strips.flatMap(([edged, strip]) => (edged === null ? [] : [strip]));
}

function drawOutline(sketch: Sketch, { bench }: DrawnPanel, at: OnPage): void {
  const corners = bench.outline.map(({ leftUm, nearUm }) => [at.x(leftUm), at.y(nearUm)] as const);
  sketch.lines(
    'panels',
    corners.map(([x, y], index) => {
      const [x1, y1] = corners[(index + 1) % corners.length]!;
      return [x, y, x1, y1];
    }),
    WIDE,
  );
  const sides: readonly (readonly [PageSide, string | null])[] = [
    ['left', bench.edging.left],
    ['right', bench.edging.right],
    ['bottom', bench.edging.near],
    ['top', bench.edging.far],
  ];
  const edged = new Map(
    sides.flatMap(([side, edging]) => (edging === null ? [] : [[side, edging] as const])),
  );
  drawEdging(sketch, at.box, edged, () => [2.5, 0.8]);
}

function rectOnPage(at: OnPage, left: Extent, near: Extent): Box {
  return { x0: at.x(left[0]), x1: at.x(left[1]), y0: at.y(near[1]), y1: at.y(near[0]) };
}

/** The name of an opening, above the middle of its cross, where there is room between the lines. */
function nameOpening(sketch: Sketch, name: string, box: Box): void {
  const down = 3.4;
  const wide = (box.x1 - box.x0) * (1 - (2 * (down + 0.6)) / (box.y1 - box.y0));
  const text = plainText(name);
  if (sketch.measure(text, SMALL, 'regular') > wide - 1) return;
  sketch.text('panels', text, (box.x0 + box.x1) / 2, box.y0 + down, { sizeMm: SMALL, anchor: 'middle' });
}

/** Openings with a cross, grooves with narrow lines, dashed where they are in the underside. */
function drawOpenings(sketch: Sketch, { bench }: DrawnPanel, at: OnPage): Box[] {
  const boxes = bench.cutOuts.map(({ name, left, near }) => {
    const box = rectOnPage(at, left, near);
    sketch.rect('panels', box, { stroke: WIDE });
    sketch.lines(
      'panels',
      [
        [box.x0, box.y0, box.x1, box.y1],
        [box.x0, box.y1, box.x1, box.y0],
      ],
      HAIRLINE,
    );
    nameOpening(sketch, name, box);
    return box;
  });
  const grooves = bench.grooves.map((groove) => {
    const box = rectOnPage(at, groove.left, groove.near);
    sketch.rect('panels', box, { stroke: groove.goes === 'in from below' ? HIDDEN_GROOVE : NARROW });
    return box;
  });
  return [...boxes, ...grooves];
}

/** Holes in edges, hidden as they are, and the boxes that they take. */
function drawEdgeHoles(sketch: Sketch, { bench }: DrawnPanel, at: OnPage): Box[] {
  return bench.edgeHoles.map((hole) => {
    const { left, near } = edgeHoleRect(hole);
    const { x0, y0, x1, y1 } = rectOnPage(at, left, near);
    // A thin drill in a small scale is one line.
    if (Math.min(x1 - x0, y1 - y0) < LEAST_DRILL_MM) {
      const [x, y] = [(x0 + x1) / 2, (y0 + y1) / 2];
      if (x1 - x0 > y1 - y0) sketch.line('holes', x0, y, x1, y, NARROW);
      else sketch.line('holes', x, y0, x, y1, NARROW);
    } else sketch.rect('holes', { x0, y0, x1, y1 }, { stroke: HIDDEN_GROOVE });
    return { x0: x0 - 0.3, y0: y0 - 0.3, x1: x1 + 0.3, y1: y1 + 0.3 };
  });
}

/** An arrow along the grain near the middle, where no hole, opening or letter is in its way. */
function drawGrain(sketch: Sketch, at: OnPage, obstacles: readonly Box[]): void {
  const { box } = at;
  const half = Math.min(15, (box.x1 - box.x0) / 5);
  const [middleX, middleY] = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
  const high = box.y1 - box.y0;
  for (let step = 0; step < 24; step++) {
    const y = middleY + (step % 2 === 0 ? 1 : -1) * Math.ceil(step / 2) * (high / 26);
    for (const x of [middleX, box.x0 + half * 1.5, box.x1 - half * 1.5]) {
      const place = { x0: x - half, x1: x + half, y0: y - 0.7, y1: y + 0.7 };
      const free = place.y0 > box.y0 && place.y1 < box.y1 && sketch.taken.isFree(place);
      if (!free || obstacles.some((other) => boxesOverlap(other, place))) continue;
      sketch.arrow('grain', [x - half, y], [x + half, y], 'both');
      return;
    }
  }
}

/** Where the name of the far edge stands. */
function farNameBox(sketch: Sketch, name: string, { x0, x1, y0 }: Box): Box {
  const half = sketch.measure(name, SMALL, 'regular') / 2 + 0.5;
  const middle = (x0 + x1) / 2;
  return { x0: middle - half, x1: middle + half, y0: y0 - SIDE_NAME_MM, y1: y0 };
}

function drawSideNames(
  sketch: Sketch,
  { bench }: DrawnPanel,
  figure: PanelFigure,
  at: OnPage,
  says: DrawingWords,
) {
  const { faces } = says.furniture;
  const { x0, y0, x1, y1 } = at.box;
  const across = { sizeMm: SMALL, anchor: 'middle' } as const;
  const up = { ...across, reads: 'up' } as const;
  const fits = (text: string, room: number) => sketch.measure(text, SMALL, 'regular') <= Math.max(room, 8);
  const [left, right, near, far] = (['left', 'right', 'near', 'far'] as const).map(
    (side) => faces[bench.sides[side]],
  );
  if (fits(far!, x1 - x0)) sketch.text('dimensions', far!, (x0 + x1) / 2, y0 - 1.1, across);
  if (fits(near!, x1 - x0)) {
    sketch.text('dimensions', near!, (x0 + x1) / 2, y1 + figure.belowMm - 1, across);
  }
  if (fits(right!, y1 - y0)) sketch.text('dimensions', right!, x1 + 1 + SMALL * 0.74, (y0 + y1) / 2, up);
  if (fits(left!, y1 - y0)) {
    sketch.text('dimensions', left!, x0 - figure.leftMm + 1 + SMALL * 0.4, (y0 + y1) / 2, up);
  }
}

/** Where the name of the right side stands beside a panel, read upwards: higher than a narrow panel is. */
function rightNameBox(sketch: Sketch, name: string, { x1, y0, y1 }: Box): Box {
  const [middle, half] = [(y0 + y1) / 2, sketch.measure(name, SMALL, 'regular') / 2];
  return { x0: x1 + 0.7, x1: x1 + 1.3 + SMALL, y0: middle - half - 0.2, y1: middle + half + 0.2 };
}

/** Draws a figure with its upper left corner at a place of the page. */
export function drawFigure(
  sketch: Sketch,
  figure: PanelFigure,
  [left, top]: readonly [number, number],
  options: PanelDrawingOptions,
): void {
  const { panel, reduction } = figure;
  const { bench } = panel;
  const units = options.units ?? 'mm';
  const says = options.words.panel;
  let y = top;
  for (const line of figure.heading) {
    y += NORMAL * LINE_PITCH;
    sketch.text('numbers', line, left, y - NORMAL * 0.3, { sizeMm: NORMAL, weight: 'bold' });
  }
  const size = `${printSize(bench.lengthUm, bench.widthUm, units)}\u00a0×\u00a0${printLength(panel.thicknessUm, units)}`;
  const facts = [
    says.finished(size),
    says.count(panel.count),
    says.faceUp(options.words.furniture.faces[bench.faceUp]),
    `1 : ${reduction}`,
  ];
  y += LINE_MM;
  sketch.text('numbers', facts.join('\u2002·\u2002'), left, y - SMALL * 0.3, { sizeMm: SMALL });
  const scale = (um: Um) => um / 1000 / reduction;
  const x0 = left + figure.leftMm;
  const y1 = y + SIDE_NAME_MM + HEAD_GAP_MM + scale(bench.widthUm);
  const box = { x0, y0: y1 - scale(bench.widthUm), x1: x0 + scale(bench.lengthUm), y1 };
  const at: OnPage = { x: (um) => x0 + scale(um), y: (um) => y1 - scale(um), box, scale };
  drawOutline(sketch, panel, at);
  const openings = drawOpenings(sketch, panel, at);
  const marks = bench.holes.map((hole): Box => {
    const [x, y] = [at.x(hole.leftUm), at.y(hole.nearUm)];
    const radius = scale(hole.diameterUm / 2);
    drawHole(sketch, x, y, radius, hole.goes === 'in from below' ? 'hidden' : 'seen');
    const reach = Math.max(radius + 0.5, 0.6);
    return { x0: x - reach, x1: x + reach, y0: y - reach, y1: y + reach };
  });
  const inEdges = drawEdgeHoles(sketch, panel, at);
  const taken = [...openings, ...marks, ...inEdges];
  const letters = letteredHoles(bench);
  const farName = farNameBox(sketch, options.words.furniture.faces[bench.sides.far], box);
  const rightName = rightNameBox(sketch, options.words.furniture.faces[bench.sides.right], box);
  drawLetters(sketch, letters, at, [...taken, ...edgedStrips(bench, box), farName, rightName]);
  if (panel.grain === 'length') drawGrain(sketch, at, taken);
  drawOrigin(sketch, x0, y1);
  drawRunningDimensions(sketch, figure.xs, {
    side: 'below',
    edgeMm: y1,
    onPage: at.x,
    units,
    letters: figure.letters.xs,
  });
  drawRunningDimensions(sketch, figure.ys, {
    side: 'left',
    edgeMm: x0,
    onPage: at.y,
    units,
    letters: figure.letters.ys,
  });
  drawSideNames(sketch, panel, figure, at, options.words);
  let lineY = y1 + figure.belowMm;
  for (const line of figure.legend) {
    lineY += LINE_MM;
    sketch.text('tables', line, left, lineY - SMALL * 0.3, { sizeMm: SMALL });
  }
}
