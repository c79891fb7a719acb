import type {
  BenchEdgeHole,
  BenchGroove,
  BenchHole,
  BenchPanel,
  BenchPoint,
} from '../basics/panelOnBench.ts';
import type { Um } from '../model/geometry.ts';
import type { TextMeasurer } from './drawing.ts';
import type { DrawingWords } from './drawingWords.ts';
import { printLength, printNamedLength, printSize, type Units } from './lengthsInWords.ts';
import { LINE_PITCH, NORMAL, plainText, SMALL, shorten, wrap } from './lettering.ts';
import { type LettersAt, runningRoom, runningRowMm, widestFigureMm } from './runningDimensions.ts';
import type { Sketch } from './sketch.ts';

/** A panel to be drawn as it lies on the bench. */
export interface DrawnPanel {
  /** Number and name of each panel that looks just so: `6 left side, base cupboard`. */
  readonly names: readonly string[];
  readonly bench: BenchPanel;
  readonly thicknessUm: Um;
  readonly grain: 'length' | 'none';
  /** How many in all. */
  readonly count: number;
}

export interface PanelDrawingOptions {
  readonly measure: TextMeasurer;
  readonly words: DrawingWords;
  readonly units?: Units;
  readonly job: string;
  readonly owner?: string;
  /** Title of an edging; its id where there is none. */
  readonly titles: ReadonlyMap<string, string>;
  /** `left out`: the title block has no number of its page, for pages that are numbered otherwise. */
  readonly pageNumber?: 'drawn' | 'left out';
}

/** Across the whole page, or beside another. */
export type FigureWidth = 'whole' | 'half';

/** Largest size of the panel itself on the page, and the scales it is drawn to (ISO 5455 and steps between). */
const MOST_MM = { whole: { width: 225, height: 104 }, half: { width: 100, height: 56 } } as const;
/**
 * A panel is clear enough on half the width with few distances along both sides, or with some more as long as its scale
 * leaves the holes of a row apart.
 */
const FEW_DISTANCES = { anyScale: 14, clearScale: 32, clearReduction: 10 } as const;
const REDUCTIONS = [1, 2, 5, 10, 15, 20, 25, 30, 40, 50] as const;
export const SIDE_NAME_MM = 3.2;
/** Between the lines over a figure and the name of its far side. */
export const HEAD_GAP_MM = 0.6;
export const LINE_MM = SMALL * LINE_PITCH;
/** Beyond these a heading or a legend is cut short: the list of holes has all of it. */
const MOST_HEADING_LINES = 3;
const MOST_LEGEND_LINES = 8;
/** Capitals in order of appearance name kinds of holes on a drawing; I and O would be read as figures. */
const LETTERS = [...'ABCDEFGHJKLMNPQRSTUVWXYZ'];

/** Holes of one kind: drilled alike from the same side. */
export interface HoleKind {
  readonly letter: string;
  readonly holes: readonly BenchHole[];
}

/** Holes in edges that are drilled alike. */
export interface EdgeHoleKind {
  readonly letter: string;
  readonly holes: readonly BenchEdgeHole[];
}

/** Letters in the order of kinds; beyond the alphabet A2, B2 … */
function letterAt(index: number): string {
  const round = Math.floor(index / LETTERS.length);
  return `${LETTERS[index % LETTERS.length]}${round === 0 ? '' : round + 1}`;
}

function alike<H>(holes: readonly H[], keyOf: (hole: H) => string): H[][] {
  const kinds = new Map<string, H[]>();
  for (const hole of holes) kinds.set(keyOf(hole), [...(kinds.get(keyOf(hole)) ?? []), hole]);
  return [...kinds.values()];
}

/** Kinds of holes in edges, lettered after those in the broad faces. */
export function edgeHoleKinds({ holes, edgeHoles }: BenchPanel): EdgeHoleKind[] {
  const before = holeKinds(holes).length;
  const kinds = alike(edgeHoles, ({ diameterUm, depthUm, belowUm }) => `${diameterUm} ${depthUm} ${belowUm}`);
  return kinds.map((of, index) => ({ letter: letterAt(before + index), holes: of }));
}

/** Kinds of holes in the order in which they first come, lettered A, B …; beyond the alphabet A2, B2 … */
export function holeKinds(holes: readonly BenchHole[]): HoleKind[] {
  const kinds = alike(holes, ({ diameterUm, depthUm, goes }) => `${diameterUm} ${depthUm} ${goes}`);
  return kinds.map((of, index) => ({ letter: letterAt(index), holes: of }));
}

/** Name of a hole without the numbers of its row, so that a row is told once: `left hinge cup`. */
function rowName(name: string): string {
  return name.replace(/ \d+(?= |$)/g, '');
}

/** A panel with all that its figure says, measured, but not yet on a page. */
export interface PanelFigure {
  readonly panel: DrawnPanel;
  readonly width: FigureWidth;
  readonly reduction: number;
  readonly heading: readonly string[];
  readonly legend: readonly string[];
  readonly xs: readonly Um[];
  readonly ys: readonly Um[];
  /** Letters of the holes that a distance from the left or from the near edge is for. */
  readonly letters: { readonly xs: LettersAt; readonly ys: LettersAt };
  readonly leftMm: number;
  readonly belowMm: number;
  /** Of the whole figure. */
  readonly heightMm: number;
}

/** Distances in order, those that print alike once. */
function rising(values: readonly Um[], units: Units): Um[] {
  const byText = new Map<string, Um>();
  for (const um of values.toSorted((a, b) => a - b)) {
    const text = printLength(um, units);
    if (!byText.has(text)) byText.set(text, um);
  }
  return [...byText.values()];
}

/**
 * The letters of the kinds of holes at each distance, told apart as it is printed. None where holes of one kind are all that
 * the panel has.
 */
function lettersOf(bench: BenchPanel, units: Units): PanelFigure['letters'] {
  const kinds = [...holeKinds(bench.holes), ...edgeHoleKinds(bench)];
  const others = bench.grooves.length + bench.cutOuts.length + (bench.shaped ? 1 : 0);
  if (kinds.length + others < 2) return { xs: () => '', ys: () => '' };
  const inFaces = new Set<BenchHole | BenchEdgeHole>(bench.holes);
  const across = { xs: ['near', 'far'], ys: ['left', 'right'] } as const;
  const along = (axis: 'xs' | 'ys'): LettersAt => {
    const found = new Map<string, string[]>();
    for (const { letter, holes } of kinds) {
      for (const hole of holes as readonly (BenchHole | BenchEdgeHole)[]) {
        if (!inFaces.has(hole) && !across[axis].some((side) => 'side' in hole && side === hole.side))
          continue;
        const text = printLength(axis === 'xs' ? hole.leftUm : hole.nearUm, units);
        found.set(text, [...(found.get(text) ?? []).filter((other) => other !== letter), letter]);
      }
    }
    return (um) => (found.get(printLength(um, units)) ?? []).join(', ');
  };
  return { xs: along('xs'), ys: along('ys') };
}

/** Every distance that the figure states, from the left and from the near edge. */
function distances(bench: BenchPanel, units: Units): { xs: Um[]; ys: Um[] } {
  const rects = [...bench.cutOuts, ...bench.grooves];
  const within = (most: Um) => (um: Um) => um >= 0 && um <= most;
  const points: readonly BenchPoint[] = [...bench.holes, ...bench.outline];
  const inEnds = bench.edgeHoles.filter(({ side }) => side === 'left' || side === 'right');
  const inSides = bench.edgeHoles.filter(({ side }) => side === 'near' || side === 'far');
  const along = (values: readonly Um[], most: Um) => rising(values.filter(within(most)), units);
  return {
    xs: along(
      [...[...points, ...inSides].map((point) => point.leftUm), ...rects.flatMap(({ left }) => left)],
      bench.lengthUm,
    ),
    ys: along(
      [...[...points, ...inEnds].map((point) => point.nearUm), ...rects.flatMap(({ near }) => near)],
      bench.widthUm,
    ),
  };
}

/** What a panel is on the bench and will not be in its place, and from where it is measured if no edge is left for that. */
function alongWall(bench: BenchPanel, { words, units = 'mm' }: PanelDrawingOptions): string[] {
  const { faces, outlines } = words.furniture;
  const left = (['left', 'right', 'near', 'far'] as const).flatMap((side) =>
    bench.scribing[side] === 0
      ? []
      : [outlines.scribing(printNamedLength(bench.scribing[side], units), faces[bench.sides[side]])],
  );
  const marks = (['left', 'near'] as const).flatMap((side) => {
    const outsideUm = bench.marksFromSawn[side];
    return outsideUm === null
      ? []
      : [words.panel.marksFromSawn(faces[bench.sides[side]], printNamedLength(outsideUm, units))];
  });
  return [...left, ...marks];
}

function legendOf(panel: DrawnPanel, options: PanelDrawingOptions): string[] {
  const { bench } = panel;
  const says = options.words.panel;
  const units = options.units ?? 'mm';
  const length = (um: Um) => printLength(um, units);
  const below = (goes: BenchHole['goes'] | BenchGroove['goes']) =>
    goes === 'in from below' ? `, ${says.fromBelow}` : '';
  const kinds = holeKinds(bench.holes).map(({ letter, holes }) => {
    const { diameterUm, depthUm, goes } = holes[0]!;
    const what =
      depthUm === null ? says.through(length(diameterUm)) : says.deep(length(diameterUm), length(depthUm));
    const names = [...new Set(holes.map(({ name }) => rowName(name)))].join(', ');
    return `${letter}: ${holes.length} × ${what}${below(goes)} (${names})`;
  });
  const edgeKinds = edgeHoleKinds(bench).map(({ letter, holes }) => {
    const { diameterUm, depthUm, belowUm } = holes[0]!;
    const names = [...new Set(holes.map(({ name }) => rowName(name)))].join(', ');
    return `${letter}: ${holes.length} × ${says.inEdge(length(diameterUm), length(depthUm), length(belowUm))} (${names})`;
  });
  const grooves = bench.grooves.map(
    ({ holds, depthUm, goes }) => `${says.groove(length(depthUm), holds)}${below(goes)}`,
  );
  const openings = bench.cutOuts.map(({ name, left, near }) =>
    options.words.furniture.opening(name, printSize(left[1] - left[0], near[1] - near[0], units)),
  );
  const edgings = new Set(Object.values(bench.edging).filter((edging) => edging !== null));
  const edged = [...edgings].map((edging) =>
    options.words.cutPlan.legend.edged(options.titles.get(edging) ?? edging),
  );
  return [...kinds, ...edgeKinds, ...grooves, ...openings, ...edged, ...alongWall(bench, options)];
}

/** Entries side by side, as many on a line as it has room for. */
function linesOf(entries: readonly string[], widthMm: number, measure: TextMeasurer): string[] {
  const gap = '\u2003';
  const lines: string[] = [];
  for (const entry of entries.map(plainText)) {
    const joined = lines.length === 0 ? entry : `${lines.at(-1)}${gap}${entry}`;
    if (lines.length > 0 && measure(joined, SMALL, 'regular') <= widthMm) lines[lines.length - 1] = joined;
    else lines.push(...wrap(entry, widthMm, SMALL, 'regular', measure));
  }
  return lines;
}

/** As many lines as there may be; the last of a longer text says that it goes on. */
function atMost(lines: readonly string[], most: number, goesOn: (last: string) => string): string[] {
  return lines.length <= most ? [...lines] : [...lines.slice(0, most - 1), goesOn(lines[most - 1]!)];
}

/** The largest scale at which a panel is no larger on the page than it may be. */
function reductionFor(bench: BenchPanel, most: { readonly width: number; readonly height: number }): number {
  const fits = (scale: number) =>
    bench.lengthUm / 1000 / scale <= most.width && bench.widthUm / 1000 / scale <= most.height;
  const largest = Math.max(bench.lengthUm / most.width, bench.widthUm / most.height);
  return REDUCTIONS.find(fits) ?? Math.ceil(largest / 1000);
}

function widthFor(bench: BenchPanel, distances: number): FigureWidth {
  if (distances <= FEW_DISTANCES.anyScale) return 'half';
  const clear = reductionFor(bench, MOST_MM.half) <= FEW_DISTANCES.clearReduction;
  return clear && distances <= FEW_DISTANCES.clearScale ? 'half' : 'whole';
}

/**
 * Measures a figure for a page that has so much width for whole and half figures, and so much height: across the whole page,
 * in a larger scale, also where beside another some distance has no room.
 */
export function measureFigure(
  panel: DrawnPanel,
  widths: Readonly<Record<FigureWidth, number>>,
  pageHeightMm: number,
  sketch: Sketch,
  options: PanelDrawingOptions,
): PanelFigure {
  const { xs, ys } = distances(panel.bench, options.units ?? 'mm');
  const measured = (width: FigureWidth) =>
    measureInWidth(panel, { width, widthMm: widths[width], pageHeightMm }, { xs, ys }, sketch, options);
  const first = measured(widthFor(panel.bench, xs.length + ys.length));
  if (first.hasRoom || first.figure.width === 'whole') return first.figure;
  const whole = measured('whole');
  return whole.hasRoom ? whole.figure : first.figure;
}

/** A figure in one of the widths, and whether all its distances have room there. */
function measureInWidth(
  panel: DrawnPanel,
  room: { readonly width: FigureWidth; readonly widthMm: number; readonly pageHeightMm: number },
  { xs, ys }: Pick<PanelFigure, 'xs' | 'ys'>,
  sketch: Sketch,
  options: PanelDrawingOptions,
): { readonly figure: PanelFigure; readonly hasRoom: boolean } {
  const { bench } = panel;
  const { width, widthMm, pageHeightMm } = room;
  const units = options.units ?? 'mm';
  const letters = lettersOf(bench, units);
  const leftMm = runningRowMm(widestFigureMm(sketch, ys, units, letters.ys)) + SIDE_NAME_MM;
  const belowMm = runningRowMm(widestFigureMm(sketch, xs, units, letters.xs)) + SIDE_NAME_MM;
  const names = wrap(plainText(panel.names.join('; ')), widthMm, NORMAL, 'bold', options.measure);
  const heading = atMost(names, MOST_HEADING_LINES, (last) =>
    shorten(`${last} …`, widthMm, NORMAL, 'bold', options.measure),
  );
  const listed = linesOf(legendOf(panel, options), widthMm, options.measure);
  const { noRoom } = options.words.panel;
  const legend = atMost(listed, MOST_LEGEND_LINES, () => noRoom);
  // The last line is kept for what may have to be said about the distances.
  const beside =
    heading.length * NORMAL * LINE_PITCH +
    LINE_MM +
    SIDE_NAME_MM +
    HEAD_GAP_MM +
    belowMm +
    (legend.length + 1) * LINE_MM;
  const reduction = reductionFor(bench, {
    width: Math.min(MOST_MM[width].width, widthMm - leftMm - SIDE_NAME_MM - 2),
    height: Math.min(MOST_MM[width].height, pageHeightMm - beside),
  });
  const onPage = (um: Um) => um / 1000 / reduction;
  const clear = runningRoom(xs.map(onPage)) && runningRoom(ys.map(onPage));
  const says = clear || legend.at(-1) === noRoom ? legend : [...legend, noRoom];
  const heightMm = beside - LINE_MM + (says.length - legend.length) * LINE_MM + onPage(bench.widthUm);
  const figure = {
    panel,
    width,
    reduction,
    heading,
    legend: says,
    xs,
    ys,
    letters,
    leftMm,
    belowMm,
    heightMm,
  };
  return { figure, hasRoom: clear };
}
