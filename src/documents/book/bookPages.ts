import type { Drawing, TextMeasurer } from '../../drawing/index.ts';
import { LINE_PITCH, NARROW, plainText, shorten, WIDE, wrap } from '../../drawing/lettering.ts';
import { Sketch } from '../../drawing/sketch.ts';
import type { Block, Book, Section, Tick } from './book.ts';

/** A4 upright in mm (ISO 216), with the filing margin of ISO 5457 on the left. */
const PAGE = { width: 210, height: 297 } as const;
const LEFT = 20;
const RIGHT = PAGE.width - 12;
const TOP = 15;
const BOTTOM = PAGE.height - 16;
const COLUMN_GAP = 6;

/** Font sizes in mm: 2.9 is 8 points, the least that is read well at arm's length beside a machine. */
const SIZE = { title: 8, chapter: 5.6, heading: 3.9, text: 3.3, table: 2.9, footer: 2.6 } as const;
const BOX_MM = 3.8;

interface Paper {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly sketch: Sketch;
  readonly title: string;
  readonly drawn: Drawing | null;
}

/** Lays texts out from the top of a page down, with a new page where one is full. */
class Layout {
  readonly papers: Paper[] = [];
  y = TOP;
  private readonly measure: TextMeasurer;
  private heading: string;

  constructor(measure: TextMeasurer, heading: string) {
    this.measure = measure;
    this.heading = heading;
  }

  private get sketch(): Sketch {
    const last = this.papers.at(-1);
    if (last === undefined || last.drawn !== null) this.newPage();
    return this.papers.at(-1)!.sketch;
  }

  newPage(): void {
    const sketch = new Sketch(this.measure);
    this.papers.push({
      widthMm: PAGE.width,
      heightMm: PAGE.height,
      sketch,
      title: this.heading,
      drawn: null,
    });
    this.y = TOP;
  }

  drawing(drawn: Drawing): void {
    const sketch = new Sketch(this.measure);
    this.papers.push({
      widthMm: drawn.widthMm,
      heightMm: drawn.heightMm,
      sketch,
      title: this.heading,
      drawn,
    });
    this.y = PAGE.height;
  }

  startSection(section: Section): void {
    this.heading = section.heading;
    const opensWithDrawing = section.blocks[0]?.kind === 'drawings';
    if (opensWithDrawing) return;
    if (section.startsPage || this.papers.length === 0) this.newPage();
    this.title(section.heading);
  }

  title(text: string): void {
    this.keep(30);
    if (this.y > TOP) this.y += 5;
    this.lines(text, SIZE.chapter, 'bold');
    this.y += 2;
  }

  /** A new page unless so much is free on this one. */
  keep(heightMm: number): void {
    const sketch = this.sketch;
    if (sketch !== undefined && this.y + heightMm > BOTTOM) this.newPage();
  }

  lines(
    text: string,
    sizeMm: number,
    weight: 'regular' | 'bold' = 'regular',
    x0: number = LEFT,
    x1: number = RIGHT,
  ): void {
    for (const line of wrap(plainText(text), x1 - x0, sizeMm, weight, this.measure)) {
      this.keep(sizeMm * LINE_PITCH);
      this.sketch.text('tables', line, x0, this.y + sizeMm, { sizeMm, weight });
      this.y += sizeMm * LINE_PITCH;
    }
  }

  list(items: readonly string[]): void {
    for (const item of items) {
      this.keep(SIZE.text * LINE_PITCH * 2);
      this.sketch.text('tables', '–', LEFT, this.y + SIZE.text, { sizeMm: SIZE.text });
      this.lines(item, SIZE.text, 'regular', LEFT + 5);
      this.y += 1.2;
    }
  }

  /** Entries of the same shape in two columns, each kept in one piece. */
  entries(entries: readonly { readonly mark: string | 'box'; readonly lines: readonly Line[] }[]): void {
    const width = (RIGHT - LEFT - COLUMN_GAP) / 2;
    const indent = 8;
    let column = 0;
    this.keep(20);
    let top = this.y;
    let lowest = top;
    const measured = entries.map(({ mark, lines }) => {
      const wrapped = lines.flatMap(({ text, weight }) =>
        wrap(plainText(text), width - indent, SIZE.table, weight, this.measure).map((line) => ({
          line,
          weight,
        })),
      );
      const height = Math.max(wrapped.length * SIZE.table * LINE_PITCH, BOX_MM + 0.8) + 1.4;
      return { mark, wrapped, height };
    });
    let rest = measured.reduce((sum, { height }) => sum + height, 0);
    // Both columns of the last page end at about the same height.
    let half = rest / 2;
    for (const { mark, wrapped, height } of measured) {
      const columnFull = column === 0 && entries.length > 3 && this.y - top >= half;
      if (this.y + height > BOTTOM || columnFull) {
        if (column === 0) {
          column = 1;
          this.y = top;
        } else {
          this.newPage();
          column = 0;
          top = this.y;
          lowest = top;
          half = rest / 2;
        }
      }
      rest -= height;
      const x = LEFT + column * (width + COLUMN_GAP);
      if (mark === 'box') this.box(x + 1, this.y + 0.3);
      else {
        const style = { sizeMm: SIZE.table, weight: 'bold', anchor: 'end' } as const;
        this.sketch.text('tables', mark, x + indent - 2, this.y + SIZE.table, style);
      }
      wrapped.forEach(({ line, weight }, index) => {
        const y = this.y + SIZE.table * (1 + index * LINE_PITCH);
        this.sketch.text('tables', line, x + indent, y, { sizeMm: SIZE.table, weight });
      });
      this.y += height;
      lowest = Math.max(lowest, this.y);
    }
    this.y = column === 0 ? this.y : lowest;
  }

  private box(x: number, y: number): void {
    this.sketch.rect('tables', { x0: x, y0: y, x1: x + BOX_MM, y1: y + BOX_MM }, { stroke: WIDE });
  }

  table(block: Extract<Block, { kind: 'table' }>): void {
    const columns = widthsOf(block);
    const cells = (texts: readonly string[], weight: 'regular' | 'bold') =>
      texts.map((text, index) =>
        wrap(plainText(text), columns[index]!.x1 - columns[index]!.x0, SIZE.table, weight, this.measure),
      );
    const heightOf = (wrapped: readonly (readonly string[])[]) =>
      Math.max(...wrapped.map((lines) => lines.length)) * SIZE.table * LINE_PITCH + 1.9;
    const heads = cells(
      block.columns.map(({ heading }) => heading),
      'regular',
    );
    const headHeight = heightOf(heads);
    const draw = (wrapped: readonly (readonly string[])[], weight: 'regular' | 'bold', tick: boolean) => {
      wrapped.forEach((lines, column) => {
        const { x0, x1, anchor } = columns[column]!;
        if (tick && column === wrapped.length - 1) {
          this.box(x0, this.y + 0.3);
          return;
        }
        lines.forEach((line, index) => {
          const y = this.y + 0.4 + SIZE.table * (1 + index * LINE_PITCH);
          const style = { sizeMm: SIZE.table, weight, anchor };
          this.sketch.text('tables', line, anchor === 'end' ? x1 : x0, y, style);
        });
      });
    };
    const rule = (y: number, stroke = NARROW) => this.sketch.line('tables', LEFT, y, RIGHT, y, stroke);
    const head = () => {
      draw(heads, 'regular', false);
      this.y += headHeight;
      rule(this.y - 0.5, WIDE);
    };
    this.keep(headHeight + 24);
    this.y += 2;
    this.lines(block.caption, SIZE.text, 'bold');
    this.y += 0.8;
    head();
    block.rows.forEach((row, index) => {
      const weight = block.sum && index === block.rows.length - 1 ? 'bold' : 'regular';
      const paperCells = row.countsPanel === undefined ? row.cells : [...row.cells.slice(0, -1), ''];
      const wrapped = cells(paperCells, weight);
      const height = Math.max(heightOf(wrapped), row.tick === undefined ? 0 : BOX_MM + 1.4);
      if (this.y + height > BOTTOM) {
        this.newPage();
        head();
      }
      draw(wrapped, weight, row.tick !== undefined || row.countsPanel !== undefined);
      this.y += height;
      rule(this.y - 0.5);
    });
    this.y += 2;
  }
}

interface Line {
  readonly text: string;
  readonly weight: 'regular' | 'bold';
}

function widthsOf(block: Extract<Block, { kind: 'table' }>) {
  const total = block.columns.reduce((sum, { weight }) => sum + weight, 0);
  let x = LEFT;
  return block.columns.map(({ weight, anchor }) => {
    const x0 = x;
    x += ((RIGHT - LEFT) * weight) / total;
    return { x0: x0 + 0.6, x1: x - (anchor === 'end' ? 2.4 : 1), anchor: anchor ?? ('start' as const) };
  });
}

function tickEntry(tick: Tick): { mark: 'box'; lines: Line[] } {
  return { mark: 'box', lines: [{ text: tick.text, weight: 'regular' }] };
}

function layBlock(layout: Layout, block: Block, section: Section, book: Book): void {
  switch (block.kind) {
    case 'paragraph':
      layout.lines(block.text, SIZE.text, block.strong ? 'bold' : 'regular');
      layout.y += 1.8;
      return;
    case 'heading':
      layout.keep(24);
      layout.y += 2;
      layout.lines(block.text, SIZE.heading, 'bold');
      layout.y += 1;
      return;
    case 'list':
      layout.list(block.items);
      return;
    case 'ticks':
      layout.entries(block.items.map(tickEntry));
      return;
    case 'steps':
      layout.entries(
        block.steps.map(({ number, sentence, pushStick, outcomes }) => ({
          mark: String(number),
          lines: [
            {
              text: pushStick ? `${sentence} ▲ ${book.words.steps.pushStick}` : sentence,
              weight: 'regular',
            },
            ...outcomes.map((text) => ({ text, weight: 'bold' as const })),
          ],
        })),
      );
      return;
    case 'table':
      layout.table(block);
      return;
    case 'drawings':
      for (const drawing of block.drawings) layout.drawing(drawing);
      if (block === section.blocks.at(-1)) return;
      layout.newPage();
      layout.title(section.heading);
      return;
    default:
      block satisfies never;
  }
}

function withFooter(paper: Paper, book: Book, page: number, pages: number, measure: TextMeasurer): Drawing {
  const { sketch, widthMm, heightMm, drawn } = paper;
  const y = heightMm - (drawn === null ? 8 : 4.5);
  const right = widthMm - (drawn === null ? 12 : 10);
  const pageWords = book.words.pageOf(page, pages);
  const room = right - LEFT - measure(pageWords, SIZE.footer, 'regular') - 5;
  const left = shorten(plainText(`${book.title} · ${paper.title}`), room, SIZE.footer, 'regular', measure);
  sketch.text('title block', left, LEFT, y, { sizeMm: SIZE.footer });
  sketch.text('title block', pageWords, right, y, { sizeMm: SIZE.footer, anchor: 'end' });
  return {
    widthMm,
    heightMm,
    title: drawn?.title ?? paper.title,
    description: drawn?.description ?? `${paper.title}, ${pageWords}`,
    shapes: [...(drawn?.shapes ?? []), ...sketch.shapes],
  };
}

/**
 * The job book as pages of paper, A4: upright for texts and lists, lying for cut plans, each with the job, the chapter
 * and `page x of y` at its foot. Texts are measured with `measure`, break between words and never lie on each other.
 */
export function bookPages(book: Book, measure: TextMeasurer): Drawing[] {
  const layout = new Layout(measure, book.words.book);
  layout.newPage();
  layout.lines(book.title, SIZE.title, 'bold');
  layout.lines(book.words.book, SIZE.heading);
  layout.y += 4;
  for (const section of book.sections) {
    if (section.blocks.length === 0) continue;
    layout.startSection(section);
    for (const block of section.blocks) layBlock(layout, block, section, book);
  }
  return layout.papers.map((paper, index) =>
    withFooter(paper, book, index + 1, layout.papers.length, measure),
  );
}
