import type { PlanEnding, PlanFile, PlanGroup, PlanSheet } from '../model/plan.ts';
import { type NumberedPanel, numberPanels } from './cuttingList.ts';
import { offcutName } from './offcutsKept.ts';
import { pieceCode } from './panelStickerCode.ts';

type PanelEnding = Extract<PlanEnding, { is: 'panel' }>;
type OffcutEnding = Extract<PlanEnding, { is: 'offcut' }>;
type Opening = NonNullable<NumberedPanel['panel']['byHand']>['openings'][number];

/** One real piece of a job that gets a label. */
export type LabelledPiece = {
  /** The text of its label's QR code, unique in the job. */
  readonly code: string;
  readonly group: PlanGroup;
  readonly sheet: PlanSheet;
  /** Which of the sheets cut alike, from 1. */
  readonly copy: number;
} & (
  | {
      readonly is: 'panel';
      readonly ending: PanelEnding;
      readonly panel: NumberedPanel;
      /** Which one it is of those that are alike, from 1. */
      readonly piece: number;
    }
  /** What falls out of an opening of a panel, squared up. */
  | {
      readonly is: 'cut-out';
      readonly ending: PanelEnding;
      readonly panel: NumberedPanel;
      readonly opening: Opening;
      readonly kept: NonNullable<Opening['kept']>;
    }
  | { readonly is: 'offcut'; readonly ending: OffcutEnding }
);

interface Copy {
  readonly sheet: PlanSheet;
  readonly copy: number;
}

/** The sheets of a group as they go through the saw: each entry is a single sheet or a stack that is sawn together. */
function sawings(group: PlanGroup): Copy[][] {
  const taken = new Map<number, number>();
  const take = (sheet: PlanSheet): Copy => {
    const copy = (taken.get(sheet.number) ?? 0) + 1;
    taken.set(sheet.number, copy);
    return { sheet, copy };
  };
  const stacks = group.stacks ?? [];
  const stacked = (sheet: PlanSheet) =>
    stacks.reduce((sum, { times, sheets }) => {
      const own = sheets.reduce(
        (all, { number, copies }) => (number === sheet.number ? all + copies : all),
        0,
      );
      return sum + times * own;
    }, 0);
  const byNumber = new Map(group.sheets.map((sheet) => [sheet.number, sheet]));
  const all: Copy[][] = [];
  for (const sheet of group.sheets) {
    for (const { times, sheets } of stacks) {
      if (sheets[0]?.number !== sheet.number) continue;
      for (let time = 0; time < times; time++) {
        all.push(
          sheets.flatMap(({ number, copies }) =>
            Array.from({ length: copies }, () => take(byNumber.get(number)!)),
          ),
        );
      }
    }
    for (let single = stacked(sheet); single < sheet.copies; single++) all.push([take(sheet)]);
  }
  return all;
}

/** What is left of a sheet, in the order in which the saw sets it free. */
function asTheyComeOff(sheet: PlanSheet): PlanEnding[] {
  const freed = new Map<string, number>([[sheet.start, 0]]);
  for (const step of sheet.steps) {
    for (const piece of step.cut === 'trim' ? [step.leaves] : step.gives) freed.set(piece, freed.size);
  }
  return [...sheet.pieces].sort((a, b) => (freed.get(a.piece) ?? 0) - (freed.get(b.piece) ?? 0));
}

/** The pieces of a group as they come off the saw; of sheets in a stack the pieces that lie on each other together. */
function endingsOf(group: PlanGroup): (Copy & { readonly ending: PlanEnding })[] {
  return sawings(group).flatMap((copies) => {
    const inOrder = copies.map(({ sheet }) => asTheyComeOff(sheet));
    return inOrder[0]!.flatMap((_, index) =>
      copies.map((copy, which) => ({ ...copy, ending: inOrder[which]![index]! })),
    );
  });
}

/** What falls out of a panel's openings and is kept. */
function cutOutsOf(panel: Extract<LabelledPiece, { is: 'panel' }>, job: string): LabelledPiece[] {
  const { group, sheet, copy, ending, piece } = panel;
  const { number } = panel.panel;
  return (panel.panel.panel.byHand?.openings ?? []).flatMap((opening, index): LabelledPiece[] => {
    if (opening.kept === undefined) return [];
    const code = pieceCode({ is: 'cut-out', job, group: group.id, number, piece, opening: index + 1 });
    return [
      { is: 'cut-out', group, sheet, copy, ending, panel: panel.panel, opening, kept: opening.kept, code },
    ];
  });
}

/**
 * Every panel and every offcut to keep of a plan, one by one, with the text of its label: the panels as they come off the
 * saw, then the offcuts, among them what falls out of openings and is kept. `ofJob` is the name of the order or list; a later plan of
 * a job says itself what its panels and its offcuts are called after. Throws when a piece names no panel of the plan.
 */
export function labelledPieces(plan: PlanFile, ofJob: string): LabelledPiece[] {
  const job = plan.before?.job ?? ofJob;
  const numbered = new Map(numberPanels(plan).map((one) => [one.panel.id, one]));
  const made = new Map<string, number>();
  const panels: LabelledPiece[] = [];
  const offcuts: LabelledPiece[] = [];
  for (const group of plan.groups) {
    for (const { sheet, copy, ending } of endingsOf(group)) {
      const from = { group, sheet, copy };
      if (ending.is === 'waste') continue;
      if (ending.is === 'offcut') {
        const identity = {
          job: plan.before?.name ?? job,
          group: group.id,
          sheet: sheet.number,
          piece: ending.piece,
          copy,
        };
        offcuts.push({ ...from, is: 'offcut', ending, code: pieceCode({ ...identity, is: 'offcut' }) });
        continue;
      }
      const panel = numbered.get(ending.panel);
      if (panel === undefined) throw new Error(`piece ${ending.piece} is the unknown panel ${ending.panel}`);
      const nth = (made.get(ending.panel) ?? 0) + 1;
      made.set(ending.panel, nth);
      const piece = panel.panel.label?.pieces[nth - 1] ?? nth;
      const code = pieceCode({ is: 'panel', job, group: group.id, number: panel.number, piece });
      const labelled = { ...from, is: 'panel', panel, ending, piece, code } as const;
      panels.push(labelled);
      // A panel that is cut anew has the label of the spoiled one; what falls out of it is another piece.
      offcuts.push(...cutOutsOf(labelled, plan.before?.name ?? job));
    }
  }
  return [...panels, ...offcuts];
}

/** Texts of the labels of what goes back to the rack, one a piece, by its name in the list of offcuts kept. */
export function codesOfOffcuts(plan: PlanFile, job: string): ReadonlyMap<string, readonly string[]> {
  const codes = new Map<string, string[]>();
  for (const labelled of labelledPieces(plan, job)) {
    if (labelled.is === 'panel') continue;
    const { group, sheet, ending, code } = labelled;
    const name = offcutName(
      group,
      sheet,
      ending.piece,
      labelled.is === 'cut-out' ? labelled.opening.name : null,
    );
    codes.set(name, [...(codes.get(name) ?? []), code]);
  }
  return codes;
}
