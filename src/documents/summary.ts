import { guideOf } from '../basics/cutGuide.ts';
import type { PlanFile, PlanGroup } from '../model/plan.ts';
import type { GroupMeasure } from '../model/report.ts';
import type { CutGuide } from '../model/stock.ts';

/** One stock group as it is told to people and programs. Lengths in mm, prices in minor units. */
export interface GroupSummary {
  readonly group: string;
  readonly board: string;
  readonly finish: string;
  readonly thickness: number;
  /** Panels that are cut. */
  readonly panels: number;
  /** Whole sheets and offcuts from the rack that are cut up. */
  readonly sheetCount: number;
  /** The same by their id in the stock of the group. */
  readonly sheets: readonly {
    readonly stock: string;
    readonly kind: 'sheet' | 'offcut';
    readonly count: number;
  }[];
  /** What they cost; null where some sheet has no price and areas were compared. */
  readonly cost: number | null;
  /** No plan takes fewer sheets than this. */
  readonly bound: number;
  /** No plan costs less than this; null as for `cost`. */
  readonly boundCost: number | null;
  /** True when no plan can be cheaper. */
  readonly proved: boolean;
  /** How much dearer than the best this plan might at most be, in percent of the bound, rounded up to 0.1. */
  readonly withinPercent: number;
  /** Area of the cut panels over the area of the whole sheets, 0 to 1. */
  readonly yield: number;
  readonly offcuts: readonly {
    readonly length: number;
    readonly width: number;
    readonly grain: 'length' | 'width' | 'none';
    readonly count: number;
  }[];
  readonly sawnMetres: number;
  readonly cuts: number;
  readonly fenceSettings: number;
  readonly turns: number;
  /** Sheets that differ in size or in a cut. */
  readonly differentSheets: number;
  /** The same work with equal sheets sawn on each other: ways through the saw, how many of them with a stack. */
  readonly sawings: {
    readonly count: number;
    readonly stacks: number;
    readonly cuts: number;
    readonly sawnMetres: number;
    readonly fenceSettings: number;
    /** How often a piece is turned by a quarter before it is cut. */
    readonly pieceTurns: number;
  };
  /** Cuts, trims included, through pieces larger than half of their sheet. */
  readonly heavyCuts: number;
  /** The largest piece that is handled once its sheet has been parted for the first time. */
  readonly heaviest: {
    readonly areaM2: number;
    /** Rounded to 0.1 kg; null where the mass of the board is not known. */
    readonly massKg: number | null;
  };
  /** What the plan obeys; lengths in mm, null where there is no limit. */
  readonly saw: {
    readonly name: string;
    readonly kerf: number;
    readonly firstCut: 'rip' | 'crosscut' | 'either';
    readonly turns: number | null;
    readonly smallestPart: number | null;
    readonly longestCut: number | null;
    readonly cuttingHeight: number | null;
    readonly guidedBy: CutGuide;
  };
}

/** Areal mass in kg/m² of a board by its id, or null where it is not known. */
export type ArealMass = (board: string) => number | null;

export interface JobSummary {
  readonly job: string;
  readonly currency: string;
  readonly groups: readonly GroupSummary[];
}

function sheetsTaken(group: PlanGroup): GroupSummary['sheets'] {
  const taken = group.stock.map((stock) => ({
    stock: stock.id,
    kind: stock.kind,
    count: group.sheets.reduce((sum, sheet) => (sheet.stock === stock.id ? sum + sheet.copies : sum), 0),
  }));
  return taken.filter((entry) => entry.count > 0);
}

function costOf(group: PlanGroup): number {
  const prices = new Map(group.stock.map((stock) => [stock.id, stock.price]));
  return group.sheets.reduce((sum, sheet) => sum + sheet.copies * (prices.get(sheet.stock) ?? 0), 0);
}

function percentAbove(cost: number, bound: number): number {
  if (cost <= bound) return 0;
  return bound === 0 ? 100 : Math.ceil((1000 * (cost - bound)) / bound) / 10;
}

function metres(um: number): number {
  return Math.round(um / 10_000) / 100;
}

function sawOf(group: PlanGroup): GroupSummary['saw'] {
  const { saw } = group;
  return {
    name: saw.name,
    kerf: saw.kerf,
    firstCut: saw.firstCut,
    turns: saw.turns,
    smallestPart: saw.smallestPart ?? null,
    longestCut: saw.longestCut ?? null,
    cuttingHeight: saw.cuttingHeight ?? null,
    guidedBy: guideOf(group),
  };
}

/** What it takes on the saw. */
function sawingOf(
  group: PlanGroup,
  measure: GroupMeasure,
  arealMass: ArealMass,
): Pick<
  GroupSummary,
  | 'sawnMetres'
  | 'cuts'
  | 'fenceSettings'
  | 'turns'
  | 'differentSheets'
  | 'sawings'
  | 'heavyCuts'
  | 'heaviest'
  | 'saw'
> {
  const { sawnUm, ...sawings } = measure.sawings;
  const areaM2 = Number(measure.heavy.largestUm2) / 1e12;
  const kgPerM2 = arealMass(group.board);
  return {
    sawnMetres: metres(measure.sawnUm),
    cuts: measure.cuts,
    fenceSettings: measure.fenceSettings,
    turns: measure.turns,
    differentSheets: measure.differentSheets,
    sawings: { ...sawings, sawnMetres: metres(sawnUm) },
    heavyCuts: measure.heavy.cuts,
    heaviest: {
      areaM2: Math.round(areaM2 * 1000) / 1000,
      massKg: kgPerM2 === null ? null : Math.round(areaM2 * kgPerM2 * 10) / 10,
    },
    saw: sawOf(group),
  };
}

function summariseGroup(group: PlanGroup, measure: GroupMeasure, arealMass: ArealMass): GroupSummary {
  const cost = costOf(group);
  const priced = group.pricedBy === 'price';
  return {
    group: group.id,
    board: group.board,
    finish: group.finish,
    thickness: group.thickness,
    panels: measure.panels,
    sheetCount: measure.sheets,
    sheets: sheetsTaken(group),
    cost: priced ? cost : null,
    bound: group.bound.sheets,
    boundCost: priced ? group.bound.cost : null,
    proved: group.proved,
    withinPercent: group.proved ? 0 : percentAbove(cost, group.bound.cost),
    yield: measure.yield,
    offcuts: measure.offcuts.map(({ lengthUm, widthUm, grain, count }) => ({
      length: lengthUm / 1000,
      width: widthUm / 1000,
      grain,
      count,
    })),
    ...sawingOf(group, measure, arealMass),
  };
}

/**
 * A plan, its measures (one per group, in order) and what boards weigh → what the terminal and programs are told of it. Throws when a
 * measure is missing or belongs to another group.
 */
export function summarise(
  plan: PlanFile,
  measures: readonly GroupMeasure[],
  arealMass: ArealMass = () => null,
): JobSummary {
  const groups = plan.groups.map((group, index) => {
    const measure = measures[index];
    if (measure?.group !== group.id) throw new Error(`the measure of stock group ${group.id} is missing`);
    return summariseGroup(group, measure, arealMass);
  });
  return { job: plan.job, currency: plan.currency, groups };
}
