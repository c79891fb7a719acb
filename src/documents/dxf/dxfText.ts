import type { Um } from '../../model/geometry.ts';

/** A place in µm; DXF counts x to the right and y up. */
export type DxfPoint = readonly [xUm: Um, yUm: Um];

export type DxfShape =
  | { readonly kind: 'polygon'; readonly layer: string; readonly points: readonly DxfPoint[] }
  | { readonly kind: 'line'; readonly layer: string; readonly from: DxfPoint; readonly to: DxfPoint }
  | { readonly kind: 'circle'; readonly layer: string; readonly middle: DxfPoint; readonly diameterUm: Um }
  | {
      readonly kind: 'text';
      readonly layer: string;
      readonly text: string;
      readonly at: DxfPoint;
      readonly heightUm: Um;
    };

/** A DXF file before it is text. Lengths in µm here and in mm in the file. */
export interface DxfDrawing {
  /** Written as comments at the start of the file. */
  readonly about: readonly string[];
  readonly shapes: readonly DxfShape[];
}

/** Names of layers of the AutoCAD R12 form: capitals, figures, `$`, `-`, `_`, at most 31. */
export function layerName(words: string): string {
  return (
    asciiText(words)
      .toUpperCase()
      .replaceAll('.', '_')
      .replace(/[^A-Z0-9$_-]+/g, '-')
      .slice(0, 31) || '0'
  );
}

/** A text in the letters that every reader of R12 has: accents dropped, what has no such letter becomes `?`. */
export function asciiText(text: string): string {
  return text
    .replaceAll('ß', 'ss')
    .replaceAll('×', 'x')
    .replaceAll('–', '-')
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .replace(/[^\u0020-\u007e]/g, '?');
}

/** Millimetres of whole or half µm, written out exactly and always with a point: 412300 → `412.3`, 2000 → `2.0`. */
export function exactMm(um: number): string {
  const tenths = Math.abs(um) * 10;
  if (!Number.isSafeInteger(um * 2)) throw new Error(`${um} µm is no length that can be written exactly`);
  const decimals = String(tenths % 10_000)
    .padStart(4, '0')
    .replace(/0+$/, '');
  const sign = um < 0 ? '-' : '';
  return `${sign}${(tenths - (tenths % 10_000)) / 10_000}.${decimals || '0'}`;
}

type Pair = readonly [code: number, value: string];

function place([x, y]: DxfPoint, at = 0): Pair[] {
  return [
    [10 + at, exactMm(x)],
    [20 + at, exactMm(y)],
    [30 + at, '0.0'],
  ];
}

function pairsOf(shape: DxfShape): Pair[] {
  const { layer } = shape;
  const begin = (kind: string): Pair[] => [
    [0, kind],
    [8, layer],
  ];
  switch (shape.kind) {
    case 'polygon':
      return [
        ...begin('POLYLINE'),
        [66, '1'],
        ...place([0, 0]),
        [70, '1'],
        ...shape.points.flatMap((point): Pair[] => [...begin('VERTEX'), ...place(point)]),
        ...begin('SEQEND'),
      ];
    case 'line':
      return [...begin('LINE'), ...place(shape.from), ...place(shape.to, 1)];
    case 'circle':
      return [...begin('CIRCLE'), ...place(shape.middle), [40, exactMm(shape.diameterUm / 2)]];
    case 'text':
      return [
        ...begin('TEXT'),
        ...place(shape.at),
        [40, exactMm(shape.heightUm)],
        // A percent sign begins a special letter there; three stand for one.
        [1, asciiText(shape.text).replaceAll('%', '%%%')],
      ];
    default:
      throw new Error(`there is no shape ${JSON.stringify(shape satisfies never)}`);
  }
}

function reach(shapes: readonly DxfShape[]): { least: DxfPoint; most: DxfPoint } {
  const points = shapes.flatMap((shape): DxfPoint[] => {
    switch (shape.kind) {
      case 'polygon':
        return [...shape.points];
      case 'line':
        return [shape.from, shape.to];
      case 'circle': {
        const r = shape.diameterUm / 2;
        const [x, y] = shape.middle;
        return [
          [x - r, y - r],
          [x + r, y + r],
        ];
      }
      default:
        return [shape.at];
    }
  });
  const along = (axis: 0 | 1, pick: (a: number, b: number) => number) =>
    points.reduce((found, point) => pick(found, point[axis]), points[0]?.[axis] ?? 0);
  return {
    least: [along(0, Math.min), along(1, Math.min)],
    most: [along(0, Math.max), along(1, Math.max)],
  };
}

function header(drawing: DxfDrawing): Pair[] {
  const { least, most } = reach(drawing.shapes);
  return [
    ...drawing.about.map((line): Pair => [999, asciiText(line)]),
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$ACADVER'],
    [1, 'AC1009'],
    [9, '$EXTMIN'],
    ...place(least),
    [9, '$EXTMAX'],
    ...place(most),
    // Lengths decimal with three places.
    [9, '$LUNITS'],
    [70, '2'],
    [9, '$LUPREC'],
    [70, '3'],
    [0, 'ENDSEC'],
  ];
}

function tables(layers: readonly string[]): Pair[] {
  return [
    [0, 'SECTION'],
    [2, 'TABLES'],
    [0, 'TABLE'],
    [2, 'LTYPE'],
    [70, '1'],
    [0, 'LTYPE'],
    [2, 'CONTINUOUS'],
    [70, '64'],
    [3, 'Solid line'],
    [72, '65'],
    [73, '0'],
    [40, '0.0'],
    [0, 'ENDTAB'],
    [0, 'TABLE'],
    [2, 'LAYER'],
    [70, String(layers.length)],
    ...layers.flatMap((layer, index): Pair[] => [
      [0, 'LAYER'],
      [2, layer],
      [70, '64'],
      // The first seven colours in turn; 7 is black or white, whichever the ground is not.
      [62, String(7 - (index % 7))],
      [6, 'CONTINUOUS'],
    ]),
    [0, 'ENDTAB'],
    [0, 'ENDSEC'],
  ];
}

/**
 * A drawing as a DXF file of AutoCAD release 12 (AC1009, ASCII), the oldest and plainest form, which any reader knows: closed
 * polylines, lines, circles and texts on named layers, millimetres, each figure exact to the µm it has inside. The form
 * has no place for the unit of length, so a comment says it. Lines end in CR LF.
 */
export function dxfText(drawing: DxfDrawing): string {
  // Every file has a layer 0.
  const layers = [...new Set(['0', ...drawing.shapes.map((shape) => shape.layer)])];
  const pairs: Pair[] = [
    ...header({ ...drawing, about: [...drawing.about, 'Lengths in millimetres'] }),
    ...tables(layers),
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...drawing.shapes.flatMap(pairsOf),
    [0, 'ENDSEC'],
    [0, 'EOF'],
  ];
  return pairs.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join('');
}

/** A rectangle as a closed line, from its near left corner. */
export function rectangleShape(
  layer: string,
  [x0, x1]: readonly [number, number],
  [y0, y1]: readonly [number, number],
): DxfShape {
  const points: DxfPoint[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  return { kind: 'polygon', layer, points };
}
