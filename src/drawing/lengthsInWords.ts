import { printMm, printMmShort, UM_PER_INCH } from '../basics/lengths.ts';
import type { Um } from '../model/geometry.ts';
import type { SheetRect } from './sawnSheet.ts';

export type Units = 'mm' | 'inch';

/** Inches to the nearest 1/64, as on a rule: `16 7/32"`. */
function printInch(um: Um): string {
  const sixtyFourths = Math.round((um * 64) / UM_PER_INCH);
  const whole = Math.floor(sixtyFourths / 64);
  let part = sixtyFourths % 64;
  let of = 64;
  while (part !== 0 && part % 2 === 0) {
    part /= 2;
    of /= 2;
  }
  if (part === 0) return `${whole}"`;
  return whole === 0 ? `${part}/${of}"` : `${whole}\u00a0${part}/${of}"`;
}

/** A fence setting or another length that is set on the saw: `412.0`. */
export function printSetting(um: Um, units: Units): string {
  return units === 'mm' ? printMm(um) : printInch(um);
}

/** Two sizes of a piece, with spaces that do not break: `600 × 397.5`. */
export function printSize(firstUm: Um, secondUm: Um, units: Units): string {
  const print = units === 'mm' ? printMmShort : printInch;
  return `${print(firstUm)}\u00a0×\u00a0${print(secondUm)}`;
}

/** Size of a piece of a sheet, the figure along the sheet's grain first; along its length where it has none. */
export function printRect(rect: SheetRect, grain: 'length' | 'width' | 'none', units: Units): string {
  const x = rect.x1 - rect.x0;
  const y = rect.y1 - rect.y0;
  return grain === 'width' ? printSize(y, x, units) : printSize(x, y, units);
}
