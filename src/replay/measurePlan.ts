import { sheetsSawn } from '../basics/stacks.ts';
import type { PlanFile, PlanGroup } from '../model/plan.ts';
import type { GroupMeasure } from '../model/report.ts';
import { area, Faults, toUm } from './pieces.ts';
import { type SawnSheet, sawSheet } from './sawSheet.ts';

function offcutsOf(sheet: PlanGroup['sheets'][number], sawn: SawnSheet, grain: 'length' | 'width' | 'none') {
  return sawn.ends
    .filter((end) => end.is === 'offcut')
    .map(({ piece }) => ({
      sheet: sheet.number,
      piece: piece.name,
      lengthUm: piece.x1 - piece.x0,
      widthUm: piece.y1 - piece.y0,
      grain,
      count: sheet.copies,
    }));
}

/** Area of one number over another, to six decimals and rounded down, so that it never reads better than it is. */
function share(part: bigint, whole: bigint): number {
  return whole === 0n ? 0 : Number((part * 1_000_000n) / whole) / 1_000_000;
}

/** What one way through the saw takes. */
type Passes = Pick<SawnSheet, 'cuts' | 'sawnUm' | 'fenceSettings' | 'pieceTurns'>;

/** The work with sheets sawn on each other: every stack once, and one by one what lies in none. */
function sawingsOf(group: PlanGroup, passes: ReadonlyMap<number, Passes>): GroupMeasure['sawings'] {
  const sum = { count: 0, stacks: 0, cuts: 0, sawnUm: 0, fenceSettings: 0, pieceTurns: 0 };
  const add = (number: number, times: number) => {
    const { cuts, sawnUm, fenceSettings, pieceTurns } = passes.get(number)!;
    sum.count += times;
    sum.cuts += times * cuts;
    sum.sawnUm += times * sawnUm;
    sum.fenceSettings += times * fenceSettings;
    sum.pieceTurns += times * pieceTurns;
  };
  for (const { number } of group.sheets) add(number, sheetsSawn(group, number).singly);
  for (const { times, sheets } of group.stacks ?? []) {
    sum.stacks += times;
    add(sheets[0]!.number, times);
  }
  return sum;
}

function measureGroup(group: PlanGroup): GroupMeasure {
  const faults = new Faults('plan', group.id);
  const stocks = new Map(group.stock.map((stock) => [stock.id, stock]));
  const offcuts: GroupMeasure['offcuts'][number][] = [];
  const passes = new Map<number, Passes>();
  const forms = new Set<string>();
  let [sheets, panels, cuts, sawnUm, fenceSettings, turns, heavyCuts] = [0, 0, 0, 0, 0, 0, 0];
  let [panelAreaUm2, sheetAreaUm2, largestUm2] = [0n, 0n, 0n];
  for (const sheet of group.sheets) {
    const stock = stocks.get(sheet.stock);
    const sawn = stock && sawSheet(group, sheet, stock, faults);
    if (stock === undefined || faults.findings.length > 0) {
      throw new Error(
        `the plan of ${group.id} cannot be sawn: ${faults.findings[0]?.message ?? sheet.stock}`,
      );
    }
    const wanted = sawn!.ends.filter((end) => end.is === 'panel');
    sheets += sheet.copies;
    panels += wanted.length * sheet.copies;
    cuts += sawn!.cuts * sheet.copies;
    sawnUm += sawn!.sawnUm * sheet.copies;
    fenceSettings += sawn!.fenceSettings * sheet.copies;
    turns = Math.max(turns, sawn!.turns);
    heavyCuts += sawn!.heavyCuts * sheet.copies;
    if (sawn!.largestParted > largestUm2) largestUm2 = sawn!.largestParted;
    passes.set(sheet.number, sawn!);
    forms.add(JSON.stringify([sheet.stock, sheet.start, sheet.steps]));
    panelAreaUm2 += wanted.reduce((sum, end) => sum + area(end.piece), 0n) * BigInt(sheet.copies);
    sheetAreaUm2 += BigInt(toUm(stock.length)) * BigInt(toUm(stock.width)) * BigInt(sheet.copies);
    offcuts.push(...offcutsOf(sheet, sawn!, stock.grain));
  }
  return {
    group: group.id,
    sheets,
    panels,
    cuts,
    sawnUm,
    fenceSettings,
    turns,
    differentSheets: forms.size,
    sawings: sawingsOf(group, passes),
    heavy: { cuts: heavyCuts, largestUm2 },
    panelAreaUm2,
    sheetAreaUm2,
    yield: share(panelAreaUm2, sheetAreaUm2),
    offcuts,
  };
}

/**
 * Measures what a plan takes and gives, per group in order, by sawing it in simulation: cuts, metres sawn, fence
 * settings, turns, the same with equal sheets sawn on each other, heavy pieces, yield (area of the cut panels over that of the whole sheets) and the offcuts kept. Throws when the
 * plan cannot be sawn; replay it first.
 */
export function measurePlan(plan: PlanFile): GroupMeasure[] {
  return plan.groups.map(measureGroup);
}
