import { extentSize, sharedUm } from '../basics/boxes.ts';
import { outlineInUnit } from '../basics/placedOutline.ts';
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

/** Whether a panel stands on the floor that its unit stands on. */
function stands(panel: Panel, unit: PlacedUnit): boolean {
  return panel.thicknessAxis !== 'z' && panel.box.z[0] === unit.outside.z[0];
}

/**
 * The inner sizes that a joiner sets out by: clear widths between uprights at least half as high as the unit, clear
 * heights between the boards that lie on them or reach over the whole width, and the depth from the front of the uprights to the
 * back, or beside a leg.
 */
export function innerExtents(unit: PlacedUnit): InnerExtents {
  const { panels, outside } = unit;
  const uprights = panels.filter((panel) => panel.thicknessAxis === 'x' && spans(panel, unit, 'z', 5));
  const boards = panels.filter(
    (panel) => panel.thicknessAxis === 'z' && (touches(panel, uprights) || spans(panel, unit, 'x', 9)),
  );
  const walls = panels.filter(
    (panel) =>
      panel.thicknessAxis === 'y' &&
      (spans(panel, unit, 'x', 6) || stands(panel, unit)) &&
      spans(panel, unit, 'z', 6),
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

/**
 * What feet and legs leave clear along the front, with the width of a leg that shows its face: where a unit stands on other
 * boards than its uprights. Empty where that says nothing that the inner sizes do not.
 */
export function footExtents(unit: PlacedUnit): Extent[] {
  const feet = unit.panels.filter((panel) => stands(panel, unit) && !spans(panel, unit, 'x', 6));
  const legs = feet.filter((panel) => panel.thicknessAxis === 'y').sort((a, b) => a.box.y[0] - b.box.y[0]);
  // Of those behind each other the front one is seen, and a chain has room for one.
  const seen = legs
    .map((panel) => panel.box.x)
    .filter((extent, index, all) => all.slice(0, index).every((before) => sharedUm(before, extent) <= 0));
  const between = clear(
    unit,
    'x',
    feet.map((panel) => panel.box.x),
  );
  const said = innerExtents(unit).x.map((extent) => extent.join(' '));
  const extents = [...between, ...seen].sort((a, b) => a[0] - b[0]);
  const more = extents.some((extent) => !said.includes(extent.join(' ')));
  const others = feet.some((panel) => panel.thicknessAxis === 'y' || !spans(panel, unit, 'z', 5));
  return others && more ? extents : [];
}

/** What shaped panels measure along an axis at their lower and their upper edge, where that is not all they measure. */
export interface EdgeExtents {
  readonly lower: readonly Extent[];
  readonly upper: readonly Extent[];
}

function edgeAt(panel: Panel, end: 0 | 1, axis: Axis): Extent {
  const heightUm = panel.box.z[end];
  const places = outlineInUnit(panel).flatMap((corner) => (corner.z === heightUm ? [corner[axis]] : []));
  return [Math.min(...places), Math.max(...places)];
}

/**
 * How deep (along y) or wide (along x) panels that follow a leaning wall are at the top and at the bottom: of those whose
 * faces are square to another axis the highest and the lowest edges, each extent once, without those that are as long as
 * their panel, which other dimensions say.
 */
export function edgeExtents(unit: PlacedUnit, faces: 'x' | 'y', axis: 'x' | 'y'): EdgeExtents {
  const shaped = unit.panels.filter(
    (panel) => panel.thicknessAxis === faces && outlineInUnit(panel).length > 0,
  );
  const at = (end: 0 | 1): Extent[] => {
    const heights = shaped.map(({ box }) => box.z[end]);
    const outermost = end === 0 ? Math.min(...heights) : Math.max(...heights);
    const extents = shaped
      .filter(({ box }) => box.z[end] === outermost)
      .map((panel) => ({ extent: edgeAt(panel, end, axis), whole: panel.box[axis] }))
      .filter(({ extent, whole }) => extentSize(extent) >= LEAST_CLEAR_UM && extent.join() !== whole.join());
    return [...new Map(extents.map(({ extent }) => [extent.join(), extent])).values()];
  };
  return { lower: at(0), upper: at(1) };
}

/** A chain of extents along one panel. */
export interface PanelChain {
  readonly panel: Panel;
  readonly extents: readonly Extent[];
}

/**
 * Rows of chains along an axis, each over the borders of a panel's openings from one of its edges to the other, for all panels
 * whose faces are square to another axis: so that every opening has its size and place. Panels that lie beside each other
 * share a row. What one chain says no other repeats.
 */
export function openingRows(unit: PlacedUnit, faces: Axis, axis: Axis): PanelChain[][] {
  const panels = unit.panels.filter((panel) => panel.thicknessAxis === faces && panel.cutOuts.length > 0);
  const rows: PanelChain[][] = [];
  const told = new Set<string>();
  for (const panel of panels) {
    for (const extents of openingChains(panel, axis)) {
      const key = extents.map((extent) => extent.join(' ')).join(', ');
      if (told.has(key)) continue;
      told.add(key);
      const beside = (other: PanelChain) => sharedUm(other.panel.box[axis], panel.box[axis]) <= 0;
      const row = rows.find((each) => each.every(beside));
      if (row === undefined) rows.push([{ panel, extents }]);
      else row.push({ panel, extents });
    }
  }
  return rows.map((row) => [...row].sort((a, b) => a.extents[0]![0] - b.extents[0]![0]));
}

/** Fewer alike are placed by the gaps between other boards. */
const MANY = 4;

/**
 * Where level boards that are alike and lie apart, such as slats, begin along an axis, rising; empty where there are not many
 * of them.
 */
export function apartFrom(unit: PlacedUnit, axis: 'x' | 'y'): Um[] {
  const rows = new Map<string, Extent[]>();
  for (const { box, thicknessAxis } of unit.panels) {
    if (thicknessAxis !== 'z') continue;
    const across = axis === 'x' ? 'y' : 'x';
    const key = [extentSize(box[axis]), ...box[across], ...box.z].join(' ');
    rows.set(key, [...(rows.get(key) ?? []), box[axis]]);
  }
  for (const row of rows.values()) {
    const sorted = [...row].sort((a, b) => a[0] - b[0]);
    const apart = sorted.slice(1).every(([from], index) => from - sorted[index]![1] >= LEAST_CLEAR_UM);
    if (sorted.length >= MANY && apart) return sorted.map(([from]) => from);
  }
  return [];
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
