import type { AddedLine, Quotation, QuoteSection, QuoteUnit } from '../../model/quotation.ts';
import type { Charges, WorkKind } from '../../model/rates.ts';

/** Words of the estimate of an order's price. Figures come in as printed. */
export interface QuoteWords {
  readonly heading: string;
  /** That it is no invoice, and what it is. */
  readonly notInvoice: string;
  readonly order: string;
  readonly date: string;
  readonly validUntil: string;
  readonly alike: (count: number) => string;
  readonly sums: string;
  readonly sumColumns: readonly [string, string, string];
  readonly sum: Readonly<
    Record<Exclude<keyof Quotation['sums'], 'netMinor' | 'vatMinor' | 'totalMinor'>, string>
  >;
  readonly net: (withVat: boolean) => string;
  readonly vat: (percent: string) => string;
  readonly total: string;
  readonly lines: string;
  /** Number, what, quantity, time of one, price, amount, from where. */
  readonly columns: readonly string[];
  readonly section: Readonly<Record<QuoteSection, string>>;
  readonly quantity: (figure: string, unit: QuoteUnit, isOne: boolean) => string;
  readonly anHour: (price: string) => string;
  readonly sheet: (name: string, size: string) => string;
  readonly offcut: (name: string, size: string) => string;
  readonly work: Readonly<Record<WorkKind, Readonly<Record<string, string>>>>;
  readonly assembled: (unit: string) => string;
  readonly added: (item: AddedLine['item'], first: number, last: number) => string;
  readonly rules: string;
  readonly charged: {
    readonly sheets: Readonly<Record<Charges['sheets'], string>>;
    readonly edging: Readonly<Record<Charges['edging'], string>>;
    readonly fittings: Readonly<Record<Charges['fittings'], string>>;
  };
  readonly rounding: string;
  readonly listPrices: string;
  readonly stacked: string;
  readonly hours: (hours: string) => string;
  readonly notCharged: (kinds: string) => string;
  readonly sources: string;
  readonly sawing: string;
  /** Stock group, sheets, metres, cuts, settings, turns. */
  readonly sawingColumns: readonly string[];
  readonly all: string;
}
