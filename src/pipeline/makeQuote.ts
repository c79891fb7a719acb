import { dayNumber, dayText } from '../basics/calendar.ts';
import { bookPages } from '../documents/book/bookPages.ts';
import { quotationBook } from '../documents/book/quotationBook.ts';
import { edgesInWorkingOrder, edgingNeeds } from '../documents/edgingList.ts';
import { fittingNeeds } from '../documents/fittingsList.ts';
import { quotationTable } from '../documents/quotation.ts';
import { csvFromTable } from '../documents/table.ts';
import { wordsOf } from '../documents/words/index.ts';
import type { Drawing } from '../drawing/index.ts';
import type { Panel } from '../model/furniture.ts';
import type { PlanFile, PlanGroup } from '../model/plan.ts';
import type { Quotation, QuoteFacts } from '../model/quotation.ts';
import type { Charges, Rates } from '../model/rates.ts';
import type { GroupMeasure } from '../model/report.ts';
import { makeQuotation } from '../quoting/index.ts';
import { measurePlan } from '../replay/index.ts';
import type { OrderedFurniture } from './job.ts';
import type { DrawingTools } from './makePapers.ts';

export {
  describeQuoteLine,
  printPercent,
  printQuantity,
  printTime,
  quoteSums,
  sourceText,
} from '../documents/quotation.ts';
export { wordsOf } from '../documents/words/index.ts';
export type { Quotation, QuoteFacts, QuoteLine } from '../model/quotation.ts';

function sheetFacts(group: PlanGroup, measure: GroupMeasure): QuoteFacts['sheets'] {
  return group.stock.flatMap((stock) => {
    const own = group.sheets.filter((sheet) => sheet.stock === stock.id);
    const count = own.reduce((sum, { copies }) => sum + copies, 0);
    if (count === 0) return [];
    const numbers = new Set(own.map(({ number }) => number));
    const keptUm2 = measure.offcuts
      .filter(({ sheet }) => numbers.has(sheet))
      .reduce(
        (sum, { lengthUm, widthUm, count: pieces }) =>
          sum + BigInt(lengthUm) * BigInt(widthUm) * BigInt(pieces),
        0n,
      );
    const um = (mm: number) => BigInt(Math.round(mm * 1000));
    return [
      {
        group: group.id,
        stock: stock.id,
        board: group.board,
        finish: group.finish,
        kind: stock.kind,
        count,
        priceMinor: stock.price,
        areaUm2: um(stock.length) * um(stock.width) * BigInt(count),
        keptUm2,
      },
    ];
  });
}

/** How often the edging machine is changed to each edging when edges are done in working order. */
function setUps(plan: PlanFile): Map<string, number> {
  const found = new Map<string, number>();
  let last: string | null = null;
  for (const { edging } of edgesInWorkingOrder(plan).edges) {
    if (edging !== last) found.set(edging, (found.get(edging) ?? 0) + 1);
    last = edging;
  }
  return found;
}

/** Holes in faces and in edges. */
function holesIn({ holes, edgeHoles }: Panel): number {
  return holes.length + (edgeHoles?.length ?? 0);
}

/**
 * What of an order and its plan, which has been replayed, an estimate is worked out from. `edged` has the panels that get
 * edging, where the plan has only some of them.
 */
export function quoteFacts(
  { furniture, library }: OrderedFurniture,
  plan: PlanFile,
  edged: PlanFile = plan,
): QuoteFacts {
  const measures = measurePlan(plan);
  const changes = setUps(edged);
  const panels = furniture.units.flatMap((unit) => unit.panels);
  const total = (of: (panel: (typeof panels)[number]) => number) =>
    panels.reduce((sum, panel) => sum + of(panel) * panel.count, 0);
  const unitCounts = new Map<string, number>();
  for (const { unit } of furniture.units) {
    unitCounts.set(unit, (unitCounts.get(unit) ?? 0) + furniture.count);
  }
  return {
    sheets: plan.groups.flatMap((group, index) => sheetFacts(group, measures[index]!)),
    edgings: edgingNeeds(edged, library.edgings).map((need) => {
      const edging = library.edgings.get(need.edging);
      if (edging === undefined) throw new Error(`the library has no edging ${need.edging}`);
      return {
        edging: need.edging,
        strips: need.strips,
        lengthUm: need.toBuyUm ?? need.netUm,
        rolls: need.rolls ?? 0,
        rollM: edging.rollM,
        priceMinorPerM: edging.priceMinorPerM,
        setUps: changes.get(need.edging) ?? 0,
      };
    }),
    fittings: fittingNeeds(furniture, library).map(({ fitting, count, packs }) => {
      const { pack, priceMinor } = library.fittings.get(fitting)!;
      return { fitting, count, packs, pack, priceMinor };
    }),
    sawing: measures.map(({ group, sheets, sawings }) => ({
      group,
      sheets,
      sawnUm: sawings.sawnUm,
      cuts: sawings.cuts,
      settings: sawings.fenceSettings,
      turns: sawings.pieceTurns,
    })),
    drilledPanels: total((panel) => (holesIn(panel) > 0 ? 1 : 0)),
    holes: total(holesIn),
    openings: total(({ byHand }) => byHand?.openings.length ?? 0),
    outlines: total(({ byHand }) => (byHand?.outline === undefined ? 0 : 1)),
    units: [...unitCounts].map(([unit, count]) => ({ unit, count })),
    panels: total(() => 1),
    alike: furniture.count,
  };
}

/** An order with its plan, its facts and its estimate. */
export interface Quoted {
  readonly ordered: OrderedFurniture;
  readonly plan: PlanFile;
  readonly facts: QuoteFacts;
  readonly quotation: Quotation;
}

/** What of the library's rates a single estimate has otherwise; percentages in hundredths of a percent. */
export interface QuoteWishes {
  readonly sheets?: Charges['sheets'];
  readonly vat?: number;
}

function ratesFor(rates: Rates, { sheets, vat }: QuoteWishes): Rates {
  return {
    ...rates,
    charges: { ...rates.charges, ...(sheets === undefined ? {} : { sheets }) },
    vat: vat ?? rates.vat,
  };
}

/** The estimate of an order by the rates of its library. Throws where the library has none. */
export function quoteOrder(ordered: OrderedFurniture, plan: PlanFile, wishes: QuoteWishes = {}): Quoted {
  const { rates } = ordered.library;
  if (rates === undefined) throw new Error('the library has no rates');
  const facts = quoteFacts(ordered, plan);
  const vatSource = wishes.vat === undefined ? undefined : { list: 'option --vat', row: '' };
  return { ordered, plan, facts, quotation: makeQuotation(facts, ratesFor(rates, wishes), vatSource) };
}

/** The estimate as a list, with columns and words in English. */
export function quotationCsv({ ordered, plan, quotation }: Quoted): string {
  return csvFromTable(quotationTable({ library: ordered.library, plan, quotation }, wordsOf('en').quote));
}

/** The estimate as pages of paper. `date`: a day such as 2026-03-02. Throws for an unknown language. */
export function quotationPages(
  { ordered: { order, library }, plan, facts, quotation }: Quoted,
  measure: DrawingTools['measure'],
  { date, language }: { readonly date: string; readonly language: string },
): { readonly title: string; readonly pages: readonly Drawing[] } {
  const words = wordsOf(language);
  const days = library.rates?.validDays ?? null;
  const from = dayNumber(date);
  const validUntil = from === undefined || days === null ? null : dayText(from + days);
  const book = quotationBook({ order, library, plan, facts, quotation, words, date, validUntil });
  return { title: `${words.quote.heading}: ${plan.job}`, pages: bookPages(book, 'A4', measure) };
}
