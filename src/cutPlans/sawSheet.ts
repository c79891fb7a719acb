import { umToMm } from '../basics/lengths.ts';
import type { Um } from '../model/geometry.ts';
import type { Part } from '../model/part.ts';
import type { PlanEnding, PlanStep } from '../model/plan.ts';
import type { Demand, SawRules, StockGroup, Trim } from '../model/stock.ts';
import { type Arranged, sizeAlong } from './arrange.ts';
import { type Blank, partBlanks } from './partBlanks.ts';
import { pieceName, restName } from './pieceNames.ts';

type Axis = 'x' | 'y';
type Stack = Arranged & { kind: 'stack' };

/** The sequence of cuts of one sheet, in mm, and what it leaves. */
export interface SawnSheet {
  readonly start: string;
  readonly steps: readonly PlanStep[];
  readonly pieces: readonly PlanEnding[];
}

/** A piece waiting to be divided, with how far its division has come. */
interface Job {
  readonly stack: Stack;
  /** Name its parts are called after, and how deep they lie. */
  readonly name: string;
  readonly depth: number;
  /** Blades that have already gone through it, in order of the stages. */
  readonly blades: readonly PlanBlade[];
  /** Name of the piece in hand, its size along the axis, and the next child to come off it. */
  piece: string;
  leftUm: Um;
  next: number;
}

type PlanBlade = 'length' | 'width';

/** A cut at a place along x is made by a blade that runs along the width. */
export function bladeFor(axis: Axis): PlanBlade {
  return axis === 'x' ? 'width' : 'length';
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

/** From the third stage on a piece has been both ripped and crosscut. */
function cutName(job: Job, blade: PlanBlade): 'rip' | 'crosscut' | 'recut' {
  if (job.blades.length >= 3) return 'recut';
  return blade === 'length' ? 'rip' : 'crosscut';
}

/** The fence setting of a job's next cut, in µm; null when the last piece already stands alone. */
function nextFence(job: Job): Um | null {
  const child = job.stack.children[job.next];
  if (child === undefined) return null;
  const size = sizeAlong(child, job.stack.axis);
  return size === job.leftUm ? null : size;
}

function cutOnce(job: Job, kerfUm: Um): PlanStep {
  const { stack, name, depth } = job;
  const fence = sizeAlong(stack.children[job.next]!, stack.axis);
  const blade = bladeFor(stack.axis);
  const takeUm = Math.min(kerfUm, job.leftUm - fence);
  const gives = [pieceName(name, depth, job.next)];
  job.leftUm -= fence + takeUm;
  job.next += 1;
  const piece = job.piece;
  if (job.leftUm > 0) {
    const after = pieceName(name, depth, job.next);
    job.piece = nextFence(job) === null ? after : restName(after);
    gives.push(job.piece);
  }
  return { cut: cutName(job, blade), piece, blade, fence: umToMm(fence), gives, take: umToMm(takeUm) };
}

/** Jobs that share a setting, straight or through others, are sawn together; the rest one after the other. */
function groupBySettings(jobs: readonly Job[]): Job[][] {
  const groups: { jobs: Job[]; settings: Set<string> }[] = [];
  for (const job of jobs) {
    const { axis, children } = job.stack;
    const settings = new Set(
      children.filter((child) => child.kind !== 'spare').map((child) => `${axis} ${sizeAlong(child, axis)}`),
    );
    const touching = groups.filter((group) => [...group.settings].some((setting) => settings.has(setting)));
    const home = touching[0] ?? { jobs: [], settings: new Set<string>() };
    if (touching.length === 0) groups.push(home);
    for (const other of touching.slice(1)) {
      home.jobs.push(...other.jobs);
      for (const setting of other.settings) home.settings.add(setting);
      groups.splice(groups.indexOf(other), 1);
    }
    home.jobs.push(job);
    for (const setting of settings) home.settings.add(setting);
  }
  return groups.map((group) => group.jobs);
}

/** Cuts a group of jobs with as few fence settings as their pieces allow: from the largest setting down. */
function cutTogether(jobs: readonly Job[], kerfUm: Um, steps: PlanStep[]): void {
  for (;;) {
    const open = jobs.filter((job) => nextFence(job) !== null);
    if (open.length === 0) return;
    const setting = Math.max(...open.map((job) => nextFence(job)!));
    for (const job of open) {
      while (nextFence(job) === setting) steps.push(cutOnce(job, kerfUm));
    }
  }
}

function jobsOf(job: Job): Job[] {
  const { stack, name, depth } = job;
  return stack.children.flatMap((child, index) => {
    if (child.kind !== 'stack') return [];
    const piece = pieceName(name, depth, index);
    const blades = child.axis === stack.axis ? job.blades : [...job.blades, bladeFor(child.axis)];
    return [newJob(child, piece, piece, depth + 1, blades)];
  });
}

function newJob(stack: Stack, piece: string, name: string, depth: number, blades: readonly PlanBlade[]): Job {
  return { stack, name, depth, blades, piece, leftUm: sizeAlong(stack, stack.axis), next: 0 };
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
 * settings together, then the parting of matched blanks. `nextPart(d)` names the part of the next leaf of demand d.
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
  let stage = root.kind === 'stack' ? [newJob(root, trimmed, '', 0, [first])] : [];
  while (stage.length > 0) {
    for (const together of groupBySettings(stage)) cutTogether(together, kerfUm, steps);
    stage = stage.flatMap(jobsOf);
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
