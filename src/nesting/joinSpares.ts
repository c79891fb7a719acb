import type { Um } from '../model/geometry.ts';
import type { NestPiece } from '../model/nest.ts';

type Stack = NestPiece & { readonly kind: 'stack' };
type Axis = 'x' | 'y';

/** What the joining of spares needs to know of the saw and of what a tree is worth. */
export interface SpareRules {
  readonly kerfUm: Um;
  readonly useOf: (xUm: Um, yUm: Um) => 'offcut' | 'waste';
  readonly worth: (root: NestPiece) => number;
  /** Whether the saw may cut the tree. */
  readonly allowed: (root: NestPiece) => boolean;
}

/** Joins made on one sheet at most; each makes the offcuts worth more, so that few are ever made. */
const MOST_JOINS = 12;

/**
 * Joins the spares at the ends of neighbouring pieces of a stack into one that reaches over all of them, wherever this
 * makes the offcuts of the sheet worth more: pieces with a spare above go into a stack of their own, below a strip cut
 * off first.
 *
 *     ┌───┬────┬─────┐        ┌───┬──────────┐
 *     │   │////│/////│        │   │//////////│
 *     │   ├────┤/////│   →    │   ├────┬─────┤
 *     │ a │ b  ├─────┤        │ a │ b  │/////│
 *     │   │    │  c  │        │   │    ├─────┤
 *     │   │    │     │        │   │    │  c  │
 *     └───┴────┴─────┘        └───┴────┴─────┘
 *
 * The demands, the size of the tree and the rules of `NestPiece` stay as they are.
 */
export function joinSpares(root: NestPiece, rules: SpareRules): NestPiece {
  let best = root;
  let worth = rules.worth(root);
  for (let join = 0; join < MOST_JOINS; join++) {
    const better = variants(best, rules)
      .map((tree) => ({ tree, worth: rules.worth(tree) }))
      .filter((variant) => variant.worth > worth && rules.allowed(variant.tree));
    if (better.length === 0) return best;
    const chosen = better.reduce((a, b) => (b.worth > a.worth ? b : a));
    best = chosen.tree;
    worth = chosen.worth;
  }
  return best;
}

/** The tree with one join, in all ways. */
function variants(piece: NestPiece, rules: SpareRules): NestPiece[] {
  if (piece.kind !== 'stack') return [];
  const here = joinsOf(piece, rules);
  const below = piece.children.flatMap((child, index) =>
    variants(child, rules).map((changed) => ({
      ...piece,
      children: piece.children.map((other, i) => (i === index ? changed : other)),
    })),
  );
  return [...here, ...below];
}

function along(piece: NestPiece, axis: Axis): Um {
  return axis === 'x' ? piece.xUm : piece.yUm;
}

function otherAxis(axis: Axis): Axis {
  return axis === 'x' ? 'y' : 'x';
}

function sized(axis: Axis, alongUm: Um, acrossUm: Um): { readonly xUm: Um; readonly yUm: Um } {
  return axis === 'x' ? { xUm: alongUm, yUm: acrossUm } : { xUm: acrossUm, yUm: alongUm };
}

/** Size along `axis` of the spare at the end of a child; 0 where there is none. */
function tailOf(child: NestPiece, axis: Axis): Um {
  if (child.kind === 'spare') return along(child, axis);
  if (child.kind !== 'stack' || child.axis !== axis) return 0;
  const last = child.children.at(-1);
  return last?.kind === 'spare' ? along(last, axis) : 0;
}

/** A stack with some of its children joined: those with at least a given spare, with or without the spare beside them. */
function joinsOf(stack: Stack, rules: SpareRules): Stack[] {
  const across = otherAxis(stack.axis);
  const tails = stack.children.map((child) => tailOf(child, across));
  const isSpare = (index: number) => stack.children[index]!.kind === 'spare';
  const sizes = [...new Set(tails.filter((tail, index) => tail > 0 && !isSpare(index)))];
  return sizes.flatMap((size) => {
    const members = stack.children.map((_, index) => index).filter((index) => tails[index]! >= size);
    const sets = [members, members.filter((index) => !isSpare(index))];
    return sets
      .filter((set, index) => index === 0 || set.length < members.length)
      .filter((set) => set.length >= 2 && set.length < stack.children.length)
      .map((set) => join(stack, set, size, rules))
      .filter((joined): joined is Stack => joined !== undefined);
  });
}

/** The children of `set` under one spare of `tailUm`; undefined where a child cannot be shortened by it. */
function join(stack: Stack, set: readonly number[], tailUm: Um, rules: SpareRules): Stack | undefined {
  const { axis } = stack;
  const across = otherAxis(axis);
  const fullUm = along(stack, across);
  const leftUm = fullUm - tailUm - rules.kerfUm;
  if (leftUm <= 0) return undefined;
  const shortened = set.map((index) => shorten(stack.children[index]!, across, leftUm, rules));
  if (shortened.some((child) => child === undefined)) return undefined;
  const inner = shortened.flatMap((child) => child!);
  const widthUm =
    set.reduce((sum, index) => sum + along(stack.children[index]!, axis), 0) +
    rules.kerfUm * (set.length - 1);
  const strip = sized(axis, widthUm, tailUm);
  const block: NestPiece = {
    kind: 'stack',
    axis: across,
    ...sized(axis, widthUm, fullUm),
    children: [
      { kind: 'stack', axis, ...sized(axis, widthUm, leftUm), children: largestFirst(inner, axis) },
      { kind: 'spare', ...strip, use: rules.useOf(strip.xUm, strip.yUm) },
    ],
  };
  const others = stack.children.filter((_, index) => !set.includes(index));
  return { ...stack, children: largestFirst([...others, block], axis) };
}

/** Larger pieces first so that the sheet is divided early, what is spare last so that it needs no cut of its own. */
function largestFirst(children: readonly NestPiece[], axis: Axis): NestPiece[] {
  const last = (piece: NestPiece) => (piece.kind === 'spare' ? 1 : 0);
  return [...children].sort((a, b) => last(a) - last(b) || along(b, axis) - along(a, axis));
}

/** A child without so much of its spare end that it is `leftUm` long, as what goes into a stack across `axis`. */
function shorten(child: NestPiece, axis: Axis, leftUm: Um, rules: SpareRules): NestPiece[] | undefined {
  const size = sized(axis, leftUm, along(child, otherAxis(axis)));
  if (child.kind === 'spare') return [{ kind: 'spare', ...size, use: rules.useOf(size.xUm, size.yUm) }];
  if (child.kind !== 'stack') return undefined;
  const core = child.children.slice(0, -1);
  const usedUm = core.reduce((sum, piece) => sum + along(piece, axis), 0) + rules.kerfUm * (core.length - 1);
  const restUm = leftUm - usedUm;
  if (core.length === 0 || restUm < 0) return undefined;
  if (restUm === 0 && core.length === 1) return asChildren(core[0]!, otherAxis(axis), rules.kerfUm);
  const children = [...core];
  if (restUm > rules.kerfUm) {
    const spare = sized(axis, restUm - rules.kerfUm, along(child, otherAxis(axis)));
    children.push({ kind: 'spare', ...spare, use: rules.useOf(spare.xUm, spare.yUm) });
  }
  return [{ kind: 'stack', axis, ...size, children }];
}

/** A stack along `axis` inside a stack along the same axis gives its children to it, if they fill it exactly. */
export function asChildren(piece: NestPiece, axis: Axis, kerfUm: Um): NestPiece[] | undefined {
  if (piece.kind !== 'stack' || piece.axis !== axis) return [piece];
  const sum = piece.children.reduce((all, child) => all + along(child, axis), 0);
  const exact = sum + kerfUm * (piece.children.length - 1) === along(piece, axis);
  return exact ? [...piece.children] : undefined;
}
