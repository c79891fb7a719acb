import qrcode, { type QrSymbol } from 'qrcode/lib/core/qrcode.js';
import type { Box } from './drawing.ts';
import type { Sketch } from './sketch.ts';

/** Modules that stay white around a code on each side (ISO/IEC 18004, quiet zone). */
export const QUIET_MODULES = 4;

/** Least side of a printed module in mm, so that a phone can tell them apart (common practice, no source). */
export const LEAST_MODULE_MM = 0.35;

/**
 * The smallest QR code of a text (digits, capitals and ` $%*+-./:`) with error correction Q, which restores about a quarter
 * of it: labels in a workshop get dusty. Its side is 17 + 4 · version modules. Throws for other letters.
 */
export function qrCode(text: string): QrSymbol {
  return qrcode.create([{ data: text, mode: 'alphanumeric' }], { errorCorrectionLevel: 'Q' });
}

/** Dark modules as level strips, in modules from the top left one. */
function strips({ size, data }: QrSymbol['modules']): Box[] {
  const found: Box[] = [];
  for (let row = 0; row < size; row++) {
    let start = -1;
    for (let column = 0; column <= size; column++) {
      const dark = column < size && data[row * size + column] === 1;
      if (dark && start < 0) start = column;
      if (dark || start < 0) continue;
      found.push({ x0: start, y0: row, x1: column, y1: row + 1 });
      start = -1;
    }
  }
  return found;
}

/**
 * Draws the code of a text into a square of the page, its quiet zone inside the square. Throws when modules would be
 * smaller than `LEAST_MODULE_MM`.
 */
export function drawQrCode(
  sketch: Sketch,
  text: string,
  corner: readonly [x: number, y: number],
  sideMm: number,
): void {
  const { modules } = qrCode(text);
  const moduleMm = sideMm / (modules.size + 2 * QUIET_MODULES);
  if (moduleMm < LEAST_MODULE_MM) throw new Error(`${text} has modules of ${moduleMm} mm on ${sideMm} mm`);
  const [x, y] = [corner[0] + QUIET_MODULES * moduleMm, corner[1] + QUIET_MODULES * moduleMm];
  const boxes = strips(modules).map(({ x0, y0, x1, y1 }) => ({
    x0: x + x0 * moduleMm,
    y0: y + y0 * moduleMm,
    x1: x + x1 * moduleMm,
    y1: y + y1 * moduleMm,
  }));
  sketch.rects('codes', boxes, 1);
}
