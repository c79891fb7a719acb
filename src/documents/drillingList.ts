import { panelOnBench } from '../basics/panelOnBench.ts';
import type { Furniture } from '../model/furniture.ts';
import type { Um } from '../model/geometry.ts';
import type { Library } from '../model/library.ts';
import type { PlanFile } from '../model/plan.ts';
import { panelsToFinish } from './cuttingList.ts';
import { type Table, tableColumns, tableOf } from './table.ts';

/**
 * Columns of the drilling list, one line a hole, panels in the order of the cutting list. Each panel lies on the bench,
 * finished, with its length from left to right; faces and edges are called as in its unit.
 *
 * | column | holds |
 * |---|---|
 * | number, id, unit, name | the panel, numbered as in the cutting list |
 * | count | how many such panels |
 * | face up | broad face that is up: the one with the most holes and grooves that do not go through |
 * | left edge, near edge | edges that are on the left and near: distances are measured from them; neither is scribed or shaped by the wall where the panel has others |
 * | hole | its name |
 * | from left, from near | to the middle of the hole, mm |
 * | diameter | mm |
 * | depth | mm; empty right through |
 * | drilled from | face that the drill enters: a broad face, or the edge for a hole in an edge |
 * | below face up | of a hole in an edge: from the face that is up to its middle, mm; empty for others |
 * | sawn further left, sawn further near | only where the wall shapes both ends, so that no edge is left to measure from: how far the edge as sawn lies outside of that from which the distances are, mm |
 */
export const DRILLING_COLUMNS = tableColumns({
  number: 'whole',
  id: 'text',
  unit: 'text',
  name: 'text',
  count: 'whole',
  'face up': 'text',
  'left edge': 'text',
  'near edge': 'text',
  hole: 'text',
  'from left': 'thickness',
  'from near': 'thickness',
  diameter: 'thickness',
  depth: 'thickness',
  'drilled from': 'text',
  'below face up': 'thickness',
  'sawn further left': 'thickness',
  'sawn further near': 'thickness',
});

function millimetres(um: Um | null): number | null {
  return um === null ? null : um / 1000;
}

/** The holes of an order's panels. */
export function drillingList(plan: PlanFile, furniture: Furniture, library: Pick<Library, 'edgings'>): Table {
  const furnished = new Map(
    furniture.units.flatMap((unit) => unit.panels.map((panel) => [panel.id, { panel, unit }] as const)),
  );
  const rows = panelsToFinish(plan).flatMap(({ number, panel: { id, unit, name, count } }) => {
    const found = furnished.get(id);
    if (found === undefined) throw new Error(`panel ${id} is in the plan, but not in the furniture`);
    const bench = panelOnBench(found.panel, found.unit.panels, library.edgings);
    const holes = bench.holes.map((hole) => ({ ...hole, belowUm: null }));
    return [...holes, ...bench.edgeHoles].map((hole) => ({
      number,
      id,
      unit,
      name,
      count,
      'face up': bench.faceUp,
      'left edge': bench.sides.left,
      'near edge': bench.sides.near,
      hole: hole.name,
      'from left': hole.leftUm / 1000,
      'from near': hole.nearUm / 1000,
      diameter: hole.diameterUm / 1000,
      depth: millimetres(hole.depthUm),
      'drilled from': hole.face,
      'below face up': millimetres(hole.belowUm),
      'sawn further left': millimetres(bench.marksFromSawn.left),
      'sawn further near': millimetres(bench.marksFromSawn.near),
    }));
  });
  return tableOf('drilling', DRILLING_COLUMNS, rows);
}
