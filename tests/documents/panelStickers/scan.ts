import jsqr from 'jsqr';
import type { Box, Drawing } from '../../../src/drawing/drawing.ts';
import { boxesOverlap } from '../../../src/drawing/drawing.ts';
import { roomOf } from './stickerFixtures.ts';

const scan = jsqr as unknown as typeof jsqr.default;

/** A grey picture: a byte a dot, row after row, 255 is white. */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/**
 * Paints the filled squares, bars and frames of a part of a drawing as a printer would that has only black and white: a
 * dot is black when its middle lies on a shape. Letters are painted as grey boxes, which is worse for a scanner.
 */
export function paint(drawing: Drawing, part: Box, dotsPerInch: number): GreyPicture {
  const perMm = dotsPerInch / 25.4;
  const width = Math.round((part.x1 - part.x0) * perMm);
  const height = Math.round((part.y1 - part.y0) * perMm);
  const grey = new Uint8Array(width * height).fill(255);
  const fill = (box: Box, tone: number) => {
    const first = (mm: number, from: number) => Math.max(0, Math.ceil((mm - from) * perMm - 0.5));
    const yEnd = Math.min(height, Math.ceil((box.y1 - part.y0) * perMm - 0.5));
    const xEnd = Math.min(width, Math.ceil((box.x1 - part.x0) * perMm - 0.5));
    for (let y = first(box.y0, part.y0); y < yEnd; y++) {
      for (let x = first(box.x0, part.x0); x < xEnd; x++) grey[y * width + x] = tone;
    }
  };
  for (const shape of drawing.shapes) {
    if (shape.kind === 'rects') for (const box of shape.boxes) fill(box, 0);
    else if (shape.kind === 'line' && boxesOverlap(roomOf(shape), part)) fill(roomOf(shape), 0);
    else if (shape.kind === 'text' && boxesOverlap(roomOf(shape), part)) fill(roomOf(shape), 150);
  }
  return { width, height, grey };
}

/** What a QR code in a picture says; null when none is found. */
export function scanned({ width, height, grey }: GreyPicture): string | null {
  const colours = new Uint8ClampedArray(width * height * 4);
  for (let dot = 0; dot < grey.length; dot++) {
    colours.fill(grey[dot]!, dot * 4, dot * 4 + 3);
    colours[dot * 4 + 3] = 255;
  }
  return scan(colours, width, height, { inversionAttempts: 'dontInvert' })?.data ?? null;
}

/** The codes of a page by where they stand: boxes of the dark squares, in the order in which they were drawn. */
export function codesOn(drawing: Drawing): Box[] {
  return drawing.shapes.filter((shape) => shape.kind === 'rects').map(roomOf);
}

export function grown(box: Box, mm: number): Box {
  return { x0: box.x0 - mm, y0: box.y0 - mm, x1: box.x1 + mm, y1: box.y1 + mm };
}
