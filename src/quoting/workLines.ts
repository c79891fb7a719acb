import type { QuoteFacts, QuoteSource, QuoteUnit, WorkLine } from '../model/quotation.ts';
import { type Rates, type WorkKind, type WorkRate, workKinds } from '../model/rates.ts';
import { workPriceOf } from './amounts.ts';
import type { Unnumbered } from './materialLines.ts';

/** How much there is of one unit of work, and where that is seen. */
interface Amount {
  readonly unit: QuoteUnit;
  /** Of assembly by single units of furniture: which. */
  readonly of?: string;
  readonly quantityMilli: number;
  readonly source: QuoteSource;
}

function sum<T>(rows: readonly T[], of: (row: T) => number): number {
  return rows.reduce((total, row) => total + of(row), 0);
}

/** Metres in thousandths, rounded as each stock group's are printed, so that these add up. */
function metresMilli(um: number): number {
  return Math.round(um / 1000);
}

function counted(unit: QuoteUnit, count: number, list: string, row = ''): Amount {
  return { unit, quantityMilli: 1000 * count, source: { list, row } };
}

/** Everything that there is to do of a kind, rates or not. */
function amountsOf(kind: WorkKind, facts: QuoteFacts): Amount[] {
  switch (kind) {
    case 'sawing': {
      const rows = facts.sawing;
      const metres = sum(rows, (row) => metresMilli(row.sawnUm));
      return [
        counted(
          'sheet',
          sum(rows, (row) => row.sheets),
          'sheets-to-buy.csv',
        ),
        { unit: 'metre', quantityMilli: metres, source: { list: 'saw-steps.csv', row: '' } },
        counted(
          'cut',
          sum(rows, (row) => row.cuts),
          'saw-steps.csv',
        ),
        counted(
          'setting',
          sum(rows, (row) => row.settings),
          'saw-steps.csv',
        ),
        counted(
          'turn',
          sum(rows, (row) => row.turns),
          'saw-steps.csv',
        ),
      ];
    }
    case 'edging': {
      const rows = facts.edgings;
      const metres = sum(rows, (row) => Math.ceil(row.lengthUm / 1000));
      return [
        { unit: 'metre', quantityMilli: metres, source: { list: 'edging-to-buy.csv', row: '' } },
        counted(
          'edge',
          sum(rows, (row) => row.strips),
          'edging-to-buy.csv',
        ),
        counted(
          'set-up',
          sum(rows, (row) => row.setUps),
          'edging-list.csv',
        ),
      ];
    }
    case 'drilling':
      return [
        counted('panel', facts.drilledPanels, 'drilling.csv'),
        counted('hole', facts.holes, 'drilling.csv'),
      ];
    case 'hand work':
      return [
        counted('opening', facts.openings, 'plan.json'),
        counted('outline', facts.outlines, 'plan.json'),
      ];
    case 'assembly':
      return [
        ...facts.units.map(({ unit, count }) => ({
          ...counted('unit', count, 'mass-by-unit.csv', unit),
          of: unit,
        })),
        counted('panel', facts.panels, 'cutting-list.csv'),
        counted(
          'fitting',
          sum(facts.fittings, (row) => row.count),
          'fittings.csv',
        ),
      ];
  }
}

function lineOf(kind: WorkKind, rate: WorkRate, amount: Amount): Unnumbered<WorkLine>[] {
  const { unit, of, quantityMilli, source } = amount;
  const own = of === undefined ? undefined : rate.byUnitMs?.get(of);
  const timeMs = own ?? rate.timesMs.get(unit);
  if (timeMs === undefined || timeMs === 0 || quantityMilli === 0) return [];
  const { hourMinor } = rate;
  const stated = own === undefined ? `${kind}, ${unit}` : `${kind}, units, ${of}`;
  return [
    {
      kind: 'work',
      section: kind,
      item: of ?? unit,
      quantityMilli,
      unit,
      timeMs,
      hourMinor,
      source,
      priceSource: { list: 'rates.yaml', row: stated },
      amountMinor: workPriceOf(quantityMilli, timeMs, hourMinor),
    },
  ];
}

/** Work that has a rate, kind after kind. */
export function workLines(facts: QuoteFacts, rates: Rates): Unnumbered<WorkLine>[] {
  return workKinds.flatMap((kind) => {
    const rate = rates.work.get(kind);
    return rate === undefined ? [] : amountsOf(kind, facts).flatMap((amount) => lineOf(kind, rate, amount));
  });
}

/** Kinds of work that the order has and for which there is no rate at all. */
export function notCharged(facts: QuoteFacts, rates: Rates): WorkKind[] {
  return workKinds.filter(
    (kind) => !rates.work.has(kind) && amountsOf(kind, facts).some(({ quantityMilli }) => quantityMilli > 0),
  );
}
