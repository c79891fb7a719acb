import { mmToUm } from '../basics/lengths.ts';
import type { Um } from '../model/geometry.ts';
import type { PlanEnding, PlanGroup, PlanPanel, PlanSheet, PlanStep, PlanStock } from '../model/plan.ts';

/** A rectangle of a sheet in µm: x along the sheet's length from its left side, y along its width from its near side. */
export interface SheetRect {
  readonly x0: Um;
  readonly y0: Um;
  readonly x1: Um;
  readonly y1: Um;
}

export interface SawnPiece {
  readonly name: string;
  readonly rect: SheetRect;
}

/** A cut of the plan, where it runs on the sheet. */
export interface SawnCut {
  /** From 1, in the order of sawing. */
  readonly number: number;
  readonly step: PlanStep;
  /** Along which axis of the sheet the blade runs. */
  readonly runsAlong: 'x' | 'y';
  /** What the blade turns to dust. */
  readonly kerf: SheetRect;
  readonly hand: SawnPiece;
  readonly gives: readonly SawnPiece[];
}

export interface SawnEnd {
  readonly piece: SawnPiece;
  readonly ending: PlanEnding;
  /** The panel it is, when it is one. */
  readonly panel: PlanPanel | null;
}

/** A sheet after all its cuts: where every cut runs and where every piece lies. */
export interface SawnSheet {
  readonly stock: PlanStock;
  readonly raw: SheetRect;
  readonly cuts: readonly SawnCut[];
  readonly ends: readonly SawnEnd[];
  /** Strips taken off rough edges, without the blade's width. */
  readonly trims: readonly SheetRect[];
}

/** Splits a rectangle across an axis: what lies before the blade, the blade's width, what lies beyond it. */
function split(rect: SheetRect, axis: 'x' | 'y', before: Um, kerf: Um): [SheetRect, SheetRect, SheetRect] {
  if (axis === 'x') {
    const a = Math.min(rect.x1, rect.x0 + Math.max(0, before));
    const b = Math.min(rect.x1, a + kerf);
    return [
      { ...rect, x1: a },
      { ...rect, x0: a, x1: b },
      { ...rect, x0: b },
    ];
  }
  const a = Math.min(rect.y1, rect.y0 + Math.max(0, before));
  const b = Math.min(rect.y1, a + kerf);
  return [
    { ...rect, y1: a },
    { ...rect, y0: a, y1: b },
    { ...rect, y0: b },
  ];
}

function sawTrim(
  step: Extract<PlanStep, { cut: 'trim' }>,
  rect: SheetRect,
  kerfUm: Um,
): { axis: 'x' | 'y'; kerf: SheetRect; strip: SheetRect; kept: SheetRect } {
  const axis = step.side === 'left' || step.side === 'right' ? 'x' : 'y';
  const take = mmToUm(step.take);
  if (step.side === 'left' || step.side === 'near') {
    const [strip, kerf] = split(rect, axis, take - kerfUm, Math.min(kerfUm, take));
    return { axis, strip, kerf, kept: split(rect, axis, take, 0)[2] };
  }
  const size = axis === 'x' ? rect.x1 - rect.x0 : rect.y1 - rect.y0;
  const [kept, kerf, strip] = split(rect, axis, size - take, Math.min(kerfUm, take));
  return { axis, strip, kerf, kept };
}

/**
 * Walks the steps of a sheet and says where every cut and every piece lies. Throws when a step names a piece that
 * is not on the bench, or the sheet a stock that the group does not have: such a plan must not be drawn.
 */
export function sawSheet(group: PlanGroup, sheet: PlanSheet): SawnSheet {
  const stock = group.stock.find((one) => one.id === sheet.stock);
  if (!stock)
    throw new Error(`sheet ${sheet.number} of ${group.id} names no stock of the group: ${sheet.stock}`);
  const kerfUm = mmToUm(group.saw.kerf);
  const raw = { x0: 0, y0: 0, x1: mmToUm(stock.length), y1: mmToUm(stock.width) };
  const bench = new Map<string, SheetRect>([[sheet.start, raw]]);
  const inHand = (name: string, what: string): SawnPiece => {
    const rect = bench.get(name);
    if (!rect) throw new Error(`${what} of sheet ${sheet.number} of ${group.id}: no piece ${name} is there`);
    bench.delete(name);
    return { name, rect };
  };
  const trims: SheetRect[] = [];
  const cuts = sheet.steps.map((step, index): SawnCut => {
    const number = index + 1;
    const hand = inHand(step.piece, `step ${number}`);
    const gives: SawnPiece[] = [];
    const put = (name: string, rect: SheetRect) => {
      bench.set(name, rect);
      gives.push({ name, rect });
    };
    if (step.cut === 'trim') {
      const sawn = sawTrim(step, hand.rect, kerfUm);
      if (sawn.strip.x1 > sawn.strip.x0 && sawn.strip.y1 > sawn.strip.y0) trims.push(sawn.strip);
      put(step.leaves, sawn.kept);
      return { number, step, runsAlong: sawn.axis === 'x' ? 'y' : 'x', kerf: sawn.kerf, hand, gives };
    }
    const axis = step.blade === 'length' ? 'y' : 'x';
    const [first, kerf, rest] = split(hand.rect, axis, mmToUm(step.fence), mmToUm(step.take));
    put(step.gives[0]!, first);
    if (step.gives[1] !== undefined) put(step.gives[1], rest);
    return { number, step, runsAlong: axis === 'x' ? 'y' : 'x', kerf, hand, gives };
  });
  const panels = new Map(group.panels.map((panel) => [panel.id, panel]));
  const ends = sheet.pieces.map((ending): SawnEnd => {
    const piece = inHand(ending.piece, 'list of pieces');
    if (ending.is !== 'panel') return { piece, ending, panel: null };
    const panel = panels.get(ending.panel);
    if (!panel)
      throw new Error(`sheet ${sheet.number} of ${group.id}: no panel ${ending.panel} in the group`);
    return { piece, ending, panel };
  });
  return { stock, raw, cuts, ends, trims };
}

/**
 * What a cut takes off in µm where that is less than the blade is wide, so that nothing but dust is left beyond it: panels
 * lie beside each other in a strip, and one that is narrower by a hair than the strip is cut to its size all the same.
 * Null for trims, and where the whole blade cuts.
 */
export function shavedUm({ step }: SawnCut, { saw }: Pick<PlanGroup, 'saw'>): number | null {
  return step.cut !== 'trim' && step.take < saw.kerf ? mmToUm(step.take) : null;
}
