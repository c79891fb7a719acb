import { LINE_PITCH, NARROW, plainText, WIDE, wrap } from '../../drawing/lettering.ts';
import type { TextBlock } from './book.ts';
import type { Flow } from './flow.ts';

type TableBlock = Extract<TextBlock, { kind: 'table' }>;
type Weight = 'regular' | 'bold';
type Wrapped = readonly (readonly string[])[];

function columnPlaces({ columns }: TableBlock, { room }: Flow) {
  const total = columns.reduce((sum, { weight }) => sum + weight, 0);
  let x = room.x0;
  return columns.map(({ weight, anchor }) => {
    const x0 = x;
    x += ((room.x1 - room.x0) * weight) / total;
    return { x0: x0 + 0.6, x1: x - (anchor === 'end' ? 2.2 : 1), anchor: anchor ?? ('start' as const) };
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

/** Lays a table with its caption; its heads stand again wherever it goes on. */
export function layTable(flow: Flow, block: TableBlock): void {
  const { sizes } = flow;
  flow.keep(sizes.table * 12);
  if (!flow.isAtTop) flow.y += sizes.table * 0.7;
  flow.lines(block.caption, sizes.text, 'bold');
  flow.y += 0.8;
  writeHead(block, flow);
  block.rows.forEach((row, index) => {
    const weight = block.sum && index === block.rows.length - 1 ? 'bold' : 'regular';
    const last = row.tick === undefined && row.countsPanel === undefined ? 'words' : 'box';
    const texts = last === 'box' ? [...row.cells.slice(0, -1), ''] : row.cells;
    const measured = () => {
      const cells = wrapCells(block, texts, weight, flow);
      return {
        cells,
        height: Math.max(heightOf(cells, flow), last === 'box' ? sizes.box + sizes.row * 0.7 : 0),
      };
    };
    let { cells, height } = measured();
    // A row higher than a page is written all the same; where no page follows, it is refused.
    for (let pages = 0; !flow.fits(height) && (pages < 2 || flow.endsHere); pages++) {
      flow.next();
      writeHead(block, flow);
      ({ cells, height } = measured());
    }
    writeCells(block, cells, weight, last, flow);
    flow.y += height;
    rule(flow);
  });
  flow.y += sizes.table * 0.7;
}
