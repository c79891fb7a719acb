import type { Drawing } from './drawing.ts';
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

type Row = readonly PanelFigure[];

/** Narrow figures in pairs, wide ones alone, in their order. */
function inRows(figures: readonly PanelFigure[]): Row[] {
  const rows: PanelFigure[][] = [];
  for (const figure of figures) {
    const last = rows.at(-1);
    const besides = figure.width === 'half' && last?.length === 1 && last[0]?.width === 'half';
    if (besides) last.push(figure);
    else rows.push([figure]);
  }
  return rows;
}

function rowHeight(row: Row): number {
  return row.reduce((most, figure) => Math.max(most, figure.heightMm), 0);
}

/** Rows below each other, as many to a page as it has room for; each is kept whole. */
function onPages(rows: readonly Row[], heightMm: number): Row[][] {
  const pages: Row[][] = [];
  let left = 0;
  for (const row of rows) {
    if (pages.length === 0 || left < rowHeight(row)) {
      pages.push([]);
      left = heightMm;
    }
    pages.at(-1)!.push(row);
    left -= rowHeight(row) + GAP_MM;
  }
  return pages;
}

/**
 * Panels as they lie on the bench, each with its true outline, edges, openings, grooves and holes: running dimensions from
 * the near left corner of the finished panel (ISO 129-1), holes lettered by kind with their diameter and depth, sides named
 * after the faces of their unit. Pages are A4; narrow panels share one. The same panels give the same drawings.
 */
export function drawPanels(panels: readonly DrawnPanel[], options: PanelDrawingOptions): Drawing[] {
  const { frame } = PAGE;
  const whole = frame.x1 - frame.x0 - 2 * MARGIN_MM;
  const widths = { whole, half: (whole - GAP_MM) / 2 };
  const heightMm = frame.y1 - frame.y0 - MARGIN_MM - BLOCK_ROWS * TITLE_ROW_HEIGHT - 1;
  const ruler = new Sketch(options.measure);
  const figures = panels.map((panel) => measureFigure(panel, widths, heightMm, ruler, options));
  const pages = onPages(inRows(figures), heightMm);
  const says = options.words.panel;
  return pages.map((page, index) => {
    const sketch = new Sketch(options.measure);
    drawFrame(sketch, PAGE);
    drawTitleBlock(sketch, PAGE, titleOf(options, index + 1, pages.length));
    let top = frame.y0 + MARGIN_MM / 2;
    for (const row of page) {
      row.forEach((figure, place) => {
        const left = frame.x0 + MARGIN_MM + place * (widths.half + GAP_MM);
        drawFigure(sketch, figure, [left, top], options);
      });
      top += rowHeight(row) + GAP_MM;
    }
    const names = page.flat().flatMap(({ panel }) => panel.names);
    return {
      widthMm: PAGE.widthMm,
      heightMm: PAGE.heightMm,
      title: says.title(options.job, index + 1, pages.length),
      description: says.description(names),
      shapes: sketch.shapes,
    };
  });
}
