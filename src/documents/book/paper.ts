import type { Drawing, PageSize, Shape, TextMeasurer } from '../../drawing/index.ts';
import { plainText, shorten } from '../../drawing/lettering.ts';
import { Sketch } from '../../drawing/sketch.ts';
import type { Book } from './book.ts';

/** A page as it is laid out. On larger paper two of them may share a sheet. */
export interface Paper {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Texts laid out on it. */
  readonly sketch: Sketch;
  /** Chapters on it, for its foot. */
  readonly chapters: readonly string[];
  /** What it is drawn on, if anything. */
  readonly drawn: Drawing | null;
  /** Shares no sheet of paper with the page before. */
  readonly alone: boolean;
}

/** Sizes of ISO 216, upright, in mm. */
export const UPRIGHT = { widthMm: 210, heightMm: 297 } as const;
export const LYING: Readonly<Record<PageSize, { readonly widthMm: number; readonly heightMm: number }>> = {
  A4: { widthMm: 297, heightMm: 210 },
  A3: { widthMm: 420, heightMm: 297 },
};

/** Margins: the filing margin of ISO 5457 on the left. */
export const MARGIN = { left: 20, right: 12, top: 15, bottom: 16 } as const;
const FOOT_MM = 2.6;

function moved(shape: Shape, dx: number, dy: number): Shape {
  const box = <B extends { x0: number; y0: number; x1: number; y1: number }>({ x0, y0, x1, y1 }: B) => ({
    x0: x0 + dx,
    y0: y0 + dy,
    x1: x1 + dx,
    y1: y1 + dy,
  });
  switch (shape.kind) {
    case 'line':
      return { ...shape, ...box(shape) };
    case 'lines':
      return {
        ...shape,
        segments: shape.segments.map(([x0, y0, x1, y1]) => [x0 + dx, y0 + dy, x1 + dx, y1 + dy] as const),
      };
    case 'rect':
      return { ...shape, box: box(shape.box) };
    case 'rects':
      return { ...shape, boxes: shape.boxes.map(box) };
    case 'polygon':
      return { ...shape, points: shape.points.map(([x, y]) => [x + dx, y + dy] as const) };
    case 'circle':
    case 'text':
      return { ...shape, x: shape.x + dx, y: shape.y + dy };
    default:
      return shape satisfies never;
  }
}

function shapesOf({ drawn, sketch }: Paper): readonly Shape[] {
  return [...(drawn?.shapes ?? []), ...sketch.shapes];
}

interface Sheet {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly papers: readonly Paper[];
  readonly shapes: readonly Shape[];
}

/** Two pages of A4 side by side, or one over the other, on A3. */
function together(first: Paper, second: Paper | undefined): Sheet {
  const isUpright = first.widthMm < first.heightMm;
  const [dx, dy] = isUpright ? [first.widthMm, 0] : [0, first.heightMm];
  const other = second === undefined ? [] : shapesOf(second).map((shape) => moved(shape, dx, dy));
  return {
    widthMm: first.widthMm + dx,
    heightMm: first.heightMm + dy,
    papers: second === undefined ? [first] : [first, second],
    shapes: [...shapesOf(first), ...other],
  };
}

/** Sheets of paper from pages: on A3 two pages of A4 that follow each other and lie alike share one. */
function sheetsOf(papers: readonly Paper[], page: PageSize): Sheet[] {
  const sheets: Sheet[] = [];
  for (let index = 0; index < papers.length; index++) {
    const paper = papers[index]!;
    const { widthMm, heightMm } = paper;
    const small = Math.max(widthMm, heightMm) < LYING.A3.heightMm + 1;
    if (page === 'A4' || !small) {
      sheets.push({ widthMm, heightMm, papers: [paper], shapes: shapesOf(paper) });
      continue;
    }
    const next = papers[index + 1];
    const goesWith =
      next !== undefined && next.widthMm === widthMm && next.heightMm === heightMm && !next.alone;
    sheets.push(together(paper, goesWith ? next : undefined));
    if (goesWith) index++;
  }
  return sheets;
}

function withFoot(sheet: Sheet, book: Book, page: number, pages: number, measure: TextMeasurer): Drawing {
  const { widthMm, heightMm, papers, shapes } = sheet;
  const sketch = new Sketch(measure);
  const drawn = papers.at(-1)!.drawn;
  const y = heightMm - (drawn === null ? 8 : 4.5);
  const right = widthMm - (drawn === null ? MARGIN.right : 10);
  const pageWords = book.words.pageOf(page, pages);
  const chapters = [...new Set(papers.flatMap((paper) => paper.chapters))].join(' · ');
  const room = right - MARGIN.left - measure(pageWords, FOOT_MM, 'regular') - 5;
  const left = shorten(plainText(`${book.title} · ${chapters}`), room, FOOT_MM, 'regular', measure);
  sketch.text('title block', left, MARGIN.left, y, { sizeMm: FOOT_MM });
  sketch.text('title block', pageWords, right, y, { sizeMm: FOOT_MM, anchor: 'end' });
  return {
    widthMm,
    heightMm,
    title: drawn?.title ?? chapters,
    description: drawn?.description ?? `${chapters}, ${pageWords}`,
    shapes: [...shapes, ...sketch.shapes],
  };
}

/** Pages as they are printed, each with the job, its chapters and `page x of y` at its foot. */
export function printed(
  papers: readonly Paper[],
  book: Book,
  page: PageSize,
  measure: TextMeasurer,
): Drawing[] {
  const sheets = sheetsOf(papers, page);
  return sheets.map((sheet, index) => withFoot(sheet, book, index + 1, sheets.length, measure));
}
