import * as Plot from '@observablehq/plot';
import type { ComparedFigure, Comparison } from '../../model/comparison.ts';
import type { CompareWords } from '../words/compareWords.ts';
import { type PagePlot, PLOT_TONES } from './pagePlot.ts';
import { PLOT_WIDTH, type PlotWindow, plotText } from './plotText.ts';
import { printFigure } from './printFigure.ts';

const LETTER = 8.6;
const LONGEST_NAME = 56;
const ROW_HEIGHT = 42;
/** Part of a row's height that its bar leaves to the name above it. */
const NAME_PART = 0.55;

interface Bar {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  readonly tone: number;
}

interface End {
  readonly name: string;
  readonly at: number;
  readonly text: string;
}

function shortened(name: string): string {
  return name.length <= LONGEST_NAME ? name : `${name.slice(0, LONGEST_NAME - 1)}…`;
}

/** Level bars, one above the other, each with its name above and its figure at its end. */
function barPlot(
  names: readonly string[],
  bars: readonly Bar[],
  ends: readonly End[],
  ticks: readonly { readonly name: string; readonly at: number }[],
  window: PlotWindow,
  label: string,
): string {
  const longest = Math.max(0, ...ends.map(({ text }) => text.length)) * LETTER + 12;
  const element = Plot.plot({
    document: window.document as never,
    className: 'plot',
    width: PLOT_WIDTH,
    height: 46 + names.length * ROW_HEIGHT,
    marginLeft: 8,
    marginRight: longest,
    x: { label: null, grid: true, zero: true, tickFormat: String },
    y: { axis: null, domain: [...names], paddingInner: NAME_PART, paddingOuter: NAME_PART },
    marks: [
      Plot.barX(bars, {
        y: 'name',
        x1: 'from',
        x2: 'to',
        fill: (bar: Bar) => PLOT_TONES[bar.tone],
        stroke: '#333',
      }),
      Plot.tickX(ticks, { y: 'name', x: 'at', stroke: '#000', strokeWidth: 4 }),
      Plot.text(ends, { y: 'name', x: 'at', text: 'text', textAnchor: 'start', dx: 6 }),
      Plot.text(
        names.map((name) => ({ name })),
        { y: 'name', x: 0, text: 'name', textAnchor: 'start', dx: 3, dy: -0.44 * ROW_HEIGHT },
      ),
      Plot.ruleX([0]),
    ],
  });
  return plotText(element, window, label);
}

/** Plots of a comparison: sheets with the least there can be, yield, the estimate and the mass of the furniture. */
export function comparisonPlots(
  { designs, rows }: Comparison,
  words: CompareWords,
  window: PlotWindow,
): readonly PagePlot[] {
  const says = words.plot;
  const names = designs.map(({ name }) => shortened(name));
  const currency = designs[0]?.currency ?? '';
  const plotOf = (
    title: string,
    figure: ComparedFigure,
    parts: (index: number) => readonly number[] | null,
    more: Partial<PagePlot> & { readonly scale?: number } = {},
  ): PagePlot[] => {
    const row = rows.find((each) => each.figure === figure);
    if (row === undefined) return [];
    const bars: Bar[] = [];
    const ends: End[] = [];
    names.forEach((name, index) => {
      const own = parts(index);
      const value = row.values[index] ?? null;
      if (own === null || value === null) return;
      let from = 0;
      own.forEach((part, tone) => {
        bars.push({ name, from, to: from + part, tone: own.length === 1 ? 1 : tone });
        from += part;
      });
      ends.push({ name, at: from, text: printFigure(figure, value, currency) });
    });
    const ticks = (row.least ?? []).flatMap((at, index) =>
      at === null ? [] : [{ name: names[index]!, at }],
    );
    const svg = barPlot(names, bars, ends, ticks, window, title);
    return [{ title, svg, tones: more.tones ?? [], note: more.note ?? null }];
  };
  const value = (figure: ComparedFigure, index: number) =>
    rows.find((row) => row.figure === figure)?.values[index] ?? null;
  const single =
    (figure: ComparedFigure, by = 1) =>
    (index: number) => {
      const own = value(figure, index);
      return own === null ? null : [own * by];
    };
  return [
    ...plotOf(says.sheets, 'sheets', single('sheets'), { note: says.leastTick }),
    ...plotOf(says.yield, 'yield', single('yield', 100)),
    ...plotOf(
      says.money(currency),
      'net',
      (index) => {
        const { pricedBy, materialMinor, workMinor, netMinor } = designs[index]!;
        if (pricedBy === 'material') return null;
        return [materialMinor, workMinor, netMinor - materialMinor - workMinor].map((minor) => minor / 100);
      },
      { tones: [says.material, says.work, says.rest] },
    ),
    ...plotOf(
      says.mass,
      'furniture mass',
      (index) => [designs[index]!.leftKg, designs[index]!.furnitureKg - designs[index]!.leftKg],
      { tones: [says.left, says.right] },
    ),
  ];
}
