import { guideOf } from '../basics/cutGuide.ts';
import { mmToUm } from '../basics/lengths.ts';
import type { PlanGroup, PlanPanel } from '../model/plan.ts';
import type { CutGuide } from '../model/stock.ts';
import type { CutPlanWords, PageWords } from './drawingWords.ts';
import { printRect, printSetting, printSize, type Units } from './lengthsInWords.ts';
import { plainText, SMALL, shorten } from './lettering.ts';
import { type SawnCut, type SawnEnd, type SawnPiece, type SawnSheet, shavedUm } from './sawnSheet.ts';
import type { SheetView } from './sheetView.ts';
import type { Sketch } from './sketch.ts';
import type { Table } from './tables.ts';

/**
 * Below this a cut asks for care. Between fence and blade the hands keep off (safety texts of saw manuals; see the
 * cautions); a piece that is narrower than a rail does not bear it (rails are up to 200 mm wide: common practice, no
 * source).
 */
const NARROW_UM: Readonly<Record<CutGuide, number>> = { fence: 150_000, rail: 200_000 };

const SIGN_ACROSS = '↔';
const SIGN_UP = '↕';
export const CARE_SIGN = '▲';

/** Panels of orders that are cut together have ids that begin with their order, also where a group has those of one only. */
function isPooled({ id, order }: PlanPanel): boolean {
  return order !== '' && id.startsWith(`${order}/`);
}

/** Unit and, where panels of several orders are cut together, the order of a panel. */
export function unitOf(panel: PlanPanel, group: PlanGroup): string {
  const several = group.panels.some((other) => other.order !== group.panels[0]!.order);
  return [panel.unit, several || isPooled(panel) ? panel.order : '']
    .map(plainText)
    .filter((text) => text !== '')
    .join(', ');
}

/** Cut size of a panel, the figure along the grain first. */
export function panelSize(panel: PlanPanel, units: Units): string {
  return printSize(mmToUm(panel.length), mmToUm(panel.width), units);
}

/** `left side, galley sink`. */
export function panelName(panel: PlanPanel, group: PlanGroup): string {
  const unit = unitOf(panel, group);
  return unit === '' ? plainText(panel.name) : `${plainText(panel.name)}, ${unit}`;
}

/**
 * Whether what is measured off by a cut is so narrow that it asks for care: a push stick at a fence, or something as thick
 * laid under a rail. Trims are taken off by the free side of blade and rail.
 */
export function isNarrowCut(cut: SawnCut, guide: CutGuide): boolean {
  return cut.step.cut !== 'trim' && mmToUm(cut.step.fence) < NARROW_UM[guide];
}

export interface StepTableOf {
  readonly sawn: SawnSheet;
  readonly view: SheetView;
  readonly group: PlanGroup;
  readonly units: Units;
  readonly words: CutPlanWords;
  /** How many sheets each cut goes through, as `stackSizes` says it; null for one. */
  readonly stack: string | null;
  /** The mark by which the drawing calls a panel, or null when it has its full name there. */
  markOf(panel: string): string | null;
}

function sizeOf(piece: SawnPiece, of: StepTableOf): string {
  return printRect(piece.rect, of.sawn.stock.grain, of.units);
}

function pieceName(piece: SawnPiece, of: StepTableOf): string {
  return of.words.piece(plainText(piece.name));
}

/** What a piece is called from the cut that frees it on: what it ends as, or its name and size. */
function pieceWords(piece: SawnPiece, end: SawnEnd | undefined, of: StepTableOf): string {
  const size = sizeOf(piece, of);
  if (!end) return `${pieceName(piece, of)} (${size})`;
  if (!end.panel) return `${end.ending.is === 'offcut' ? of.words.offcut : of.words.waste} ${size}`;
  const mark = of.markOf(end.panel.id);
  const name = panelName(end.panel, of.group);
  return `${mark === null ? '' : `[${mark}] `}${name} ${panelSize(end.panel, of.units)}`;
}

/** Cuts that follow each other along one piece with one fence setting, and free the same each time. */
interface Series {
  readonly cuts: SawnCut[];
}

function sameAgain(before: SawnCut, next: SawnCut, ends: ReadonlyMap<string, SawnEnd>): boolean {
  if (before.step.cut === 'trim' || next.step.cut === 'trim') return false;
  const one = ends.get(before.gives[0]!.name);
  const other = ends.get(next.gives[0]!.name);
  return (
    one?.panel === other?.panel &&
    one?.ending.is === other?.ending.is &&
    before.step.cut === next.step.cut &&
    before.step.blade === next.step.blade &&
    before.step.fence === next.step.fence &&
    before.gives[1]?.name === next.hand.name
  );
}

function inSeries(cuts: readonly SawnCut[], ends: ReadonlyMap<string, SawnEnd>): Series[] {
  const series: Series[] = [];
  for (const cut of cuts) {
    const last = series.at(-1);
    if (last && sameAgain(last.cuts.at(-1)!, cut, ends)) last.cuts.push(cut);
    else series.push({ cuts: [cut] });
  }
  return series;
}

function comesOut(cuts: readonly SawnCut[], ends: ReadonlyMap<string, SawnEnd>, of: StepTableOf): string {
  const [first] = cuts[0]!.gives;
  const rest = cuts.at(-1)!.gives[1];
  const end = ends.get(first!.name);
  const times = cuts.length > 1 ? `${cuts.length} × ` : '';
  const freed = end
    ? `${times}${pieceWords(first!, end, of)}`
    : `${cuts.map((cut) => pieceName(cut.gives[0]!, of)).join(', ')} (${sizeOf(first!, of)})`;
  const shaved = shavedUm(cuts.at(-1)!, of.group);
  if (shaved !== null) return `${freed}; ${of.words.steps.shaved(printSetting(shaved, of.units))}`;
  if (rest === undefined) return freed;
  // What is left and goes on to be divided the same way needs no size: it is still lying at the fence.
  const next = of.sawn.cuts.find((cut) => cut.hand.name === rest.name);
  const words =
    next !== undefined && next.runsAlong === cuts[0]!.runsAlong
      ? pieceName(rest, of)
      : pieceWords(rest, ends.get(rest.name), of);
  return `${freed}; ${words}`;
}

function setting(cut: SawnCut, { units, words, group }: StepTableOf): string {
  if (cut.step.cut === 'trim') return words.steps.off(printSetting(mmToUm(cut.step.take), units));
  const fence = printSetting(mmToUm(cut.step.fence), units);
  return isNarrowCut(cut, guideOf(group)) ? `${CARE_SIGN} ${fence}` : fence;
}

/** Says which cuts have no number on the drawing, where it is too crowded for them. */
export function unnumberedTable(numbers: readonly number[], words: CutPlanWords, page: PageWords): Table {
  const says = words.unnumbered;
  return {
    title: says.title,
    shortTitle: page.continued(says.shortTitle),
    columns: [{ heading: says.column, widthMm: 10, grows: true }],
    rows: [[numbers.join(', ')]],
  };
}

/**
 * Every step in order: number, cut, piece in hand, fence setting, and what comes out. Steps that repeat a cut with the
 * same fence share a row with their numbers from and to.
 */
export function stepTable(sketch: Sketch, of: StepTableOf, page: PageWords): Table {
  const says = of.words.steps;
  const guide = guideOf(of.group);
  const columns = says.columns(guide);
  const through = of.stack === null ? null : of.words.stack.through(of.stack);
  const ends = new Map(of.sawn.ends.map((end) => [end.piece.name, end]));
  const rows = inSeries(of.sawn.cuts, ends).map(({ cuts }): string[] => {
    const cut = cuts[0]!;
    const way = of.view.onPage(cut.runsAlong) === 'across' ? SIGN_ACROSS : SIGN_UP;
    return [
      cuts.length === 1 ? String(cut.number) : `${cut.number}–${cuts.at(-1)!.number}`,
      `${way} ${cut.step.cut === 'trim' ? says.trim(cut.step.side) : says.cut[cut.step.cut]}`,
      shorten(pieceName(cut.hand, of), 44, SMALL, 'regular', sketch.measure),
      setting(cut, of),
      comesOut(cuts, ends, of),
    ];
  });
  const widest = (column: number, least: number, most: number) => {
    const weight = column === 0 ? 'bold' : 'regular';
    const widths = rows.map((row) => sketch.measure(row[column]!, SMALL, weight));
    const heading = sketch.measure(columns[column]!, SMALL, 'regular');
    return Math.min(
      most,
      widths.reduce((a, b) => Math.max(a, b), Math.max(least, heading)),
    );
  };
  return {
    title: says.title(of.view.lies, through, guide),
    shortTitle: page.continued(says.shortTitle),
    columns: [
      { heading: columns[0], widthMm: widest(0, 4, 16), anchor: 'end', weight: 'bold' },
      { heading: columns[1], widthMm: widest(1, 4, 20) },
      { heading: columns[2], widthMm: widest(2, 6.5, 13) },
      { heading: columns[3], widthMm: widest(3, 8, 15), anchor: 'end' },
      { heading: columns[4], widthMm: 0, grows: true },
    ],
    rows,
  };
}
