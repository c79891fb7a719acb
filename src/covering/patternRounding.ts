import { dearSlack, type MasterAnswer, type PatternColumn, PatternMaster } from '../basics/patternMaster.ts';
import { SeededRandom } from '../basics/random.ts';
import { areaPrices, SteadyPrices } from '../basics/steadyPrices.ts';
import { trimPattern } from '../basics/trimPattern.ts';
import type { LinearSolver } from '../model/linearSolver.ts';
import type { SheetPattern } from '../model/patterns.ts';
import type { RectangleProblem } from '../model/rectangles.ts';
import { blockPatterns } from './blockPricing.ts';
import { StripPricing } from './stripPricing.ts';

/** A pattern must be worth this much more than its sheet to be added. */
const LEAST_GAIN = 1e-6;
/** What a solver may be out by. */
const SOLVER_SLACK = 1e-3;
const MOST_PRICINGS = 400;
/** New patterns of one pricing, for each kind of sheet and direction. */
const PATTERNS_A_PRICING = 6;
/** How much steady prices count for beside the programme's own, in one attempt after another. */
const CENTRE_WEIGHTS = [0.85, 0.5, 0] as const;
/** Where the programme would use about this many sheets more, the rest is left to the search. */
const SHEETS_LEFT = 5;
/** The programme is solved to this part of a sheet below what is enough, so that roundings have some room. */
const ROOM_TO_ROUND = 0.25;
/** How much chance adds to the use of a pattern when the next one to be cut is chosen. */
const CHANCE = 0.3;
/** Patterns cut at once where none is used in whole, and from which use on the second and third. */
const MOST_AT_ONCE = 3;
const SURELY_USED = 0.75;
/** Of more sheets than this more may be cut at once, this part of them, from a lower use on. */
const MANY_SHEETS = 12;
const PART_AT_ONCE = 4;
const SURELY_USED_OF_MANY = 0.5;
/**
 * With several kinds of sheet plans differ by less than a sheet, and there is no last pattern that decides about one:
 * programmes are solved to so many sheets above what is proved of them, and no further than a part of what lies
 * between the best plan and the aim; more sheets are left to the search.
 */
const ROUGHLY_LEAST = 0.15;
const PART_OF_GAP_AT_FIRST = 4;
const PART_OF_SHEETS_LEFT = 8;
/** What a rounding may lose on the programme: then a part of what lies between it and the best plan; at least so many sheets. */
const PART_OF_GAP = 2;
const PART_OF_GAP_LATER = 4;
const LEAST_LOSS = 0.1;
/** Steps that an answer of the solver counts for, a row and a column. */
const STEPS_A_CELL = 20;

export interface RoundingLimits {
  /** Greatest work in steps of about a nanosecond. */
  readonly effort: number;
  /** Stages of cuts that a pattern may have. */
  readonly stages: 3 | 4;
  readonly stop: () => boolean;
}

/** Sheets settled by a rounding, and what it leaves to be cut. */
export interface RoundedPatterns {
  /** `use` is whole: how many sheets are cut so. No piece is cut too often. */
  readonly patterns: readonly SheetPattern[];
  /** Pieces of each item that are not on these sheets. */
  readonly left: Int32Array;
  readonly costMinor: number;
}

interface Programme {
  readonly cost: number;
  readonly patterns: readonly SheetPattern[];
  /** True when no pattern of these stages makes it cheaper. */
  readonly isLeast: boolean;
}

/**
 * Plans from the linear programme over patterns, by rounding and pricing anew (a dive): patterns that are used in whole
 * are cut, then some of those used most, and the programme is solved again for what is left, with patterns priced for
 * just that, until a few sheets are left over for a search. After G. Wäscher and T. Gau, Heuristics for the integer
 * one-dimensional cutting stock problem, OR Spektrum 18 (1996) 131–144, with guillotine patterns of three stages.
 *
 * Costs are parts of the dearest sheet. The same problem, patterns, effort and seeds give the same roundings.
 */
export class PatternRounding {
  private readonly problem: RectangleProblem;
  private readonly solver: LinearSolver;
  private readonly limits: RoundingLimits;
  private readonly pricings: readonly StripPricing[];
  private readonly costs: Float64Array;
  private readonly noRents: Float64Array;
  private readonly dearest: number;
  private readonly isRough: boolean;
  private whole: Programme | null = null;
  private known: readonly PatternColumn[];
  private solved = 0;

  /** `known`: patterns that fit, to start from. */
  constructor(
    problem: RectangleProblem,
    solver: LinearSolver,
    known: readonly PatternColumn[],
    limits: RoundingLimits,
  ) {
    this.problem = problem;
    this.solver = solver;
    this.known = known;
    this.limits = limits;
    this.dearest = problem.sheets.reduce((most, sheet) => Math.max(most, sheet.costMinor), 0) || 1;
    this.isRough = problem.sheets.length > 1;
    this.costs = Float64Array.from(problem.sheets, (sheet) => sheet.costMinor / this.dearest);
    this.noRents = new Float64Array(this.costs.length);
    this.pricings = problem.sheets.flatMap((sheet, index) =>
      (['w', 'h'] as const)
        .filter((axis) => sheet.firstBlade === 'either' || sheet.firstBlade !== axis)
        .map((axis) => new StripPricing(problem, index, axis)),
    );
  }

  /** Steps taken so far. */
  get work(): number {
    return this.pricings.reduce((sum, pricing) => sum + pricing.work, this.solved);
  }

  isSpent(): boolean {
    return this.work >= this.limits.effort || this.limits.stop();
  }

  /** The programme's patterns for all pieces so far, with their use. */
  patterns(): readonly SheetPattern[] {
    return this.whole?.patterns ?? [];
  }

  /**
   * What the programme for all pieces costs, in minor units, solved until it is no more than `enough` or cannot be
   * less with patterns of these stages; null when the solver gave up.
   */
  costMinor(enough: number): number | null {
    const isSolved =
      this.whole && (this.whole.isLeast || this.whole.cost <= enough / this.dearest - ROOM_TO_ROUND);
    if (!isSolved) {
      const { count } = this.problem.items;
      const known = [...this.patterns(), ...this.known];
      this.whole = this.solve(count, known, new Int32Array(this.costs.length), enough / this.dearest);
    }
    return this.whole && this.whole.cost * this.dearest;
  }

  /** False when the programme, solved to the end, costs more than this. */
  reaches(costMinor: number): boolean {
    return !this.whole?.isLeast || this.whole.cost * this.dearest <= costMinor + SOLVER_SLACK;
  }

  /** More patterns that fit, to be used from now on. */
  learn(patterns: readonly PatternColumn[]): void {
    this.known = [...this.patterns(), ...patterns];
    this.whole = null;
  }

  /**
   * One rounding; null when it cannot cost less than `below`, in minor units, or the effort is spent. With seed 0 the
   * patterns used most come first, else chance has its say. What costs no more than `aim` is not made cheaper on the way.
   */
  round(seed: number, below: number, aim: number): RoundedPatterns | null {
    const room = this.isRough
      ? Math.max(0, below - aim) / PART_OF_GAP_AT_FIRST + ROOM_TO_ROUND * this.dearest
      : 0;
    if (this.costMinor(aim + room) === null) return null;
    const whole = this.whole!.cost;
    const partOfGap = (below / this.dearest - whole) / (seed === 0 ? PART_OF_GAP : PART_OF_GAP_LATER);
    const loss = this.isRough ? Math.max(LEAST_LOSS, partOfGap) : LEAST_LOSS;
    const enough = Math.max(aim / this.dearest, whole + ROOM_TO_ROUND + loss);
    const leave = Math.max(SHEETS_LEFT, this.isRough ? sheetsUsed(this.whole!) / PART_OF_SHEETS_LEFT : 0);
    const random = seed === 0 ? null : new SeededRandom(seed);
    const dive = new Dive(this.problem);
    let programme: Programme | null = this.whole;
    for (;;) {
      if (!programme || this.isSpent()) return null;
      if (dive.costMinor + programme.cost * this.dearest > below + SOLVER_SLACK) return null;
      if (programme !== this.whole && sheetsUsed(programme) <= leave) break;
      if (!dive.cutMore(programme.patterns, random)) break;
      if (dive.left.every((count) => count === 0)) break;
      const known = programme.patterns.map((pattern) => trimPattern(pattern, dive.left));
      programme = this.solve(
        dive.left,
        known.filter((pattern) => pattern !== null),
        dive.used,
        enough - dive.costMinor / this.dearest,
      );
    }
    return { patterns: dive.patterns, left: dive.left, costMinor: dive.costMinor };
  }

  /**
   * The programme for so many pieces, `used` sheets of each kind being gone, solved until it costs no more than
   * `enough`; null when the solver gave up.
   */
  private solve(
    counts: Int32Array,
    known: readonly PatternColumn[],
    used: Int32Array,
    enough: number,
  ): Programme | null {
    const left = this.problem.sheets.map(({ count }, s) => (count < 0 ? -1 : Math.max(0, count - used[s]!)));
    const method = this.isRough ? 'primal simplex' : 'dual simplex';
    const slack = dearSlack(counts.length);
    const master = new PatternMaster(this.solver, counts, this.costs, left, slack, method);
    const centre = new SteadyPrices(this.problem, counts, this.costs, areaPrices(this.problem, counts));
    try {
      master.add(known);
      let answer = master.solve();
      let isLeast = false;
      const goesOn = () => answer && answer.cost > enough - ROOM_TO_ROUND && !isLeast && !this.isSpent();
      for (let pricing = 0; goesOn() && pricing < MOST_PRICINGS; pricing++) {
        isLeast = !this.addPatterns(master, answer!, counts, centre);
        if (this.isRough && answer!.cost - centre.bound < ROUGHLY_LEAST) isLeast = true;
        if (isLeast) break;
        answer = master.solve();
        this.solved += STEPS_A_CELL * counts.length * master.size;
      }
      return answer && { cost: answer.cost, patterns: master.patterns(), isLeast };
    } finally {
      master.dispose();
    }
  }

  /** Prices nearer and nearer to the programme's until patterns are found that gain; false when none do. */
  private addPatterns(
    master: PatternMaster,
    answer: MasterAnswer,
    counts: Int32Array,
    centre: SteadyPrices,
  ): boolean {
    for (const weight of CENTRE_WEIGHTS) {
      // Rents are left out: what gains is asked below, with them.
      const { prices, rents } = centre.between({ prices: answer.prices, rents: this.noRents }, weight);
      const most = new Float64Array(this.costs.length);
      const found = this.pricings.flatMap((pricing) => {
        const worth = pricing.price(prices);
        most[pricing.sheet] = Math.max(most[pricing.sheet]!, worth);
        return worth > 0 ? pricing.patterns(prices, 0, PATTERNS_A_PRICING) : [];
      });
      centre.learn({ prices, rents }, most);
      if (this.limits.stages === 4) found.push(...this.blocks(prices));
      if (this.addGaining(master, answer, counts, found)) return true;
    }
    return false;
  }

  /** Patterns of four stages at the prices that all kinds of sheet were priced at last. */
  private blocks(prices: Float64Array): PatternColumn[] {
    return this.pricings.flatMap((edge) =>
      this.pricings
        .filter((beside) => beside.sheet === edge.sheet && beside.axis !== edge.axis)
        .flatMap((beside) => blockPatterns(edge, beside, prices, 0)),
    );
  }

  /**
   * Adds what gains at the programme's own prices. Patterns with too many pieces are trimmed first; where that gives
   * nothing new, patterns made with the pieces there are come in, and the untrimmed ones, so that the programme is
   * solved to the end.
   */
  private addGaining(
    master: PatternMaster,
    { prices, rents }: MasterAnswer,
    counts: Int32Array,
    found: readonly PatternColumn[],
  ): boolean {
    const gains = ({ sheet, counts: held }: PatternColumn) =>
      held.reduce((sum, { item, count }) => sum + count * prices[item]!, 0) >
      this.costs[sheet]! + rents[sheet]! + LEAST_GAIN;
    const gaining = found.filter(gains);
    if (gaining.length === 0) return false;
    const trimmed = gaining
      .map((pattern) => trimPattern(pattern, counts))
      .filter((pattern) => pattern !== null);
    if (master.add(trimmed.filter(gains)) > 0) return true;
    const within = this.pricings
      .map((pricing) => pricing.patternWithin(prices, counts))
      .filter((pattern) => pattern !== null)
      .filter(gains);
    return master.add([...within, ...gaining]) > 0;
  }
}

function sheetsUsed({ patterns }: Programme): number {
  return patterns.reduce((sum, pattern) => sum + pattern.use, 0);
}

/** The sheets settled so far in one rounding. */
class Dive {
  readonly left: Int32Array;
  readonly used: Int32Array;
  readonly patterns: SheetPattern[] = [];
  costMinor = 0;
  private readonly problem: RectangleProblem;

  constructor(problem: RectangleProblem) {
    this.problem = problem;
    this.left = Int32Array.from(problem.items.count);
    this.used = new Int32Array(problem.sheets.length);
  }

  /** Cuts the patterns used in whole, or if there are none those used most; false when nothing can be cut. */
  cutMore(patterns: readonly SheetPattern[], random: SeededRandom | null): boolean {
    const used = patterns
      .filter(({ use }) => use > SOLVER_SLACK)
      .map((pattern) => {
        const whole = Math.floor(pattern.use + SOLVER_SLACK);
        return { pattern, whole, rank: pattern.use - whole + (random ? CHANCE * random.unit() : 0) };
      })
      .sort((a, b) => b.rank - a.rank);
    let sheets = 0;
    for (const { pattern, whole } of used) sheets += this.cut(pattern, whole);
    if (sheets > 0) return true;
    const all = used.reduce((sum, { pattern }) => sum + pattern.use, 0);
    const most = Math.max(MOST_AT_ONCE, Math.floor(all / PART_AT_ONCE));
    const surely = all > MANY_SHEETS ? SURELY_USED_OF_MANY : SURELY_USED;
    for (const { pattern, rank } of used) {
      if (sheets > 0 && (rank < surely || sheets >= most)) break;
      const trimmed = trimPattern(pattern, this.left);
      if (trimmed && (sheets === 0 || trimmed === pattern)) sheets += this.cut(trimmed, 1);
    }
    return sheets > 0;
  }

  /** Cuts the pattern so often, or as often as pieces and sheets are left; gives how often. */
  private cut({ sheet, counts, tree }: PatternColumn, wanted: number): number {
    const there = this.problem.sheets[sheet]!.count;
    let times = there < 0 ? wanted : Math.min(wanted, there - this.used[sheet]!);
    for (const { item, count } of counts) times = Math.min(times, Math.floor(this.left[item]! / count));
    if (times <= 0) return 0;
    for (const { item, count } of counts) this.left[item]! -= times * count;
    this.used[sheet]! += times;
    this.costMinor += times * this.problem.sheets[sheet]!.costMinor;
    this.patterns.push({ sheet, counts, tree, use: times });
    return times;
  }
}
