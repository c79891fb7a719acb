import type {
  AddedLine,
  PricedLine,
  Quotation,
  QuoteFacts,
  QuoteLine,
  QuoteSource,
  WorkLine,
} from '../model/quotation.ts';
import type { Rates } from '../model/rates.ts';
import { percentOf, timeOf } from './amounts.ts';
import { extraLines, materialLines, type Unnumbered } from './materialLines.ts';
import { notCharged, workLines } from './workLines.ts';

const RATES = 'rates.yaml';

function sum(lines: readonly { readonly amountMinor: number }[]): number {
  return lines.reduce((total, { amountMinor }) => total + amountMinor, 0);
}

/** A percentage of lines that follow each other; none where it is 0 or there is nothing that it could be of. */
function added(
  item: AddedLine['item'],
  percent: number,
  lines: readonly QuoteLine[],
  priceSource: QuoteSource,
): Unnumbered<AddedLine>[] {
  const first = lines[0];
  const last = lines.at(-1);
  if (percent === 0 || first === undefined || last === undefined) return [];
  const baseMinor = sum(lines);
  return [
    {
      kind: 'added',
      section: 'added',
      item,
      of: [first.number, last.number],
      baseMinor,
      percent,
      priceSource,
      amountMinor: percentOf(baseMinor, percent),
    },
  ];
}

/**
 * The estimate of an order. Lines come in the order material, work, extras, mark-up, VAT, and are numbered through. Each
 * amount is worked out from the figures of its line as they are printed (quantities in thousandths, times in ms) and
 * rounded to a whole minor unit, halves up; every sum is that of the rounded lines, so that what is printed adds up.
 */
export function makeQuotation(
  facts: QuoteFacts,
  rates: Rates,
  vatSource: QuoteSource = { list: RATES, row: 'VAT' },
): Quotation {
  const lines: QuoteLine[] = [];
  const add = <Line extends QuoteLine>(own: readonly Unnumbered<Line>[]): Line[] => {
    const numbered = own.map((line, index) => ({ ...line, number: lines.length + index + 1 }) as Line);
    lines.push(...numbered);
    return numbered;
  };
  const material = add<PricedLine>(materialLines(facts, rates.charges));
  const work = add<WorkLine>(workLines(facts, rates));
  const extras = add<PricedLine>(extraLines(facts, rates));
  const markUps = add<AddedLine>([
    ...added('mark-up on material', rates.markUp.material, material, {
      list: RATES,
      row: 'mark-up, material',
    }),
    ...added('mark-up on work', rates.markUp.work, work, { list: RATES, row: 'mark-up, work' }),
  ]);
  const netMinor = sum(lines);
  const vat = rates.vat === null ? null : added('VAT', rates.vat, lines, vatSource);
  const vatMinor = vat === null ? null : sum(add<AddedLine>(vat));
  return {
    lines,
    sums: {
      materialMinor: sum(material),
      workMinor: sum(work),
      extrasMinor: sum(extras),
      markUpMinor: sum(markUps),
      netMinor,
      vatMinor,
      totalMinor: netMinor + (vatMinor ?? 0),
    },
    workMs: work.reduce((total, { quantityMilli, timeMs }) => total + timeOf(quantityMilli, timeMs), 0),
    charges: rates.charges,
    notCharged: notCharged(facts, rates),
  };
}

/** Rates by which an estimate has its material only, at the prices of one sheet, metre and piece. */
export const MATERIAL_ONLY: Rates = {
  work: new Map(),
  charges: { sheets: 'whole', edging: 'metres', fittings: 'pieces' },
  markUp: { material: 0, work: 0 },
  vat: null,
  validDays: null,
  extras: [],
};
