import { mostInStack } from '../basics/stacks.ts';
import type { PlanGroup, PlanSheet, PlanStack } from '../model/plan.ts';

/** What two sheets must share to be sawn together: the raw sheet and every cut; what the pieces are called may differ. */
function formOf(sheet: PlanSheet): string {
  return JSON.stringify([sheet.stock, sheet.start, sheet.steps]);
}

/** Sheets cut alike in as few and as even stacks as the height allows, sheets of one plan together where they can be. */
function stacksOf(alike: readonly PlanSheet[], most: number): PlanStack[] {
  const total = alike.reduce((sum, sheet) => sum + sheet.copies, 0);
  const count = Math.ceil(total / most);
  const least = Math.floor(total / count);
  const larger = total - least * count;
  const rest = alike.map(({ number, copies }) => ({ number, copies }));
  const stacks: PlanStack[] = [];
  for (let made = 0; made < count; made++) {
    const sheets: PlanStack['sheets'] = [];
    for (let room = made < larger ? least + 1 : least; room > 0; ) {
      const next = rest[0]!;
      const copies = Math.min(room, next.copies);
      sheets.push({ number: next.number, copies });
      room -= copies;
      next.copies -= copies;
      if (next.copies === 0) rest.shift();
    }
    const before = stacks.at(-1);
    if (before && JSON.stringify(before.sheets) === JSON.stringify(sheets)) before.times += 1;
    else stacks.push({ times: 1, sheets });
  }
  return stacks.filter((stack) => stack.sheets.reduce((sum, entry) => sum + entry.copies, 0) > 1);
}

/**
 * Which sheets of a group lie on each other on the saw: those of one size with the same cuts, as many as the cutting
 * height has room for. Empty where the saw cuts sheets singly or a sheet fills the height.
 */
export function makeStacks(
  saw: PlanGroup['saw'],
  thicknessMm: number,
  sheets: readonly PlanSheet[],
): PlanStack[] {
  const most = mostInStack(saw, thicknessMm);
  if (most < 2) return [];
  const alike = new Map<string, PlanSheet[]>();
  for (const sheet of sheets) {
    const form = formOf(sheet);
    const before = alike.get(form);
    if (before) before.push(sheet);
    else alike.set(form, [sheet]);
  }
  return [...alike.values()].flatMap((same) => stacksOf(same, most));
}
