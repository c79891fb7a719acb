import { sheetsSawn } from '../basics/stacks.ts';
import { plansInStack } from '../drawing/stackWords.ts';
import type { PlanEnding, PlanFile, PlanGroup, PlanSheet } from '../model/plan.ts';
import { type Cell, type Table, tableColumns, tableOf } from './table.ts';

/**
 * Columns of the list of saw steps, one line a step, in the order of sawing. Pieces are called as in the plan file.
 *
 * | column | holds |
 * |---|---|
 * | group, sheet | stock group, and number of its cut plan |
 * | copies | how many sheets are cut in this way |
 * | step | running number within the cut plan, from 1 |
 * | cut | `trim`, `rip`, `crosscut`, `recut`, or `part` where matched fronts are parted |
 * | piece | the piece in hand |
 * | side | of a trim: the side that is cleaned, `left`, `right`, `near` or `far` |
 * | blade | of other cuts: the side of the sheet along which the blade runs, `length` or `width` |
 * | fence | of other cuts: from the left or near edge of the piece to the cut, mm: where the fence stands, or the edge of the rail lies |
 * | take | what goes: a trim with its kerf, or the kerf, mm |
 * | gives, rest | what the pieces are called: the one measured off (or left by a trim), and what lies beyond the kerf |
 * | gives is, rest is | id of the panel, `offcut` or `waste`, where that piece is ready |
 * | stack | how many sheets lie on each other and are cut together, in the highest stack where not all are as high; 1 where they are cut one by one |
 * | sawings | how many times the step is sawn: once for each stack, and for each sheet that is cut by itself |
 * | with sheets | numbers of the other cut plans of the group whose sheets lie in these stacks and are sawn with them, parted by spaces |
 */
export const SAW_STEPS_COLUMNS = tableColumns({
  group: 'text',
  sheet: 'whole',
  copies: 'whole',
  step: 'whole',
  cut: 'text',
  piece: 'text',
  side: 'text',
  blade: 'text',
  fence: 'mm',
  take: 'mm',
  gives: 'text',
  rest: 'text',
  'gives is': 'text',
  'rest is': 'text',
  stack: 'whole',
  sawings: 'whole',
  'with sheets': 'text',
});

function endWord(ending: PlanEnding | undefined): string | null {
  if (ending === undefined) return null;
  return ending.is === 'panel' ? ending.panel : ending.is;
}

function rowsOf(group: PlanGroup, sheet: PlanSheet) {
  const ends = new Map(sheet.pieces.map((piece) => [piece.piece, piece]));
  const { stacks, singly } = sheetsSawn(group, sheet.number);
  const stack = Math.max(1, ...stacks.map(({ sheets }) => sheets));
  const sawings = stacks.reduce((sum, { times }) => sum + times, singly);
  const others = plansInStack(group, sheet).join(' ');
  return sheet.steps.map((step, index) => {
    const trims = step.cut === 'trim';
    const [gives, rest] = trims ? [step.leaves] : step.gives;
    const cell = (value: Cell | undefined): Cell => value ?? null;
    return {
      group: group.id,
      sheet: sheet.number,
      copies: sheet.copies,
      step: index + 1,
      cut: step.cut,
      piece: step.piece,
      side: trims ? step.side : null,
      blade: trims ? null : step.blade,
      fence: trims ? null : step.fence,
      take: step.take,
      gives: cell(gives),
      rest: cell(rest),
      'gives is': endWord(ends.get(gives ?? '')),
      'rest is': endWord(ends.get(rest ?? '')),
      stack,
      sawings,
      'with sheets': others,
    };
  });
}

/** Every step of the saw, cut plan by cut plan; a sheet that is used whole has none. */
export function sawSteps(plan: PlanFile): Table {
  const rows = plan.groups.flatMap((group) => group.sheets.flatMap((sheet) => rowsOf(group, sheet)));
  return tableOf('saw-steps', SAW_STEPS_COLUMNS, rows);
}
