import type { ComparedFigure } from '../../model/comparison.ts';

/** What a figure is printed in. */
type FigureKind = 'count' | 'percent' | 'metres' | 'squareMetres' | 'money' | 'kg';

const KINDS: Readonly<Partial<Record<ComparedFigure, FigureKind>>> = {
  yield: 'percent',
  'offcut area': 'squareMetres',
  edging: 'metres',
  'sheets cost': 'money',
  material: 'money',
  work: 'money',
  net: 'money',
  'furniture mass': 'kg',
  'left share': 'percent',
  'front share': 'percent',
  'payload left': 'kg',
  'sawn metres': 'metres',
};

/** A figure with its unit, as people read it; money in the currency, nothing for null. */
export function printFigure(figure: ComparedFigure, value: number | null, currency: string): string {
  if (value === null) return '–';
  switch (KINDS[figure] ?? 'count') {
    case 'count':
      return String(value);
    case 'percent':
      return `${(100 * value).toFixed(1)} %`;
    case 'metres':
      return `${value.toFixed(1)} m`;
    case 'squareMetres':
      return `${value.toFixed(2)} m²`;
    case 'money':
      return `${(value / 100).toFixed(2)} ${currency}`.trim();
    case 'kg':
      return `${value.toFixed(1)} kg`.replace('-', '−');
  }
}
