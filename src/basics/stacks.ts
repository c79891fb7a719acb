import type { PlanGroup } from '../model/plan.ts';
import { mmToUm } from './lengths.ts';

/** How many sheets of a thickness (mm) the saw can cut on each other: 1 where it cuts them singly or it is not known. */
export function mostInStack(saw: PlanGroup['saw'], thicknessMm: number): number {
  const heightUm = mmToUm(saw.cuttingHeight ?? 0);
  const thicknessUm = mmToUm(thicknessMm);
  return thicknessUm <= 0 ? 1 : Math.max(1, Math.floor(heightUm / thicknessUm));
}

/** How the sheets of one cut plan are sawn. */
export interface SheetsSawn {
  /** Stacks in which sheets of the plan lie. */
  readonly stacks: readonly {
    readonly times: number;
    /** Sheets in one such stack, those of other plans included. */
    readonly sheets: number;
    /** Sheets of this plan in one such stack. */
    readonly own: number;
    /** Numbers of the other cut plans whose sheets lie in it, in rising order. */
    readonly others: readonly number[];
  }[];
  /** Sheets of the plan that are sawn one by one. */
  readonly singly: number;
}

/** In which stacks the sheets of cut plan `number` lie, and how many are left to be sawn one by one. */
export function sheetsSawn(group: PlanGroup, number: number): SheetsSawn {
  const copies = group.sheets.find((sheet) => sheet.number === number)?.copies ?? 0;
  const stacks = (group.stacks ?? []).flatMap(({ times, sheets }) => {
    const own = sheets.reduce((sum, entry) => (entry.number === number ? sum + entry.copies : sum), 0);
    if (own === 0) return [];
    const all = sheets.reduce((sum, entry) => sum + entry.copies, 0);
    const others = new Set(sheets.map((entry) => entry.number).filter((other) => other !== number));
    return [{ times, sheets: all, own, others: [...others].sort((a, b) => a - b) }];
  });
  const stacked = stacks.reduce((sum, stack) => sum + stack.times * stack.own, 0);
  return { stacks, singly: copies - stacked };
}
