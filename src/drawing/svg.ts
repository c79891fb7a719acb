import { type Container, type Element, registerWindow, SVG } from '@svgdotjs/svg.js';
import { leftwardsApart } from '../basics/visibleText.ts';
import type { Drawing, Shape, Stroke } from './drawing.ts';
import { plainText } from './lettering.ts';
import { plainWindow } from './plainDocument.ts';
import { textOfSvg } from './svgText.ts';

/** The family all drawings are measured in; a page without it sets each text to the measured width all the same. */
export const FONT_FAMILY = 'DejaVu Sans Condensed';

/** What is needed of a window to draw in: a document that makes elements. */
export interface DrawingWindow {
  readonly document: unknown;
}

/** A number as it is written into the file: to 0.001 mm. */
function mm(value: number): number {
  const rounded = Math.round(value * 1000) / 1000;
  return rounded === 0 ? 0 : rounded;
}

/** A tone from 0 (white) to 1 (black) as a grey of the web's sixteen-based notation. */
function grey(tone: number): string {
  const part = Math.round(255 * (1 - tone))
    .toString(16)
    .padStart(2, '0');
  return `#${part}${part}${part}`;
}

function strokeAttributes(stroke: Stroke): Record<string, string | number> {
  return stroke.dashMm.length === 0
    ? { stroke: '#000000', 'stroke-width': stroke.widthMm }
    : { stroke: '#000000', 'stroke-width': stroke.widthMm, 'stroke-dasharray': stroke.dashMm.join(' ') };
}

function textNode(parent: Container, text: string): Element {
  return parent.element('text').words(text);
}

function addShape(parent: Container, shape: Shape): void {
  switch (shape.kind) {
    case 'line':
      parent.element('line').attr({
        x1: mm(shape.x0),
        y1: mm(shape.y0),
        x2: mm(shape.x1),
        y2: mm(shape.y1),
        ...strokeAttributes(shape.stroke),
      });
      return;
    case 'lines':
      parent.element('path').attr({
        d: shape.segments.map(([x0, y0, x1, y1]) => `M${mm(x0)} ${mm(y0)}L${mm(x1)} ${mm(y1)}`).join(''),
        fill: 'none',
        ...strokeAttributes(shape.stroke),
      });
      return;
    case 'rect':
      parent.element('rect').attr({
        x: mm(shape.box.x0),
        y: mm(shape.box.y0),
        width: mm(shape.box.x1 - shape.box.x0),
        height: mm(shape.box.y1 - shape.box.y0),
        ...(shape.radiusMm > 0 ? { rx: mm(shape.radiusMm) } : {}),
        fill: shape.fill === null ? 'none' : grey(shape.fill),
        ...(shape.stroke ? strokeAttributes(shape.stroke) : {}),
      });
      return;
    case 'rects':
      parent.element('path').attr({
        d: shape.boxes
          .map(({ x0, y0, x1, y1 }) => `M${mm(x0)} ${mm(y0)}H${mm(x1)}V${mm(y1)}H${mm(x0)}Z`)
          .join(''),
        fill: grey(shape.fill),
      });
      return;
    case 'polygon':
      parent.element('polygon').attr({
        points: shape.points.map(([x, y]) => `${mm(x)},${mm(y)}`).join(' '),
        fill: grey(shape.fill),
      });
      return;
    case 'circle':
      parent.element('circle').attr({
        cx: mm(shape.x),
        cy: mm(shape.y),
        r: mm(shape.radiusMm),
        fill: 'none',
        ...strokeAttributes(shape.stroke),
      });
      return;
    case 'text':
      // A plain element: svg.js sets a text of its own anew, with an event, at every attribute that moves its letters.
      textNode(parent, leftwardsApart(plainText(shape.text))).attr({
        x: mm(shape.x),
        y: mm(shape.y),
        'font-size': shape.sizeMm,
        ...(shape.weight === 'bold' ? { 'font-weight': 'bold' } : {}),
        ...(shape.anchor === 'start' ? {} : { 'text-anchor': shape.anchor }),
        ...(shape.reads === 'up' ? { transform: `rotate(-90 ${mm(shape.x)} ${mm(shape.y)})` } : {}),
        textLength: mm(shape.widthMm),
        lengthAdjust: 'spacingAndGlyphs',
      });
      return;
    default:
      shape satisfies never;
  }
}

/**
 * A drawing as the text of an SVG file (SVG 1.1, UTF-8): width and height in mm and a viewBox in the same numbers,
 * so that it prints in true size. Shapes of one layer that follow each other share a group with the layer's name as
 * its class. The same drawing gives the same bytes, in whichever window it is drawn.
 */
export function svgFromDrawing(drawing: Drawing, window: DrawingWindow = plainWindow): string {
  registerWindow(window as never, window.document as never);
  const root = SVG().size(`${mm(drawing.widthMm)}mm`, `${mm(drawing.heightMm)}mm`);
  root.viewbox(0, 0, mm(drawing.widthMm), mm(drawing.heightMm));
  root.attr({ role: 'img', 'font-family': `'${FONT_FAMILY}', 'DejaVu Sans', sans-serif` });
  root.element('title').words(plainText(drawing.title));
  root.element('desc').words(plainText(drawing.description));
  root.element('rect').attr({ width: '100%', height: '100%', fill: '#ffffff' });
  let layer: string | null = null;
  let group: Container = root;
  for (const shape of drawing.shapes) {
    if (shape.layer !== layer) {
      layer = shape.layer;
      group = root.group().attr({ class: layer.replaceAll(' ', '-') });
    }
    addShape(group, shape);
  }
  const text = textOfSvg(root.node, 'http://www.w3.org/2000/svg');
  root.remove();
  return `<?xml version="1.0" encoding="UTF-8"?>\n${text}\n`;
}
