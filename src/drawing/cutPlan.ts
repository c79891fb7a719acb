import { mmToUm } from '../basics/lengths.ts';
import type { PlanGroup, PlanPanel, PlanSheet } from '../model/plan.ts';
import { drawCutNumbers, drawCuts } from './cutNumbers.ts';
import { type Box, type Drawing, inset, type TextMeasurer } from './drawing.ts';
import type { DrawingWords } from './drawingWords.ts';
import { drawHandWork } from './handWork.ts';
import { drawLegend, legendHeight } from './legend.ts';
import { printLength, printNamedLength, printRect, type Units } from './lengthsInWords.ts';
import { plainText } from './lettering.ts';
import { namesOfJoined } from './namesOfJoined.ts';
import { drawFrame, drawTitleBlock, type Page, type PageSize, pageOf, TITLE_ROW_HEIGHT } from './page.ts';
import { keyTable, markAt, type UnmarkedPanel, unmarkedTable } from './panelKey.ts';
import { drawMarkWithLeader, drawPanelLabel, type PanelWords } from './panelLabels.ts';
import {
  drawEdging,
  drawGround,
  drawSheetOutline,
  EDGING_DASHES,
  EDGING_INSET_MM,
  edgingsOnPage,
  hatch,
  type PageSide,
} from './pieces.ts';
import { type SawnEnd, type SawnSheet, type SheetRect, sawSheet } from './sawnSheet.ts';
import { type SheetView, viewOfSheet } from './sheetView.ts';
import { Sketch, TakenPlaces } from './sketch.ts';
import { drawSpareLabel } from './spareLabels.ts';
import { stackNamesTable, stackSizes, togetherWords } from './stackWords.ts';
import { panelSize, stepTable, unitOf, unnumberedTable } from './stepTable.ts';
import { drawStripNames, drawSurroundings } from './surroundings.ts';
import { columnsOf, flowTable, freeIn, type TableSpace, tableSpace } from './tables.ts';
import { cutPlanTitle } from './titleFields.ts';

export interface DrawingOptions {
  readonly measure: TextMeasurer;
  readonly words: DrawingWords;
  /** The order or list the plan was made for. */
  readonly job: string;
  /** Workshop or owner for the title block; empty leaves the field free for a stamp. */
  readonly owner?: string;
  readonly page?: PageSize;
  readonly units?: Units;
  /** Words for the ids of boards, finishes and edgings; an id without one is printed as it is. */
  readonly titles?: ReadonlyMap<string, string>;
  /** Numbers of panels in the cutting list, by their ids; drawn with their names, and in place of marks. */
  readonly numbers?: ReadonlyMap<string, number>;
  /** `left out`: no table of the cuts; the room for it comes back as `free`. */
  readonly steps?: 'drawn' | 'left out';
  /** The drawing is reduced at least so much. */
  readonly leastReduction?: number;
  /** `left out`: the title block has no number of its page, for pages that are numbered otherwise. */
  readonly pageNumber?: 'drawn' | 'left out';
}

/** Widths in mm of a table's column: the least that can be read, and what most rows take on one line. */
const LEAST_TABLE_WIDTH = 60;
const GOOD_TABLE_WIDTH = 82;

/** Space round the sheet on the page, for numbers of cuts and for its size. */
const ROOM = { left: 9.5, right: 5, top: 5, bottom: 5.6 } as const;

/** One page being drawn, with what the drawing of panels needs to know. */
interface Sheet {
  readonly group: PlanGroup;
  readonly plan: PlanSheet;
  readonly sawn: SawnSheet;
  readonly view: SheetView;
  /** The sheet and the space for numbers round it. */
  readonly field: Box;
  readonly units: Units;
  readonly words: DrawingWords;
  readonly numbers: ReadonlyMap<string, number>;
  readonly marks: Map<string, string>;
}

/** Says where in its run a panel stands: `run doors 2/4`; empty for a panel in no run. */
function runWords(panel: PlanPanel, group: PlanGroup, words: DrawingWords): string {
  const run = group.runs.find((one) => one.panels.includes(panel.id));
  if (!run) return '';
  const places = run.panels.flatMap((id, index) => (id === panel.id ? [index + 1] : []));
  return words.cutPlan.run(plainText(run.name), `${places.join('+')}/${run.panels.length}`);
}

function wordsOf(panel: PlanPanel, sheet: Sheet): PanelWords {
  const number = sheet.numbers.get(panel.id);
  const name = plainText(panel.name);
  return {
    name: number === undefined ? name : `${number} ${name}`,
    bareName: name,
    unit: unitOf(panel, sheet.group),
    size: panelSize(panel, sheet.units),
    run: runWords(panel, sheet.group, sheet.words),
    mark: sheet.marks.get(panel.id) ?? (number === undefined ? markAt(sheet.marks.size) : String(number)),
  };
}

/** What is left of a panel's box for words once its edging marks are drawn. */
function roomForWords(box: Box, edged: ReadonlySet<PageSide> | ReadonlyMap<PageSide, string>): Box {
  const narrower = Math.min(box.x1 - box.x0, box.y1 - box.y0);
  const plain = Math.min(0.8, narrower / 12);
  const marked = Math.min(EDGING_INSET_MM + 0.45, narrower / 4);
  const margin = (side: PageSide) => (edged.has(side) ? marked : plain);
  return {
    x0: box.x0 + margin('left'),
    y0: box.y0 + margin('top'),
    x1: box.x1 - margin('right'),
    y1: box.y1 - margin('bottom'),
  };
}

interface PanelOnPage {
  readonly panel: PlanPanel;
  readonly lengthAlong: 'length' | 'width';
  readonly box: Box;
  readonly rect: SheetRect;
}

function panelsOnPage({ sawn, view }: Sheet): PanelOnPage[] {
  return sawn.ends.flatMap(({ piece, ending, panel }) =>
    panel && ending.is === 'panel'
      ? [{ panel, lengthAlong: ending.lengthAlong, box: view.place(piece.rect), rect: piece.rect }]
      : [],
  );
}

/** Panels so small that a number on them would leave no room for their own mark. */
function smallPanels(sheet: Sheet): Box[] {
  return panelsOnPage(sheet)
    .map(({ box }) => box)
    .filter((box) => (box.x1 - box.x0) * (box.y1 - box.y0) < 80);
}

function drawAllEdging(sketch: Sketch, sheet: Sheet, order: readonly string[]): void {
  const dashOf = (edging: string) =>
    EDGING_DASHES[Math.min(order.indexOf(edging), EDGING_DASHES.length - 1)]!;
  for (const { panel, lengthAlong, box } of panelsOnPage(sheet)) {
    drawEdging(sketch, box, edgingsOnPage(panel, lengthAlong, sheet.view), dashOf);
  }
}

/** On a sheet with so many panels without room for a mark, leaders are kept short, or none could be followed. */
const MANY_HOMELESS = 40;
const SHORT_LEADER_MM = 30;
/** After so many panels without a place for their mark at all, those of the others are looked for close by only. */
const MANY_UNMARKED = 20;
const SHORTEST_LEADER_MM = 12;

function mostLeader(homeless: number, unmarked: number): number {
  if (unmarked > MANY_UNMARKED) return SHORTEST_LEADER_MM;
  return homeless > MANY_HOMELESS ? SHORT_LEADER_MM : Number.POSITIVE_INFINITY;
}

/**
 * Labels all panels; those without room for even a mark get theirs beside them once the others stand. Gives those for
 * which there is no place for that either.
 */
function drawPanels(sketch: Sketch, sheet: Sheet): UnmarkedPanel[] {
  const { view, marks } = sheet;
  const panels = panelsOnPage(sheet);
  const panelPlaces = new TakenPlaces();
  for (const { box } of panels) panelPlaces.take(box);
  const isPanel = (box: Box) => !panelPlaces.isFree(box);
  const homeless: PanelOnPage[] = [];
  for (const one of panels) {
    const { panel, lengthAlong, box } = one;
    const words = wordsOf(panel, sheet);
    const grain = panel.grain === 'none' ? null : view.onPage(lengthAlong === 'length' ? 'x' : 'y');
    const room = roomForWords(box, edgingsOnPage(panel, lengthAlong, view));
    const drawn = drawPanelLabel(sketch, room, words, grain);
    if (drawn === 'full') continue;
    marks.set(panel.id, words.mark);
    if (drawn === 'no room') homeless.push(one);
  }
  const unmarked: UnmarkedPanel[] = [];
  for (const { panel, box, rect } of homeless) {
    const mark = marks.get(panel.id)!;
    const reach = mostLeader(homeless.length, unmarked.length);
    if (drawMarkWithLeader(sketch, box, mark, sheet.field, isPanel, reach)) continue;
    unmarked.push({ mark, leftUm: rect.x0, nearUm: rect.y0 });
  }
  return unmarked;
}

function drawSpares(sketch: Sketch, sheet: Sheet): void {
  const { offcut, waste } = sheet.words.cutPlan;
  for (const { piece, ending } of sheet.sawn.ends) {
    if (ending.is === 'panel') continue;
    const box = sheet.view.place(piece.rect);
    const size = printRect(piece.rect, sheet.sawn.stock.grain, sheet.units);
    if (ending.is === 'offcut') drawSpareLabel(sketch, inset(box, 1.3), offcut, size, 'bold');
    else drawSpareLabel(sketch, inset(box, 0.4), waste, size, 'regular');
  }
}

/** The regions tables can use on a sheet's first page: right of the sheet, then the band below it. */
function regionsOnFirstPage(page: Page, field: Box, blockTop: number, legendTop: number): Box[] {
  const { frame } = page;
  const regions: Box[] = [];
  const right = { x0: field.x1 + 2, y0: frame.y0 + 1.5, x1: frame.x1 - 1.5, y1: blockTop - 1.5 };
  const rightColumns = columnsOf(right, LEAST_TABLE_WIDTH, GOOD_TABLE_WIDTH);
  regions.push(...rightColumns);
  const below = {
    x0: frame.x0 + 1.5,
    y0: field.y1 + 0.5,
    x1: rightColumns.length > 0 ? field.x1 : frame.x1 - 1.5,
    y1: Math.min(blockTop, legendTop) - 1,
  };
  if (below.y1 - below.y0 > 14) regions.push(...columnsOf(below, LEAST_TABLE_WIDTH, GOOD_TABLE_WIDTH));
  return regions;
}

function regionsOnLaterPage(page: Page, blockTop: number, legendTop: number): Box[] {
  const area = inset(page.frame, 1.5);
  return columnsOf({ ...area, y1: Math.min(blockTop, legendTop) - 1 }, LEAST_TABLE_WIDTH, GOOD_TABLE_WIDTH);
}

function edgingsOf(ends: readonly SawnEnd[]): string[] {
  const found = new Set<string>();
  for (const { panel } of ends) {
    if (!panel) continue;
    for (const edging of [...panel.edging.alongLength, ...panel.edging.alongWidth]) {
      if (edging !== null) found.add(edging);
    }
  }
  return [...found].sort();
}

/**
 * Draws the cut plan of one sheet: everything a joiner needs to saw it, on as many pages as that takes. The first
 * page has the sheet to scale with its panels, numbered cuts, offcuts and waste; the table of all cuts in order
 * begins beside or below it and runs on to further pages. Sheets cut alike are drawn once with their count.
 * Every page has the frame, the title block and the cautions. Throws when the plan does not hold together.
 */
export function drawCutPlan(group: PlanGroup, plan: PlanSheet, options: DrawingOptions): Drawing[] {
  const page = pageOf(options.page ?? 'A4');
  const units = options.units ?? 'mm';
  const { words } = options;
  const sawn = sawSheet(group, plan);
  const sketches: Sketch[] = [];
  const titleRows = 3;
  const blockTop = page.frame.y1 - titleRows * TITLE_ROW_HEIGHT;
  const edgings = edgingsOf(sawn.ends);
  const title = (id: string) => plainText(options.titles?.get(id) ?? id);
  const legend = {
    edgings: edgings.map(title),
    sawn,
    group,
    words: words.cutPlan,
    ...(options.steps === 'left out' ? {} : { joined: namesOfJoined(plan) }),
  };
  const first = new Sketch(options.measure);
  const legendTop = page.frame.y1 - legendHeight(first, page, legend);
  const available = {
    x0: page.frame.x0 + ROOM.left,
    y0: page.frame.y0 + ROOM.top,
    x1: page.frame.x1 - ROOM.right,
    y1: Math.min(blockTop, legendTop) - ROOM.bottom,
  };
  const view = viewOfSheet(sawn.raw, available, options.leastReduction);
  const field = {
    x0: page.frame.x0 + 0.6,
    y0: page.frame.y0 + 0.6,
    x1: view.box.x1 + ROOM.right - 0.3,
    y1: view.box.y1 + ROOM.bottom - 0.2,
  };
  const sheet: Sheet = {
    group,
    plan,
    sawn,
    view,
    field,
    units,
    words,
    numbers: options.numbers ?? new Map(),
    marks: new Map(),
  };
  drawGround(first, sawn.ends, view);
  for (const trim of sawn.trims) hatch(first, 'trim', view.place(trim), 0.7);
  drawCuts(first, sawn.cuts, view);
  drawSheetOutline(first, view);
  drawAllEdging(first, sheet, edgings);
  drawHandWork(first, sawn.ends, view, { units, offcut: sheet.words.cutPlan.offcut });
  drawSurroundings(first, sawn, view, units, words.cutPlan);
  const unnumbered = drawCutNumbers(first, sawn.cuts, view, field, smallPanels(sheet));
  const unmarked = drawPanels(first, sheet);
  drawSpares(first, sheet);
  drawStripNames(first, sawn, view);
  sketches.push(first);

  const keyed = group.panels.flatMap((panel) => {
    const mark = sheet.marks.get(panel.id);
    return mark === undefined ? [] : [{ panel, mark }];
  });
  keyed.sort((a, b) => a.mark.length - b.mark.length || (a.mark < b.mark ? -1 : 1));
  const stack = stackSizes(group, plan);
  const together = togetherWords(group, plan, words.cutPlan);
  const markOf = (panel: string) => sheet.marks.get(panel) ?? null;
  const tables = [
    ...(unnumbered.length > 0 ? [unnumberedTable(unnumbered, words.cutPlan, words.page)] : []),
    keyTable(
      first,
      keyed,
      group,
      units,
      (panel) => runWords(panel, group, words),
      words.cutPlan.key,
      words.page,
    ),
    unmarkedTable(unmarked, units, words.cutPlan.unmarked, words.page),
    stackNamesTable(first, group, plan, words.cutPlan, words.page),
    ...(options.steps === 'left out'
      ? []
      : [stepTable(first, { sawn, view, group, units, words: words.cutPlan, stack, markOf }, words.page)]),
  ];
  let space: TableSpace = tableSpace(regionsOnFirstPage(page, field, blockTop, legendTop));
  let sketch = first;
  for (const table of tables) {
    let row = 0;
    while (row < table.rows.length) {
      const before = row;
      const emptyPage = sketch !== first && space.region === 0 && space.y === space.regions[0]?.y0;
      row = flowTable(sketch, table, row, space);
      if (row === table.rows.length) break;
      if (row === before && emptyPage) {
        throw new Error(`row ${row + 1} of '${table.title}' does not fit on an empty page`);
      }
      sketch = new Sketch(options.measure);
      sketches.push(sketch);
      space = tableSpace(regionsOnLaterPage(page, blockTop, legendTop));
    }
  }
  const free = freeIn(space);
  return sketches.map((one, index) => {
    drawTitleBlock(
      one,
      page,
      cutPlanTitle({
        group,
        plan,
        sawn,
        view,
        options,
        units,
        title,
        page: index + 1,
        pages: sketches.length,
      }),
    );
    drawLegend(one, page, legend);
    drawFrame(one, page);
    return {
      widthMm: page.widthMm,
      heightMm: page.heightMm,
      title: words.cutPlan.title(
        plan.number,
        group.sheets.length,
        [`${title(group.board)} ${title(group.finish)}`.trim(), together ?? '']
          .filter((text) => text !== '')
          .join(', '),
      ),
      description: describe(sheet, index + 1, sketches.length),
      shapes: one.shapes,
      ...(index === 0
        ? { pieces: sawn.ends.map(({ piece }) => ({ piece: piece.name, box: view.place(piece.rect) })) }
        : {}),
      reduction: view.reduction,
      ...(options.steps === 'left out' ? { picture: inset(page.frame, -1) } : {}),
      ...(options.steps === 'left out' && index === sketches.length - 1 ? { free } : {}),
    };
  });
}

function describe({ sawn, plan, units, words }: Sheet, page: number, pages: number): string {
  const panels = sawn.ends.filter((end) => end.panel).length;
  const offcuts = sawn.ends.filter((end) => end.ending.is === 'offcut').length;
  const [length, width] = [mmToUm(sawn.stock.length), mmToUm(sawn.stock.width)];
  const size = `${printLength(length, units)} × ${printNamedLength(width, units)}`;
  const { copies } = plan;
  const cuts = sawn.cuts.length;
  return words.cutPlan.description({ size, copies, panels, offcuts, cuts, page, pages });
}
