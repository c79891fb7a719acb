import type { NestPiece } from '../model/nest.ts';
import { AS_IS, type Facts, TURNED } from './facts.ts';
import type { Plan } from './plan.ts';
import { sawingOf } from './sawing.ts';
import { encodeTree, readTree, type SheetCode, type Tree } from './sheetCode.ts';
import { offcutWorth, type TreeTidier } from './tidyTree.ts';

/** Exchanges that are looked at; each takes some microseconds. */
const MOST_LOOKS = 40_000;

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
  settings: number;
}

/**
 * Exchanges pieces, so that equal sizes come together on a sheet and fewer fence settings are needed. The sheets and the kind of each stay as they are, as does the number of different sheets; the offcuts of
 * the two sheets are never worth less afterwards, nor are more levels of cuts needed. Sheets of which there are several
 * alike are left alone.
 */
export function fewerSettings(facts: Facts, plan: Plan, tidier: TreeTidier): Plan {
  const run = new Exchanges(facts, plan, tidier);
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

const LEVEL_STEP = 2 ** 31;

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
    const keys = plan.sheets.map(
      ({ sheet, code }) => `${sheet} ${JSON.stringify(tidier.tidy(readTree(code, facts.w, facts.h), sheet))}`,
    );
    const copies = new Map<string, number>();
    for (const key of keys) copies.set(key, (copies.get(key) ?? 0) + 1);
    this.sheets = plan.sheets.map(({ sheet, code }) => {
      const root = openTree(readTree(code, facts.w, facts.h));
      return { sheet, root, settings: settingsOf(root) };
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
    for (let changed = true; changed; ) {
      changed = false;
      for (let i = 0; i < this.leaves.length; i++) {
        for (let j = 0; j < i; j++) {
          if (this.looks >= MOST_LOOKS) return;
          if (this.tryPair(i, j)) changed = true;
        }
      }
    }
  }

  private tryPair(i: number, j: number): boolean {
    const [a, b] = [this.leaves[i]!, this.leaves[j]!];
    if (a.leaf.item === b.leaf.item) return false;
    if (!this.mayLie(a.leaf, b.sheet.sheet) || !this.mayLie(b.leaf, a.sheet.sheet)) return false;
    this.looks++;
    const touched = a.sheet === b.sheet ? [a.sheet] : [a.sheet, b.sheet];
    const before = touched.reduce((sum, sheet) => sum + sheet.settings, 0);
    this.exchange(a.leaf, b.leaf, touched);
    const after = touched.map((sheet) =>
      this.fits(sheet) ? settingsOf(sheet.root) : Number.POSITIVE_INFINITY,
    );
    if (after.reduce((sum, n) => sum + n, 0) < before) {
      const changed = touched.map(({ root, sheet }) => this.tidied(root, sheet));
      this.exchange(a.leaf, b.leaf, touched);
      const unchanged = touched.map(({ root, sheet }) => this.tidied(root, sheet));
      if (isBetter(changed, unchanged)) {
        this.exchange(a.leaf, b.leaf, touched);
        touched.forEach((sheet, index) => {
          sheet.settings = after[index]!;
        });
        return true;
      }
      return false;
    }
    this.exchange(a.leaf, b.leaf, touched);
    return false;
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

  /** Undefined when the saw cannot cut it. */
  private tidied(root: Node, sheet: number): NestPiece | undefined {
    return this.tidier.canBeSawn(root, sheet) ? this.tidier.tidy(root, sheet) : undefined;
  }
}

function isBetter(
  changed: readonly (NestPiece | undefined)[],
  unchanged: readonly (NestPiece | undefined)[],
): boolean {
  const sum = (trees: readonly (NestPiece | undefined)[], of: (tree: NestPiece) => number) =>
    trees.reduce((all, tree) => all + (tree ? of(tree) : Number.POSITIVE_INFINITY), 0);
  if (changed.includes(undefined)) return false;
  return (
    sum(changed, offcutWorth) >= sum(unchanged, offcutWorth) &&
    sum(changed, (tree) => sawingOf(tree).levels) <= sum(unchanged, (tree) => sawingOf(tree).levels) &&
    sum(changed, (tree) => sawingOf(tree).fenceSettings) <
      sum(unchanged, (tree) => sawingOf(tree).fenceSettings)
  );
}
