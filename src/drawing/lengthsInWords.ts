import { printMm, printMmShort, UM_PER_INCH } from '../basics/lengths.ts';
import type { Um } from '../model/geometry.ts';
import type { SheetRect } from './sawnSheet.ts';

/** How lengths are printed: in mm, or in inches as fractions of 1/64 or 1/32. */
export type Units = 'mm' | 'inches' | 'inches-32';

const FINEST: Readonly<Record<Exclude<Units, 'mm'>, 64 | 32>> = { inches: 64, 'inches-32': 32 };

/**
 * Inches to the nearest fraction, halves away from zero, as on a rule: `16 7/32"`. All in whole numbers, so that what is
 * printed is at most half a fraction from the length: 0.2 mm with 64ths, 0.4 mm with 32nds.
 */
export function printInches(um: Um, finest: 64 | 32): string {
  const far = Math.abs(um);
  const parts = Math.floor((2 * far * finest + UM_PER_INCH) / (2 * UM_PER_INCH));
  const whole = Math.floor(parts / finest);
  let part = parts % finest;
  let of: number = finest;
  while (part !== 0 && part % 2 === 0) {
    part /= 2;
    of /= 2;
  }
  const sign = um < 0 && parts > 0 ? '−' : '';
  if (part === 0) return `${sign}${whole}"`;
  return whole === 0 ? `${sign}${part}/${of}"` : `${sign}${whole}\u00a0${part}/${of}"`;
}

/** A length as it is read on a drawing or in a list: `412`, `412.3` or `16 7/32"`. */
export function printLength(um: Um, units: Units): string {
  return units === 'mm' ? printMmShort(um) : printInches(um, FINEST[units]);
}

/** As `printLength`, with the name of the unit where it is mm: `16.2 mm`, `5/8"`. */
export function printNamedLength(um: Um, units: Units): string {
  return units === 'mm' ? `${printMmShort(um)} mm` : printLength(um, units);
}

/**
 * A fence setting or another length that is set on the saw: `412.0`. In inches the mm stand beside it, since a fraction
 * may be off by more than a saw can be set: `16 7/32" (412.0)`.
 */
export function printSetting(um: Um, units: Units): string {
  return units === 'mm' ? printMm(um) : `${printLength(um, units)} (${printMm(um)})`;
}

/** Two sizes of a piece, with spaces that do not break: `600 × 397.5`. */
export function printSize(firstUm: Um, secondUm: Um, units: Units): string {
  return `${printLength(firstUm, units)}\u00a0×\u00a0${printLength(secondUm, units)}`;
}

/** Size of a piece of a sheet, the figure along the sheet's grain first; along its length where it has none. */
export function printRect(rect: SheetRect, grain: 'length' | 'width' | 'none', units: Units): string {
  const x = rect.x1 - rect.x0;
  const y = rect.y1 - rect.y0;
  return grain === 'width' ? printSize(y, x, units) : printSize(x, y, units);
}
