import { cheapestOffers } from '../buying/cheapestQuantity.ts';
import { matchPanels, type PanelMatch } from '../changes/matchPanels.ts';
import { type Buying, materialChanges, type Taken, takenBy } from '../changes/materialChanges.ts';
import { allSheets, joinedSheets, sheetsMeant } from '../changes/sheetsOfPlan.ts';
import { type SawnUse, stillToSaw, useSawn } from '../changes/useSawn.ts';
import { planPanel } from '../cutPlans/index.ts';
import { makeStockGroups } from '../demands/index.ts';
import { changedMaterial, changedPanels, type ListedChange } from '../documents/orderChanges.ts';
import { labelledPieces } from '../documents/panelStickerPieces.ts';
import { csvFromTable } from '../documents/table.ts';
import type { Checked } from '../model/finding.ts';
import type { Panel } from '../model/furniture.ts';
import type { MaterialChange, PriceChange } from '../model/orderChanges.ts';
import type { PlanFile, PlanGroup, SawnCopies } from '../model/plan.ts';
import type { Quotation, QuoteFacts } from '../model/quotation.ts';
import type { SheetSupply } from '../model/stock.ts';
import type { Ledger, StoreItem } from '../model/store.ts';
import { MATERIAL_ONLY, makeQuotation } from '../quoting/index.ts';
import { amountFor } from '../store/applyLine.ts';
import { itemKey } from '../store/items.ts';
import { comesFor, goodsOnOrder } from '../store/onOrder.ts';
import { sheetsBooked } from '../store/planBookings.ts';
import { type Job, type OrderedFurniture, placedIn } from './job.ts';
import { quoteFacts } from './makeQuote.ts';
import { offcutsOfPlan } from './piecesOfPlan.ts';
import { suppliesOf } from './prepareOrder.ts';
import { offersFor } from './purchaseNeeds.ts';

export { type ListedChange, toldAmount } from '../documents/orderChanges.ts';
export type { MaterialChange } from '../model/orderChanges.ts';

/** Panels of an old order and a new one, and what sawn pieces of the old one are good for. */
export interface ComparedPanels {
  readonly before: OrderedFurniture;
  readonly after: OrderedFurniture;
  readonly matches: readonly PanelMatch<Panel>[];
  readonly uses: readonly SawnUse<Panel>[];
}

function panelsOf({ furniture }: OrderedFurniture): Panel[] {
  return furniture.units.flatMap(({ panels }) => panels);
}

function isSawn(sheets: readonly SawnCopies[], group: string, number: number, copy: number): boolean {
  return sheets.some((one) => one.group === group && one.number === number && one.copies.includes(copy));
}

/** How many pieces of each panel of an order come off some sheets of its plan. */
function sawnPieces(
  ordered: OrderedFurniture,
  plan: PlanFile,
  sheets: readonly SawnCopies[],
): Map<Panel, number> {
  const counts = new Map<string, number>();
  for (const piece of labelledPieces(plan, ordered.order.id)) {
    if (piece.is !== 'panel' || !isSawn(sheets, piece.group.id, piece.sheet.number, piece.copy)) continue;
    const { panel } = piece.ending;
    counts.set(panel, (counts.get(panel) ?? 0) + 1);
  }
  return new Map(
    panelsOf(ordered).flatMap((panel) => {
      const count = counts.get(panel.id);
      return count === undefined ? [] : [[panel, count] as const];
    }),
  );
}

/** What became of the panels of an old order in a new one; `sawn` are sheets of the old one's plan that are sawn. */
export function comparePanels(
  before: OrderedFurniture,
  after: OrderedFurniture,
  sawn: { readonly plan: PlanFile; readonly sheets: readonly SawnCopies[] } | null,
): ComparedPanels {
  const matches = matchPanels(panelsOf(before), panelsOf(after));
  const pieces = sawn === null ? new Map<Panel, number>() : sawnPieces(before, sawn.plan, sawn.sheets);
  return { before, after, matches, uses: useSawn(pieces, matches) };
}

/** Offcuts that sawn sheets of a plan have left, under the texts of their labels, at no price. */
export function offcutsOfSawn(plan: PlanFile, order: string, sheets: readonly SawnCopies[]): SheetSupply[] {
  return offcutsOfPlan(plan, order)
    .filter(({ sheet: { group, number, copy } }) => isSawn(sheets, group, number, copy))
    .map(({ sheet: _from, ...offcut }) => offcut);
}

/** The new order as a job of what is still to be sawn, with offcuts offered beside the library's sheets. */
export function restOfOrder(
  { after, uses }: ComparedPanels,
  job: Job,
  file: string,
  offcuts: readonly SheetSupply[],
): Checked<Job> {
  const { order, library } = after;
  const saw = library.saws.get(order.saw);
  if (saw === undefined) throw new Error(`the order's saw ${order.saw} is not in the library`);
  const left = stillToSaw(panelsOf(after), uses);
  const parts = [...left].flatMap(([panel, count]) => (count > 0 ? [{ ...panel, count }] : []));
  const stock = makeStockGroups(parts, [...suppliesOf(library), ...offcuts], saw);
  const findings = placedIn(file, stock.findings);
  if (findings.some(({ severity }) => severity === 'error')) return { ok: false, findings };
  return { ok: true, value: { ...job, groups: stock.groups }, findings };
}

/** A plan with its sawn sheets only, for what they took; equal sheets are counted one by one. */
function onlySheets(plan: PlanFile, sheets: readonly SawnCopies[]): PlanFile {
  const groups = plan.groups.map(
    ({ stacks: _singly, ...group }): PlanGroup => ({
      ...group,
      sheets: group.sheets.flatMap((sheet) => {
        const sawn = sheets.find(({ group: id, number }) => id === group.id && number === sheet.number);
        return sawn === undefined || sawn.copies.length === 0
          ? []
          : [{ ...sheet, copies: sawn.copies.length }];
      }),
    }),
  );
  return { ...plan, groups: groups.filter((group) => group.sheets.length > 0) };
}

/** All panels of an order as if a plan listed them in one group. */
function asListed(ordered: OrderedFurniture, plan: PlanFile): PlanFile {
  const [first] = plan.groups;
  if (first === undefined) return plan;
  return { ...plan, groups: [{ ...first, panels: panelsOf(ordered).map((panel) => planPanel(panel)) }] };
}

/** A plan without anything, for what else an order takes. */
function withoutPanels(plan: PlanFile): PlanFile {
  return { ...plan, groups: [] };
}

/** An old order's plan with what of it is sawn, and the plan of what a new order still needs. */
export interface ComparedPlans {
  readonly before: PlanFile;
  readonly sawn: readonly SawnCopies[];
  readonly rest: PlanFile;
}

function factsAfter({ after }: ComparedPanels, { before, sawn, rest }: ComparedPlans): QuoteFacts {
  const own = quoteFacts(
    after,
    rest,
    sawn.length === 0 ? rest : asListed(after, rest.groups.length > 0 ? rest : before),
  );
  if (sawn.length === 0) return own;
  const done = quoteFacts(after, onlySheets(before, sawn), withoutPanels(before));
  return { ...own, sheets: [...done.sheets, ...own.sheets], sawing: [...done.sawing, ...own.sawing] };
}

/** What the saw has taken for the new order: its sheets, and edging of sawn panels that keep theirs. */
function takenAlready(panels: ComparedPanels, { before, sawn }: ComparedPlans): Taken[] {
  if (sawn.length === 0) return [];
  const sheets = quoteFacts(panels.before, onlySheets(before, sawn), withoutPanels(before)).sheets;
  const kept = panels.uses.flatMap(({ before: old, after: own, count }) => {
    if (own === null || JSON.stringify(old.edging) !== JSON.stringify(own.edging)) return [];
    return [planPanel({ ...own, count })];
  });
  const listed = before.groups[0] === undefined ? [] : [{ ...before.groups[0], panels: kept }];
  const { edgings } = quoteFacts(panels.after, withoutPanels(before), { ...before, groups: listed });
  return takenBy({ sheets, edgings, fittings: [] });
}

function itemOf(row: Taken, { library }: OrderedFurniture): StoreItem {
  if (row.item === 'edging') return { item: 'edging', edging: row.id };
  if (row.item === 'fitting') return { item: 'fitting', fitting: row.id };
  const offer = library.sheets.find(({ id }) => id === row.id);
  const board = library.boards.get(row.board);
  if (row.item === 'offcut' || offer === undefined || board === undefined) {
    const none = { board: row.board, finish: row.finish, thickness: 0, length: 1, width: 1 };
    return { item: 'offcut', label: row.id, place: '', ...none, grain: 'none' };
  }
  return {
    item: 'sheet',
    board: row.board,
    finish: row.finish,
    thickness: board.thicknessUm / 1000,
    length: offer.lengthUm / 1000,
    width: offer.widthUm / 1000,
    grain: offer.grain,
  };
}

/** What a store has for orders of some names: what is free, and what is reserved for them. */
function onHand(
  { stock }: Ledger,
  ordered: OrderedFurniture,
  names: readonly string[],
): (row: Taken) => number {
  return (row) => {
    const entry = stock.get(itemKey(itemOf(row, ordered)));
    return entry === undefined ? 0 : amountFor(entry, names);
  };
}

const UM_PER_MM = 1000;

/** What is on order for orders of some names or for nobody, and what buying costs as the library sells it. */
function buyingFor(ledger: Ledger | null, ordered: OrderedFurniture, names: readonly string[]): Buying {
  return {
    coming: (row) => {
      const item = itemOf(row, ordered);
      if (ledger === null || item.item === 'offcut') return 0;
      return goodsOnOrder(ledger, {}, item)
        .filter((goods) => comesFor(goods, names))
        .reduce((sum, { amount }) => sum + amount, 0);
    },
    costMinor: (row, amount) => {
      const item = itemOf(row, ordered);
      if (item.item === 'offcut') return null;
      const units = item.item === 'edging' ? amount * UM_PER_MM : amount;
      const { quantities, missing } = cheapestOffers(offersFor(item, ordered.library), units);
      return missing > 0 ? null : quantities.reduce((sum, { priceMinor }) => sum + priceMinor, 0);
    },
  };
}

/** Everything that a changed order means. */
export interface OrderChanges {
  readonly panels: readonly ListedChange[];
  readonly material: readonly MaterialChange[];
  /** Of an estimate by the library's rates; of material alone where one of the libraries has none. */
  readonly pricedBy: 'estimate' | 'material';
  readonly prices: readonly PriceChange[];
  readonly sawn: { readonly sheets: number; readonly panels: number; readonly used: number } | null;
}

function priceChanges(
  before: Quotation,
  after: Quotation,
  pricedBy: OrderChanges['pricedBy'],
): PriceChange[] {
  const row = (what: PriceChange['what'], of: (sums: Quotation['sums']) => number): PriceChange => ({
    what,
    beforeMinor: of(before.sums),
    afterMinor: of(after.sums),
  });
  const material = row('material', (sums) => sums.materialMinor);
  if (pricedBy === 'material') return [material];
  return [
    material,
    row('work', (sums) => sums.workMinor),
    row('extras', (sums) => sums.extrasMinor),
    row('mark-up', (sums) => sums.markUpMinor),
    row('net', (sums) => sums.netMinor),
    row('VAT', (sums) => sums.vatMinor ?? 0),
    row('total', (sums) => sums.totalMinor),
  ];
}

/** Rows of the list of panels, each with what of it is sawn and serves as that panel; other uses stand in the sums. */
function listedChanges({ matches, uses }: ComparedPanels): ListedChange[] {
  const left = uses.map((use) => ({ ...use }));
  const take = (fits: (use: SawnUse<Panel>) => boolean, most: number): number => {
    let taken = 0;
    for (const use of left) {
      if (!fits(use)) continue;
      const count = Math.min(use.count, most - taken);
      use.count -= count;
      taken += count;
    }
    return taken;
  };
  const served = matches.map(({ before, after, count }) =>
    before === null || after === null
      ? 0
      : take((use) => use.before === before && use.after === after, count),
  );
  return matches.map((match, index) => {
    const { kind, before, after, count, differs } = match;
    const used = served[index]!;
    const others = before === null ? 0 : take((use) => use.before === before, count - used);
    return { kind, before, after, count, differs, sawn: used + others, used };
  });
}

/**
 * What a changed order means: its panels side by side, what material it takes more or less and what of it is to be bought,
 * at the prices of a purchase, and what that does to the price. With a store, what is free there or reserved for either order
 * counts as there, and so does what is on order.
 */
export function compareOrders(
  panels: ComparedPanels,
  plans: ComparedPlans,
  ledger: Ledger | null,
): OrderChanges {
  const { before, after, uses } = panels;
  const [factsOld, factsNew] = [quoteFacts(before, plans.before), factsAfter(panels, plans)];
  const names = [before.order.id, after.order.id];
  const there = ledger === null ? null : onHand(ledger, after, names);
  const rates = [before.library.rates, after.library.rates] as const;
  const pricedBy = rates[0] === undefined || rates[1] === undefined ? 'material' : 'estimate';
  const quote = (facts: QuoteFacts, own: (typeof rates)[number]) =>
    makeQuotation(facts, pricedBy === 'estimate' && own !== undefined ? own : MATERIAL_ONLY);
  const count = (of: readonly SawnUse<Panel>[]) => of.reduce((sum, use) => sum + use.count, 0);
  return {
    panels: listedChanges(panels),
    material: materialChanges(
      takenBy(factsOld),
      takenBy(factsNew),
      takenAlready(panels, plans),
      there,
      buyingFor(ledger, after, names),
    ),
    pricedBy,
    prices: priceChanges(quote(factsOld, rates[0]), quote(factsNew, rates[1]), pricedBy),
    sawn:
      plans.sawn.length === 0
        ? null
        : {
            sheets: plans.sawn.reduce((sum, { copies }) => sum + copies.length, 0),
            panels: count(uses),
            used: count(uses.filter((use) => use.after !== null)),
          },
  };
}

/** The lists of a changed order by file name. */
export function changeLists(
  { panels, material }: OrderChanges,
  currency: string,
): ReadonlyMap<string, string> {
  const tables = [changedPanels(panels), changedMaterial(material, currency)];
  return new Map(tables.map((table) => [`${table.name}.csv`, csvFromTable(table)]));
}

/**
 * The sheets of a plan that are sawn: what a ledger has booked (`hash`: SHA-256 of the plan's text), and what people name
 * besides, as `plywright stock cut --sheets` knows them.
 */
export function sawnOfPlan(
  plan: PlanFile,
  booked: { readonly ledger: Ledger; readonly hash: string } | null,
  named: readonly string[],
): Checked<SawnCopies[]> {
  const known = booked === null ? [] : sheetsBooked(booked.ledger, booked.hash);
  const done = known === 'all' ? allSheets(plan) : known;
  const meant = sheetsMeant(plan, named, done);
  return meant.ok ? { ...meant, value: joinedSheets(plan, [...done, ...meant.value]) } : meant;
}
