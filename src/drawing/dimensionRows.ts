import type { Extent, Um } from '../model/geometry.ts';
import { DIMENSION_ROW_MM, type DimensionPlace, drawChain, hasRoom, placeFigure } from './dimensions.ts';
import type { Box } from './drawing.ts';
import type { ExtensionLines } from './extensionLines.ts';
import { printLength, type Units } from './lengthsInWords.ts';
import { SMALL } from './lettering.ts';
import {
  drawOrigin,
  drawRunningDimensions,
  runningRoom,
  runningRowMm,
  widestFigureMm,
} from './runningDimensions.ts';
import type { Sketch } from './sketch.ts';

/**
 * A row of dimensions beside a view: a chain; or, where figures of it would have no room between their arrows, running
 * dimensions from an edge of each panel, or of the unit.
 */
export interface Row {
  readonly chains: readonly (readonly Extent[])[];
  /** Where running dimensions of each chain begin, and what they tell: with these the row may become such. */
  readonly running?: readonly { readonly fromUm: Um; readonly places: readonly Um[] }[];
}

export interface Rows {
  /** Nearest to the view first; the overall dimension comes last. */
  readonly below: readonly Row[];
  readonly left: readonly Row[];
  /** Of what a view measures along its upper edge only; chains, since nothing runs on there. */
  readonly above?: readonly Pick<Row, 'chains'>[];
}

type Side = keyof Rows;

/** A view on the page: its border, and how µm across and up it become mm. */
export interface RowsOfView {
  readonly view: {
    readonly box: Box;
    readonly x: (um: number) => number;
    readonly y: (um: number) => number;
  };
  /** Whether what runs across the page runs against its axis. */
  readonly across: 1 | -1;
  readonly reduction: number;
  readonly units: Units;
  readonly extensions: ExtensionLines;
}

/** How far a row's dimension line is from the row before or the view: above it there is room for the figure on the line. */
const LINE_MM: Readonly<Record<Side, number>> = {
  below: DIMENSION_ROW_MM + 1,
  left: -DIMENSION_ROW_MM - 1,
  above: -3,
};

/** Whether a row is drawn as running dimensions in a scale, and its depth on the page. */
function asDrawn(
  sketch: Sketch,
  row: Row,
  reduction: number,
  units: Units,
): { running: boolean; mm: number } {
  const mm = (um: Um) => um / 1000 / reduction;
  const fits = ([from, to]: Extent) => hasRoom(sketch, mm(to - from), printLength(to - from, units));
  const { running } = row;
  const chain = { running: false, mm: DIMENSION_ROW_MM };
  if (running === undefined) return chain;
  if (row.chains.length > 0 && row.chains.flat().every(fits)) return chain;
  if (!running.every(({ places }) => runningRoom(places.map(mm)))) return chain;
  const values = running.flatMap(({ fromUm, places }) => places.map((um) => um - fromUm));
  return { running: true, mm: runningRowMm(widestFigureMm(sketch, values, units)) + 1 };
}

/**
 * Rows of running dimensions that begin at the same place told in one, as far as that has room: a second row would begin
 * away from the view, from a circle that lies on nothing.
 */
function runningTogether(
  sketch: Sketch,
  rows: readonly Row[],
  reduction: number,
  units: Units,
): readonly Row[] {
  const together: Row[] = [];
  for (const row of rows) {
    const joined = asDrawn(sketch, row, reduction, units).running
      ? together.flatMap((other, index) => {
          const both = asDrawn(sketch, other, reduction, units).running ? joinedRow(other, row) : null;
          return both !== null && asDrawn(sketch, both, reduction, units).running ? [{ both, index }] : [];
        })[0]
      : undefined;
    if (joined === undefined) together.push(row);
    else together[joined.index] = joined.both;
  }
  return together;
}

/** Two rows as one, where each begins at one place and that is the same. */
function joinedRow(a: Row, b: Row): Row | null {
  const parts = [...(a.running ?? []), ...(b.running ?? [])];
  const [fromUm] = parts.map((part) => part.fromUm);
  if (fromUm === undefined || parts.some((part) => part.fromUm !== fromUm)) return null;
  const places = [...new Set(parts.flatMap((part) => part.places))].sort((one, other) => one - other);
  return { chains: [...a.chains, ...b.chains], running: [{ fromUm, places }] };
}

/** What some rows take beside a view in a scale, in mm of the page. */
export function depthOfRows(sketch: Sketch, rows: readonly Row[], reduction: number, units: Units): number {
  return runningTogether(sketch, rows, reduction, units).reduce(
    (sum, row) => sum + asDrawn(sketch, row, reduction, units).mm,
    0,
  );
}

/** Draws the rows below, left of and above a view; its extension lines are drawn later, since they give way to all figures. */
export function drawRows(sketch: Sketch, rows: Rows, of: RowsOfView): void {
  for (const side of ['below', 'left', 'above'] as const) {
    const away = side === 'below' ? 1 : -1;
    let edgeMm = borderOf(side, of);
    const told = runningTogether(sketch, rows[side] ?? [], of.reduction, of.units);
    const ordered = inClearOrder(sketch, told, side, of);
    ordered.forEach((row, index) => {
      const avoid = ordered.slice(index + 1).flatMap((outer) => linesOf(sketch, outer, side, of));
      drawRow(sketch, row, side, edgeMm, avoid, of);
      edgeMm += away * asDrawn(sketch, row, of.reduction, of.units).mm;
    });
  }
}

/** The border of a view beside which rows stand. */
function borderOf(side: Side, { view: { box } }: RowsOfView): number {
  if (side === 'left') return box.x0;
  return side === 'below' ? box.y1 : box.y0;
}

/** Where an extent lies along a side of a view on the page. */
function alongPage([from, to]: Extent, side: Side, { view, across }: RowsOfView): Extent {
  const onPage = side === 'left' ? view.y : view.x;
  const sign = side === 'left' ? 1 : across;
  const [a, b] = [onPage(sign * from), onPage(sign * to)];
  return a < b ? [a, b] : [b, a];
}

/** The dimensions of a chain row that are drawn: those with room, or a lone one. */
function drawnExtents(sketch: Sketch, row: Row, side: Side, of: RowsOfView) {
  return row.chains.flatMap((chain) =>
    chain.flatMap((extent) => {
      const text = printLength(extent[1] - extent[0], of.units);
      const ends = alongPage(extent, side, of);
      const inside = hasRoom(sketch, ends[1] - ends[0], text);
      return inside || chain.length === 1 ? [{ ends, text, inside }] : [];
    }),
  );
}

/** Where the extension lines of a row stand along the page; running dimensions have none. */
function linesOf(sketch: Sketch, row: Row, side: Side, of: RowsOfView): number[] {
  if (asDrawn(sketch, row, of.reduction, of.units).running) return [];
  return drawnExtents(sketch, row, side, of).flatMap(({ ends }) => ends);
}

/** A chain row as far as other rows matter to it: its extension lines, and its figures between their arrows. */
function measuredChain(sketch: Sketch, row: Row, side: Side, of: RowsOfView) {
  const drawn = drawnExtents(sketch, row, side, of);
  return {
    lines: drawn.flatMap(({ ends }) => ends),
    figures: drawn
      .filter(({ inside }) => inside)
      .map(({ ends, text }) => ({ ends, width: sketch.measure(text, SMALL, 'regular') })),
  };
}

/**
 * The rows in the order in which fewest figures are in the way of extension lines of rows further out; where none is better,
 * as they are. Running dimensions stay at the view, from whose edge they begin, and the overall dimension outside.
 */
function inClearOrder(sketch: Sketch, rows: readonly Row[], side: Side, of: RowsOfView): readonly Row[] {
  const isRunning = (row: Row) => asDrawn(sketch, row, of.reduction, of.units).running;
  const [running, chains] = [rows.filter(isRunning), rows.filter((row) => !isRunning(row))];
  const measured = new Map(chains.map((row) => [row, measuredChain(sketch, row, side, of)]));
  const inTheWay = (order: readonly Row[]) =>
    order.reduce((sum, row, index) => {
      const avoid = order.slice(index + 1).flatMap((outer) => measured.get(outer)!.lines);
      const crossed = measured
        .get(row)!
        .figures.filter(({ ends, width }) => !placeFigure(ends, width, avoid).clear);
      return sum + crossed.length;
    }, 0);
  const orders = permutations(chains.slice(0, -1)).map((order) => [...order, ...chains.slice(-1)]);
  const best = orders.reduce(
    (least, order) => {
      const count = least.count === 0 ? 0 : inTheWay(order);
      return count < least.count ? { order, count } : least;
    },
    { order: chains as readonly Row[], count: inTheWay(chains) },
  );
  return [...running, ...best.order];
}

/** Every order of a few things, the given one first; of more than five only that. */
function permutations<T>(things: readonly T[]): (readonly T[])[] {
  if (things.length < 2 || things.length > 5) return [things];
  return things.flatMap((first, index) =>
    permutations(things.filter((_, other) => other !== index)).map((rest) => [first, ...rest]),
  );
}

function drawRow(
  sketch: Sketch,
  row: Row,
  side: Side,
  edgeMm: number,
  avoid: readonly number[],
  of: RowsOfView,
): void {
  const { view, units, extensions } = of;
  const sign = side === 'left' ? 1 : of.across;
  const turned = ([from, to]: Extent): Extent => (sign === 1 ? [from, to] : [0 - to, 0 - from]);
  const onPage = side === 'left' ? view.y : view.x;
  if (side !== 'above' && asDrawn(sketch, row, of.reduction, units).running) {
    for (const { fromUm, places } of row.running ?? []) {
      const values = places.map((um) => um - fromUm);
      const at = (um: Um) => onPage(sign * (fromUm + um));
      drawRunningDimensions(sketch, values, { side, edgeMm, onPage: at, units, extensions });
      // On the edge that is measured from, also by a row further out.
      if (side === 'below') drawOrigin(sketch, at(0), borderOf(side, of));
      else drawOrigin(sketch, borderOf(side, of), at(0));
    }
    return;
  }
  const fromMm = borderOf(side, of);
  const reads = side === 'left' ? 'up' : 'across';
  const lineMm = edgeMm + LINE_MM[side];
  const place: DimensionPlace = { reads, lineMm, fromMm, onPage, units, extensions, avoid };
  for (const chain of row.chains) drawChain(sketch, chain.map(turned), place);
}
