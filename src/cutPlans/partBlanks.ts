import { umToMm } from '../basics/lengths.ts';
import { worthKeeping } from '../basics/worthKeeping.ts';
import type { Um } from '../model/geometry.ts';
import type { PlanEnding, PlanStep } from '../model/plan.ts';
import type { Demand, SawRules } from '../model/stock.ts';
import { pieceName, restName } from './pieceNames.ts';

/** A matched blank that has been cut free, by name, before it is parted into its fronts. */
export interface Blank {
  /** Index of its demand; blanks of one demand are parted together. */
  readonly index: number;
  readonly demand: Demand;
  readonly blank: NonNullable<Demand['blank']>;
  readonly name: string;
  readonly depth: number;
  readonly lengthAlong: 'x' | 'y';
}

type Blade = 'length' | 'width';

/** Blades that part the row and that bring a front to its own width. */
function bladesOf(blank: Blank): { readonly parting: Blade; readonly across: Blade } {
  const rowAlongX = (blank.blank.follows === 'length') === (blank.lengthAlong === 'x');
  return rowAlongX ? { parting: 'width', across: 'length' } : { parting: 'length', across: 'width' };
}

function acrossOf(blank: Blank): Um {
  return blank.blank.follows === 'length' ? blank.demand.widthUm : blank.demand.lengthUm;
}

function partOnce(blank: Blank, index: number, saw: SawRules): PlanStep {
  const { name, depth } = blank;
  const { pieces } = blank.blank;
  const after = pieceName(name, depth, index + 1);
  return {
    cut: 'part',
    piece: index === 0 ? name : restName(pieceName(name, depth, index)),
    blade: bladesOf(blank).parting,
    fence: umToMm(pieces[index]!.alongUm),
    gives: [pieceName(name, depth, index), index + 2 === pieces.length ? after : restName(after)],
    take: umToMm(saw.kerfUm),
  };
}

/** A front narrower than its blank loses what is too much; a strip that is left beyond the kerf is spare. */
function bringToWidth(
  blank: Blank,
  index: number,
  saw: SawRules,
  steps: PlanStep[],
  endings: PlanEnding[],
): string {
  const piece = pieceName(blank.name, blank.depth, index);
  const { acrossUm, alongUm } = blank.blank.pieces[index]!;
  const spareUm = acrossOf(blank) - acrossUm;
  if (spareUm === 0) return piece;
  const front = pieceName(piece, blank.depth + 1, 0);
  const strip = pieceName(piece, blank.depth + 1, 1);
  const takeUm = Math.min(spareUm, saw.kerfUm);
  const blade = bladesOf(blank).across;
  const gives = spareUm > saw.kerfUm ? [front, strip] : [front];
  steps.push({ cut: 'part', piece, blade, fence: umToMm(acrossUm), gives, take: umToMm(takeUm) });
  if (spareUm > saw.kerfUm) {
    const along = umToMm(alongUm);
    const left = umToMm(spareUm - saw.kerfUm);
    const [length, width] = blade === 'width' ? [left, along] : [along, left];
    const keep = worthKeeping(alongUm, spareUm - saw.kerfUm, saw.leastOffcut);
    endings.push({ is: keep ? 'offcut' : 'waste', piece: strip, length, width });
  }
  return front;
}

/**
 * Parts blanks into their fronts, first front at the left or near edge, and adds the cuts and the pieces they leave.
 * Equal blanks are parted side by side so that the fence stays where it is.
 */
export function partBlanks(
  blanks: readonly Blank[],
  saw: SawRules,
  steps: PlanStep[],
  endings: PlanEnding[],
): void {
  const kinds = [...new Set(blanks.map((blank) => blank.index))];
  for (const kind of kinds) {
    const alike = blanks.filter((blank) => blank.index === kind);
    const { pieces } = alike[0]!.blank;
    for (let i = 0; i + 1 < pieces.length; i++) {
      for (const blank of alike) steps.push(partOnce(blank, i, saw));
    }
    pieces.forEach((front, i) => {
      for (const blank of alike) {
        const piece = bringToWidth(blank, i, saw, steps, endings);
        const lengthAlong = blank.lengthAlong === 'x' ? 'length' : 'width';
        endings.push({ is: 'panel', piece, panel: front.part, lengthAlong });
      }
    });
  }
}
