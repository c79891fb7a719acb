import type { Box, Drawing } from './drawing.ts';
import { drawFigure } from './drawPanelFigure.ts';
import { drawFrame, drawTitleBlock, pageField, pageOf, TITLE_ROW_HEIGHT, type TitleField } from './page.ts';
import { type DrawnPanel, measureFigure, type PanelDrawingOptions, type PanelFigure } from './panelFigure.ts';
import { Sketch } from './sketch.ts';

const PAGE = pageOf('A4');
const MARGIN_MM = 4;
const GAP_MM = 4;
const BLOCK_ROWS = 2;

function titleOf(options: PanelDrawingOptions, page: number, pages: number): TitleField[][] {
  const { page: heads, panel: says } = options.words;
  return [
    [
      { heading: heads.workshop, content: options.owner ?? '', weight: 48 },
      { heading: heads.job, content: options.job, weight: 72 },
      { heading: heads.document, content: says.document, weight: 28 },
      { heading: heads.date, content: '', weight: 32 },
    ],
    [
      { heading: says.measured, content: says.fromOrigin(options.units ?? 'mm'), weight: 150 },
      ...pageField(options, page, pages, 30),
    ],
  ];
}

/** A figure with its upper left corner on its page. */
interface Placed {
  readonly figure: PanelFigure;
  readonly left: number;
  readonly top: number;
}

/** A page filled so far: two columns down to the title block. */
class Filling {
  readonly placed: Placed[] = [];
  private readonly tops: [left: number, right: number];
  private readonly end: number;
  private readonly lefts: readonly [left: number, right: number];

  constructor([top, end]: readonly [number, number], lefts: readonly [number, number]) {
    this.tops = [top, top];
    this.end = end;
    this.lefts = lefts;
  }

  /** Puts a figure below others, in the left column where it has room; false where the page has none for it. */
  add(figure: PanelFigure): boolean {
    const fits = (top: number) => top + figure.heightMm <= this.end;
    if (figure.width === 'whole') {
      const top = Math.max(...this.tops);
      if (!fits(top)) return false;
      this.place(figure, 0, top);
      this.tops[1] = this.tops[0];
      return true;
    }
    const column = ([0, 1] as const).find((each) => fits(this.tops[each]));
    if (column === undefined) return false;
    this.place(figure, column, this.tops[column]);
    return true;
  }

  private place(figure: PanelFigure, column: 0 | 1, top: number): void {
    this.placed.push({ figure, left: this.lefts[column], top });
    this.tops[column] = top + figure.heightMm + GAP_MM;
  }
}

/** So many figures after the one whose turn it is may go before it, into room that it does not fit. */
const LOOK_AHEAD = 8;

/** Figures down the left column of a page and then down the right one, about in their order. */
function onPages(figures: readonly PanelFigure[], newPage: () => Filling): Placed[][] {
  const pages: Filling[] = [];
  const waiting = [...figures];
  while (waiting.length > 0) {
    const next = waiting.slice(0, LOOK_AHEAD).findIndex((figure) => pages.at(-1)?.add(figure));
    if (next >= 0) {
      waiting.splice(next, 1);
      continue;
    }
    const page = newPage();
    pages.push(page);
    const first = waiting.shift()!;
    if (!page.add(first)) throw new Error(`${first.panel.names.join('; ')} is higher than a page`);
  }
  return pages.map(({ placed }) => placed);
}

/** What a screen shows of a page: its figures. */
function figuresOf(page: readonly Placed[]): Box {
  const { frame } = PAGE;
  const lowest = page.reduce((most, { figure, top }) => Math.max(most, top + figure.heightMm), frame.y0);
  return { x0: frame.x0 + 1, y0: frame.y0 + 1, x1: frame.x1 - 1, y1: Math.min(lowest + 2, frame.y1 - 1) };
}

/**
 * Panels as they lie on the bench, each with its true outline, edges, openings, grooves and holes: running dimensions from
 * the near left corner of the finished panel (ISO 129-1), holes lettered by kind with their diameter and depth, sides named
 * after the faces of their unit. Pages are A4 in two columns; wide panels run across both. The same panels give the same drawings.
 */
export function drawPanels(panels: readonly DrawnPanel[], options: PanelDrawingOptions): Drawing[] {
  const { frame } = PAGE;
  const whole = frame.x1 - frame.x0 - 2 * MARGIN_MM;
  const widths = { whole, half: (whole - GAP_MM) / 2 };
  const heightMm = frame.y1 - frame.y0 - MARGIN_MM - BLOCK_ROWS * TITLE_ROW_HEIGHT - 1;
  const ruler = new Sketch(options.measure);
  const figures = panels.map((panel) => measureFigure(panel, widths, heightMm, ruler, options));
  const top = frame.y0 + MARGIN_MM / 2;
  const left = frame.x0 + MARGIN_MM;
  const newPage = () => new Filling([top, top + heightMm], [left, left + widths.half + GAP_MM]);
  const pages = onPages(figures, newPage);
  const says = options.words.panel;
  return pages.map((page, index) => {
    const sketch = new Sketch(options.measure);
    drawFrame(sketch, PAGE);
    drawTitleBlock(sketch, PAGE, titleOf(options, index + 1, pages.length));
    for (const placed of page) drawFigure(sketch, placed.figure, [placed.left, placed.top], options);
    const names = page.flatMap(({ figure }) => figure.panel.names);
    return {
      widthMm: PAGE.widthMm,
      heightMm: PAGE.heightMm,
      title: says.title(options.job, index + 1, pages.length),
      description: says.description(names),
      shapes: sketch.shapes,
      picture: figuresOf(page),
    };
  });
}
