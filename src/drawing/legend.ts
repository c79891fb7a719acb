import { guideOf } from '../basics/cutGuide.ts';
import type { PlanGroup } from '../model/plan.ts';
import type { Box } from './drawing.ts';
import type { CutPlanWords } from './drawingWords.ts';
import { BY_HAND } from './handWork.ts';
import { LINE_PITCH, NARROW, SMALL, shorten, wrap } from './lettering.ts';
import type { JoinedNames } from './namesOfJoined.ts';
import { type Page, TITLE_BLOCK_WIDTH } from './page.ts';
import { EDGING_DASHES, hatch, OFFCUT_STROKE } from './pieces.ts';
import type { SawnSheet } from './sawnSheet.ts';
import type { Sketch } from './sketch.ts';
import { CARE_SIGN, isNarrowCut } from './stepTable.ts';

export interface LegendOf {
  /** Names of the edgings in the order of their dashes. */
  readonly edgings: readonly string[];
  readonly sawn: SawnSheet;
  readonly group: PlanGroup;
  readonly words: CutPlanWords;
  /** Names of pieces that the table of cuts has; absent where no table is drawn. */
  readonly joined?: JoinedNames;
}

const SYMBOL_MM = 7.5;
const LINE_MM = SMALL * LINE_PITCH;

interface Item {
  readonly words: string;
  draw(sketch: Sketch, box: Box): void;
}

function items(legend: LegendOf): Item[] {
  const says = legend.words.legend;
  const list: Item[] = [
    {
      words: says.cutNumber,
      draw: (sketch, box) => {
        const middle = (box.x0 + box.x1) / 2;
        sketch.line('tables', box.x0, (box.y0 + box.y1) / 2, box.x1, (box.y0 + box.y1) / 2, {
          widthMm: 0.35,
          dashMm: [],
        });
        const half = (box.y1 - box.y0) / 2 - 0.1;
        sketch.rect(
          'tables',
          { x0: middle - half, y0: box.y0 + 0.1, x1: middle + half, y1: box.y1 - 0.1 },
          { stroke: NARROW, fill: 0, radiusMm: half },
        );
      },
    },
  ];
  // More edgings than dashes: the last dash stands for all the others, which the edging list names.
  const styles = EDGING_DASHES.length;
  const shown = legend.edgings.slice(0, styles);
  shown.forEach((name, index) => {
    list.push({
      words: index === styles - 1 && legend.edgings.length > styles ? says.anotherEdging : says.edged(name),
      draw: (sketch, box) => {
        const y = (box.y0 + box.y1) / 2;
        sketch.line('tables', box.x0, y, box.x1, y, {
          widthMm: 0.6,
          dashMm: EDGING_DASHES[Math.min(index, EDGING_DASHES.length - 1)]!,
        });
      },
    });
  });
  const has = (is: 'panel' | 'offcut' | 'waste') => legend.sawn.ends.some((end) => end.ending.is === is);
  if (has('waste')) {
    list.push({
      words: says.waste,
      draw: (sketch, box) => {
        hatch(sketch, 'tables', box);
        sketch.rect('tables', box, { stroke: NARROW });
      },
    });
  }
  const opened = legend.sawn.ends.flatMap((end) => end.panel?.byHand ?? []);
  if (opened.length > 0) {
    list.push({
      words: says.byHand,
      draw: (sketch, box) => {
        const y = (box.y0 + box.y1) / 2;
        sketch.line('tables', box.x0, y, box.x1, y, BY_HAND);
      },
    });
  }
  const keepsOpening = opened.some(({ openings }) => openings.some(({ kept }) => kept !== undefined));
  if (has('offcut') || keepsOpening) {
    list.push({
      words: says.offcut,
      draw: (sketch, box) => sketch.rect('tables', box, { stroke: OFFCUT_STROKE }),
    });
  }
  if (legend.sawn.trims.length > 0) {
    list.push({
      words: says.trim,
      draw: (sketch, box) => {
        hatch(sketch, 'tables', { ...box, y0: box.y0 + 0.7, y1: box.y1 - 0.7 }, 0.7);
      },
    });
  }
  if (legend.sawn.ends.some((end) => end.panel?.grain === 'length')) {
    list.push({
      words: says.grain,
      draw: (sketch, box) => {
        const y = (box.y0 + box.y1) / 2;
        sketch.arrow('tables', [box.x0, y], [box.x1, y], 'both');
      },
    });
  }
  const { restFrom = null, span = null } = legend.joined ?? {};
  if (restFrom !== null) list.push(pieceItem(`${restFrom}+`, says.restFrom(restFrom)));
  if (span !== null) list.push(pieceItem(span.join('-'), says.span(...span)));
  return list;
}

/** A name of a piece in place of a symbol. */
function pieceItem(name: string, words: string): Item {
  return {
    words,
    draw: (sketch, box) => {
      const shown = shorten(name, box.x1 - box.x0, SMALL, 'bold', sketch.measure);
      sketch.text('tables', shown, box.x1, box.y0 - 0.2 + SMALL * 0.86, {
        sizeMm: SMALL,
        weight: 'bold',
        anchor: 'end',
      });
    },
  };
}

function legendBox(page: Page, height: number): Box {
  const { frame } = page;
  return {
    x0: frame.x0 + 1.5,
    y0: frame.y1 - height,
    x1: frame.x1 - TITLE_BLOCK_WIDTH - 2,
    y1: frame.y1 - 0.8,
  };
}

/** Places the items in rows; gives each its left edge and row. */
function layItems(
  sketch: Sketch,
  page: Page,
  legend: LegendOf,
): { item: Item; words: string; x0: number; row: number }[] {
  const box = legendBox(page, 0);
  let x0 = box.x0;
  let row = 0;
  return items(legend).map((item) => {
    const words = shorten(item.words, box.x1 - box.x0 - SYMBOL_MM - 1, SMALL, 'regular', sketch.measure);
    const width = SYMBOL_MM + 1 + sketch.measure(words, SMALL, 'regular');
    if (x0 > box.x0 && x0 + width > box.x1) {
      x0 = box.x0;
      row++;
    }
    const placed = { item, words, x0, row };
    x0 += width + 2.5;
    return placed;
  });
}

function careLines(sketch: Sketch, page: Page, legend: LegendOf): string[] {
  const box = legendBox(page, 0);
  const guide = guideOf(legend.group);
  const narrow = legend.sawn.cuts.filter((cut) => isNarrowCut(cut, guide)).length;
  return wrap(legend.words.care(CARE_SIGN, narrow, guide), box.x1 - box.x0, SMALL, 'regular', sketch.measure);
}

/** Height in mm of legend and cautions together. */
export function legendHeight(sketch: Sketch, page: Page, legend: LegendOf): number {
  const placed = layItems(sketch, page, legend);
  const rows = placed.length === 0 ? 0 : placed.at(-1)!.row + 1;
  return rows * LINE_MM + careLines(sketch, page, legend).length * LINE_MM + 2.4;
}

/** Draws the legend and the cautions left of the title block. */
export function drawLegend(sketch: Sketch, page: Page, legend: LegendOf): void {
  const box = legendBox(page, legendHeight(sketch, page, legend));
  const placed = layItems(sketch, page, legend);
  let y = box.y0 + 0.6;
  for (const { item, words, x0, row } of placed) {
    const top = y + row * LINE_MM;
    item.draw(sketch, { x0, y0: top + 0.2, x1: x0 + SYMBOL_MM, y1: top + LINE_MM - 0.5 });
    sketch.text('tables', words, x0 + SYMBOL_MM + 1, top + SMALL * 0.86, { sizeMm: SMALL });
  }
  y += (placed.length === 0 ? 0 : placed.at(-1)!.row + 1) * LINE_MM + 0.6;
  for (const [index, line] of careLines(sketch, page, legend).entries()) {
    sketch.text('tables', line, box.x0, y + SMALL * 0.86 + index * LINE_MM, { sizeMm: SMALL });
  }
}
