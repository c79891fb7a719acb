import type { Um } from '../model/geometry.ts';
import type { Edging } from '../model/library.ts';
import type { PlanFile, PlanPanel } from '../model/plan.ts';
import { type FinishedPanel, panelsToFinish } from './cuttingList.ts';
import { metresUp } from './figures.ts';
import { type Table, tableColumns, tableOf } from './table.ts';

/** What the lists need to know of an edging. */
export type ListedEdging = Pick<Edging, 'title' | 'overlengthUm' | 'rollM'>;

/**
 * Columns of the edging list, one line an edge, in working order: the shorter edges of all panels first, then the
 * longer ones, which cover their ends (common practice, no source); within that, one edging after the other, so that
 * the machine is set up once for each.
 *
 * | column | holds |
 * |---|---|
 * | pass | 1 for shorter edges, 2 for longer ones |
 * | edging | id |
 * | number, id, order, unit, name | the panel, numbered as in the cutting list |
 * | edge | `length 1`, `length 2`, `width 1` or `width 2`: which edge along which side |
 * | edge length | finished length of the edge, mm |
 * | strip length | with overlength, mm; empty when the edging is not in the library |
 * | count | how many such panels |
 */
export const EDGING_LIST_COLUMNS = tableColumns({
  pass: 'whole',
  edging: 'text',
  number: 'whole',
  id: 'text',
  order: 'text',
  unit: 'text',
  name: 'text',
  edge: 'text',
  'edge length': 'mm',
  'strip length': 'mm',
  count: 'whole',
});

/**
 * Columns of the list of edging to buy, one line an edging.
 *
 * | column | holds |
 * |---|---|
 * | edging, description | id and title |
 * | strips | how many edges |
 * | net metres | length of all edges |
 * | overlength | added to each strip, mm; empty when the edging is not in the library, as are the next three |
 * | metres to buy | net metres and the overlength of every strip |
 * | roll | metres on a roll |
 * | rolls | whole rolls that hold the metres to buy |
 */
export const EDGING_TO_BUY_COLUMNS = tableColumns({
  edging: 'text',
  description: 'text',
  strips: 'whole',
  'net metres': 'metres',
  overlength: 'mm',
  'metres to buy': 'metres',
  roll: 'number',
  rolls: 'whole',
});

/** Edges along the length and along the width of a panel. */
export type EdgeName = 'length 1' | 'length 2' | 'width 1' | 'width 2';

/** One edge of a panel that gets edging. */
export interface Edge {
  readonly pass: 1 | 2;
  readonly edging: string;
  readonly panel: FinishedPanel;
  readonly edge: EdgeName;
  readonly lengthUm: Um;
}

/** How much of an edge the outline along a wall takes away. */
function takenByHandUm(panel: PlanPanel, edge: EdgeName): Um {
  const outline = panel.byHand?.outline;
  if (outline === undefined) return 0;
  const [square, along] = edge.startsWith('length') ? ([1, 0] as const) : ([0, 1] as const);
  const sizes = [panel.length, panel.width] as const;
  const at = edge.endsWith('1') ? 0 : sizes[square];
  const left = outline.reduce((sum, corner, index) => {
    const next = outline[(index + 1) % outline.length]!;
    const onEdge = corner[square] === at && next[square] === at;
    return onEdge ? sum + Math.abs(next[along] - corner[along]) : sum;
  }, 0);
  return Math.round((sizes[along] - left) * 1000);
}

function edgesOf(numbered: FinishedPanel): Edge[] {
  const { panel } = numbered;
  const lengthwiseUm = Math.round(panel.finishedLength * 1000);
  const crosswiseUm = Math.round(panel.finishedWidth * 1000);
  const lengthwisePass = lengthwiseUm < crosswiseUm ? 1 : 2;
  const crosswisePass = lengthwisePass === 1 ? 2 : 1;
  const edges: Edge[] = [];
  const add = (edging: string | null, edge: EdgeName, wholeUm: Um, pass: 1 | 2): void => {
    const lengthUm = wholeUm - takenByHandUm(panel, edge);
    if (edging !== null) edges.push({ pass, edging, panel: numbered, edge, lengthUm });
  };
  add(panel.edging.alongLength[0], 'length 1', lengthwiseUm, lengthwisePass);
  add(panel.edging.alongLength[1], 'length 2', lengthwiseUm, lengthwisePass);
  add(panel.edging.alongWidth[0], 'width 1', crosswiseUm, crosswisePass);
  add(panel.edging.alongWidth[1], 'width 2', crosswiseUm, crosswisePass);
  return edges;
}

/** Edgings in the order in which the panels first name them, and all edges in working order. */
export function edgesInWorkingOrder(plan: PlanFile): { readonly edgings: string[]; readonly edges: Edge[] } {
  const edges = panelsToFinish(plan).flatMap(edgesOf);
  const edgings = [...new Set(edges.map((edge) => edge.edging))];
  const place = new Map(edgings.map((edging, index) => [edging, index]));
  edges.sort(
    (a, b) =>
      a.pass - b.pass ||
      place.get(a.edging)! - place.get(b.edging)! ||
      a.panel.number - b.panel.number ||
      (a.edge < b.edge ? -1 : 1),
  );
  return { edgings, edges };
}

/** The edging list: which edge of which panel gets what, in working order. */
export function edgingList(plan: PlanFile, edgings: ReadonlyMap<string, ListedEdging>): Table {
  const rows = edgesInWorkingOrder(plan).edges.map((edge) => {
    const known = edgings.get(edge.edging);
    const { number, panel } = edge.panel;
    return {
      pass: edge.pass,
      edging: edge.edging,
      number,
      id: panel.id,
      order: panel.order,
      unit: panel.unit,
      name: panel.name,
      edge: edge.edge,
      'edge length': edge.lengthUm / 1000,
      'strip length': known === undefined ? null : (edge.lengthUm + known.overlengthUm) / 1000,
      count: panel.count,
    };
  });
  return tableOf('edging-list', EDGING_LIST_COLUMNS, rows);
}

/** What has to be bought of one edging; the last three are null when the edging is not in the library. */
export interface EdgingNeed {
  readonly edging: string;
  readonly strips: number;
  readonly netUm: Um;
  readonly toBuyUm: Um | null;
  readonly overlengthUm: Um | null;
  readonly rolls: number | null;
}

/** Edging needed by a plan, in the order in which its panels first name it. Every strip is cut with its overlength. */
export function edgingNeeds(plan: PlanFile, edgings: ReadonlyMap<string, ListedEdging>): EdgingNeed[] {
  const found = edgesInWorkingOrder(plan);
  return found.edgings.map((edging) => {
    const own = found.edges.filter((edge) => edge.edging === edging);
    const strips = own.reduce((sum, edge) => sum + edge.panel.panel.count, 0);
    const netUm = own.reduce((sum, edge) => sum + edge.lengthUm * edge.panel.panel.count, 0);
    const known = edgings.get(edging);
    if (known === undefined) return { edging, strips, netUm, toBuyUm: null, overlengthUm: null, rolls: null };
    const toBuyUm = netUm + strips * known.overlengthUm;
    const rolls = known.rollM > 0 ? Math.ceil(toBuyUm / (known.rollM * 1_000_000)) : null;
    return { edging, strips, netUm, toBuyUm, overlengthUm: known.overlengthUm, rolls };
  });
}

/** The list of edging to buy. */
export function edgingToBuy(plan: PlanFile, edgings: ReadonlyMap<string, ListedEdging>): Table {
  const rows = edgingNeeds(plan, edgings).map((need) => {
    const known = edgings.get(need.edging);
    return {
      edging: need.edging,
      description: known?.title ?? null,
      strips: need.strips,
      'net metres': metresUp(need.netUm),
      overlength: need.overlengthUm === null ? null : need.overlengthUm / 1000,
      'metres to buy': need.toBuyUm === null ? null : metresUp(need.toBuyUm),
      roll: known?.rollM ?? null,
      rolls: need.rolls,
    };
  });
  return tableOf('edging-to-buy', EDGING_TO_BUY_COLUMNS, rows);
}
