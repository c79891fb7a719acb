import type { Drawing, Shape, Stroke } from './drawing.ts';
import { plainText } from './lettering.ts';

/** The family all drawings are measured in; a page without it sets each text to the measured width all the same. */
export const FONT_FAMILY = 'DejaVu Sans Condensed';

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

/** A text as the content of an element. */
function escaped(text: string): string {
  return plainText(text).replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

function strokeOf({ widthMm, dashMm }: Stroke): string {
  const dash = dashMm.length === 0 ? '' : ` stroke-dasharray="${dashMm.join(' ')}"`;
  return ` stroke="#000000" stroke-width="${widthMm}"${dash}`;
}

function elementOf(shape: Shape): string {
  switch (shape.kind) {
    case 'line': {
      const { x0, y0, x1, y1, stroke } = shape;
      return `<line x1="${mm(x0)}" y1="${mm(y0)}" x2="${mm(x1)}" y2="${mm(y1)}"${strokeOf(stroke)}/>`;
    }
    case 'lines': {
      const path = shape.segments.map(([x0, y0, x1, y1]) => `M${mm(x0)} ${mm(y0)}L${mm(x1)} ${mm(y1)}`);
      return `<path d="${path.join('')}" fill="none"${strokeOf(shape.stroke)}/>`;
    }
    case 'rect': {
      const { box, radiusMm, fill, stroke } = shape;
      const place = `x="${mm(box.x0)}" y="${mm(box.y0)}" width="${mm(box.x1 - box.x0)}" height="${mm(box.y1 - box.y0)}"`;
      const round = radiusMm > 0 ? ` rx="${mm(radiusMm)}"` : '';
      const tone = fill === null ? 'none' : grey(fill);
      return `<rect ${place}${round} fill="${tone}"${stroke === null ? '' : strokeOf(stroke)}/>`;
    }
    case 'rects': {
      const path = shape.boxes.map(
        ({ x0, y0, x1, y1 }) => `M${mm(x0)} ${mm(y0)}H${mm(x1)}V${mm(y1)}H${mm(x0)}Z`,
      );
      return `<path d="${path.join('')}" fill="${grey(shape.fill)}"/>`;
    }
    case 'polygon': {
      const points = shape.points.map(([x, y]) => `${mm(x)},${mm(y)}`);
      return `<polygon points="${points.join(' ')}" fill="${grey(shape.fill)}"/>`;
    }
    case 'circle': {
      const { x, y, radiusMm, stroke } = shape;
      return `<circle cx="${mm(x)}" cy="${mm(y)}" r="${mm(radiusMm)}" fill="none"${strokeOf(stroke)}/>`;
    }
    case 'text': {
      const { x, y, sizeMm, weight, anchor, reads, widthMm } = shape;
      const bold = weight === 'bold' ? ' font-weight="bold"' : '';
      const from = anchor === 'start' ? '' : ` text-anchor="${anchor}"`;
      const turned = reads === 'up' ? ` transform="rotate(-90 ${mm(x)} ${mm(y)})"` : '';
      const set = `textLength="${mm(widthMm)}" lengthAdjust="spacingAndGlyphs"`;
      return `<text x="${mm(x)}" y="${mm(y)}" font-size="${sizeMm}"${bold}${from}${turned} ${set}>${escaped(shape.text)}</text>`;
    }
    default:
      return shape satisfies never;
  }
}

/**
 * A drawing as the text of an SVG file (SVG 1.1, UTF-8): width and height in mm and a viewBox in the same numbers,
 * so that it prints in true size. Shapes of one layer that follow each other share a group with the layer's name as
 * its class. Written as text at once, since books have some hundred thousand elements. The same drawing gives the same
 * bytes.
 */
export function svgFromDrawing(drawing: Drawing): string {
  const [width, height] = [mm(drawing.widthMm), mm(drawing.heightMm)];
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" font-family="'${FONT_FAMILY}', 'DejaVu Sans', sans-serif">`,
    `<title>${escaped(drawing.title)}</title>`,
    `<desc>${escaped(drawing.description)}</desc>`,
    '<rect width="100%" height="100%" fill="#ffffff"/>',
  ];
  let layer: string | null = null;
  for (const shape of drawing.shapes) {
    if (shape.layer !== layer) {
      if (layer !== null) lines.push('</g>');
      layer = shape.layer;
      lines.push(`<g class="${layer.replaceAll(' ', '-')}">`);
    }
    lines.push(elementOf(shape));
  }
  lines.push(layer === null ? '</svg>' : '</g></svg>', '');
  return lines.join('\n');
}
