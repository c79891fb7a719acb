/**
 * Worth of a free rectangle: area · (area / sheet area)^¼, so that one large rectangle counts for more than several
 * small ones of the same area together. The fourth root is two square roots, which are exact to the last bit on
 * every machine; `**` is not.
 */
export function slackValue(area: number, sheetArea: number): number {
  return area === 0 ? 0 : area * Math.sqrt(Math.sqrt(area / sheetArea));
}

/**
 * Worth of what is left of a sheet W × H beside and above a tree of w × h in its corner: the better of the two ways
 * to divide the corner.
 *
 *     ┌─────────────┐   ┌──────┬──────┐
 *     │             │   │      │      │
 *     ├──────┬──────┤   ├──────┤      │
 *     │ w×h  │      │   │ w×h  │      │
 *     └──────┴──────┘   └──────┴──────┘
 */
export function freeCornerValue(
  sheetW: number,
  sheetH: number,
  w: number,
  h: number,
  sheetArea: number,
): number {
  const above = slackValue(sheetW * (sheetH - h), sheetArea) + slackValue((sheetW - w) * h, sheetArea);
  const beside = slackValue((sheetW - w) * sheetH, sheetArea) + slackValue(w * (sheetH - h), sheetArea);
  return Math.max(above, beside);
}
