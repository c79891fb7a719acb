import { mmToUm } from '../basics/lengths.ts';
import type { NamedPiece } from '../changes/findPieces.ts';
import { labelledPieces } from '../documents/panelStickerPieces.ts';
import type { PlanFile } from '../model/plan.ts';
import type { SheetSupply } from '../model/stock.ts';

/** A piece of a panel that a plan gives, or that its order has from an earlier plan. */
export interface PlanPiece extends NamedPiece {
  /** Id of its group. */
  readonly group: string;
}

/** Every piece of every panel, with the text of its label: as they come off the saw, then those sawn by earlier plans. */
export function piecesOfPlan(plan: PlanFile, job: string): PlanPiece[] {
  const own = labelledPieces(plan, job).flatMap((piece): PlanPiece[] => {
    if (piece.is !== 'panel') return [];
    const { number, panel } = piece.panel;
    const { id, name, unit } = panel;
    return [{ code: piece.code, number, piece: piece.piece, id, name, unit, group: piece.group.id }];
  });
  const earlier = (plan.sawn?.groups ?? []).flatMap((group) =>
    group.panels.flatMap(({ codes, label: { number, pieces }, id, name, unit }) =>
      codes.map((code, index): PlanPiece => {
        return { code, number, piece: pieces[index] ?? 1, id, name, unit, group: group.id };
      }),
    ),
  );
  return [...own, ...earlier];
}

/** The offcuts that sawing a plan leaves and that are kept, under the texts of their labels, at no price. */
export function offcutsOfPlan(
  plan: PlanFile,
  job: string,
): (SheetSupply & { readonly sheet: SheetOfPlan })[] {
  return labelledPieces(plan, job).flatMap((piece) => {
    if (piece.is === 'panel') return [];
    const { board, finish, thickness, stock } = piece.group;
    // What falls out of an opening lies as its panel does.
    const turned = piece.is === 'cut-out' && piece.ending.lengthAlong === 'width';
    const { length, width } = piece.is === 'offcut' ? piece.ending : piece.kept;
    return [
      {
        id: piece.code,
        board,
        finish,
        thicknessUm: mmToUm(thickness),
        lengthUm: mmToUm(turned ? width : length),
        widthUm: mmToUm(turned ? length : width),
        grain: stock.find(({ id }) => id === piece.sheet.stock)?.grain ?? ('none' as const),
        priceMinor: null,
        count: 1,
        kind: 'offcut' as const,
        sheet: { group: piece.group.id, number: piece.sheet.number, copy: piece.copy },
      },
    ];
  });
}

/** One real sheet of a plan: a cut plan of a group, and which of the sheets cut alike, from 1. */
export interface SheetOfPlan {
  readonly group: string;
  readonly number: number;
  readonly copy: number;
}

/** Texts of the labels of the offcuts that a plan cuts up. */
export function offcutsCutUp(plan: PlanFile): string[] {
  return plan.groups.flatMap((group) =>
    group.stock
      .filter(({ id, kind }) => kind === 'offcut' && group.sheets.some(({ stock }) => stock === id))
      .map(({ id }) => id),
  );
}
