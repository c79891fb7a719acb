import { TENTH_MM_UM } from '../basics/lengths.ts';
import { recheckBound } from '../basics/recheckBound.ts';
import { makeRectangleProblem } from '../basics/rectangleProblem.ts';
import type { PlanGroup, PlanPanel } from '../model/plan.ts';
import type { Demand, StockGroup } from '../model/stock.ts';
import { type Faults, mm, toUm } from './pieces.ts';

function sizeDemand(panel: PlanPanel): Omit<Demand, 'count' | 'parts'> {
  const lengthUm = toUm(panel.length);
  const widthUm = toUm(panel.width);
  if (panel.grain === 'length') return { lengthUm, widthUm, grain: 'length' };
  return { lengthUm: Math.max(lengthUm, widthUm), widthUm: Math.min(lengthUm, widthUm), grain: 'none' };
}

function blankDemand(run: PlanGroup['runs'][number], panels: readonly PlanPanel[], kerfUm: number): Demand {
  const lengths = panels.map((panel) => toUm(panel.length));
  const widths = panels.map((panel) => toUm(panel.width));
  const row = (sizes: number[]) => sizes.reduce((sum, size) => sum + size + kerfUm, -kerfUm);
  const widest = (sizes: number[]) => sizes.reduce((most, size) => Math.max(most, size), 0);
  return {
    lengthUm: run.follows === 'length' ? row(lengths) : widest(lengths),
    widthUm: run.follows === 'length' ? widest(widths) : row(widths),
    count: panels.reduce((least, panel) => Math.min(least, panel.count), Number.MAX_SAFE_INTEGER),
    grain: 'length',
    parts: [],
  };
}

/**
 * What has to be cut, in the order in which a certificate prices it: the blank of each run, then the other panels by
 * size and grain in the order of the list; a panel without grain has its longer side as its length.
 */
function demandsOf(group: PlanGroup): Demand[] {
  const byId = new Map(group.panels.map((panel) => [panel.id, panel]));
  const kerfUm = toUm(group.saw.kerf);
  const inRuns = new Set(group.runs.flatMap((run) => run.panels));
  const blanks = group.runs.map((run) =>
    blankDemand(
      run,
      run.panels.flatMap((id) => byId.get(id) ?? []),
      kerfUm,
    ),
  );
  const bySize = new Map<string, Demand>();
  for (const panel of group.panels) {
    if (inRuns.has(panel.id)) continue;
    const size = sizeDemand(panel);
    const key = `${size.lengthUm} ${size.widthUm} ${size.grain}`;
    bySize.set(key, { ...size, count: (bySize.get(key)?.count ?? 0) + panel.count, parts: [] });
  }
  return [...blanks, ...bySize.values()];
}

function stockGroupOf(group: PlanGroup): StockGroup {
  return {
    id: group.id,
    board: group.board,
    finish: group.finish,
    thicknessUm: toUm(group.thickness),
    parts: [],
    demands: demandsOf(group),
    sheets: group.stock.map((stock) => ({
      id: stock.id,
      lengthUm: toUm(stock.length),
      widthUm: toUm(stock.width),
      grain: stock.grain,
      priceMinor: stock.price,
      count: stock.count,
      kind: stock.kind,
      trim: {
        left: toUm(stock.trim.left),
        right: toUm(stock.trim.right),
        near: toUm(stock.trim.near),
        far: toUm(stock.trim.far),
      },
    })),
    saw: {
      name: group.saw.name,
      kerfUm: toUm(group.saw.kerf),
      firstCut: group.saw.firstCut,
      turns: group.saw.turns,
      smallestPartUm: 0,
      leastOffcut: { lengthUm: 0, widthUm: 0 },
      longestCutUm: null,
      cuttingHeightUm: null,
    },
  };
}

/** Bounds are worked out on positive lengths in whole 0.1 mm. False, with a fault, when one is not. */
function canBeBounded(group: StockGroup, faults: Faults): boolean {
  const sizes: [string, number][] = [
    ['the kerf', group.saw.kerfUm],
    ...group.demands.flatMap((d): [string, number][] => [
      ['a panel', d.lengthUm],
      ['a panel', d.widthUm],
    ]),
    ...group.sheets.flatMap((s): [string, number][] =>
      [s.lengthUm, s.widthUm, s.trim.left, s.trim.right, s.trim.near, s.trim.far].map((um) => [
        `sheet "${s.id}"`,
        um,
      ]),
    ),
  ];
  if (group.demands.some((demand) => demand.lengthUm <= 0 || demand.widthUm <= 0)) {
    faults.add('size-wrong', 'a panel or a run of panels has no length or no width');
    return false;
  }
  const fine = sizes.find(([, um]) => um % TENTH_MM_UM !== 0);
  if (fine === undefined) return true;
  faults.add(
    'not-in-tenths',
    `a size of ${fine[0]} is ${mm(fine[1])} mm, which is not in whole tenths of a millimetre`,
  );
  return false;
}

/**
 * The bound against the plan and against its own certificate: no plan can need fewer sheets or less money than was
 * proved, and what is called proved costs exactly as much as the bound.
 */
export function checkBound(group: PlanGroup, faults: Faults): void {
  const { bound } = group;
  const prices = new Map(group.stock.map((stock) => [stock.id, BigInt(stock.price)]));
  const sheets = group.sheets.reduce((sum, sheet) => sum + sheet.copies, 0);
  const cost = group.sheets.reduce(
    (sum, sheet) => sum + BigInt(sheet.copies) * (prices.get(sheet.stock) ?? 0n),
    0n,
  );
  if (bound.sheets > sheets) {
    faults.add(
      'bound-wrong',
      `the plan uses ${sheets} sheets although it says that at least ${bound.sheets} are needed`,
    );
  }
  if (BigInt(bound.cost) > cost) {
    faults.add(
      'bound-wrong',
      `the plan costs ${cost} although it says that at least ${bound.cost} is needed`,
    );
  }
  if (group.proved && BigInt(bound.cost) !== cost) {
    faults.add(
      'bound-wrong',
      `the plan is called proved best, but it costs ${cost} and the bound is ${bound.cost}`,
    );
  }
  const stockGroup = stockGroupOf(group);
  if (!canBeBounded(stockGroup, faults)) return;
  const again = recheckBound(makeRectangleProblem(stockGroup), bound.certificate);
  if (again.sheets < bound.sheets || again.costMinor < bound.cost) {
    const text = `the certificate proves only ${again.sheets} sheets and a cost of ${again.costMinor}, not ${bound.sheets} and ${bound.cost}`;
    faults.add('bound-wrong', text);
  }
}
