import { type Box, TEXT_FALL, TEXT_RISE, type Weight } from './drawing.ts';
import { LINE_PITCH, NARROW, wrap } from './lettering.ts';
import type { Sketch } from './sketch.ts';

/** A line of a label, after a mark in a square if it has one. */
export interface LabelLine {
  readonly text: string;
  readonly weight: Weight;
  /** Set in a square before the text. */
  readonly mark?: string;
}

/** Lines of one size set under each other, centred. */
export interface Label {
  readonly lines: readonly LabelLine[];
  readonly sizeMm: number;
  readonly reads: 'across' | 'up';
}

function markWidth(sketch: Sketch, mark: string, sizeMm: number): number {
  return Math.max(2.6, sketch.measure(mark, sizeMm, 'bold') + 1.2);
}

function lineWidth(sketch: Sketch, line: LabelLine, sizeMm: number): number {
  const text = line.text === '' ? 0 : sketch.measure(line.text, sizeMm, line.weight);
  if (line.mark === undefined) return text;
  return markWidth(sketch, line.mark, sizeMm) + (text === 0 ? 0 : 0.8 + text);
}

/** Width and height of a label as it is read. */
export function extent(sketch: Sketch, label: Label): readonly [width: number, height: number] {
  const width = Math.max(...label.lines.map((line) => lineWidth(sketch, line, label.sizeMm)));
  const marked = label.lines.some((line) => line.mark !== undefined) ? 0.5 : 0;
  const height = label.sizeMm * (TEXT_RISE + TEXT_FALL + LINE_PITCH * (label.lines.length - 1)) + marked;
  return [width, height];
}

/** Breaks a text between words into at most `most` lines, or null when that cannot be done. */
export function breakLine(
  sketch: Sketch,
  text: string,
  weight: Weight,
  sizeMm: number,
  widthMm: number,
  most: number,
): LabelLine[] | null {
  if (text === '') return [];
  const lines = wrap(text, widthMm, sizeMm, weight, sketch.measure);
  if (lines.length > most || lines.join(' ') !== text) return null;
  if (lines.some((line) => sketch.measure(line, sizeMm, weight) > widthMm)) return null;
  return lines.map((line) => ({ text: line, weight }));
}

/** A box of the given size around a centre. */
export function boxAround(centre: readonly [number, number], widthMm: number, heightMm: number): Box {
  return {
    x0: centre[0] - widthMm / 2,
    y0: centre[1] - heightMm / 2,
    x1: centre[0] + widthMm / 2,
    y1: centre[1] + heightMm / 2,
  };
}

function drawMark(sketch: Sketch, mark: string, label: Label, baseline: readonly [number, number]): number {
  const wide = markWidth(sketch, mark, label.sizeMm);
  const [x, y] = baseline;
  const rise = label.sizeMm * 0.86;
  const fall = label.sizeMm * 0.2;
  const across = label.reads === 'across';
  const box = across
    ? { x0: x, y0: y - rise, x1: x + wide, y1: y + fall }
    : { x0: x - rise, y0: y - wide, x1: x + fall, y1: y };
  sketch.rect('panels', box, { stroke: NARROW, fill: 0 });
  sketch.text('panels', mark, across ? x + wide / 2 : x, across ? y : y - wide / 2, {
    sizeMm: label.sizeMm,
    weight: 'bold',
    anchor: 'middle',
    reads: label.reads,
  });
  sketch.taken.take(box);
  return wide;
}

/** Writes a label around a centre. */
export function drawLabel(
  sketch: Sketch,
  label: Label,
  centre: readonly [number, number],
  layer: 'panels' | 'offcuts',
): void {
  const [, height] = extent(sketch, label);
  const { sizeMm, reads } = label;
  label.lines.forEach((line, index) => {
    const down =
      -height / 2 + sizeMm * (TEXT_RISE + LINE_PITCH * index) + (line.mark === undefined ? 0 : 0.25);
    const before = -lineWidth(sketch, line, sizeMm) / 2;
    const at = (forward: number): readonly [number, number] =>
      reads === 'across' ? [centre[0] + forward, centre[1] + down] : [centre[0] + down, centre[1] - forward];
    let start = before;
    if (line.mark !== undefined) start += drawMark(sketch, line.mark, label, at(before)) + 0.8;
    const [x, y] = at(start);
    sketch.text(layer, line.text, x, y, { sizeMm, weight: line.weight, reads });
  });
}
