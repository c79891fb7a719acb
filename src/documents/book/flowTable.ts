import { LINE_PITCH, NARROW, plainText, unbroken, WIDE, wrap } from '../../drawing/lettering.ts';
import type { TextBlock } from './book.ts';
import type { Flow } from './flow.ts';

type TableBlock = Extract<TextBlock, { kind: 'table' }>;
type Weight = 'regular' | 'bold';
type Wrapped = readonly (readonly string[])[];

/** Whether the last cell of a row is a box to tick. */
function hasBox({ tick, countsPanel }: TableBlock['rows'][number]): boolean {
  return tick !== undefined || countsPanel !== undefined;
}

/** Beside a text in its column: before it, after it, and after figures that stand at the end of theirs. */
const BEFORE_MM = 0.6;
const AFTER_MM = 1;
const AFTER_FIGURES_MM = 2.2;
/** So that rounding breaks no text that just fits. */
const HAIR_MM = 0.01;

/** Widths that a column asks for: so that no word is broken, and so that every cell stands on one line. */
interface Needs {
  readonly words: number;
  readonly cells: number;
}

function needsOf(block: TableBlock, column: number, flow: Flow): Needs {
  const sizeMm = flow.sizes.table;
  const { heading, anchor } = block.columns[column]!;
  const around = HAIR_MM + BEFORE_MM + (anchor === 'end' ? AFTER_FIGURES_MM : AFTER_MM);
  const wide = (text: string, weight: Weight) => flow.measure(text, sizeMm, weight);
  let words = 0;
  let cells = 0;
  const ask = (text: string, weight: Weight) => {
    for (const word of unbroken(text)) words = Math.max(words, wide(word, weight));
  };
  ask(plainText(heading), 'regular');
  const isLast = column === block.columns.length - 1;
  block.rows.forEach((row, index) => {
    if (isLast && hasBox(row)) {
      words = Math.max(words, flow.sizes.box);
      return;
    }
    const weight = block.sum && index === block.rows.length - 1 ? 'bold' : 'regular';
    const text = plainText(row.cells[column] ?? '');
    ask(text, weight);
    cells = Math.max(cells, wide(text, weight));
  });
  return { words: words + around, cells: Math.max(words, cells) + around };
}

/** Widens columns to what they want, those that lack least first, by what others have over what they keep. */
function shift(widths: readonly number[], wants: readonly number[], keeps: readonly number[]): number[] {
  const lacks = widths.map((width, column) => Math.max(0, wants[column]! - width));
  const spares = widths.map((width, column) => Math.max(0, width - Math.max(wants[column]!, keeps[column]!)));
  const spare = spares.reduce((sum, each) => sum + each, 0);
  const given = widths.map(() => 0);
  let left = spare;
  for (const column of lacks.map((_, index) => index).sort((a, b) => lacks[a]! - lacks[b]!)) {
    given[column] = Math.min(left, lacks[column]!);
    left -= given[column]!;
  }
  const share = spare === 0 ? 0 : (spare - left) / spare;
  return widths.map((width, column) => width + given[column]! - spares[column]! * share);
}

/**
 * Widths of a table's columns: the shares that its weights say, where every cell fits into its own on one line. Where one
 * does not, columns with room to spare give of it. No word, figure or size is broken before a list of names is.
 */
function columnWidths(block: TableBlock, flow: Flow): readonly number[] {
  const wide = flow.room.x1 - flow.room.x0;
  const total = block.columns.reduce((sum, { weight }) => sum + weight, 0);
  const needs = block.columns.map((_, column) => needsOf(block, column, flow));
  const words = needs.map((need) => need.words);
  const cells = needs.map((need) => need.cells);
  const shares = block.columns.map(({ weight }) => (wide * weight) / total);
  return shift(shift(shift(shares, words, cells), words, words), cells, cells);
}

/** Widths that were worked out, by table and width of the room: every row asks for them. */
const knownWidths = new WeakMap<TableBlock, Map<string, readonly number[]>>();

function columnPlaces(block: TableBlock, flow: Flow) {
  const known = knownWidths.get(block) ?? new Map<string, readonly number[]>();
  knownWidths.set(block, known);
  const key = `${flow.room.x1 - flow.room.x0} ${flow.sizes.table} ${flow.sizes.box}`;
  const widths = known.get(key) ?? columnWidths(block, flow);
  known.set(key, widths);
  let x = flow.room.x0;
  return block.columns.map(({ anchor }, column) => {
    const x0 = x;
    x += widths[column]!;
    const after = anchor === 'end' ? AFTER_FIGURES_MM : AFTER_MM;
    return { x0: x0 + BEFORE_MM, x1: x - after, anchor: anchor ?? ('start' as const) };
  });
}

function wrapCells(block: TableBlock, texts: readonly string[], weight: Weight, flow: Flow): Wrapped {
  const places = columnPlaces(block, flow);
  return texts.map((text, index) => {
    const { x0, x1 } = places[index]!;
    return wrap(plainText(text), x1 - x0, flow.sizes.table, weight, flow.measure);
  });
}

function heightOf(cells: Wrapped, flow: Flow): number {
  return Math.max(...cells.map((lines) => lines.length)) * flow.sizes.table * LINE_PITCH + flow.sizes.row;
}

/** Writes the cells of a row at the flow's place; the last is a box to tick where `last` says so. */
function writeCells(
  block: TableBlock,
  cells: Wrapped,
  weight: Weight,
  last: 'words' | 'box',
  flow: Flow,
): void {
  const places = columnPlaces(block, flow);
  const sizeMm = flow.sizes.table;
  cells.forEach((lines, column) => {
    const { x0, x1, anchor } = places[column]!;
    if (last === 'box' && column === cells.length - 1) {
      flow.box(x0, flow.y + flow.sizes.row * 0.15);
      return;
    }
    lines.forEach((line, index) => {
      const y = flow.y + flow.sizes.row * 0.22 + sizeMm * (1 + index * LINE_PITCH);
      flow.sketch.text('tables', line, anchor === 'end' ? x1 : x0, y, { sizeMm, weight, anchor });
    });
  });
}

function rule(flow: Flow, stroke = NARROW): void {
  const { x0, x1 } = flow.room;
  const y = flow.y - flow.sizes.row * 0.3;
  flow.sketch.line('tables', x0, y, x1, y, stroke);
}

function writeCaption(block: TableBlock, flow: Flow): void {
  flow.lines(block.caption, flow.sizes.text, 'bold');
  flow.y += 0.8;
}

function writeHead(block: TableBlock, flow: Flow): void {
  flow.mustFit(flow.sizes.table * LINE_PITCH + flow.sizes.row);
  const heads = wrapCells(
    block,
    block.columns.map(({ heading }) => heading),
    'regular',
    flow,
  );
  writeCells(block, heads, 'regular', 'words', flow);
  flow.y += heightOf(heads, flow);
  rule(flow, WIDE);
}

/** Lays a table; its caption and heads stand again wherever it goes on, so that no page must be read with the one before. */
export function layTable(flow: Flow, block: TableBlock): void {
  const { sizes } = flow;
  flow.keep(sizes.table * 12);
  if (!flow.isAtTop) flow.y += sizes.table * 0.7;
  writeCaption(block, flow);
  writeHead(block, flow);
  const measured = (index: number) => {
    const row = block.rows[index]!;
    const weight = block.sum && index === block.rows.length - 1 ? 'bold' : 'regular';
    const last = hasBox(row) ? 'box' : 'words';
    const texts = last === 'box' ? [...row.cells.slice(0, -1), ''] : row.cells;
    const cells = wrapCells(block, texts, weight, flow);
    const least = last === 'box' ? sizes.box + sizes.row * 0.7 : 0;
    return { cells, weight, last, height: Math.max(heightOf(cells, flow), least) } as const;
  };
  block.rows.forEach((_, index) => {
    let row = measured(index);
    // A sum does not stand on a page without anything that it adds up.
    const isBeforeSum = block.sum && index > 0 && index === block.rows.length - 2;
    const needs = () => row.height + (isBeforeSum ? measured(index + 1).height : 0);
    // A row higher than a page is written all the same; where no page follows, it is refused.
    for (let pages = 0; !flow.fits(needs()) && (pages < 2 || flow.endsHere); pages++) {
      flow.next();
      writeCaption(block, flow);
      writeHead(block, flow);
      row = measured(index);
    }
    writeCells(block, row.cells, row.weight, row.last, flow);
    flow.y += row.height;
    rule(flow);
  });
  flow.y += sizes.table * 0.7;
}
