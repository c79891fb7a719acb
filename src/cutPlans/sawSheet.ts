import { umToMm } from '../basics/lengths.ts';
import type { Part } from '../model/part.ts';
import type { PlanEnding, PlanStep } from '../model/plan.ts';
import type { Demand, SawRules, StockGroup, Trim } from '../model/stock.ts';
import type { Arranged } from './arrange.ts';
import { bladeFor, lightestWay, type PlanBlade, type Stack } from './cutTree.ts';
import { type Blank, partBlanks } from './partBlanks.ts';
import { pieceName } from './pieceNames.ts';

type Axis = 'x' | 'y';

/** The sequence of cuts of one sheet, in mm, and what it leaves. */
export interface SawnSheet {
  readonly start: string;
  readonly steps: readonly PlanStep[];
  readonly pieces: readonly PlanEnding[];
}

const START = 'sheet';

const TRIM_ORDER = {
  // The side that is trimmed last lies as the first stage needs it, so the sheet is not turned once more.
  ripsFirst: ['left', 'right', 'near', 'far'],
  crosscutsFirst: ['near', 'far', 'left', 'right'],
} as const;

function trimSheet(trim: Trim, first: PlanBlade, steps: PlanStep[]): string {
  let piece = START;
  for (const side of first === 'length' ? TRIM_ORDER.ripsFirst : TRIM_ORDER.crosscutsFirst) {
    if (trim[side] === 0) continue;
    const leaves = `${START} ${steps.length + 1}`;
    steps.push({ cut: 'trim', piece, side, take: umToMm(trim[side]), leaves });
    piece = leaves;
  }
  return piece;
}

/** Leaves of the tree with their names, in the order of the tree. */
function leavesOf(
  piece: Arranged,
  name: string,
  depth: number,
): { readonly leaf: Exclude<Arranged, Stack>; readonly name: string; readonly depth: number }[] {
  if (piece.kind !== 'stack') return [{ leaf: piece, name, depth }];
  const parent = depth === 0 ? '' : name;
  return piece.children.flatMap((child, index) =>
    leavesOf(child, pieceName(parent, depth, index), depth + 1),
  );
}

/**
 * The cuts of one sheet in a sawyer's order: trims, then stage by stage (rips, crosscuts, recuts) with equal fence
 * settings together, then the parting of matched blanks. A heavy sheet is parted near its middle first where that takes
 * no more cuts and settings (see `lightestWay`). `nextPart(d)` names the part of the next leaf of demand d.
 */
export function sawSheet(
  group: StockGroup,
  sheet: number,
  root: Arranged,
  nextPart: (demand: number) => Part,
): SawnSheet {
  const { kerfUm } = group.saw;
  const steps: PlanStep[] = [];
  const first: PlanBlade = root.kind === 'stack' ? bladeFor(root.axis) : firstBlade(group.saw.firstCut);
  const trimmed = trimSheet(group.sheets[sheet]!.trim, first, steps);
  if (root.kind === 'stack') {
    const { lengthUm, widthUm } = group.sheets[sheet]!;
    for (const step of lightestWay(root, trimmed, kerfUm, lengthUm * widthUm)) steps.push(step);
  }
  const pieces: PlanEnding[] = [];
  const blanks: Blank[] = [];
  for (const { leaf, name, depth } of leavesOf(root, trimmed, 0)) {
    if (leaf.kind === 'spare') {
      pieces.push({ is: leaf.use, piece: name, length: umToMm(leaf.xUm), width: umToMm(leaf.yUm) });
      continue;
    }
    const demand = group.demands[leaf.demand]!;
    if (demand.blank) {
      blanks.push({
        index: leaf.demand,
        demand,
        blank: demand.blank,
        name,
        depth,
        lengthAlong: leaf.lengthAlong,
      });
      continue;
    }
    const part = nextPart(leaf.demand);
    const lengthAlong = lengthOfPartAlong(part, demand, leaf.lengthAlong);
    pieces.push({ is: 'panel', piece: name, panel: part.id, lengthAlong });
  }
  partBlanks(blanks, group.saw, steps, pieces);
  return { start: START, steps, pieces };
}

/** The demand of a part that may be turned has the longer side as its length; the part itself may not. */
function lengthOfPartAlong(part: Part, demand: Demand, lengthAlong: Axis): PlanBlade {
  const same = part.cutLengthUm === demand.lengthUm;
  return same === (lengthAlong === 'x') ? 'length' : 'width';
}

function firstBlade(rule: SawRules['firstCut']): PlanBlade {
  return rule === 'crosscut' ? 'width' : 'length';
}
