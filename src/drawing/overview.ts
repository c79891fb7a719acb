import { mmToUm } from '../basics/lengths.ts';
import type { PlanGroup, PlanSheet } from '../model/plan.ts';
import type { DrawingOptions } from './cutPlan.ts';
import { type Box, type Drawing, inset } from './drawing.ts';
import type { CutPlanWords } from './drawingWords.ts';
import { printSetting, printSize, type Units } from './lengthsInWords.ts';
import { HAIRLINE, LINE_PITCH, NARROW, plainText, SMALL, shorten, WIDE } from './lettering.ts';
import { drawFrame, drawTitleBlock, type Page, pageOf, TITLE_ROW_HEIGHT, type TitleField } from './page.ts';
import { hatch, OFFCUT_STROKE } from './pieces.ts';
import { type SawnSheet, sawSheet } from './sawnSheet.ts';
import { makeView, REDUCTIONS, type SheetView } from './sheetView.ts';
import { Sketch } from './sketch.ts';
import { drawNameIfRoom } from './spareLabels.ts';
import { togetherWords } from './stackWords.ts';
import { groupWords } from './titleFields.ts';

/** Pictures on one page at most. */
const MOST_ON_PAGE = 12;
const CAPTION_MM = 2 * SMALL * LINE_PITCH + 1.2;
const GAP_MM = 6;

interface Sheet {
  readonly group: PlanGroup;
  readonly plan: PlanSheet;
  readonly sawn: SawnSheet;
}

interface Grid {
  readonly columns: number;
  readonly reduction: number;
  readonly cell: { readonly width: number; readonly height: number };
}

/** The number of columns that gives the largest pictures when every sheet is drawn in one scale. */
function bestGrid(sheets: readonly Sheet[], area: Box): Grid {
  let best: Grid | null = null;
  for (let columns = 1; columns <= sheets.length; columns++) {
    const rows = Math.ceil(sheets.length / columns);
    const width = (area.x1 - area.x0 - GAP_MM * (columns - 1)) / columns;
    const height = (area.y1 - area.y0 - GAP_MM * (rows - 1)) / rows;
    const fits = (by: number) =>
      sheets.every(({ sawn }) => {
        const [long, short] = paperSize(sawn, by);
        return long <= width && short <= height - CAPTION_MM;
      });
    const reduction = REDUCTIONS.find(fits);
    if (reduction !== undefined && (best === null || reduction <= best.reduction)) {
      best = { columns, reduction, cell: { width, height } };
    }
  }
  if (best === null) throw new Error('the sheets of a group are too large to be drawn on one page');
  return best;
}

/** Size on paper with the longer side level, in mm. */
function paperSize(sawn: SawnSheet, reduction: number): [number, number] {
  const x = sawn.raw.x1 / 1000 / reduction;
  const y = sawn.raw.y1 / 1000 / reduction;
  return [Math.max(x, y), Math.min(x, y)];
}

function drawSmallSheet(sketch: Sketch, sawn: SawnSheet, view: SheetView, words: CutPlanWords): void {
  for (const { piece, ending, panel } of sawn.ends) {
    const box = view.place(piece.rect);
    if (ending.is === 'waste') hatch(sketch, 'waste', box);
    if (ending.is === 'offcut' && Math.min(box.x1 - box.x0, box.y1 - box.y0) > 2) {
      sketch.rect('offcuts', inset(box, 0.7), { stroke: OFFCUT_STROKE });
    }
    if (panel) sketch.rect('panels', box, { stroke: NARROW, fill: 0.06 });
  }
  for (const trim of sawn.trims) hatch(sketch, 'trim', view.place(trim), 0.7);
  for (const cut of sawn.cuts) sketch.rect('cuts', view.place(cut.kerf), { stroke: HAIRLINE, fill: 1 });
  sketch.rect('sheet', view.box, { stroke: WIDE });
  for (const { piece, ending, panel } of sawn.ends) {
    const box = inset(view.place(piece.rect), 0.5);
    if (panel) drawNameIfRoom(sketch, box, plainText(panel.name));
    else if (ending.is === 'offcut') drawNameIfRoom(sketch, inset(box, 0.5), words.offcut);
  }
}

function drawCaption(sketch: Sketch, sheet: Sheet, box: Box, units: Units, says: CutPlanWords): void {
  const { plan, sawn, group } = sheet;
  const { small } = says;
  const panels = sawn.ends.filter((end) => end.panel).length;
  const width = box.x1 - box.x0;
  const first = `${plan.number} · ${togetherWords(group, plan, says) ?? small.countAlike(plan.copies)}`;
  const words = [
    printSize(sawn.raw.x1, sawn.raw.y1, units),
    small.countOfPanels(panels),
    small.countOfCuts(sawn.cuts.length),
  ].join(' · ');
  const within = (text: string, weight: 'bold' | 'regular') =>
    shorten(text, width, SMALL, weight, sketch.measure);
  const y = box.y1 + 0.8 + SMALL * 0.9;
  sketch.text('tables', within(first, 'bold'), box.x0, y, { sizeMm: SMALL, weight: 'bold' });
  sketch.text('tables', within(words, 'regular'), box.x0, y + SMALL * LINE_PITCH, { sizeMm: SMALL });
}

function overviewTitle(
  group: PlanGroup,
  options: DrawingOptions,
  reduction: number,
  page: number,
  pages: number,
): TitleField[][] {
  const units = options.units ?? 'mm';
  const title = (id: string) => plainText(options.titles?.get(id) ?? id);
  const sheets = group.sheets.reduce((sum, sheet) => sum + sheet.copies, 0);
  const panels = group.panels.reduce((sum, panel) => sum + panel.count, 0);
  const { page: heads, cutPlan: says } = options.words;
  const saw = `${plainText(group.saw.name)}, ${says.kerf(printSetting(mmToUm(group.saw.kerf), units))}`;
  return [
    [
      { heading: heads.workshop, content: plainText(options.owner ?? ''), weight: 48 },
      { heading: heads.job, content: plainText(options.job), weight: 72 },
      { heading: heads.document, content: says.overview, weight: 28 },
      { heading: heads.date, content: '', weight: 32 },
    ],
    [
      { heading: says.board, content: groupWords(group, title, units), weight: 86 },
      { heading: says.small.sheetsInAll, content: String(sheets), weight: 27, strong: true },
      { heading: says.small.panels, content: String(panels), weight: 40 },
      { heading: heads.scale, content: `1 : ${reduction}`, weight: 27 },
    ],
    [
      { heading: says.saw, content: saw, weight: 86 },
      { heading: says.small.plans, content: String(group.sheets.length), weight: 27 },
      { heading: heads.page, content: heads.of(page, pages), weight: 67 },
    ],
  ];
}

function drawPage(
  sheets: readonly Sheet[],
  group: PlanGroup,
  options: DrawingOptions,
  page: Page,
  number: { readonly page: number; readonly pages: number },
): Drawing {
  const sketch = new Sketch(options.measure);
  const room = inset(page.frame, 4);
  const area = { ...room, y1: page.frame.y1 - 3 * TITLE_ROW_HEIGHT - 3 };
  const grid = bestGrid(sheets, area);
  sheets.forEach((sheet, index) => {
    const [long] = paperSize(sheet.sawn, grid.reduction);
    const x0 = area.x0 + (index % grid.columns) * (grid.cell.width + GAP_MM);
    const y0 = area.y0 + Math.floor(index / grid.columns) * (grid.cell.height + GAP_MM);
    const lies = sheet.sawn.raw.x1 >= sheet.sawn.raw.y1 ? 'as it lies' : 'turned';
    const view = makeView(sheet.sawn.raw, [x0 + (grid.cell.width - long) / 2, y0], grid.reduction, lies);
    drawSmallSheet(sketch, sheet.sawn, view, options.words.cutPlan);
    drawCaption(sketch, sheet, view.box, options.units ?? 'mm', options.words.cutPlan);
  });
  const { frame } = page;
  const left = frame.x0 + 2;
  sketch.text('tables', options.words.cutPlan.small.notes[0], left, frame.y1 - 2, {
    sizeMm: SMALL,
  });
  sketch.text('tables', options.words.cutPlan.small.notes[1], left, frame.y1 - 2 - SMALL * LINE_PITCH, {
    sizeMm: SMALL,
  });
  drawTitleBlock(sketch, page, overviewTitle(group, options, grid.reduction, number.page, number.pages));
  drawFrame(sketch, page);
  return {
    widthMm: page.widthMm,
    heightMm: page.heightMm,
    title: options.words.cutPlan.overviewTitle(`${group.board} ${group.finish}`.trim()),
    description: options.words.cutPlan.overviewDescription(sheets.length, number.page, number.pages),
    shapes: sketch.shapes,
  };
}

/**
 * Small pictures of all sheets of a stock group, in one scale, with how many are cut alike: twelve to a page, in the
 * order of the cut plans. No pages for a group without sheets.
 */
export function drawOverview(group: PlanGroup, options: DrawingOptions): Drawing[] {
  const page = pageOf(options.page ?? 'A4');
  const sheets = group.sheets.map((plan) => ({ group, plan, sawn: sawSheet(group, plan) }));
  const pages = Math.ceil(sheets.length / MOST_ON_PAGE);
  return Array.from({ length: pages }, (_, index) =>
    drawPage(sheets.slice(index * MOST_ON_PAGE, (index + 1) * MOST_ON_PAGE), group, options, page, {
      page: index + 1,
      pages,
    }),
  );
}
