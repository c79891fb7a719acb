/**
 * How labels lie on what they are printed on. Sizes in mm. A4 sheets are named by the size of their labels and stated by
 * their geometry, which is common practice and from memory: labels of one sheet in the middle of the page.
 */
export interface StickerFormat {
  readonly name: string;
  /** Null: as long as what stands on the label, one label a page. */
  readonly pageMm: readonly [width: number, height: number | null];
  readonly columns: number;
  readonly rows: number;
  readonly labelMm: readonly [width: number, height: number | null];
  /** Between neighbouring labels, from left to right and from top to bottom. */
  readonly gapMm: readonly [across: number, down: number];
  /** Side of the QR code with its quiet zone. */
  readonly codeMm: number;
}

const A4 = [210, 297] as const;

function onA4(
  [columns, rows]: readonly [number, number],
  labelMm: readonly [number, number],
  gapAcrossMm: number,
  codeMm: number,
): StickerFormat {
  const name = labelMm.join('x');
  return { name, pageMm: A4, columns, rows, labelMm, gapMm: [gapAcrossMm, 0], codeMm };
}

const formats: readonly StickerFormat[] = [
  onA4([2, 7], [99.1, 38.1], 2.5, 19),
  onA4([3, 7], [63.5, 38.1], 2.5, 16),
  onA4([3, 8], [70, 37], 0, 16),
  onA4([2, 8], [105, 37], 0, 18),
  onA4([2, 4], [99.1, 67.7], 2.5, 24),
  {
    name: 'roll-62',
    pageMm: [62, null],
    columns: 1,
    rows: 1,
    labelMm: [62, null],
    gapMm: [0, 0],
    codeMm: 20,
  },
  {
    name: 'roll-100x50',
    pageMm: [100, 50],
    columns: 1,
    rows: 1,
    labelMm: [100, 50],
    gapMm: [0, 0],
    codeMm: 22,
  },
];

/** Formats by name, in the order in which they are told; the first is the usual one. */
export const stickerFormats: ReadonlyMap<string, StickerFormat> = new Map(
  formats.map((format) => [format.name, format]),
);

/** A format in words: `A4 sheet of 2 × 7 labels of 99.1 × 38.1 mm`. */
export function stickerFormatInWords({ pageMm, labelMm, columns, rows }: StickerFormat): string {
  if (pageMm[1] === null) return `roll of ${pageMm[0]} mm, each label as long as it needs`;
  const size = `${labelMm[0]} × ${labelMm[1]} mm`;
  return columns * rows === 1
    ? `roll of labels of ${size}`
    : `A4 sheet of ${columns} × ${rows} labels of ${size}`;
}

/** Common printers leave so much of a sheet's border white (common practice, no source). */
const UNPRINTED_MM = 4.5;
/** Least distance of what is printed from the border of a label: labels lie up to 1 mm off (common practice, no source). */
const PADDING_MM = 2;

/** Where the labels of a page begin, in the middle of the page. */
function cornerOf(format: StickerFormat, axis: 0 | 1): number {
  const label = format.labelMm[axis];
  const page = format.pageMm[axis];
  if (label === null || page === null) return 0;
  const many = axis === 0 ? format.columns : format.rows;
  return (page - many * label - (many - 1) * format.gapMm[axis]) / 2;
}

/** What of each label is printed on, from its border: the same for all labels of a sheet, so that they look alike. */
export function stickerPadding(format: StickerFormat): readonly [across: number, down: number] {
  const sheet = format.columns * format.rows > 1;
  const padding = (axis: 0 | 1) =>
    sheet ? Math.max(PADDING_MM, UNPRINTED_MM - cornerOf(format, axis)) : PADDING_MM;
  return [padding(0), padding(1)];
}

/** Top left corner of the label at `place` (from 0; row after row), in mm from the page's. */
export function stickerCorner(format: StickerFormat, place: number): readonly [x: number, y: number] {
  const column = place % format.columns;
  const row = Math.floor(place / format.columns);
  const [width, height] = format.labelMm;
  return [
    cornerOf(format, 0) + column * (width + format.gapMm[0]),
    cornerOf(format, 1) + row * ((height ?? 0) + format.gapMm[1]),
  ];
}
