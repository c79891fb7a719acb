import type { PlanFile, PlanGroup, PlanPanel } from '../model/plan.ts';
import { type Table, tableColumns, tableOf } from './table.ts';

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
export const CUTTING_LIST_COLUMNS = tableColumns({
  number: 'whole',
  id: 'text',
  order: 'text',
  unit: 'text',
  name: 'text',
  group: 'text',
  board: 'text',
  finish: 'text',
  thickness: 'thickness',
  'cut length': 'mm',
  'cut width': 'mm',
  grain: 'text',
  count: 'whole',
  'finished length': 'mm',
  'finished width': 'mm',
  'edging length 1': 'text',
  'edging length 2': 'text',
  'edging width 1': 'text',
  'edging width 2': 'text',
  sheets: 'text',
});

/** A panel of the plan with its running number in the cutting list. */
export interface NumberedPanel {
  readonly number: number;
  readonly group: PlanGroup;
  readonly panel: PlanPanel;
}

/** All panels that the plan saws, in the order of its groups, numbered from 1 or, in a later plan of a job, as before. */
export function numberPanels(plan: PlanFile): NumberedPanel[] {
  const panels = plan.groups.flatMap((group) => group.panels.map((panel) => ({ group, panel })));
  return panels.map((entry, index) => ({ number: entry.panel.label?.number ?? index + 1, ...entry }));
}

/** A panel that is finished after sawing, with what it is of. */
export interface FinishedPanel extends Omit<NumberedPanel, 'group'> {
  readonly group: Pick<PlanGroup, 'id' | 'board' | 'finish' | 'thickness'>;
}

/**
 * All panels that are edged, drilled and put together: those that the plan saws and those that an earlier plan of the
 * order has sawn already, each once with all its pieces.
 */
export function panelsToFinish(plan: PlanFile): FinishedPanel[] {
  const all = new Map<string, FinishedPanel>();
  for (const one of numberPanels(plan)) all.set(one.panel.id, one);
  for (const group of plan.sawn?.groups ?? []) {
    for (const { codes: _codes, differs: _differs, ...panel } of group.panels) {
      const before = all.get(panel.id);
      if (before === undefined) all.set(panel.id, { number: panel.label.number, group, panel });
      else {
        const count = before.panel.count + panel.count;
        all.set(panel.id, { ...before, panel: { ...before.panel, count } });
      }
    }
  }
  return [...all.values()];
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

/** The cutting list: what the joiner has to have sawn, and from which sheets. */
export function cuttingList(plan: PlanFile): Table {
  const sheets = new Map(plan.groups.map((group) => [group.id, sheetsByPanel(group)]));
  return tableOf(
    'cutting-list',
    CUTTING_LIST_COLUMNS,
    numberPanels(plan).map(({ number, group, panel }) => ({
      number,
      id: panel.id,
      order: panel.order,
      unit: panel.unit,
      name: panel.name,
      group: group.id,
      board: group.board,
      finish: group.finish,
      thickness: group.thickness,
      'cut length': panel.length,
      'cut width': panel.width,
      grain: panel.grain,
      count: panel.count,
      'finished length': panel.finishedLength,
      'finished width': panel.finishedWidth,
      'edging length 1': panel.edging.alongLength[0],
      'edging length 2': panel.edging.alongLength[1],
      'edging width 1': panel.edging.alongWidth[0],
      'edging width 2': panel.edging.alongWidth[1],
      sheets: (sheets.get(group.id)?.get(panel.id) ?? []).join(' '),
    })),
  );
}
