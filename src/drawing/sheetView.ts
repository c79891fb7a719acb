import type { Box } from './drawing.ts';
import type { SheetRect } from './sawnSheet.ts';

/**
 * Reductions in the order they are tried: those of ISO 5455 (1:1, 1:2, 1:5, 1:10, 1:20, 1:50, 1:100) with the
 * divisions of a common three-edged scale rule between them (1:2.5, 1:7.5, 1:12.5, 1:25, 1:75), and 1:15, 1:30, 1:40. The larger drawing is
 * worth more to the reader than the rounder number, and the scale is printed on the sheet.
 */
export const REDUCTIONS = [
  1, 2, 2.5, 5, 7.5, 10, 12.5, 15, 20, 25, 30, 40, 50, 75, 100, 200, 500, 1000,
] as const;

/** How a sheet lies on the page. */
export interface SheetView {
  /** One millimetre on paper stands for this many. */
  readonly reduction: number;
  /**
   * `as it lies`: length to the right, width up the page. `turned`: by a quarter anticlockwise, length up the page
   * and width to the left, so that its left side is at the bottom and its near side on the right.
   */
  readonly lies: 'as it lies' | 'turned';
  /** The raw sheet on the page. */
  readonly box: Box;
  place(rect: SheetRect): Box;
  /** Direction on the page of a line along an axis of the sheet. */
  onPage(axis: 'x' | 'y'): 'across' | 'up';
}

/**
 * Puts a sheet at the top left of a field, in the larger of its two positions and in the largest scale that leaves
 * it inside, or in `leastReduction` where that is smaller. `field` in page mm. Throws when the sheet is larger than a kilometre.
 */
export function viewOfSheet(raw: SheetRect, field: Box, leastReduction = 0): SheetView {
  const fieldWidth = field.x1 - field.x0;
  const fieldHeight = field.y1 - field.y0;
  const fits = (lengthMm: number, widthMm: number) =>
    REDUCTIONS.find(
      (by) => by >= leastReduction && lengthMm / by <= fieldWidth && widthMm / by <= fieldHeight,
    );
  const lengthMm = raw.x1 / 1000;
  const widthMm = raw.y1 / 1000;
  const straight = fits(lengthMm, widthMm);
  const turned = fits(widthMm, lengthMm);
  const lies =
    turned !== undefined && (straight === undefined || turned < straight) ? 'turned' : 'as it lies';
  const reduction = lies === 'turned' ? turned : straight;
  if (reduction === undefined) throw new Error(`a sheet of ${lengthMm} × ${widthMm} mm cannot be drawn`);
  return makeView(raw, [field.x0, field.y0], reduction, lies);
}

/** A sheet at a given scale with its top left corner on the page at `corner`. */
export function makeView(
  raw: SheetRect,
  corner: readonly [x: number, y: number],
  reduction: number,
  lies: SheetView['lies'],
): SheetView {
  const [left, top] = corner;
  const onPaper = (um: number) => um / 1000 / reduction;
  const place = (r: SheetRect): Box =>
    lies === 'as it lies'
      ? {
          x0: left + onPaper(r.x0),
          y0: top + onPaper(raw.y1 - r.y1),
          x1: left + onPaper(r.x1),
          y1: top + onPaper(raw.y1 - r.y0),
        }
      : {
          x0: left + onPaper(raw.y1 - r.y1),
          y0: top + onPaper(raw.x1 - r.x1),
          x1: left + onPaper(raw.y1 - r.y0),
          y1: top + onPaper(raw.x1 - r.x0),
        };
  const onPage = (axis: 'x' | 'y') => ((axis === 'x') === (lies === 'as it lies') ? 'across' : 'up');
  return { reduction, lies, box: place(raw), place, onPage };
}
