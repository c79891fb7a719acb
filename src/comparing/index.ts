import {
  type ComparedFigure,
  type ComparedRow,
  type Comparison,
  comparedFigures,
  type Design,
  type DesignGroup,
} from '../model/comparison.ts';

/**
 * Which way a figure is better; balance is best where the two sides weigh the same. Others are matters of taste, and fewer sheets of one finish may be more
 * of another.
 */
const BETTER: Readonly<Partial<Record<ComparedFigure, 'less' | 'more' | 'even'>>> = {
  sheets: 'less',
  yield: 'more',
  edging: 'less',
  'sheets cost': 'less',
  material: 'less',
  work: 'less',
  net: 'less',
  'furniture mass': 'less',
  'left share': 'even',
  'front share': 'even',
  'payload left': 'more',
  seats: 'more',
  'sleeping places': 'more',
  'sawn metres': 'less',
  cuts: 'less',
  'fence settings': 'less',
};

/** The last digit of figures that are printed rounded: 0.1 % of shares, 0.1 m, 0.01 m², 0.1 kg. All others are whole. */
const LAST_DIGIT: Readonly<Partial<Record<ComparedFigure, number>>> = {
  yield: 0.001,
  'offcut area': 0.01,
  edging: 0.1,
  'furniture mass': 0.1,
  'left share': 0.001,
  'front share': 0.001,
  'payload left': 0.1,
  'sawn metres': 0.1,
};

/** A figure in whole last digits: what reads the same is the same, and none of two that read the same is the better one. */
function asRead(figure: ComparedFigure, value: number | null): number | null {
  return value === null ? null : Math.round(value / (LAST_DIGIT[figure] ?? 1));
}

function sum(groups: readonly DesignGroup[], of: (group: DesignGroup) => number): number {
  return groups.reduce((total, group) => total + of(group), 0);
}

function shareOf(part: number, whole: number): number | null {
  return whole === 0 ? null : part / whole;
}

function sheetsCost({ groups }: Design): number | null {
  return groups.some(({ costMinor }) => costMinor === null) ? null : sum(groups, (group) => group.costMinor!);
}

const SIMPLE: Readonly<Record<Exclude<ComparedFigure, 'sheets of'>, (design: Design) => number | null>> = {
  units: ({ units }) => units,
  panels: ({ panels }) => panels,
  sheets: ({ groups }) => sum(groups, ({ sheets }) => sheets),
  yield: (design) => design.yield,
  offcuts: ({ offcuts }) => offcuts.count,
  'offcut area': ({ offcuts }) => offcuts.areaM2,
  edging: ({ edgingMetres }) => edgingMetres,
  'sheets cost': sheetsCost,
  material: ({ materialMinor }) => materialMinor,
  work: ({ workMinor, pricedBy }) => (pricedBy === 'material' ? null : workMinor),
  net: ({ netMinor, pricedBy }) => (pricedBy === 'material' ? null : netMinor),
  'furniture mass': ({ furnitureKg }) => furnitureKg,
  'left share': ({ leftKg, furnitureKg }) => shareOf(leftKg, furnitureKg),
  'front share': ({ frontKg, furnitureKg }) => shareOf(frontKg, furnitureKg),
  'payload left': ({ payloadLeftKg }) => payloadLeftKg,
  seats: ({ seats }) => seats,
  'sleeping places': ({ sleepingPlaces }) => sleepingPlaces,
  'sawn metres': ({ sawnMetres }) => sawnMetres,
  cuts: ({ cuts }) => cuts,
  'fence settings': ({ fenceSettings }) => fenceSettings,
};

/** Places of the best of some values as they are read; none where all are equal, or where no value is better than another. */
function bestOf(figure: ComparedFigure, values: readonly (number | null)[]): number[] {
  const better = BETTER[figure];
  if (better === undefined) return [];
  const half = asRead(figure, 0.5)!;
  const badness = values.map((value) => {
    if (value === null) return null;
    if (better === 'even') return Math.abs(value - half);
    return better === 'less' ? value : -value;
  });
  const known = badness.filter((value) => value !== null);
  const least = Math.min(...known);
  if (known.length < 2 || Math.max(...known) === least) return [];
  return badness.flatMap((value, index) => (value === least ? [index] : []));
}

function rowOf(
  figure: ComparedFigure,
  of: ComparedRow['of'],
  values: readonly (number | null)[],
  least: ComparedRow['least'],
): ComparedRow {
  const read = values.map((value) => asRead(figure, value));
  const differs = read.some((value) => value !== read[0]);
  return { figure, of, values, least, differs, best: bestOf(figure, read) };
}

/** Sheets of each board and finish that some design takes; a design without it takes none. */
function sheetRows(designs: readonly Design[]): ComparedRow[] {
  const kinds = new Map(
    designs.flatMap(({ groups }) =>
      groups.map(({ board, finish }) => [JSON.stringify([board, finish]), { board, finish }] as const),
    ),
  );
  const sorted = [...kinds].sort(([a], [b]) => (a < b ? -1 : 1));
  return sorted.map(([, of]) => {
    const own = designs.map(({ groups }) =>
      groups.filter(({ board, finish }) => board === of.board && finish === of.finish),
    );
    const total = (key: 'sheets' | 'leastSheets') => own.map((groups) => sum(groups, (group) => group[key]));
    return rowOf('sheets of', of, total('sheets'), total('leastSheets'));
  });
}

/**
 * Designs side by side, a row a figure: which figures differ, and who has the best of each. A figure that no design has is
 * left out. What sheets a design does not take counts as none; all other figures that are missing are null.
 */
export function compare(designs: readonly Design[]): Comparison {
  const rows = comparedFigures.flatMap((figure) => {
    if (figure === 'sheets of') return sheetRows(designs);
    const values = designs.map(SIMPLE[figure]);
    if (values.every((value) => value === null)) return [];
    const least =
      figure === 'sheets' ? designs.map(({ groups }) => sum(groups, (each) => each.leastSheets)) : null;
    return [rowOf(figure, null, values, least)];
  });
  return { designs, rows };
}
