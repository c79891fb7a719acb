import { guideOf } from '../basics/cutGuide.ts';
import { mmToUm } from '../basics/lengths.ts';
import { printSetting, printSize, type Units } from '../drawing/lengthsInWords.ts';
import { plainText } from '../drawing/lettering.ts';
import { type SawnEnd, sawSheet, shavedUm } from '../drawing/sawnSheet.ts';
import { isNarrowCut } from '../drawing/stepTable.ts';
import type { PlanGroup, PlanSheet } from '../model/plan.ts';
import type { Words } from './words/words.ts';

/** One step of the saw as a sentence, and what has come off ready with it. */
export interface StepInWords {
  readonly number: number;
  readonly sentence: string;
  /** Whether hands must keep off the fence: see the cautions. */
  readonly pushStick: boolean;
  /** Whether what is measured off is too narrow to bear the rail. */
  readonly bearsNoRail?: true;
  /** A sentence for each piece that is done after this step: panel, offcut or waste. */
  readonly outcomes: readonly string[];
}

/** A name is not parted at the end of a line. */
function pieceName(name: string, words: Words): string {
  return words.drawings.cutPlan.piece(plainText(name)).replaceAll(' ', '\u00a0');
}

function endInWords(end: SawnEnd, numberOf: (panel: string) => number, words: Words, units: Units): string {
  const { piece, ending, panel } = end;
  const name = pieceName(piece.name, words);
  if (panel !== null) {
    const size = printSize(mmToUm(panel.length), mmToUm(panel.width), units);
    return words.steps.panel(name, numberOf(panel.id), plainText(panel.name), size);
  }
  const { x0, y0, x1, y1 } = piece.rect;
  const size = printSize(x1 - x0, y1 - y0, units);
  return ending.is === 'offcut' ? words.steps.offcut(name, size) : words.steps.waste(name, size);
}

/**
 * The steps of a sheet, in the order of sawing, as sentences of which each says all that is set: the piece in hand,
 * fence, rail or trim (in mm with one decimal, or in inches with the mm beside them), the way of the blade, and what the
 * pieces are called. A sheet that is used whole has one sentence that says so. `numberOf` gives a panel's number in the
 * cutting list. Throws when the plan does not hold together.
 */
export function stepsInWords(
  group: PlanGroup,
  sheet: PlanSheet,
  numberOf: (panel: string) => number,
  words: Words,
  units: Units = 'mm',
): StepInWords[] {
  const guide = guideOf(group);
  const called = (name: string) => pieceName(name, words);
  const sawn = sawSheet(group, sheet);
  const ends = new Map(sawn.ends.map((end) => [end.piece.name, end]));
  if (sawn.cuts.length === 0) {
    const outcomes = sawn.ends.map((end) => endInWords(end, numberOf, words, units));
    return [{ number: 1, sentence: words.steps.whole, pushStick: false, outcomes }];
  }
  return sawn.cuts.map((cut) => {
    const { step } = cut;
    const piece = called(step.piece);
    const names = cut.gives.map((given) => called(given.name));
    const shaved = shavedUm(cut, group);
    const sentence =
      step.cut === 'trim'
        ? words.steps.trim(piece, step.side, printSetting(mmToUm(step.take), units), called(step.leaves))
        : words.steps.part(
            piece,
            printSetting(mmToUm(step.fence), units),
            step.cut,
            step.blade,
            names,
            guide,
            shaved === null ? null : printSetting(shaved, units),
          );
    const outcomes = cut.gives.flatMap((given) => {
      const end = ends.get(given.name);
      return end === undefined ? [] : [endInWords(end, numberOf, words, units)];
    });
    const narrow = isNarrowCut(cut, guide);
    return {
      number: cut.number,
      sentence,
      pushStick: narrow && guide === 'fence',
      ...(narrow && guide === 'rail' ? { bearsNoRail: true } : {}),
      outcomes,
    };
  });
}

/** What a narrow cut asks for, in words; null where it asks for nothing. */
export function careInWords(step: StepInWords, { steps: says }: Words): string | null {
  if (step.pushStick) return says.narrow.fence;
  return step.bearsNoRail === true ? says.narrow.rail : null;
}
