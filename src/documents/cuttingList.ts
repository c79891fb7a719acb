import type { PlanFile, PlanGroup, PlanPanel } from '../model/plan.ts';
import { writeCsv } from './csv.ts';
import { listMm, listThickness } from './figures.ts';

/**
 * Columns of the cutting list, one line a panel. Lengths in mm with one decimal; boards, finishes and edgings by id.
 *
 * | column | holds |
 * |---|---|
 * | number | running number in this list, from 1; the edging list refers to it |
 * | id | id of the panel in the plan file |
 * | order, unit, name | what it is for |
 * | group | stock group; its cut plans carry this name |
 * | board, finish, thickness | what it is cut from |
 * | cut length, cut width | sawn size, length along the grain |
 * | grain | `length`, or `none` when it may be turned |
 * | count | how many |
 * | finished length, finished width | with edging on |
 * | edging length 1, edging length 2 | edging on the two edges along the length |
 * | edging width 1, edging width 2 | edging on the two edges along the width |
 * | sheets | numbers of the cut plans of its group that give it, parted by spaces |
 */
export const CUTTING_LIST_COLUMNS = [
  'number',
  'id',
  'order',
  'unit',
  'name',
  'group',
  'board',
  'finish',
  'thickness',
  'cut length',
  'cut width',
  'grain',
  'count',
  'finished length',
  'finished width',
  'edging length 1',
  'edging length 2',
  'edging width 1',
  'edging width 2',
  'sheets',
] as const;

/** A panel of the plan with its running number in the cutting list. */
export interface NumberedPanel {
  readonly number: number;
  readonly group: PlanGroup;
  readonly panel: PlanPanel;
}

/** All panels of the plan, in the order of its groups, numbered from 1. */
export function numberPanels(plan: PlanFile): NumberedPanel[] {
  const panels = plan.groups.flatMap((group) => group.panels.map((panel) => ({ group, panel })));
  return panels.map((entry, index) => ({ number: index + 1, ...entry }));
}

function sheetsByPanel(group: PlanGroup): Map<string, number[]> {
  const found = new Map<string, number[]>();
  for (const sheet of group.sheets) {
    for (const piece of sheet.pieces) {
      if (piece.is !== 'panel') continue;
      const numbers = found.get(piece.panel) ?? [];
      if (numbers.at(-1) !== sheet.number) numbers.push(sheet.number);
      found.set(piece.panel, numbers);
    }
  }
  return found;
}

/** The cutting list as CSV text: what the joiner has to have sawn, and from which sheets. */
export function cuttingList(plan: PlanFile): string {
  const sheets = new Map(plan.groups.map((group) => [group.id, sheetsByPanel(group)]));
  const rows = numberPanels(plan).map(({ number, group, panel }) => [
    number,
    panel.id,
    panel.order,
    panel.unit,
    panel.name,
    group.id,
    group.board,
    group.finish,
    listThickness(group.thickness),
    listMm(panel.length),
    listMm(panel.width),
    panel.grain,
    panel.count,
    listMm(panel.finishedLength),
    listMm(panel.finishedWidth),
    ...panel.edging.alongLength.map((edging) => edging ?? ''),
    ...panel.edging.alongWidth.map((edging) => edging ?? ''),
    (sheets.get(group.id)?.get(panel.id) ?? []).join(' '),
  ]);
  return writeCsv(CUTTING_LIST_COLUMNS, rows);
}
