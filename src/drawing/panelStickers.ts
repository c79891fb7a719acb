import type { Box, Drawing, TextMeasurer } from './drawing.ts';
import { TEXT_FALL, TEXT_RISE } from './drawing.ts';
import { LINE_PITCH, NARROW } from './lettering.ts';
import type { PanelSticker } from './panelSticker.ts';
import { type StickerFormat, stickerCorner, stickerPadding } from './panelStickerFormats.ts';
import { drawStickerPicture } from './panelStickerPicture.ts';
import { drawQrCode } from './panelStickerQr.ts';
import { blockHeight, codeText, type StickerText, textInFull, textsToTry } from './panelStickerText.ts';
import { Sketch } from './sketch.ts';

/** Gaps between the text, the picture and the code, in mm. */
const GAP_MM = 1.5;
/** Least room for a picture that stands below or beside the text. */
const LEAST_PICTURE_MM = { high: 11, wide: 15, besideHigh: 10 } as const;

/** Where everything on a label goes, from its top left printed corner. */
interface Arrangement {
  readonly text: StickerText;
  readonly picture: Box;
  readonly heightMm: number;
}

/** How large the piece would be drawn in a box, in mm a µm. */
function scaleIn({ lengthUm, widthUm }: PanelSticker['picture'], box: Box): number {
  return Math.min((box.x1 - box.x0) / lengthUm, (box.y1 - box.y0) / widthUm);
}

/** The picture's room beside or below a text, or null when there is too little. */
function pictureRoom(text: StickerText, widthMm: number, heightMm: number): Box | null {
  const beside = text.bodyWidthMm < widthMm;
  const top = text.headMm + (beside ? 0 : text.bodyMm + 0.8);
  const least = beside ? LEAST_PICTURE_MM.besideHigh : LEAST_PICTURE_MM.high;
  if (text.headMm + text.bodyMm > heightMm || heightMm - top < least) return null;
  return { x0: beside ? text.bodyWidthMm + GAP_MM : 0, y0: top, x1: widthMm, y1: heightMm };
}

/**
 * The most legible text that leaves room for the picture, beside or below it; of two in the same letters the one whose
 * picture is larger. Throws when not even the shortest fits: the format is too small.
 */
function arrange(
  sticker: PanelSticker,
  widthMm: number,
  heightMm: number,
  measure: TextMeasurer,
): Arrangement {
  const pictureWidth = Math.min(40, Math.max(LEAST_PICTURE_MM.wide, 0.34 * widthMm));
  const widths = [widthMm - pictureWidth - GAP_MM, widthMm].map((bodyMm) => ({ headMm: widthMm, bodyMm }));
  let best: Arrangement | null = null;
  for (const text of textsToTry(sticker, widths, measure)) {
    if (best !== null && text.sizeMm !== best.text.sizeMm) return best;
    const picture = pictureRoom(text, widthMm, heightMm);
    if (picture === null) continue;
    const better =
      best === null || scaleIn(sticker.picture, picture) > scaleIn(sticker.picture, best.picture);
    if (better) best = { text, picture, heightMm };
  }
  if (best === null)
    throw new Error(`no room for the label of ${sticker.code} on ${widthMm} × ${heightMm} mm`);
  return best;
}

/** All of the text, and the picture across the whole label below it and the code. */
function arrangeAtLength(
  sticker: PanelSticker,
  widthMm: number,
  textWidthMm: number,
  codeMm: number,
  measure: TextMeasurer,
): Arrangement {
  const text = textInFull(sticker, textWidthMm, measure);
  const { lengthUm, widthUm } = sticker.picture;
  const high = Math.min(30, Math.max(10, (widthMm * widthUm) / lengthUm));
  const top = Math.max(text.headMm + text.bodyMm, codeMm) + GAP_MM;
  return { text, picture: { x0: 0, y0: top, x1: widthMm, y1: top + high }, heightMm: top + high };
}

function drawText(
  sketch: Sketch,
  sticker: PanelSticker,
  text: StickerText,
  [x, y]: readonly [number, number],
): void {
  const [markWidth, markHeight] = text.markBoxMm;
  const markBox = { x0: x + 0.2, y0: y + 0.2, x1: x + markWidth - 0.2, y1: y + markHeight - 0.2 };
  sketch.rect('panels', markBox, { stroke: { widthMm: 0.35, dashMm: [] } });
  sketch.text('panels', sticker.mark, x + markWidth / 2, y + markHeight / 2 + text.markSizeMm * 0.365, {
    sizeMm: text.markSizeMm,
    weight: 'bold',
    anchor: 'middle',
  });
  const left = x + markWidth + 1.2;
  const headingHeight = blockHeight(text.heading.lines.length, text.headingSizeMm);
  const headingTop = y + Math.max(0, (markHeight - headingHeight) / 2);
  text.heading.lines.forEach((line, index) => {
    const baseline = headingTop + text.headingSizeMm * (TEXT_RISE + LINE_PITCH * index);
    sketch.text('panels', line, left, baseline, { sizeMm: text.headingSizeMm, weight: 'bold' });
  });
  const { sizeMm } = text;
  let baseline = y + text.headMm + sizeMm * TEXT_RISE;
  for (const { lines, weight } of text.body) {
    for (const line of lines) {
      sketch.text('panels', line, x, baseline, { sizeMm, weight });
      baseline += sizeMm * LINE_PITCH;
    }
  }
  if (sticker.fillIn === null) return;
  const line = y + text.headMm + text.bodyMm - sizeMm * TEXT_FALL;
  sketch.text('panels', sticker.fillIn, x, line, { sizeMm });
  const from = x + sketch.measure(sticker.fillIn, sizeMm, 'regular') + 1;
  sketch.line('panels', from, line, x + text.bodyWidthMm, line, NARROW);
}

function moved(box: Box, [x, y]: readonly [number, number]): Box {
  return { x0: box.x0 + x, y0: box.y0 + y, x1: box.x1 + x, y1: box.y1 + y };
}

/** Draws a label from the top left corner of its printed part; gives the height it takes. */
function drawSticker(
  sketch: Sketch,
  sticker: PanelSticker,
  format: StickerFormat,
  corner: readonly [x: number, y: number],
): number {
  const { measure } = sketch;
  const padding = stickerPadding(format);
  const widthMm = format.labelMm[0] - 2 * padding[0];
  const textWidthMm = widthMm - format.codeMm - GAP_MM;
  const fixedHeight = format.labelMm[1] === null ? null : format.labelMm[1] - 2 * padding[1];
  const codeRoom = (fixedHeight ?? Number.POSITIVE_INFINITY) - format.codeMm;
  const code = codeText(sticker.code, [format.codeMm, codeRoom], measure);
  const codeMm = format.codeMm + blockHeight(code.lines.length, code.sizeMm);
  const arrangement =
    fixedHeight === null
      ? arrangeAtLength(sticker, widthMm, textWidthMm, codeMm, measure)
      : arrange(sticker, textWidthMm, fixedHeight, measure);
  drawText(sketch, sticker, arrangement.text, corner);
  drawStickerPicture(sketch, sticker.picture, moved(arrangement.picture, corner));
  const codeLeft = corner[0] + widthMm - format.codeMm;
  drawQrCode(sketch, sticker.code, [codeLeft, corner[1]], format.codeMm);
  code.lines.forEach((line, index) => {
    const baseline = corner[1] + format.codeMm + code.sizeMm * (TEXT_RISE + LINE_PITCH * index);
    const style = { sizeMm: code.sizeMm, anchor: 'middle' } as const;
    sketch.text('codes', line, codeLeft + format.codeMm / 2, baseline, style);
  });
  return arrangement.heightMm;
}

/** How labels are printed. */
export interface StickerPrint {
  readonly format: StickerFormat;
  /** The label of the first sheet to begin with, from 1: those before it have been used. */
  readonly first: number;
  readonly measure: TextMeasurer;
  /** Title of a page. */
  readonly title: (page: number, pages: number) => string;
}

/**
 * Labels in order on pages of a format, row after row. Nothing lies outside the printed part of its label and no text on
 * another; a text that is too long is wrapped or shortened. No labels give no pages. Throws when `first` is not on a sheet.
 */
export function drawStickers(stickers: readonly PanelSticker[], print: StickerPrint): Drawing[] {
  const { format, first, measure } = print;
  const perPage = format.columns * format.rows;
  if (!(first >= 1 && first <= perPage)) throw new Error(`there is no label ${first} among ${perPage}`);
  if (stickers.length === 0) return [];
  const count = Math.ceil((first - 1 + stickers.length) / perPage);
  const [across, down] = stickerPadding(format);
  return Array.from({ length: count }, (_, page) => {
    const sketch = new Sketch(measure);
    let heightMm = format.pageMm[1] ?? 0;
    for (let place = 0; place < perPage; place++) {
      const sticker = stickers[page * perPage + place - (first - 1)];
      if (sticker === undefined) continue;
      const [x, y] = stickerCorner(format, place);
      const taken = drawSticker(sketch, sticker, format, [x + across, y + down]);
      heightMm = Math.max(heightMm, y + taken + 2 * down);
    }
    const title = print.title(page + 1, count);
    return { widthMm: format.pageMm[0], heightMm, title, description: title, shapes: sketch.shapes };
  });
}
