import type { Box, Segment, Weight } from './drawing.ts';
import { HAIRLINE, LINE_PITCH, SMALL, shorten, WIDE, wrap } from './lettering.ts';
import type { Sketch } from './sketch.ts';

export interface TableColumn {
  readonly heading: string;
  /** Least width in mm; the columns marked `grows` share what is left of the table's width. */
  readonly widthMm: number;
  readonly grows?: true;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly weight?: Weight;
}

export interface Table {
  readonly title: string;
  /** What it is called where it goes on in a new column. */
  readonly shortTitle: string;
  readonly columns: readonly TableColumn[];
  /** A cell per column; long cells are broken into lines, never cut off. */
  readonly rows: readonly (readonly string[])[];
}

/** Where the next row can go: columns of the page in reading order, and how far the current one is filled. */
export interface TableSpace {
  readonly regions: readonly Box[];
  region: number;
  y: number;
}

const LINE_MM = SMALL * LINE_PITCH;
const ROW_GAP_MM = 0.25;
const CELL_GAP_MM = 1.2;

export function tableSpace(regions: readonly Box[]): TableSpace {
  return { regions, region: 0, y: regions[0]?.y0 ?? 0 };
}

/** Splits a box into equal columns about `goodWidthMm` wide with gaps between them; none when it is narrower than the least. */
export function columnsOf(box: Box, leastWidthMm: number, goodWidthMm: number, gapMm = 4): Box[] {
  const width = box.x1 - box.x0;
  if (width < leastWidthMm) return [];
  const count = Math.max(1, Math.floor((width + gapMm) / (goodWidthMm + gapMm)));
  const each = (width - gapMm * (count - 1)) / count;
  return Array.from({ length: count }, (_, index) => {
    const x0 = box.x0 + index * (each + gapMm);
    return { ...box, x0, x1: x0 + each };
  });
}

/** Left edges and widths of a table's columns in a region. */
function layColumns(columns: readonly TableColumn[], region: Box): { x0: number; width: number }[] {
  const fixed = columns.reduce((sum, column) => sum + column.widthMm, CELL_GAP_MM * (columns.length - 1));
  const growing = columns.filter((column) => column.grows).length;
  const extra = growing === 0 ? 0 : Math.max(0, region.x1 - region.x0 - fixed) / growing;
  let x0 = region.x0;
  return columns.map((column) => {
    const width = column.widthMm + (column.grows ? extra : 0);
    const place = { x0, width };
    x0 += width + CELL_GAP_MM;
    return place;
  });
}

function writeCell(
  sketch: Sketch,
  column: TableColumn,
  place: { x0: number; width: number },
  lines: readonly string[],
  y: number,
  weight: Weight,
): void {
  const anchor = column.anchor ?? 'start';
  const x = place.x0 + { start: 0, middle: place.width / 2, end: place.width }[anchor];
  lines.forEach((line, index) => {
    sketch.text('tables', line, x, y + SMALL * 0.86 + index * LINE_MM, { sizeMm: SMALL, anchor, weight });
  });
}

interface Head {
  readonly titleLines: readonly string[];
  readonly headings: readonly (readonly string[])[];
  readonly heightMm: number;
}

/** Title and headings as they stand over a table's part in a region. */
function headOf(sketch: Sketch, table: Table, region: Box, row: number): Head {
  const title = row === 0 ? table.title : table.shortTitle;
  const titleLines = wrap(title, region.x1 - region.x0, SMALL, 'bold', sketch.measure);
  const places = layColumns(table.columns, region);
  const headings = table.columns.map((column, index) =>
    wrap(column.heading, places[index]!.width, SMALL, 'regular', sketch.measure),
  );
  const lines = titleLines.length + Math.max(...headings.map((heading) => heading.length));
  return { titleLines, headings, heightMm: LINE_MM * lines + 0.5 };
}

/** Writes a head at a region's y; gives the y below it. */
function writeHead(sketch: Sketch, table: Table, region: Box, y: number, head: Head): number {
  head.titleLines.forEach((line, index) => {
    sketch.text('tables', line, region.x0, y + SMALL * 0.86 + index * LINE_MM, {
      sizeMm: SMALL,
      weight: 'bold',
    });
  });
  const places = layColumns(table.columns, region);
  const top = y + LINE_MM * head.titleLines.length;
  table.columns.forEach((column, index) => {
    writeCell(sketch, column, places[index]!, head.headings[index]!, top, 'regular');
  });
  const below = y + head.heightMm;
  sketch.line('tables', region.x0, below - 0.3, region.x1, below - 0.3, WIDE);
  return below;
}

/** Most lines of one cell; what is longer ends with an ellipsis, so that a row always fits on an empty page. */
const MOST_LINES = 24;

function cellLines(sketch: Sketch, column: TableColumn, cell: string, widthMm: number): string[] {
  const weight = column.weight ?? 'regular';
  const lines = wrap(cell, widthMm, SMALL, weight, sketch.measure);
  if (lines.length <= MOST_LINES) return lines;
  const rest = lines.slice(MOST_LINES - 1).join('');
  return [...lines.slice(0, MOST_LINES - 1), shorten(rest, widthMm, SMALL, weight, sketch.measure)];
}

/**
 * Writes as many rows of a table as the space has room for, from row `from`, under headings repeated in every
 * column of the page. Returns the index of the first row that did not fit.
 */
export function flowTable(sketch: Sketch, table: Table, from: number, space: TableSpace): number {
  let row = from;
  const rules: Segment[] = [];
  while (row < table.rows.length && space.region < space.regions.length) {
    const region = space.regions[space.region]!;
    const places = layColumns(table.columns, region);
    const linesOf = (cells: readonly string[]) =>
      cells.map((cell, index) => cellLines(sketch, table.columns[index]!, cell, places[index]!.width));
    const heightOf = (lines: string[][]) => LINE_MM * Math.max(...lines.map((l) => l.length)) + ROW_GAP_MM;
    let lines = linesOf(table.rows[row]!);
    const head = headOf(sketch, table, region, row);
    if (space.y + head.heightMm + heightOf(lines) <= region.y1) {
      space.y = writeHead(sketch, table, region, space.y, head);
      while (space.y + heightOf(lines) <= region.y1) {
        table.columns.forEach((column, index) => {
          writeCell(sketch, column, places[index]!, lines[index]!, space.y, column.weight ?? 'regular');
        });
        space.y += heightOf(lines);
        rules.push([region.x0, space.y - 0.1, region.x1, space.y - 0.1]);
        row++;
        if (row === table.rows.length) break;
        lines = linesOf(table.rows[row]!);
      }
    }
    if (row < table.rows.length) nextRegion(space);
  }
  sketch.lines('tables', rules, HAIRLINE);
  space.y += 1.5;
  return row;
}

function nextRegion(space: TableSpace): void {
  space.region++;
  space.y = space.regions[space.region]?.y0 ?? 0;
}

/** What tables have left of their space. */
export function freeIn({ regions, region, y }: TableSpace): Box[] {
  const current = regions[region];
  return current === undefined ? [] : [{ ...current, y0: y }, ...regions.slice(region + 1)];
}
