import * as Plot from '@observablehq/plot';
import type { DrawingWindow } from '../../drawing/svg.ts';
import type { Design } from '../../model/comparison.ts';
import type { Sweep, SweepPoint } from '../../model/sweep.ts';
import type { CompareWords } from '../words/compareWords.ts';
import type { PagePlot } from './pagePlot.ts';
import { PLOT_WIDTH, plotText } from './plotText.ts';

const HEIGHT = 260;

/** A point that can be built, with its figures. */
interface Built {
  readonly at: number | string;
  readonly row: string;
  readonly sheets: number;
  readonly least: number;
  readonly price: number;
  readonly kg: number;
  readonly falls: boolean;
}

function priceOf({ pricedBy, materialMinor, netMinor }: Design): number {
  return (pricedBy === 'material' ? materialMinor : netMinor) / 100;
}

function builtOf(points: readonly SweepPoint[], isNumeric: boolean): Built[] {
  return points.flatMap(({ values, result, steps }) => {
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
        falls: steps.reduce((total, step) => total + step.sheets, 0) < 0,
      },
    ];
  });
}

/** Sheets of a sweep with one parameter: a dot a point, the least there can be as an area under them, a mark where one falls away. */
function sheetsCurve(built: readonly Built[], label: string, window: DrawingWindow, title: string): string {
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
      Plot.dot(built, { x: 'at', y: 'sheets', r: 3, fill: '#000' }),
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
  window: DrawingWindow,
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
      Plot.dot(built, { x: 'at', y: figure, r: 3, fill: '#000' }),
    ],
  });
  return plotText(element, window, title);
}

/** A sweep with two parameters as a map: a field a point with its figure, darker where it is more. */
function map(
  built: readonly Built[],
  parameters: readonly string[],
  figure: 'sheets' | 'price' | 'kg',
  window: DrawingWindow,
  title: string,
): string {
  const rows = [...new Set(built.map(({ row }) => row))];
  const columns = [...new Set(built.map(({ at }) => at))];
  const values = built.map((each) => each[figure]);
  const [least, most] = [Math.min(...values), Math.max(...values)];
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
  const element = Plot.plot({
    document: window.document as never,
    className: 'plot',
    width: Math.max(PLOT_WIDTH, 120 + columns.length * 60),
    height: 90 + rows.length * 34,
    marginLeft: 24 + 7.2 * Math.max(...rows.map((row) => row.length), 6),
    marginTop: 30,
    marginBottom: 46,
    x: { label: parameters[1] ?? null, labelArrow: 'none', type: 'band', domain: columns },
    y: { label: parameters[0] ?? null, labelArrow: 'none', type: 'band', domain: rows },
    marks: [
      Plot.cell(built, { x: 'at', y: 'row', fill: (each: Built) => grey(each[figure]), stroke: '#333' }),
      Plot.text(built, { x: 'at', y: 'row', text: textOf, fill: '#000' }),
    ],
  });
  return plotText(element, window, title);
}

/** Plots of a sweep: sheets with the least there can be, price and mass, as curves or, with two parameters, as maps. */
export function sweepPlots(
  { parameters, points }: Sweep,
  words: CompareWords,
  window: DrawingWindow,
): readonly PagePlot[] {
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
    plot(words.plot.sheets, map(built, parameters, 'sheets', window, words.plot.sheets), says.mapNote),
    plot(priceTitle, map(built, parameters, 'price', window, priceTitle)),
    plot(words.plot.mass, map(built, parameters, 'kg', window, words.plot.mass)),
  ];
}
