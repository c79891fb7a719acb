import type { Um } from '../model/geometry.ts';
import { type Faults, mm, type Piece, type SizedBy } from './pieces.ts';

function cause(by: SizedBy, foundUm: Um): string {
  switch (by.how) {
    case 'fence':
      return `the fence is at ${mm(foundUm)}`;
    case 'rest':
      return `what the cut leaves is ${mm(foundUm)}`;
    case 'trim':
      return `what the trim leaves is ${mm(foundUm)}`;
    case 'sheet':
      return `the raw sheet is ${mm(foundUm)}`;
  }
}

/**
 * Adds a fault for each side on which a piece has not the wanted size, at the cut that gave it its size.
 * `what` names the piece in a sentence; `wanted` is along the sheet's length (x) and width (y).
 */
export function checkSize(
  faults: Faults,
  sheet: number,
  piece: Piece,
  what: string,
  wanted: { readonly xUm: Um; readonly yUm: Um },
): void {
  const check = (foundUm: Um, wantedUm: Um, by: SizedBy, side: string): void => {
    if (foundUm === wantedUm) return;
    faults.add(
      'size-wrong',
      `${cause(by, foundUm)} but ${what} must be ${mm(wantedUm)} along the ${side} of the sheet`,
      by.step === 0 ? { sheet } : { sheet, cut: by.step },
      { found: `${mm(foundUm)} mm`, expected: `${mm(wantedUm)} mm` },
    );
  };
  check(piece.x1 - piece.x0, wanted.xUm, piece.xBy, 'length');
  check(piece.y1 - piece.y0, wanted.yUm, piece.yBy, 'width');
}
