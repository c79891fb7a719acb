import type { Facts } from './facts.ts';
import type { RuinAndRecreate } from './ruinAndRecreate.ts';
import type { SearchRandom } from './searchRandom.ts';
import type { SheetTrees } from './sheetTrees.ts';

/** Moves without a better state after which another mix of sheets is tried: at least this, and more for long lists. */
const PATIENCE = 400;
const PATIENCE_PER_PIECE = 15;
/** Mixes drawn to choose the one with the most area from. */
const DRAWS = 3;
/** Draws before it is held that no mix within the budget is large enough. */
const MOST_DRAWS = 60;
const HISTORY = 100;

/**
 * Changes the mix of sheets when the search no longer gets on with the one that lies open: small moves seldom empty a
 * sheet with many pieces, and without that no sheet of another size comes in.
 */
export class SheetMixes {
  private readonly facts: Facts;
  private readonly random: SearchRandom;
  private readonly patience: number;
  private best = Number.POSITIVE_INFINITY;
  private waited = 0;

  constructor(facts: Facts, random: SearchRandom) {
    this.facts = facts;
    this.random = random;
    this.patience = PATIENCE + PATIENCE_PER_PIECE * facts.total;
  }

  /** To be called before each move. */
  watch(state: RuinAndRecreate, trees: SheetTrees): void {
    if (state.objective < this.best) {
      this.best = state.objective;
      this.waited = 0;
      return;
    }
    if (++this.waited < this.patience) return;
    this.waited = 0;
    // All sheets, a half or a few.
    state.takeOffSome(1 + this.random.below(4));
    const mix = this.draw(trees, state.budget);
    if (mix) state.openAndFill(mix);
    state.restart(HISTORY);
    this.best = state.objective;
  }

  /** Kinds of sheets to be opened beside those that are, within the budget and with room for all items. */
  private draw(trees: SheetTrees, budget: number): number[] | undefined {
    const { facts } = this;
    let openArea = 0;
    for (let sheet = 0; sheet < facts.sheetKinds; sheet++) {
      openArea += trees.usedOfKind[sheet]! * facts.sheetArea[sheet]!;
    }
    let best: number[] | undefined;
    let most = facts.totalArea - openArea;
    for (let drawn = 0, found = 0; drawn < MOST_DRAWS && found < DRAWS; drawn++) {
      const mix = this.drawOne(trees, budget - trees.openCost);
      const area = mix.reduce((sum, sheet) => sum + facts.sheetArea[sheet]!, 0);
      if (area < facts.totalArea - openArea) continue;
      found++;
      if (area <= most && best) continue;
      most = area;
      best = mix;
    }
    return best;
  }

  /** Sheets drawn by chance until no other is within the money left. */
  private drawOne(trees: SheetTrees, money: number): number[] {
    const { facts, random } = this;
    const used = Array.from(trees.usedOfKind);
    const mix: number[] = [];
    let left = money;
    for (;;) {
      let chosen = -1;
      let choices = 0;
      for (let sheet = 0; sheet < facts.sheetKinds; sheet++) {
        if (used[sheet]! >= facts.sheetLimit[sheet]! || facts.sheetCost[sheet]! > left) continue;
        if (random.oneIn(++choices)) chosen = sheet;
      }
      if (chosen < 0 || mix.length >= trees.places) return mix;
      mix.push(chosen);
      used[chosen] = used[chosen]! + 1;
      left -= facts.sheetCost[chosen]!;
    }
  }
}
