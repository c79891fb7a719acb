import { readExactJson } from './exactJson.ts';
import { Fraction } from './fraction.ts';
import { checkHandWork } from './handWork.ts';
import { asSide, NotSawable, other, refuse, Saw } from './pieces.ts';
import { asWritten, tooFine, type Written } from './planAsWritten.ts';
import { checkRows, type SawnPanel } from './rows.ts';
import { SheetOnSaw } from './sawSheet.ts';
import { misshapen } from './schemaShape.ts';
import { checkStacks } from './stacks.ts';

/**
 * Saws a plan file a second time, by nothing but what its published schema says, and in exact fractions of the
 * figures as they are written. Gives null where everything comes out as listed, or else the first thing that does
 * not. Certificates of bounds are not checked again, only that the bound is not above what the plan takes.
 */
export function secondReplay(text: string): string | null {
  try {
    const value = readExactJson(text);
    const wrong = misshapen(value);
    if (wrong !== null) return wrong;
    const fine = tooFine(value);
    if (fine !== null) return `${fine} is finer than a micrometre`;
    checkPlan(asWritten(value));
    return null;
  } catch (error) {
    if (error instanceof NotSawable || error instanceof SyntaxError) return error.message;
    throw error;
  }
}

function checkPlan(plan: Written): void {
  const groups = plan.parts('groups');
  byId(groups, 'stock group');
  for (const group of groups) checkGroup(group);
  checkLabels(groups.flatMap((group) => group.parts('panels')));
}

/** Things by their id, which no two may share. */
function byId(things: readonly Written[], what: string, key = 'id'): Map<string, Written> {
  const found = new Map<string, Written>();
  for (const thing of things) {
    const id = thing.text(key);
    if (found.has(id)) refuse(`two of ${what} are called ${id}`);
    found.set(id, thing);
  }
  return found;
}

function checkGroup(group: Written): void {
  const saw = new Saw(group.part('saw'));
  const panels = byId(group.parts('panels'), 'panels');
  const stocks = byId(group.parts('stock'), 'stock');
  const stockOf = (sheet: Written) =>
    stocks.get(sheet.text('stock')) ?? refuse(`no stock ${sheet.text('stock')}`);
  for (const panel of panels.values()) checkPanel(panel, saw);
  const runs = readRuns(group, panels);
  const wanted = new Map([...panels].map(([id, panel]) => [id, panel.number('count')]));
  const used = new Map<string, Fraction>();
  let cost = Fraction.zero;
  let count = Fraction.zero;
  for (const [index, sheet] of group.parts('sheets').entries()) {
    if (!sheet.number('number').equals(Fraction.of(index + 1))) refuse('cut plans are not numbered from 1');
    const stock = stockOf(sheet);
    const copies = sheet.number('copies');
    const sawn = checkPieces(sheet, stock, panels, saw);
    checkRows(sawn, runs, saw.kerf);
    for (const { panel } of sawn) wanted.set(panel, wanted.get(panel)!.minus(copies));
    used.set(stock.text('id'), (used.get(stock.text('id')) ?? Fraction.zero).plus(copies));
    cost = cost.plus(copies.times(stock.number('price')));
    count = count.plus(copies);
  }
  for (const [id, left] of wanted) if (!left.equals(Fraction.zero)) refuse(`${left} of ${id} are missing`);
  for (const [id, stock] of stocks) {
    const there = stock.numberOrNull('count');
    if (there !== null && used.get(id)?.isMoreThan(there)) refuse(`there are no more than ${there} of ${id}`);
    for (const side of ['length', 'width'] as const) checkTenths(stock.number(side), id);
    for (const side of ['left', 'right', 'near', 'far']) checkTenths(stock.part('trim').number(side), id);
  }
  checkTenths(saw.kerf, 'the kerf');
  checkStacks(group, saw, stockOf);
  checkBound(group, cost, count);
}

function checkPanel(panel: Written, saw: Saw): void {
  const id = panel.text('id');
  for (const side of ['length', 'width'] as const) {
    const size = panel.number(side);
    if (!size.isPositive()) refuse(`${id} has no ${side}`);
    checkTenths(size, id);
    saw.holdsStrip(size, id);
  }
  checkHandWork(panel);
  if (!panel.has('label')) return;
  const label = panel.part('label');
  const pieces = label.numbers('pieces');
  if (!Fraction.of(pieces.length).equals(panel.number('count')))
    refuse(`${id} has a label too many or too few`);
  if (new Set(pieces.map(String)).size < pieces.length) refuse(`two labels of ${id} are the same`);
}

/** No two sawn pieces of a plan have the same label. */
function checkLabels(panels: readonly Written[]): void {
  const seen = new Set<string>();
  for (const panel of panels) {
    if (!panel.has('label')) continue;
    const label = panel.part('label');
    for (const piece of label.numbers('pieces')) {
      const text = `${label.number('number')}/${piece}`;
      if (seen.has(text)) refuse(`two pieces have the label ${text}`);
      seen.add(text);
    }
  }
}

function readRuns(group: Written, panels: ReadonlyMap<string, Written>) {
  const runs = group.parts('runs').map((run) => ({
    name: run.text('name'),
    follows: asSide(run.text('follows')),
    panels: run.texts('panels'),
  }));
  const seen = new Set<string>();
  for (const run of runs) {
    const first = panels.get(run.panels[0]!);
    for (const id of run.panels) {
      const panel = panels.get(id) ?? refuse(`${run.name} has a panel ${id} that is not listed`);
      if (seen.has(id)) refuse(`${id} is in two rows`);
      seen.add(id);
      if (!panel.number('count').equals(first!.number('count'))) refuse(`${run.name} has unequal counts`);
    }
  }
  return runs;
}

function checkPieces(
  sheet: Written,
  stock: Written,
  panels: ReadonlyMap<string, Written>,
  saw: Saw,
): SawnPanel[] {
  const { pieces } = new SheetOnSaw(sheet, stock, saw);
  const left = new Map(pieces);
  const sawn: SawnPanel[] = [];
  for (const ending of sheet.parts('pieces')) {
    const name = ending.text('piece');
    const piece = left.get(name) ?? refuse(`${name} is not left, or listed twice`);
    left.delete(name);
    const kind = ending.text('is');
    if (kind !== 'panel') {
      for (const side of ['length', 'width'] as const)
        if (!piece.size[side].equals(ending.number(side))) refuse(`${name} has another ${side}`);
      continue;
    }
    const id = ending.text('panel');
    const panel = panels.get(id) ?? refuse(`${id} is not listed`);
    const lengthAlong = asSide(ending.text('lengthAlong'));
    if (!piece.size[lengthAlong].equals(panel.number('length'))) refuse(`${id} has another length`);
    if (!piece.size[other(lengthAlong)].equals(panel.number('width'))) refuse(`${id} has another width`);
    const grain = stock.text('grain');
    if (panel.text('grain') === 'length' && grain !== 'none' && grain !== lengthAlong)
      refuse(`the grain of ${id} runs across`);
    sawn.push({ panel: id, piece, lengthAlong });
  }
  for (const name of left.keys()) refuse(`${name} is left and not listed`);
  return sawn;
}

/** Sizes of panels and sheets, trims and the kerf are whole tenths of a millimetre. */
function checkTenths(size: Fraction, id: string): void {
  if (!size.times(Fraction.of(10)).isWhole())
    refuse(`${id} has a size of ${size}, which is not in whole tenths`);
}

function checkBound(group: Written, cost: Fraction, count: Fraction): void {
  const bound = group.part('bound');
  if (bound.number('cost').isMoreThan(cost)) refuse(`the plan costs ${cost}, less than its bound`);
  if (bound.number('sheets').isMoreThan(count))
    refuse(`the plan takes ${count} sheets, fewer than its bound`);
  if (group.flag('proved') && bound.number('cost').isLessThan(cost))
    refuse('proved, and the bound says otherwise');
}
