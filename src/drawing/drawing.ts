/**
 * A drawing on paper, before any file format: shapes in page millimetres, x to the right and y down from the top
 * left corner of the page. Every format (SVG, later DXF and PDF) is a function of this one value.
 */
export interface Drawing {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly title: string;
  /** One sentence for readers who cannot see the picture. */
  readonly description: string;
  readonly shapes: readonly Shape[];
  /** Where pieces of the plan lie on the page, by their name, for pages that answer to a tap. */
  readonly pieces?: readonly { readonly piece: string; readonly box: Box }[];
  /** How many mm of the sheet one mm of the page stands for, where it is to scale. */
  readonly reduction?: number;
  /** Room on the page for what a document lays beside the drawing, in the order of reading. */
  readonly free?: readonly Box[];
  /** The part of the page that a screen shows, where the rest is room left free. */
  readonly picture?: Box;
}

export type Layer =
  | 'frame'
  | 'title block'
  | 'sheet'
  | 'trim'
  | 'waste'
  | 'offcuts'
  | 'cuts'
  | 'panels'
  | 'edging'
  | 'grain'
  | 'numbers'
  | 'tables'
  | 'hidden lines'
  | 'dimensions'
  | 'surroundings'
  | 'finishes'
  | 'holes'
  | 'codes';

export type Weight = 'regular' | 'bold';

/** Width in mm of a text set in a font size in mm: the drawing's only knowledge of fonts. */
export type TextMeasurer = (text: string, sizeMm: number, weight: Weight) => number;

export interface Stroke {
  readonly widthMm: number;
  /** Lengths of dashes and gaps in turn; empty for a full line. */
  readonly dashMm: readonly number[];
}

/** A rectangle on the page: left, top, right, bottom in mm. */
export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

export type Segment = readonly [x0: number, y0: number, x1: number, y1: number];

export type Shape =
  | {
      readonly kind: 'line';
      readonly layer: Layer;
      readonly x0: number;
      readonly y0: number;
      readonly x1: number;
      readonly y1: number;
      readonly stroke: Stroke;
    }
  | {
      readonly kind: 'lines';
      readonly layer: Layer;
      readonly segments: readonly Segment[];
      readonly stroke: Stroke;
    }
  | {
      readonly kind: 'rect';
      readonly layer: Layer;
      readonly box: Box;
      readonly radiusMm: number;
      readonly stroke: Stroke | null;
      /** Tone from 0 (white) to 1 (black), or null for no fill. */
      readonly fill: number | null;
    }
  | {
      /** Many filled rectangles as one figure, so that where two touch no seam shows: the squares of a code. */
      readonly kind: 'rects';
      readonly layer: Layer;
      readonly boxes: readonly Box[];
      readonly fill: number;
    }
  | {
      readonly kind: 'polygon';
      readonly layer: Layer;
      readonly points: readonly (readonly [x: number, y: number])[];
      readonly fill: number;
    }
  | {
      readonly kind: 'circle';
      readonly layer: Layer;
      readonly x: number;
      readonly y: number;
      readonly radiusMm: number;
      readonly stroke: Stroke;
    }
  | TextShape;

export interface TextShape {
  readonly kind: 'text';
  readonly layer: Layer;
  readonly text: string;
  /** The anchor's place on the baseline. */
  readonly x: number;
  readonly y: number;
  readonly sizeMm: number;
  readonly weight: Weight;
  readonly anchor: 'start' | 'middle' | 'end';
  /** `up`: turned a quarter, to be read from the right (ISO 129). */
  readonly reads: 'across' | 'up';
  /** As measured; formats that can should set the text to just this width. */
  readonly widthMm: number;
}

/** How far letters rise above and hang below the baseline, as parts of the font size, accents included. */
export const TEXT_RISE = 0.78;
export const TEXT_FALL = 0.24;

/** The space a text takes on the page. */
export function textBox(text: TextShape): Box {
  const before = { start: 0, middle: text.widthMm / 2, end: text.widthMm }[text.anchor];
  const rise = TEXT_RISE * text.sizeMm;
  const fall = TEXT_FALL * text.sizeMm;
  if (text.reads === 'across') {
    const x0 = text.x - before;
    return { x0, y0: text.y - rise, x1: x0 + text.widthMm, y1: text.y + fall };
  }
  const y1 = text.y + before;
  return { x0: text.x - rise, y0: y1 - text.widthMm, x1: text.x + fall, y1 };
}

/** Whether two boxes share more than a border. */
export function boxesOverlap(a: Box, b: Box): boolean {
  return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;
}

/** A box made smaller by a margin on each side (larger by a negative one). */
export function inset(box: Box, marginMm: number): Box {
  return {
    x0: box.x0 + marginMm,
    y0: box.y0 + marginMm,
    x1: box.x1 - marginMm,
    y1: box.y1 - marginMm,
  };
}
