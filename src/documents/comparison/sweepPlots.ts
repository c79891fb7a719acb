import * as Plot from '@observablehq/plot';
import type { Design } from '../../model/comparison.ts';
import type { Sweep, SweepPoint } from '../../model/sweep.ts';
import type { CompareWords } from '../words/compareWords.ts';
import type { PagePlot } from './pagePlot.ts';
import { PLOT_WIDTH, type PlotWindow, plotText } from './plotText.ts';
import { sheetsFall } from './sweepList.ts';

const HEIGHT = 260;
/** More points than these get small dots. */
const MANY = 60;

function dotSize(built: readonly unknown[]): number {
  return built.length > MANY ? 1.5 : 3;
}

/** A point that can be built, with its figures. */
interface Built {
  readonly at: number | string;
  readonly row: string;
  readonly sheets: number;
  readonly least: number;
  readonly price: number;
  readonly kg: number;
  readonly falls: boolean;
  /** Whether the field to the left, or the one above in a map, takes other sheets. */
  readonly edges: { readonly left: boolean; readonly above: boolean };
}

function priceOf({ pricedBy, materialMinor, netMinor }: Design): number {
  return (pricedBy === 'material' ? materialMinor : netMinor) / 100;
}

function builtOf(points: readonly SweepPoint[], isNumeric: boolean): Built[] {
  return points.flatMap((point) => {
    const { values, result, steps, stepsAcross } = point;
    if (!result.ok) return [];
    const { design } = result;
    const sum = (of: 'sheets' | 'leastSheets') =>
      design.groups.reduce((total, group) => total + group[of], 0);
    const last = values.at(-1)!;
    return [
      {
        at: isNumeric ? Number(last) : last,
        row: values.slice(0, -1).join(', '),
        sheets: sum('sheets'),
        least: sum('leastSheets'),
        price: priceOf(design),
        kg: design.furnitureKg,
        falls: sheetsFall(point),
        edges: { left: steps.length > 0, above: stepsAcross.length > 0 },
      },
    ];
  });
}

/** Sheets of a sweep with one parameter: a dot a point, the least there can be as an area under them, a mark where one falls away. */
function sheetsCurve(built: readonly Built[], label: string, window: PlotWindow, title: string): string {
  const element = Plot.plot({
    document: window.document as never,
    className: 'plot',
    width: PLOT_WIDTH,
    height: HEIGHT,
    marginTop: 26,
    marginBottom: 42,
    x: { label, labelArrow: 'none', tickFormat: String },
    y: {
      label: null,
      grid: true,
      domain: [0, Math.max(...built.map(({ sheets }) => sheets)) + 1],
      interval: 1,
    },
    marks: [
      Plot.areaY(built, { x: 'at', y: 'least', fill: '#d4d4d4', curve: 'step' }),
      Plot.lineY(built, { x: 'at', y: 'sheets', stroke: '#000', strokeWidth: 1.5, curve: 'step' }),
      Plot.dot(built, { x: 'at', y: 'sheets', r: dotSize(built), fill: '#000' }),
      Plot.text(
        built.filter(({ falls }) => falls),
        { x: 'at', y: 'sheets', text: () => '▼', dy: -11, fontSize: 13 },
      ),
      Plot.ruleY([0]),
    ],
  });
  return plotText(element, window, title);
}

function curve(
  built: readonly Built[],
  figure: 'price' | 'kg',
  label: string,
  window: PlotWindow,
  title: string,
): string {
  const element = Plot.plot({
    document: window.document as never,
    className: 'plot',
    width: PLOT_WIDTH,
    height: HEIGHT,
    marginLeft: 60,
    marginBottom: 42,
    x: { label, labelArrow: 'none', tickFormat: String },
    y: { label: null, grid: true, nice: true, tickFormat: String },
    marks: [
      Plot.lineY(built, { x: 'at', y: figure, stroke: '#000', strokeWidth: 1.5 }),
      Plot.dot(built, { x: 'at', y: figure, r: dotSize(built), fill: '#000' }),
    ],
  });
  return plotText(element, window, title);
}

/** Size of a field of a map. */
const [FIELD_WIDTH, FIELD_HEIGHT] = [62, 34];
const MAP_MARGINS = { top: 30, right: 16, bottom: 46 };
/** Line between fields that take other sheets. */
const STEP_LINE = { stroke: '#000', strokeWidth: 3 };

/**
 * A sweep with two parameters as a map: a field a point with its figure, darker where it is more, a thick line between fields
 * that take other sheets, and a cross where nothing can be built.
 */
function map(
  { parameters, points }: Sweep,
  figure: 'sheets' | 'price' | 'kg',
  window: PlotWindow,
  title: string,
): string {
  const built = builtOf(points, false);
  const rows = [...new Set(points.map(({ values }) => values[0]!))];
  const columns = [...new Set(points.map(({ values }) => values[1]!))];
  const refused = points
    .filter(({ result }) => !result.ok)
    .map(({ values }) => ({ at: values[1]!, row: values[0]! }));
  const figures = built.map((each) => each[figure]);
  const [least, most] = [Math.min(...figures), Math.max(...figures)];
  const tone = (value: number) => (most === least ? 0.15 : 0.06 + (0.34 * (value - least)) / (most - least));
  const grey = (value: number) => {
    const part = Math.round(255 * (1 - tone(value)));
    return `rgb(${part},${part},${part})`;
  };
  const textOf = ({ sheets, least: bound, price, kg, falls }: Built) => {
    if (figure === 'price') return price.toFixed(0);
    if (figure === 'kg') return kg.toFixed(1);
    return `${falls ? '▼ ' : ''}${sheets}${bound < sheets ? ` (${bound})` : ''}`;
  };
  const marginLeft = 34 + 7.2 * Math.max(...rows.map((row) => row.length));
  const field = { x: 'at', y: 'row' };
  const element = Plot.plot({
    document: window.document as never,
    className: 'plot',
    width: marginLeft + MAP_MARGINS.right + columns.length * FIELD_WIDTH,
    height: MAP_MARGINS.top + MAP_MARGINS.bottom + rows.length * FIELD_HEIGHT,
    marginLeft,
    marginTop: MAP_MARGINS.top,
    marginRight: MAP_MARGINS.right,
    marginBottom: MAP_MARGINS.bottom,
    x: { label: parameters[1]!, labelArrow: 'none', type: 'band', domain: columns, padding: 0 },
    y: { label: parameters[0]!, labelArrow: 'none', type: 'band', domain: rows, padding: 0 },
    marks: [
      Plot.cell(built, { ...field, fill: (each: Built) => grey(each[figure]), stroke: '#999' }),
      Plot.cell(refused, { ...field, fill: '#fff', stroke: '#999' }),
      Plot.text(refused, { ...field, text: () => '×', fill: '#333' }),
      Plot.text(built, { ...field, text: textOf, fill: '#000' }),
      Plot.tickX(
        built.filter(({ edges }) => edges.left),
        { ...field, ...STEP_LINE, dx: -FIELD_WIDTH / 2 },
      ),
      Plot.tickY(
        built.filter(({ edges }) => edges.above),
        { ...field, ...STEP_LINE, dy: -FIELD_HEIGHT / 2 },
      ),
    ],
  });
  return plotText(element, window, title);
}

/** Plots of a sweep: sheets with the least there can be, price and mass, as curves or, with two parameters, as maps. */
export function sweepPlots(sweep: Sweep, words: CompareWords, window: PlotWindow): readonly PagePlot[] {
  const { parameters, points } = sweep;
  const isNumeric =
    parameters.length === 1 && points.every(({ values }) => Number.isFinite(Number(values.at(-1))));
  const built = builtOf(points, isNumeric);
  const [first] = points.flatMap(({ result }) => (result.ok ? [result.design] : []));
  if (first === undefined) return [];
  const says = words.sweep;
  const priceTitle =
    first.pricedBy === 'material' ? says.material(first.currency) : words.plot.money(first.currency);
  const plot = (title: string, svg: string, note: string | null = null): PagePlot => ({
    title,
    svg,
    tones: [],
    note,
    ...(parameters.length === 1 ? {} : { wide: true as const }),
  });
  const label = parameters[0]!;
  if (parameters.length === 1) {
    return [
      plot(words.plot.sheets, sheetsCurve(built, label, window, words.plot.sheets), says.curveNote),
      plot(priceTitle, curve(built, 'price', label, window, priceTitle)),
      plot(words.plot.mass, curve(built, 'kg', label, window, words.plot.mass)),
    ];
  }
  return [
    plot(words.plot.sheets, map(sweep, 'sheets', window, words.plot.sheets), says.mapNote),
    plot(priceTitle, map(sweep, 'price', window, priceTitle)),
    plot(words.plot.mass, map(sweep, 'kg', window, words.plot.mass)),
  ];
}
