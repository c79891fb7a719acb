import { construct } from './construct.ts';
import type { Facts } from './facts.ts';
import { gatherWaste } from './gatherWaste.ts';
import { layOutPlan, type Plan, takePlan } from './plan.ts';
import { RuinAndRecreate } from './ruinAndRecreate.ts';
import { sawingOf } from './sawing.ts';
import { SearchRandom } from './searchRandom.ts';
import { piecesOf, readTree, type SheetCode } from './sheetCode.ts';
import { offcutWorth, type TreeTidier } from './tidyTree.ts';

/** Ways to make two sheets alike that are thought of; nearly all are seen to be of no use at once. */
const MOST_LOOKS = 40_000;
/** Sheets that are filled anew, each with at most so many moves. */
const MOST_FILLINGS = 60;
const MOVES_PER_FILLING = 300;
const HISTORY = 50;
/** With more different sheets than this nobody looks for what two of them might become. */
const MANY_PATTERNS = 80;

/** One way to cut a sheet and how often it is in the plan. */
interface Pattern {
  readonly code: SheetCode;
  /** Pieces of each kind. */
  readonly content: Int32Array;
  readonly copies: number;
  /** Of one sheet, as `offcutWorth`. */
  readonly worth: number;
}

/**
 * Makes sheets of a plan alike, so that they can be cut from one cut plan and on each other. The sheets and the kind of
 * each stay as they are; the offcuts of all together are never worth less. Three ways are tried until none helps:
 *
 * - sheets with the same pieces are cut in the same way, the best of theirs;
 * - sheets of two ways get the mean of their pieces, where that is whole and fits;
 * - a sheet is made like another, and what it lacks for that is exchanged with a third.
 */
export function fewerPatterns(facts: Facts, plan: Plan, tidier: TreeTidier): Plan {
  if (plan.sheets.length < 2) return plan;
  const run = new Alikening(facts, plan, tidier);
  run.improve();
  return { sheets: run.codes(), cost: plan.cost };
}

function contentOf(facts: Facts, code: Int32Array): Int32Array {
  const content = new Int32Array(facts.kinds);
  for (const kind of piecesOf(code)) content[kind] = content[kind]! + 1;
  return content;
}

function areaOf(facts: Facts, content: Int32Array): number {
  return content.reduce((sum, count, kind) => sum + count * facts.area[kind]!, 0);
}

/** The pieces of some sheets shared out evenly among them; null where that leaves parts of pieces. */
function meanOf(a: Pattern, b: Pattern): Int32Array | null {
  const copies = a.copies + b.copies;
  const mean = new Int32Array(a.content.length);
  for (let kind = 0; kind < mean.length; kind++) {
    const sum = a.copies * a.content[kind]! + b.copies * b.content[kind]!;
    if (sum % copies !== 0) return null;
    mean[kind] = sum / copies;
  }
  return mean;
}

/** What a third sheet holds once it has given `b` what makes it like `a`, and taken the rest; null where it has not that. */
function afterExchange(a: Pattern, b: Pattern, third: Pattern): Int32Array | null {
  const content = new Int32Array(third.content.length);
  for (let kind = 0; kind < content.length; kind++) {
    content[kind] = third.content[kind]! + b.content[kind]! - a.content[kind]!;
    if (content[kind]! < 0) return null;
  }
  return content;
}

class Alikening {
  private readonly facts: Facts;
  private readonly tidier: TreeTidier;
  private patterns: Pattern[];
  private looks = 0;
  private fillings = 0;
  /** Sheets with contents that were tried before: what was found for them. */
  private readonly filled = new Map<string, SheetCode | null>();

  constructor(facts: Facts, plan: Plan, tidier: TreeTidier) {
    this.facts = facts;
    this.tidier = tidier;
    const byCode = new Map<string, SheetCode[]>();
    for (const sheet of plan.sheets) {
      const key = `${sheet.sheet} ${sheet.code.join()}`;
      const alike = byCode.get(key);
      if (alike) alike.push(sheet);
      else byCode.set(key, [sheet]);
    }
    this.patterns = [...byCode.values()].map((alike) => this.pattern(alike[0]!, alike.length));
    this.mergeSameContents();
  }

  codes(): SheetCode[] {
    return this.patterns.flatMap(({ code, copies }) => Array.from({ length: copies }, () => code));
  }

  improve(): void {
    if (this.patterns.length > MANY_PATTERNS) return;
    while (this.mergeTwo() || this.exchangeWithThird()) this.mergeSameContents();
  }

  private pattern(code: SheetCode, copies: number): Pattern {
    const { facts, tidier } = this;
    const tree = tidier.tidy(readTree(code.code, facts.w, facts.h), code.sheet);
    return { code, copies, content: contentOf(facts, code.code), worth: offcutWorth(tree) };
  }

  /** Whether `a` is the better way to cut what both hold: offcuts first, then turns and settings. */
  private isBetter(a: Pattern, b: Pattern): boolean {
    if (a.worth !== b.worth) return a.worth > b.worth;
    const sawing = ({ code }: Pattern) =>
      sawingOf(this.tidier.tidy(readTree(code.code, this.facts.w, this.facts.h), code.sheet));
    const [ofA, ofB] = [sawing(a), sawing(b)];
    return ofA.levels < ofB.levels || (ofA.levels === ofB.levels && ofA.fenceSettings < ofB.fenceSettings);
  }

  private mergeSameContents(): void {
    const byContent = new Map<string, Pattern>();
    for (const pattern of this.patterns) {
      const key = `${pattern.code.sheet} ${pattern.content.join()}`;
      const same = byContent.get(key);
      const best = same === undefined || this.isBetter(pattern, same) ? pattern : same;
      byContent.set(key, { ...best, copies: pattern.copies + (same?.copies ?? 0) });
    }
    this.patterns = [...byContent.values()];
  }

  private replace(old: readonly Pattern[], by: readonly Pattern[]): void {
    this.patterns = [...this.patterns.filter((pattern) => !old.includes(pattern)), ...by];
  }

  private mergeTwo(): boolean {
    const { patterns } = this;
    for (let i = 0; i < patterns.length; i++) {
      for (let j = 0; j < i; j++) {
        const [a, b] = [patterns[j]!, patterns[i]!];
        if (a.code.sheet !== b.code.sheet) continue;
        if (this.looks++ >= MOST_LOOKS) return false;
        const mean = meanOf(a, b);
        const made = mean && this.fill(mean, a.code.sheet);
        if (made === null) continue;
        const merged = this.pattern(made, a.copies + b.copies);
        if (merged.worth * merged.copies < a.worth * a.copies + b.worth * b.copies) continue;
        this.replace([a, b], [merged]);
        return true;
      }
    }
    return false;
  }

  private exchangeWithThird(): boolean {
    const single = this.patterns.filter((pattern) => pattern.copies === 1);
    for (const a of this.patterns) {
      for (const b of single) {
        if (a === b || a.code.sheet !== b.code.sheet) continue;
        for (const third of single) {
          if (third === a || third === b) continue;
          if (this.looks++ >= MOST_LOOKS) return false;
          if (this.tryExchange(a, b, third)) return true;
        }
      }
    }
    return false;
  }

  private tryExchange(a: Pattern, b: Pattern, third: Pattern): boolean {
    const content = afterExchange(a, b, third);
    const made = content && this.fill(content, third.code.sheet);
    if (made === null) return false;
    const changed = this.pattern(made, 1);
    if (a.worth + changed.worth < b.worth + third.worth) return false;
    this.replace([a, b, third], [{ ...a, copies: a.copies + 1 }, changed]);
    return true;
  }

  /** A way to cut these pieces from one sheet; null where none was found. */
  private fill(content: Int32Array, sheet: number): SheetCode | null {
    if (areaOf(this.facts, content) > this.facts.sheetArea[sheet]!) return null;
    const known = this.patterns.find(
      (pattern) =>
        pattern.code.sheet === sheet && pattern.content.every((count, kind) => count === content[kind]),
    );
    if (known) return known.code;
    const key = `${sheet} ${content.join()}`;
    const before = this.filled.get(key);
    if (before !== undefined) return before;
    if (this.fillings >= MOST_FILLINGS) return null;
    this.fillings += 1;
    const made = fillSheet(this.facts, content, sheet);
    const sawable = made !== null && this.canBeSawn(made) ? made : null;
    this.filled.set(key, sawable);
    return sawable;
  }

  private canBeSawn({ code, sheet }: SheetCode): boolean {
    const { facts, tidier } = this;
    return !facts.limited || tidier.canBeSawn(readTree(code, facts.w, facts.h), sheet);
  }
}

/** The facts of a list of these pieces only, with one sheet of one kind for them. */
function factsOfSheet(facts: Facts, content: Int32Array, sheet: number): Facts {
  return {
    ...facts,
    problem: { ...facts.problem, items: { ...facts.problem.items, count: content } },
    sheetLimit: facts.sheetLimit.map((_, other) => (other === sheet ? 1 : 0)),
    total: content.reduce((sum, count) => sum + count, 0),
    totalArea: areaOf(facts, content),
  };
}

/** Pieces on one sheet, by a short search, its waste gathered; null where no room was found for all. */
function fillSheet(all: Facts, content: Int32Array, sheet: number): SheetCode | null {
  const facts = factsOfSheet(all, content, sheet);
  if (facts.total === 0) return null;
  const start = construct(facts);
  if (start.plan.sheets.length === 0) return null;
  let plan: Plan | null = start.unplaced.length === 0 ? start.plan : null;
  if (plan === null) {
    const trees = layOutPlan(facts, start.plan, 1);
    const state = new RuinAndRecreate(trees, new SearchRandom(1));
    state.setUnplaced(start.unplaced);
    state.budget = facts.sheetCost[sheet]!;
    state.restart(HISTORY);
    for (let move = 0; move < MOVES_PER_FILLING && plan === null; move++) {
      if (state.move()) plan = takePlan(trees);
    }
  }
  if (plan === null) return null;
  let moves = 0;
  const gathered = gatherWaste(facts, plan, 1, () => moves++ >= MOVES_PER_FILLING);
  return gathered.sheets[0]!;
}
