import { extentSize, sharedUm } from '../basics/boxes.ts';
import type { Panel, PlacedUnit } from '../model/furniture.ts';
import type { Axis, Extent, Um } from '../model/geometry.ts';
import { difference } from './hiddenLines.ts';

/** The clear inner extents of a unit along each of its axes, without those that are thinner than a board. */
export interface InnerExtents {
  readonly x: readonly Extent[];
  readonly y: readonly Extent[];
  readonly z: readonly Extent[];
}

const LEAST_CLEAR_UM = 20_000;

function spans(panel: Panel, unit: PlacedUnit, axis: Axis, tenths: number): boolean {
  return 10 * extentSize(panel.box[axis]) >= tenths * extentSize(unit.outside[axis]);
}

/** What is clear along an axis between some panels, within the unit's outside box. */
function clear(unit: PlacedUnit, axis: Axis, taken: readonly Extent[]): Extent[] {
  return difference([unit.outside[axis]], taken).filter((extent) => extentSize(extent) >= LEAST_CLEAR_UM);
}

function touches(panel: Panel, others: readonly Panel[]): boolean {
  return others.some((other) =>
    (['x', 'y', 'z'] as const).every((axis) => sharedUm(panel.box[axis], other.box[axis]) >= 0),
  );
}

/**
 * The inner sizes that a joiner sets out by: clear widths between uprights at least half as high as the unit, clear
 * heights between the boards that lie on them or reach over the whole width, and the depth from the front of the uprights to the back.
 */
export function innerExtents(unit: PlacedUnit): InnerExtents {
  const { panels, outside } = unit;
  const uprights = panels.filter((panel) => panel.thicknessAxis === 'x' && spans(panel, unit, 'z', 5));
  const boards = panels.filter(
    (panel) => panel.thicknessAxis === 'z' && (touches(panel, uprights) || spans(panel, unit, 'x', 9)),
  );
  const walls = panels.filter(
    (panel) => panel.thicknessAxis === 'y' && spans(panel, unit, 'x', 6) && spans(panel, unit, 'z', 6),
  );
  const frontUm = uprights.reduce<Um>((least, panel) => Math.min(least, panel.box.y[0]), outside.y[1]);
  const before: Extent[] = uprights.length > 0 ? [[outside.y[0], frontUm]] : [];
  return {
    x:
      uprights.length === 0
        ? []
        : clear(
            unit,
            'x',
            uprights.map((panel) => panel.box.x),
          ),
    y: clear(unit, 'y', [...walls.map((panel) => panel.box.y), ...before]).filter(
      (extent) => extentSize(extent) < extentSize(outside.y),
    ),
    z:
      boards.length === 0
        ? []
        : clear(
            unit,
            'z',
            boards.map((panel) => panel.box.z),
          ),
  };
}

/** The panel with the largest face square to an axis that has openings, if any. */
export function panelWithOpenings(unit: PlacedUnit, axis: Axis): Panel | undefined {
  return unit.panels
    .filter((panel) => panel.thicknessAxis === axis && panel.cutOuts.length > 0)
    .reduce<Panel | undefined>((best, panel) => {
      const area = (each: Panel) => each.finishedLengthUm * each.finishedWidthUm;
      return best === undefined || area(panel) > area(best) ? panel : best;
    }, undefined);
}

/**
 * Chains of extents along an axis from a panel's edge over the borders of its openings to its other edge. Openings whose
 * extents overlap without being the same stand in chains of their own, so that each has its size and place.
 */
export function openingChains(panel: Panel, axis: Axis): Extent[][] {
  const [from, to] = panel.box[axis];
  const openings = panel.cutOuts
    .map((cutOut) => (axis === panel.lengthAxis ? cutOut.alongLength : cutOut.alongWidth))
    .map(([low, high]): Extent => [from + low, from + high])
    .sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const rows: Extent[][] = [];
  for (const opening of openings) {
    const same = ([low, high]: Extent) => low === opening[0] && high === opening[1];
    const row = rows.find((each) => each.every((other) => same(other) || sharedUm(other, opening) <= 0));
    if (row === undefined) rows.push([opening]);
    else row.push(opening);
  }
  return rows.map((row) => {
    const points = [...new Set([from, ...row.flat(), to])].sort((a, b) => a - b);
    return points.slice(1).map((point, index): Extent => [points[index]!, point]);
  });
}
