import { printMmShort } from '../../basics/lengths.ts';
import type {
  BenchEdgeHole,
  BenchHole,
  BenchPanel,
  BenchPoint,
  BenchRect,
  BenchSide,
} from '../../basics/panelOnBench.ts';
import type { Um } from '../../model/geometry.ts';
import {
  type DxfDrawing,
  type DxfPoint,
  type DxfShape,
  exactMm,
  layerName,
  rectangleShape,
} from './dxfText.ts';

/** Height of letters, and from one line of notes to the next. */
const LETTERS_UM = 8000;
const LINE_UM = 13_000;
const LONGEST_ARROW_UM = 200_000;
const SIDES: readonly BenchSide[] = ['left', 'right', 'near', 'far'];

/** A panel to be written as DXF, and what its notes say. */
export interface DxfPanel {
  readonly bench: BenchPanel;
  /** In the cutting list. */
  readonly number: number;
  readonly name: string;
  readonly unit: string;
  readonly job: string;
  readonly count: number;
  readonly board: string;
  readonly finish: string;
  readonly thicknessUm: Um;
  readonly grain: 'length' | 'none';
  /** False where nothing is known of its place in a unit: its sides have no names then. */
  readonly standsInUnit: boolean;
}

function polygon(layer: string, points: readonly BenchPoint[]): DxfShape {
  return { kind: 'polygon', layer, points: points.map(({ leftUm, nearUm }): DxfPoint => [leftUm, nearUm]) };
}

function rectangle(layer: string, { left, near }: BenchRect): DxfShape {
  return rectangleShape(layer, left, near);
}

/** `12.5` for 12500. */
function figure(um: Um): string {
  return exactMm(um).replace(/\.0$/, '');
}

/** The layer of a hole says how wide and deep it is, and `BELOW` when it is drilled from the underside. */
export function holeLayer({ diameterUm, depthUm, goes }: BenchHole): string {
  const wide = `HOLE-${figure(diameterUm)}`;
  if (depthUm === null) return layerName(`${wide}-THROUGH`);
  return layerName(`${wide}-DEEP-${figure(depthUm)}${goes === 'in from below' ? '-BELOW' : ''}`);
}

/** The layer of a hole in an edge says as well how far below the face that is up its middle lies. */
export function edgeHoleLayer({ diameterUm, depthUm, belowUm }: BenchEdgeHole): string {
  return layerName(`EDGE-HOLE-${figure(diameterUm)}-DEEP-${figure(depthUm)}-DOWN-${figure(belowUm)}`);
}

/** A hole in an edge as it is seen from above: as wide as the drill, from the edge inwards. */
function drilledInEdge(hole: BenchEdgeHole): DxfShape {
  const { side, leftUm, nearUm, diameterUm, depthUm } = hole;
  const half = Math.round(diameterUm / 2);
  const across = (middle: Um) => [middle - half, middle + half] as const;
  const inwards = (edge: Um) =>
    side === 'left' || side === 'near'
      ? ([edge, edge + depthUm] as const)
      : ([edge - depthUm, edge] as const);
  const inEnd = side === 'left' || side === 'right';
  const left = inEnd ? inwards(leftUm) : across(leftUm);
  const near = inEnd ? across(nearUm) : inwards(nearUm);
  return rectangle(edgeHoleLayer(hole), { left, near });
}

function grainArrow({ lengthUm, widthUm }: BenchPanel): DxfShape[] {
  const middle: DxfPoint = [Math.round(lengthUm / 2), Math.round(widthUm / 2)];
  const half = Math.round(Math.min(LONGEST_ARROW_UM, lengthUm / 3) / 2);
  const barb = Math.round(Math.min(half, widthUm / 2) / 4);
  const from: DxfPoint = [middle[0] - half, middle[1]];
  const to: DxfPoint = [middle[0] + half, middle[1]];
  const line = (a: DxfPoint, b: DxfPoint): DxfShape => ({ kind: 'line', layer: 'NOTES', from: a, to: b });
  return [line(from, to), line(to, [to[0] - barb, to[1] + barb]), line(to, [to[0] - barb, to[1] - barb])];
}

/** Lines below the panel, where they lie on nothing. */
function notes(panel: DxfPanel): DxfShape[] {
  const { bench } = panel;
  const mm = printMmShort;
  const size = (a: Um, b: Um) => `${mm(a)} x ${mm(b)}`;
  const sawn = size(bench.sawn.left[1] - bench.sawn.left[0], bench.sawn.near[1] - bench.sawn.near[0]);
  const edged = SIDES.flatMap((side) =>
    bench.edging[side] === null ? [] : [`${side} ${bench.edging[side]}`],
  );
  const lines = [
    `${panel.number} ${panel.name}${panel.unit === '' ? '' : ` / ${panel.unit}`} / ${panel.job}`,
    `${panel.count} off, finished ${size(bench.lengthUm, bench.widthUm)}, sawn ${sawn}, thickness ${figure(panel.thicknessUm)} mm`,
    [panel.board, panel.finish].filter((word) => word !== '').join(', '),
    panel.grain === 'length' ? 'grain along the arrow' : 'no grain to keep',
    ...(panel.standsInUnit
      ? [`${bench.faceUp} face up; ${SIDES.map((side) => `${side}: ${bench.sides[side]}`).join(', ')}`]
      : []),
    `edging: ${edged.length === 0 ? 'none' : edged.join(', ')}`,
    ...SIDES.flatMap((side) =>
      bench.scribing[side] === 0 ? [] : [`${side}: ${mm(bench.scribing[side])} left on for scribing`],
    ),
    ...(['left', 'near'] as const).flatMap((side) => {
      const outsideUm = bench.marksFromSawn[side];
      return outsideUm === null
        ? []
        : [`${side}: cut along the wall; as sawn ${mm(outsideUm)} outside of zero`];
    }),
  ].filter((line) => line !== '');
  return lines.map(
    (text, index): DxfShape => ({
      kind: 'text',
      layer: 'NOTES',
      text,
      at: [0, -(index + 2) * LINE_UM],
      heightUm: LETTERS_UM,
    }),
  );
}

/**
 * One panel as it lies on the bench, its near left corner, from which the drawings measure too, at the origin; all in mm:
 *
 * | layer | holds |
 * |---|---|
 * | `OUTLINE` | the finished panel in its true shape, a closed polyline |
 * | `SAWN-SIZE` | the rectangle that the saw gives, before edging |
 * | `SAWN-SHAPE` | what that is cut to by hand, allowance for scribing still on |
 * | `CUT-OUT` | openings right through, closed polylines |
 * | `HOLE-<diameter>-DEEP-<depth>`, `…-THROUGH` | holes, circles; a point in a figure is written `_` |
 * | `EDGE-HOLE-<diameter>-DEEP-<depth>-DOWN-<below>` | holes in edges, as seen from above: closed polylines from the edge inwards; `below` is from the face that is up to their middle |
 * | `GROOVE-<depth>` | grooves, closed polylines |
 * | `…-BELOW` | holes and grooves that come in from the underside, drawn as seen from above |
 * | `NOTES` | grain arrow and texts |
 */
export function panelDxf(panel: DxfPanel): DxfDrawing {
  const { bench } = panel;
  return {
    about: [
      `${panel.job}: panel ${panel.number}, ${panel.name}${panel.unit === '' ? '' : `, ${panel.unit}`}`,
    ],
    shapes: [
      polygon('OUTLINE', bench.outline),
      rectangle('SAWN-SIZE', bench.sawn),
      ...(bench.sawnOutline === null ? [] : [polygon('SAWN-SHAPE', bench.sawnOutline)]),
      ...bench.cutOuts.map((cutOut) => rectangle('CUT-OUT', cutOut)),
      ...bench.holes.map(
        (hole): DxfShape => ({
          kind: 'circle',
          layer: holeLayer(hole),
          middle: [hole.leftUm, hole.nearUm],
          diameterUm: hole.diameterUm,
        }),
      ),
      ...bench.edgeHoles.map(drilledInEdge),
      ...bench.grooves.map((groove) =>
        rectangle(
          layerName(`GROOVE-${figure(groove.depthUm)}${groove.goes === 'in from below' ? '-BELOW' : ''}`),
          groove,
        ),
      ),
      ...(panel.grain === 'length' ? grainArrow(bench) : []),
      ...notes(panel),
    ],
  };
}
