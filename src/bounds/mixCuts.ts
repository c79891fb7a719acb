import { fittedPattern } from '../basics/fittedPattern.ts';
import { type PatternColumn, PatternMaster } from '../basics/patternMaster.ts';
import { MOST_PARTS, requirementOf, requirementOfCertificate } from '../basics/recheckBound.ts';
import { type Requirement, sheetsNeeded } from '../basics/sheetsNeeded.ts';
import { trimPattern } from '../basics/trimPattern.ts';
import type { LinearSolver } from '../model/linearSolver.ts';
import type { Bound, PriceCertificate } from '../model/nest.ts';
import type { SheetPattern } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import { mostOverused, mostPieces } from './mostOverused.ts';
import { PRICE_DENOMINATOR, priceSheets } from './priceSheets.ts';
import { makePricingTables, type PricingTables } from './pricingTables.ts';

/** Below this nothing is missing but the last bits of a sum. */
const NOTHING_MISSING = 1e-7;
/** One pricing with counted copies may take this part of the effort. */
const ROUNDS_HOPED_FOR = 25;

export interface MixCutRequest {
  readonly solver: LinearSolver;
  /** Nothing is gained beyond the cost of the plan that is known. */
  readonly planCost: number;
  readonly effort: number;
  readonly stop: () => boolean;
}

interface Cut {
  readonly requirement: Requirement;
  readonly certificate: PriceCertificate;
}

/**
 * Raises a bound over several kinds of sheet by ruling out mixes of whole sheets (Benders' cuts: J. F. Benders,
 * Partitioning procedures for solving mixed-variables programming problems, Numerische Mathematik 4 (1962) 238–252).
 * The cheapest mix that the prices known so far allow is tried: a linear programme over patterns asks how much must
 * stay uncut with just these sheets. When anything must, its prices rule the mix out, and with it all that are no
 * better, and the next cheapest mix is tried; when nothing must, no more can be proved in this way. What is found are
 * sets of prices that stand by themselves, each rechecked in whole numbers like any other.
 */
export function cutMixes(
  problem: RectangleProblem,
  tables: PricingTables,
  known: { readonly bound: Bound; readonly patterns: readonly SheetPattern[] },
  request: MixCutRequest,
): Bound {
  if (!hasMixes(problem)) return known.bound;
  const cuts = knownCuts(problem, known.bound);
  const separation = new Separation(problem, tables, known.patterns, request);
  let best = known.bound;
  while (cuts.length < MOST_PARTS) {
    const { mix, costMinor, sheets } = needOf(problem, cuts);
    if (costMinor > best.costMinor) best = boundOf(problem, cuts, { sheets, costMinor });
    if (costMinor >= request.planCost || mix === null) break;
    const cut = separation.ruleOut(mix);
    if (!cut) break;
    cuts.push(cut);
  }
  return best;
}

/** Whether there are several kinds of sheet to mix. */
export function hasMixes({ sheets }: RectangleProblem): boolean {
  return new Set(sheets.map(({ w, h, costMinor }) => `${w} ${h} ${costMinor}`)).size > 1;
}

function needOf(problem: RectangleProblem, cuts: readonly Cut[]) {
  return sheetsNeeded(
    problem.sheets,
    cuts.map(({ requirement }) => requirement),
  );
}

/** What is asked already: by the areas, and by the bound so far. */
function knownCuts(problem: RectangleProblem, { certificate }: Bound): Cut[] {
  const parts = certificate.method === 'together' ? certificate.parts : [certificate];
  const cuts: Cut[] = [];
  for (const part of [{ method: 'area' } as const, ...parts]) {
    const requirement = requirementOfCertificate(problem, part);
    if (requirement) cuts.push({ requirement, certificate: part });
  }
  return cuts;
}

/** The bound with only those of the cuts without which it would be less. */
function boundOf(
  problem: RectangleProblem,
  cuts: readonly Cut[],
  { sheets, costMinor }: { readonly sheets: number; readonly costMinor: number },
): Bound {
  let needed = [...cuts];
  for (const cut of cuts) {
    const others = needed.filter((other) => other !== cut);
    const need = needOf(problem, others);
    if (need.costMinor === costMinor && need.sheets === sheets) needed = others;
  }
  return {
    sheets,
    costMinor,
    certificate: { method: 'together', parts: needed.map(({ certificate }) => certificate) },
  };
}

/** Asks of mixes of sheets whether they can hold everything, as far as the linear programme over patterns can tell. */
class Separation {
  private work = 0;
  private readonly problem: RectangleProblem;
  private tables: PricingTables;
  private readonly request: MixCutRequest;
  private patterns: readonly SheetPattern[];
  /** What a piece left uncut costs: its part of the largest sheet. */
  private readonly slack: Float64Array;
  private readonly free: Float64Array;

  constructor(
    problem: RectangleProblem,
    tables: PricingTables,
    patterns: readonly SheetPattern[],
    request: MixCutRequest,
  ) {
    this.problem = problem;
    this.tables = tables;
    this.patterns = patterns;
    this.request = request;
    const largest = problem.sheets.reduce((most, sheet) => Math.max(most, sheet.w * sheet.h), 1);
    const { w, h } = problem.items;
    this.slack = Float64Array.from(w, (side, i) => (side * h[i]!) / largest);
    this.free = new Float64Array(problem.sheets.length);
  }

  /**
   * Prices that rule the mix out; null when there are none, or the effort is spent. Where the programme finds room for
   * everything it is made to count: copies of the item of which it uses too many, then smaller steps of the grid.
   */
  ruleOut(mix: readonly number[]): Cut | null {
    do {
      const cut = this.priceMix(mix);
      if (cut) return cut;
    } while (!this.isSpent() && this.countMore());
    return null;
  }

  private priceMix(mix: readonly number[]): Cut | null {
    const { problem } = this;
    const master = new PatternMaster(this.request.solver, problem.items.count, this.free, mix, this.slack);
    try {
      master.add(this.patterns);
      for (let answer = master.solve(); answer; answer = master.solve()) {
        if (answer.cost < NOTHING_MISSING || this.isSpent()) return null;
        const { prices, worth, found } = priceSheets(problem, this.tables, answer, this.free);
        this.work += this.tables.work;
        const requirement = requirementOf(problem, { prices, worth });
        if (rulesOut(requirement, mix)) {
          return { requirement, certificate: this.certificate(prices, worth) };
        }
        if (master.add(found) === 0) return null;
      }
      return null;
    } finally {
      this.patterns = master.patterns();
      master.dispose();
    }
  }

  /** Makes the tables know more; false when they cannot. */
  private countMore(): boolean {
    const item = mostOverused(this.patterns, this.problem.items.count);
    return item < 0 ? this.takeFinerGrid() : this.countCopiesOf(item);
  }

  private countCopiesOf(item: number): boolean {
    const next = this.newTables(
      [...this.tables.limited, item].sort((a, b) => a - b),
      this.tables.grid,
    );
    if (!next) return false;
    this.tables = next;
    const most = mostPieces(this.problem, next.limited);
    this.changePatterns((pattern) => trimPattern(pattern, most));
    return true;
  }

  private takeFinerGrid(): boolean {
    const next = this.newTables(this.tables.limited, null);
    if (!next || next.grid >= this.tables.grid) return false;
    this.tables = next;
    this.changePatterns((pattern) => fittedPattern(this.problem, pattern, this.slack));
    return true;
  }

  private changePatterns(change: (pattern: PatternColumn) => PatternColumn | null): void {
    this.patterns = this.patterns.flatMap((pattern) => {
      const changed = change(pattern);
      return changed ? [{ ...changed, use: pattern.use }] : [];
    });
  }

  private newTables(limited: readonly number[], onGrid: number | null): PricingTables | null {
    return makePricingTables(this.problem, limited, this.request.effort / ROUNDS_HOPED_FOR, onGrid);
  }

  private isSpent(): boolean {
    return this.work >= this.request.effort || this.request.stop();
  }

  private certificate(prices: readonly number[], sheetValues: readonly number[]): PriceCertificate {
    const { limited, grid } = this.tables;
    const denominator = PRICE_DENOMINATOR;
    return { method: 'pattern prices', denominator, prices, sheetValues, limited, grid };
  }
}

function rulesOut({ worth, wanted }: Requirement, mix: readonly number[]): boolean {
  const held = mix.reduce((sum, sheets, s) => sum + BigInt(sheets) * BigInt(worth[s]!), 0n);
  return held < wanted;
}
