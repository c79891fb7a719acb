import type { NumberedPart, SawnPiece } from '../changes/carryOver.ts';
import { partOfPlan, partsOfGroup } from '../changes/partsOfPlan.ts';
import { panelsToFinish } from '../documents/cuttingList.ts';
import { labelledPieces } from '../documents/panelStickerPieces.ts';
import type { Part } from '../model/part.ts';
import type { PlanFile, SawnCopies } from '../model/plan.ts';

/** Whether a real sheet of a plan is among some sheets. */
export function isAmong(
  sheets: readonly SawnCopies[],
  { group, sheet, copy }: { group: { id: string }; sheet: { number: number }; copy: number },
): boolean {
  return sheets.some(
    (one) => one.group === group.id && one.number === sheet.number && one.copies.includes(copy),
  );
}

/** Every panel of the order that a plan was made for, those sawn before it as well, with its number. */
export function partsBefore(plan: PlanFile): NumberedPart[] {
  const parts = new Map<string, Part>();
  for (const group of plan.groups) for (const part of partsOfGroup(group)) parts.set(part.id, part);
  for (const group of plan.sawn?.groups ?? []) {
    for (const panel of group.panels) {
      if (!parts.has(panel.id)) parts.set(panel.id, partOfPlan(panel, group));
    }
  }
  return panelsToFinish(plan).map(({ number, panel }) => ({
    number,
    part: { ...parts.get(panel.id)!, count: panel.count },
  }));
}

/** Which way the grain runs on a panel, from how it lay on its sheet. */
function grainOn(along: 'length' | 'width', grain: 'length' | 'width' | 'none'): 'length' | 'width' | 'none' {
  return grain === 'none' ? 'none' : grain === along ? 'length' : 'width';
}

/** The pieces of panels that are sawn: those from some sheets of a plan, and those that its order had from earlier ones. */
export function piecesBefore(
  plan: PlanFile,
  job: string,
  sheets: readonly SawnCopies[],
  parts: readonly NumberedPart[],
): SawnPiece[] {
  const byId = new Map(parts.map((one) => [one.part.id, one]));
  const now = labelledPieces(plan, job).flatMap((piece): SawnPiece[] => {
    if (piece.is !== 'panel' || !isAmong(sheets, piece)) return [];
    const { code, ending, group, sheet } = piece;
    const stock = group.stock.find(({ id }) => id === sheet.stock);
    const grain = grainOn(ending.lengthAlong, stock?.grain ?? 'none');
    return [{ of: byId.get(ending.panel)!, piece: piece.piece, code, grain }];
  });
  const earlier = (plan.sawn?.groups ?? []).flatMap(({ panels }) =>
    panels.flatMap(({ id, codes, label, grain }) =>
      codes.map((code, index): SawnPiece => {
        // Of one that may be turned nobody noted how it lay on its sheet.
        const runs = grain === 'length' ? 'length' : null;
        return { of: byId.get(id)!, piece: label.pieces[index] ?? 1, code, grain: runs };
      }),
    ),
  );
  return [...earlier, ...now];
}
