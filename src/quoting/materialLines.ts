import type { PricedLine, QuoteFacts, QuoteSource } from '../model/quotation.ts';
import type { Charges, Rates } from '../model/rates.ts';
import { priceOf, shareMilli } from './amounts.ts';

/** A line before it has its number. */
export type Unnumbered<Line> = Omit<Line, 'number'>;

function priced(
  line: Omit<PricedLine, 'number' | 'kind' | 'amountMinor' | 'priceSource'> & {
    readonly priceSource: QuoteSource;
  },
): Unnumbered<PricedLine> {
  return { kind: 'priced', ...line, amountMinor: priceOf(line.quantityMilli, line.priceMinor) };
}

function sheetLines({ sheets }: QuoteFacts, how: Charges['sheets']): Unnumbered<PricedLine>[] {
  return sheets.map((row) => {
    const shared = how === 'share' && row.kind === 'sheet';
    return priced({
      section: 'material',
      material: row.kind,
      item: row.stock,
      group: row.group,
      quantityMilli: shared
        ? shareMilli(row.count, row.areaUm2 - row.keptUm2, row.areaUm2)
        : row.count * 1000,
      unit: shared ? 'share' : 'sheet',
      // An offcut from the rack was paid for with the sheet that it comes from.
      priceMinor: row.kind === 'offcut' ? 0 : row.priceMinor,
      source: { list: 'sheets-to-buy.csv', row: row.stock },
      priceSource: { list: row.kind === 'offcut' ? 'plan.json' : 'sheets.yaml', row: row.stock },
    });
  });
}

function edgingLines({ edgings }: QuoteFacts, how: Charges['edging']): Unnumbered<PricedLine>[] {
  return edgings.map((row) =>
    priced({
      section: 'material',
      material: 'edging',
      item: row.edging,
      group: null,
      // Metres in thousandths are millimetres; those of a roll are whole thousandths too.
      quantityMilli:
        how === 'rolls' ? Math.round(row.rolls * row.rollM * 1000) : Math.ceil(row.lengthUm / 1000),
      unit: 'metre',
      priceMinor: row.priceMinorPerM,
      source: { list: 'edging-to-buy.csv', row: row.edging },
      priceSource: { list: 'edgings.yaml', row: row.edging },
    }),
  );
}

function fittingLines({ fittings }: QuoteFacts, how: Charges['fittings']): Unnumbered<PricedLine>[] {
  return fittings.map((row) =>
    priced({
      section: 'material',
      material: 'fitting',
      item: row.fitting,
      group: null,
      quantityMilli: 1000 * (how === 'packs' ? row.packs * row.pack : row.count),
      unit: 'piece',
      priceMinor: row.priceMinor,
      source: { list: 'fittings.csv', row: row.fitting },
      priceSource: { list: 'fittings.yaml', row: row.fitting },
    }),
  );
}

/** Sheets, edging and fittings, charged as the rates say. */
export function materialLines(facts: QuoteFacts, charges: Charges): Unnumbered<PricedLine>[] {
  return [
    ...sheetLines(facts, charges.sheets),
    ...edgingLines(facts, charges.edging),
    ...fittingLines(facts, charges.fittings),
  ];
}

/** What the rates name beside material and work. */
export function extraLines({ alike }: QuoteFacts, { extras }: Rates): Unnumbered<PricedLine>[] {
  return extras.map((extra) => {
    const source = { list: 'rates.yaml', row: `extras, ${extra.id}` };
    return priced({
      section: 'extras',
      material: 'extra',
      item: extra.id,
      group: null,
      quantityMilli: 1000 * (extra.for === 'each' ? alike : 1),
      unit: extra.for,
      priceMinor: extra.priceMinor,
      source: extra.for === 'each' ? { list: 'order', row: 'count' } : source,
      priceSource: source,
    });
  });
}
