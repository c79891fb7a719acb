import { type SheetsSawn, sheetsSawn } from '../basics/stacks.ts';
import type { PlanGroup, PlanPanel, PlanSheet } from '../model/plan.ts';
import type { CutPlanWords, PageWords } from './drawingWords.ts';
import { plainText, SMALL } from './lettering.ts';
import type { Sketch } from './sketch.ts';
import { panelName } from './stepTable.ts';
import type { Table } from './tables.ts';

function times(count: number, sheets: number): string {
  return count === 1 ? String(sheets) : `${count} × ${sheets}`;
}

function sizesOf({ stacks, singly }: SheetsSawn): string {
  const parts = stacks.map((stack) => times(stack.times, stack.sheets));
  if (singly > 0) parts.push(times(singly, 1));
  return parts.join(' + ');
}

/** How many sheets lie in each stack of a cut plan: `3` or `2 × 3 + 2`; null when its sheets are sawn one by one. */
export function stackSizes(group: PlanGroup, plan: PlanSheet): string | null {
  const sawn = sheetsSawn(group, plan.number);
  return sawn.stacks.length === 0 ? null : sizesOf(sawn);
}

/** Numbers of the other cut plans whose sheets lie in stacks with those of a plan, in rising order. */
export function plansInStack(group: PlanGroup, plan: PlanSheet): number[] {
  const others = sheetsSawn(group, plan.number).stacks.flatMap((stack) => stack.others);
  return [...new Set(others)].sort((a, b) => a - b);
}

/** `cut 3 sheets together, with cut plan 4`; null when the sheets are sawn one by one. */
export function togetherWords(group: PlanGroup, plan: PlanSheet, words: CutPlanWords): string | null {
  const sizes = stackSizes(group, plan);
  if (sizes === null) return null;
  const together = words.stack.together(sizes);
  const others = plansInStack(group, plan);
  return others.length === 0 ? together : words.stack.withPlans(together, others);
}

/** A piece that is one panel on this sheet and others on sheets of other plans in the stack. */
export interface NamesOfPiece {
  readonly piece: string;
  readonly here: PlanPanel;
  readonly others: readonly { readonly panel: PlanPanel; readonly plans: readonly number[] }[];
}

/** Pieces of a plan that are other panels on sheets of other plans in its stacks, in the order of the pieces. */
export function namesInStack(group: PlanGroup, plan: PlanSheet): NamesOfPiece[] {
  const panels = new Map(group.panels.map((panel) => [panel.id, panel]));
  const byNumber = new Map(group.sheets.map((sheet) => [sheet.number, sheet]));
  const panelsOf = (sheet: PlanSheet) =>
    new Map(
      sheet.pieces.flatMap((ending) =>
        ending.is === 'panel' ? [[ending.piece, ending.panel] as const] : [],
      ),
    );
  const others = plansInStack(group, plan).map((number) => ({
    number,
    panels: panelsOf(byNumber.get(number)!),
  }));
  return [...panelsOf(plan)].flatMap(([piece, own]): NamesOfPiece[] => {
    const byPanel = new Map<string, number[]>();
    for (const other of others) {
      const id = other.panels.get(piece);
      if (id !== undefined && id !== own) byPanel.set(id, [...(byPanel.get(id) ?? []), other.number]);
    }
    if (byPanel.size === 0) return [];
    const found = [...byPanel].map(([id, plans]) => ({ panel: panels.get(id)!, plans }));
    return [{ piece, here: panels.get(own)!, others: found }];
  });
}

/** The table of pieces that are other panels on other sheets of the stack; without rows where there are none. */
export function stackNamesTable(
  sketch: Sketch,
  group: PlanGroup,
  plan: PlanSheet,
  { stack: { names } }: CutPlanWords,
  heads: PageWords,
): Table {
  const rows = namesInStack(group, plan).map(({ piece, here, others }) => [
    plainText(piece),
    panelName(here, group),
    others.map(({ panel, plans }) => names.onPlans(plans, panelName(panel, group))).join('; '),
  ]);
  const widest = rows.map((row) => sketch.measure(row[0]!, SMALL, 'bold'));
  return {
    title: names.title,
    shortTitle: heads.continued(names.shortTitle),
    columns: [
      {
        heading: names.columns[0],
        widthMm: Math.min(
          16,
          widest.reduce((a, b) => Math.max(a, b), 8),
        ),
        weight: 'bold',
      },
      { heading: names.columns[1], widthMm: 18, grows: true },
      { heading: names.columns[2], widthMm: 18, grows: true },
    ],
    rows,
  };
}
