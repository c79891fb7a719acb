import type { Um } from '../model/geometry.ts';
import type { PlanGroup, PlanPanel, PlanSheet, PlanStock } from '../model/plan.ts';
import type { ReplayGroupReport } from '../model/report.ts';
import { checkBound } from './checkBound.ts';
import { checkHandWork } from './checkHandWork.ts';
import { checkRuns, runsByPanel } from './checkRuns.ts';
import { checkSize } from './checkSize.ts';
import { checkStacks } from './checkStacks.ts';
import { area, type EndPiece, type Faults, mm, toUm } from './pieces.ts';
import { type SawnSheet, sawSheet } from './sawSheet.ts';

type Areas = ReplayGroupReport['areas'];

function byId<T extends { readonly id: string }>(
  things: readonly T[],
  what: string,
  faults: Faults,
): Map<string, T> {
  const map = new Map<string, T>();
  for (const thing of things) {
    if (map.has(thing.id)) faults.add('id-used-twice', `two ${what} have the id "${thing.id}"`);
    map.set(thing.id, thing);
  }
  return map;
}

/** A panel that is narrower than the saw can hold, on whichever side of the blade it comes off. */
function checkWidth(panel: PlanPanel, what: string, leastUm: Um, sheet: number, faults: Faults): void {
  const narrowUm = Math.min(toUm(panel.length), toUm(panel.width));
  if (narrowUm >= leastUm) return;
  const text = `${what} is ${mm(narrowUm)} wide, and this saw holds nothing narrower than ${mm(leastUm)}`;
  faults.add('strip-too-narrow', text, { sheet });
}

/** Panels against their list: known, the right size, grain the right way; offcuts and waste against their stated size. */
function checkEnds(
  sheet: PlanSheet,
  stock: PlanStock,
  sawn: SawnSheet,
  panels: ReadonlyMap<string, PlanGroup['panels'][number]>,
  leastUm: Um,
  faults: Faults,
): void {
  for (const end of sawn.ends) {
    if (end.stated !== null) {
      checkSize(faults, sheet.number, end.piece, `${end.is} "${end.piece.name}"`, end.stated);
      continue;
    }
    const panel = panels.get(end.panel);
    if (panel === undefined) {
      const text = `piece "${end.piece.name}" is to be panel "${end.panel}", which is not listed`;
      faults.add('panel-unknown', text, { sheet: sheet.number });
      continue;
    }
    const lengthUm = toUm(panel.length);
    const widthUm = toUm(panel.width);
    const along = end.lengthAlong === 'length';
    const what = `panel "${panel.name}" ("${panel.id}", piece "${end.piece.name}")`;
    checkSize(faults, sheet.number, end.piece, what, {
      xUm: along ? lengthUm : widthUm,
      yUm: along ? widthUm : lengthUm,
    });
    checkWidth(panel, what, leastUm, sheet.number, faults);
    if (panel.grain === 'length' && stock.grain !== 'none' && stock.grain !== end.lengthAlong) {
      const text = `${what} lies across the grain: the grain of sheet "${stock.id}" runs along its ${stock.grain}`;
      faults.add('grain-wrong', text, { sheet: sheet.number });
    }
  }
}

/** What a sheet became, in µm². */
function areasOf(stock: PlanStock, sawn: SawnSheet): Areas {
  const sum = (is: EndPiece['is']) =>
    sawn.ends.reduce((total, end) => (end.is === is ? total + area(end.piece) : total), 0n);
  return {
    sheets: BigInt(toUm(stock.length)) * BigInt(toUm(stock.width)),
    panels: sum('panel'),
    offcuts: sum('offcut'),
    kerf: sawn.kerfArea,
    trim: sawn.trimArea,
    waste: sum('waste'),
  };
}

function checkAreas(sheet: PlanSheet, areas: Areas, faults: Faults): void {
  const sum = areas.panels + areas.offcuts + areas.kerf + areas.trim + areas.waste;
  if (sum === areas.sheets) return;
  const text = `pieces and saw dust add up to ${sum} µm², but the sheet has ${areas.sheets} µm²`;
  faults.add('area-wrong', text, { sheet: sheet.number });
}

function checkCounts(group: PlanGroup, cut: ReadonlyMap<string, number>, faults: Faults): void {
  for (const panel of group.panels) {
    const found = cut.get(panel.id) ?? 0;
    if (found === panel.count) continue;
    faults.add(
      'count-wrong',
      `panel "${panel.name}" ("${panel.id}") comes out ${found} times but is wanted ${panel.count} times`,
      {},
      { found: String(found), expected: String(panel.count) },
    );
  }
}

function checkStock(group: PlanGroup, faults: Faults): void {
  for (const stock of group.stock) {
    const used = group.sheets.reduce(
      (sum, sheet) => (sheet.stock === stock.id ? sum + sheet.copies : sum),
      0,
    );
    if (stock.count !== null && used > stock.count) {
      faults.add('stock-run-out', `${used} sheets "${stock.id}" are cut, but there are only ${stock.count}`);
    }
  }
}

function emptyReport(group: string): { -readonly [K in keyof ReplayGroupReport]: ReplayGroupReport[K] } {
  const areas: Areas = { sheets: 0n, panels: 0n, offcuts: 0n, kerf: 0n, trim: 0n, waste: 0n };
  return { group, sheets: 0, panels: 0, cuts: 0, sawnUm: 0, areas };
}

function addAreas(a: Areas, b: Areas, copies: bigint): Areas {
  return {
    sheets: a.sheets + b.sheets * copies,
    panels: a.panels + b.panels * copies,
    offcuts: a.offcuts + b.offcuts * copies,
    kerf: a.kerf + b.kerf * copies,
    trim: a.trim + b.trim * copies,
    waste: a.waste + b.waste * copies,
  };
}

/** Saws all sheets of a group and holds what comes out against the list. Faults are added; the report covers what could be sawn. */
export function checkGroup(group: PlanGroup, faults: Faults): ReplayGroupReport {
  const stocks = byId(group.stock, 'sheets of the stock', faults);
  const panels = byId(group.panels, 'panels', faults);
  const runOf = runsByPanel(group, faults);
  checkHandWork(group, faults);
  const report = emptyReport(group.id);
  const cut = new Map<string, number>();
  let whole = true;
  group.sheets.forEach((sheet, index) => {
    const stock = stocks.get(sheet.stock);
    if (sheet.number !== index + 1) {
      faults.add('sheet-number-wrong', `cut plan ${index + 1} of the group has the number ${sheet.number}`);
    }
    if (stock === undefined) {
      faults.add('stock-unknown', `sheet "${sheet.stock}" is not in the stock`, { sheet: sheet.number });
      whole = false;
      return;
    }
    const sawn = sawSheet(group, sheet, stock, faults);
    whole &&= sawn.whole;
    if (!sawn.whole) return;
    checkEnds(sheet, stock, sawn, panels, toUm(group.saw.smallestPart ?? 0), faults);
    checkRuns(group, sheet, sawn, runOf, faults);
    const areas = areasOf(stock, sawn);
    checkAreas(sheet, areas, faults);
    for (const end of sawn.ends) {
      if (end.is !== 'panel') continue;
      cut.set(end.panel, (cut.get(end.panel) ?? 0) + sheet.copies);
      report.panels += sheet.copies;
    }
    report.sheets += sheet.copies;
    report.cuts += sawn.cuts * sheet.copies;
    report.sawnUm += sawn.sawnUm * sheet.copies;
    report.areas = addAreas(report.areas, areas, BigInt(sheet.copies));
  });
  // Where a sheet could not be sawn to its end, missing panels are no news.
  if (whole) checkCounts(group, cut, faults);
  checkStock(group, faults);
  checkStacks(group, faults);
  checkBound(group, faults);
  return report;
}
