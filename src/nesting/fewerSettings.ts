import { AS_IS, type Facts, TURNED } from './facts.ts';
import { fewerPatterns } from './fewerPatterns.ts';
import type { Plan } from './plan.ts';
import { type Sawing, sawingOf } from './sawing.ts';
import { encodeTree, readTree, type SheetCode, type Tree } from './sheetCode.ts';
import { offcutWorth, type TreeTidier } from './tidyTree.ts';

/** Exchanges that are looked at; each takes about five microseconds. */
const MOST_LOOKS = 15_000;
/** Pairs of pieces that are gone through, most of them too unlike to be looked at. */
const MOST_PAIRS = 2_000_000;

/** A node of a tree whose pieces can be exchanged. */
interface Leaf {
  kind: 'piece';
  item: number;
  turned: boolean;
  w: number;
  h: number;
}
interface Branch {
  readonly kind: 'stack';
  readonly axis: 'w' | 'h';
  w: number;
  h: number;
  readonly children: Node[];
}
type Node = Leaf | Branch;

interface OpenSheet {
  readonly sheet: number;
  readonly root: Node;
  freeArea: number;
  /** By `settingsOf`. */
  settings: number;
  /** Of the tidy tree; worked out when first needed. */
  tidy: TidySheet | undefined;
}

interface TidySheet extends Sawing {
  readonly worth: number;
}

/**
 * Makes the sheets of a plan easier to saw: first alike where they can be (`fewerPatterns`), then pieces are exchanged,
 * so that equal sizes come together on a sheet and fewer fence settings are needed. The sheets and the kind of each stay
 * as they are; there are never more different sheets, the offcuts are never worth less, and an exchange never needs more
 * levels of cuts. Sheets of which there are several alike are left alone by the exchanges.
 */
export function fewerSettings(facts: Facts, plan: Plan, tidier: TreeTidier): Plan {
  const alike = fewerPatterns(facts, plan, tidier);
  const run = new Exchanges(facts, alike, tidier);
  run.improve();
  return { sheets: run.codes(), cost: plan.cost };
}

function openTree(tree: Tree): Node {
  if (tree.kind === 'piece') return { ...tree };
  return { ...tree, children: tree.children.map(openTree) };
}

function leavesOf(node: Node): Leaf[] {
  return node.kind === 'piece' ? [node] : node.children.flatMap(leavesOf);
}

/** Works out the sizes of all stacks below and of the node. */
function resize(node: Node): void {
  if (node.kind === 'piece') return;
  let [sumW, sumH, mostW, mostH] = [0, 0, 0, 0];
  for (const child of node.children) {
    resize(child);
    sumW += child.w;
    sumH += child.h;
    if (child.w > mostW) mostW = child.w;
    if (child.h > mostH) mostH = child.h;
  }
  node.w = node.axis === 'w' ? sumW : mostW;
  node.h = node.axis === 'h' ? sumH : mostH;
}

function freeArea(facts: Facts, sheet: number, root: Node): number {
  return leavesOf(root).reduce((free, { w, h }) => free - w * h, facts.sheetArea[sheet]!);
}

const LEVEL_STEP = 2_147_483_648;

/** Different settings of each level of a lazy tree, the slack across pieces counted as a level of its own. */
function settingsOf(root: Node): number {
  const seen = new Set<number>();
  const visit = (node: Node, level: number): void => {
    if (node.kind === 'piece') return;
    const byW = node.axis === 'w';
    for (const child of node.children) {
      seen.add(level * LEVEL_STEP + (byW ? child.w : child.h));
      const slack = byW ? child.h < node.h : child.w < node.w;
      if (child.kind === 'piece' && slack) seen.add((level + 1) * LEVEL_STEP + (byW ? child.h : child.w));
      visit(child, level + 1);
    }
  };
  visit(root, 1);
  return seen.size;
}

class Exchanges {
  private readonly facts: Facts;
  private readonly tidier: TreeTidier;
  private readonly sheets: OpenSheet[];
  private readonly leaves: { readonly leaf: Leaf; readonly sheet: OpenSheet }[];
  private looks = 0;

  constructor(facts: Facts, plan: Plan, tidier: TreeTidier) {
    this.facts = facts;
    this.tidier = tidier;
    // Trees of the search are alike in any order of their children, tidy ones in one only.
    const known = new Map<string, string>();
    const keys = plan.sheets.map(({ sheet, code }) => {
      const own = `${sheet} ${code.join()}`;
      const key =
        known.get(own) ?? `${sheet} ${JSON.stringify(tidier.tidy(readTree(code, facts.w, facts.h), sheet))}`;
      known.set(own, key);
      return key;
    });
    const copies = new Map<string, number>();
    for (const key of keys) copies.set(key, (copies.get(key) ?? 0) + 1);
    this.sheets = plan.sheets.map(({ sheet, code }) => {
      const root = openTree(readTree(code, facts.w, facts.h));
      return {
        sheet,
        root,
        settings: settingsOf(root),
        tidy: undefined,
        freeArea: freeArea(facts, sheet, root),
      };
    });
    this.leaves = this.sheets
      .filter((_, index) => copies.get(keys[index]!) === 1)
      .flatMap((sheet) => leavesOf(sheet.root).map((leaf) => ({ leaf, sheet })));
  }

  codes(): SheetCode[] {
    return this.sheets.map(({ sheet, root }) => encodeTree(root, sheet));
  }

  /** Rounds over all pairs until none helps or the looks are used up. */
  improve(): void {
    let pairs = 0;
    for (let changed = true; changed; ) {
      changed = false;
      for (let i = 0; i < this.leaves.length; i++) {
        for (let j = 0; j < i; j++) {
          if (this.looks >= MOST_LOOKS || ++pairs > MOST_PAIRS) return;
          if (this.tryPair(i, j)) changed = true;
        }
      }
    }
  }

  private tryPair(i: number, j: number): boolean {
    const [a, b] = [this.leaves[i]!, this.leaves[j]!];
    if (a.leaf.item === b.leaf.item) return false;
    if (!this.mayLie(a.leaf, b.sheet.sheet) || !this.mayLie(b.leaf, a.sheet.sheet)) return false;
    if (a.sheet !== b.sheet && !this.haveArea(a.sheet, b.sheet, b.leaf.w * b.leaf.h - a.leaf.w * a.leaf.h))
      return false;
    this.looks++;
    const touched = a.sheet === b.sheet ? [a.sheet] : [a.sheet, b.sheet];
    const before = touched.reduce((sum, sheet) => sum + sheet.settings, 0);
    this.exchange(a.leaf, b.leaf, touched);
    const after = touched.map((sheet) =>
      this.fits(sheet) ? settingsOf(sheet.root) : Number.POSITIVE_INFINITY,
    );
    if (after.reduce((sum, n) => sum + n, 0) < before) {
      const changed = touched.map((sheet) => this.tidied(sheet));
      this.exchange(a.leaf, b.leaf, touched);
      const unchanged = touched.map((sheet) => this.tidyOf(sheet));
      if (!isBetter(changed, unchanged)) return false;
      this.exchange(a.leaf, b.leaf, touched);
      touched.forEach((sheet, index) => {
        sheet.settings = after[index]!;
        sheet.tidy = changed[index];
        sheet.freeArea = freeArea(this.facts, sheet.sheet, sheet.root);
      });
      return true;
    }
    this.exchange(a.leaf, b.leaf, touched);
    return false;
  }

  /** Whether both sheets have the area when the pieces of `a` grow by `growth` and those of `b` shrink by it. */
  private haveArea(a: OpenSheet, b: OpenSheet, growth: number): boolean {
    return growth <= a.freeArea && -growth <= b.freeArea;
  }

  private mayLie(leaf: Leaf, sheet: number): boolean {
    const bit = leaf.turned ? TURNED : AS_IS;
    return (this.facts.ways[sheet * this.facts.kinds + leaf.item]! & bit) !== 0;
  }

  private fits({ root, sheet }: OpenSheet): boolean {
    return root.w <= this.facts.sheetW[sheet]! && root.h <= this.facts.sheetH[sheet]!;
  }

  private exchange(a: Leaf, b: Leaf, touched: readonly OpenSheet[]): void {
    const { item, turned, w, h } = a;
    Object.assign(a, { item: b.item, turned: b.turned, w: b.w, h: b.h });
    Object.assign(b, { item, turned, w, h });
    for (const { root } of touched) resize(root);
  }

  private tidyOf(sheet: OpenSheet): TidySheet | undefined {
    sheet.tidy ??= this.tidied(sheet);
    return sheet.tidy;
  }

  /** Undefined when the saw cannot cut it. */
  private tidied({ root, sheet }: OpenSheet): TidySheet | undefined {
    if (this.facts.limited && !this.tidier.canBeSawn(root, sheet)) return undefined;
    const tree = this.tidier.tidy(root, sheet);
    return { ...sawingOf(tree), worth: offcutWorth(tree) };
  }
}

function isBetter(
  changed: readonly (TidySheet | undefined)[],
  unchanged: readonly (TidySheet | undefined)[],
): boolean {
  if (changed.includes(undefined)) return false;
  const sum = (sheets: readonly (TidySheet | undefined)[], what: keyof TidySheet) =>
    sheets.reduce((all, sheet) => all + (sheet?.[what] ?? Number.POSITIVE_INFINITY), 0);
  return (
    sum(changed, 'worth') >= sum(unchanged, 'worth') &&
    sum(changed, 'levels') <= sum(unchanged, 'levels') &&
    sum(changed, 'fenceSettings') < sum(unchanged, 'fenceSettings')
  );
}
