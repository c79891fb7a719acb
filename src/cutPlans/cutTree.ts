import { umToMm } from '../basics/lengths.ts';
import type { Um } from '../model/geometry.ts';
import type { PlanStep } from '../model/plan.ts';
import { type Arranged, sizeAlong } from './arrange.ts';
import { earlyPartings, fenceSettingsOf } from './partEarly.ts';
import { pieceName, restName, spanName } from './pieceNames.ts';

type Axis = 'x' | 'y';
export type Stack = Arranged & { kind: 'stack' };

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
  /** Index after the last child of the piece, which reaches to the end of the stack unless it was parted early. */
  readonly end: number;
}

/** A blade runs along this side of the sheet. */
export type PlanBlade = 'length' | 'width';

/** A cut at a place along x is made by a blade that runs along the width. */
export function bladeFor(axis: Axis): PlanBlade {
  return axis === 'x' ? 'width' : 'length';
}

/** From the third stage on a piece has been both ripped and crosscut. */
function cutName(job: Job, blade: PlanBlade): 'rip' | 'crosscut' | 'recut' {
  if (job.blades.length >= 3) return 'recut';
  return blade === 'length' ? 'rip' : 'crosscut';
}

/** The fence setting of a job's next cut, in µm; null when the last piece already stands alone. */
function nextFence(job: Job): Um | null {
  if (job.next >= job.end) return null;
  const size = sizeAlong(job.stack.children[job.next]!, job.stack.axis);
  return size === job.leftUm ? null : size;
}

/** What the rest of a job is called: as its child where that stands alone, else after the first of its children. */
function nameOfRest(job: Job): string {
  const { stack, name, depth, next, end } = job;
  const first = pieceName(name, depth, next);
  if (nextFence(job) === null) return first;
  return end === stack.children.length ? restName(first) : spanName(first, pieceName(name, depth, end - 1));
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
    job.piece = nameOfRest(job);
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
  const { axis, children } = stack;
  return { stack, name, depth, blades, piece, leftUm: sizeAlong(stack, axis), next: 0, end: children.length };
}

/** Parts the piece of a job before its child of index `at`: what is left are two jobs on the same stack. */
function partEarly(job: Job, at: number, kerfUm: Um, steps: PlanStep[]): Job[] {
  const { stack, name, depth, piece } = job;
  const before = stack.children.slice(0, at);
  const fence = before.reduce((sum, child) => sum + sizeAlong(child, stack.axis) + kerfUm, -kerfUm);
  const first: Job = {
    ...job,
    piece: spanName(pieceName(name, depth, 0), pieceName(name, depth, at - 1)),
    leftUm: fence,
    end: at,
  };
  const second: Job = { ...job, leftUm: job.leftUm - fence - kerfUm, next: at };
  second.piece = nameOfRest(second);
  const blade = bladeFor(stack.axis);
  const gives = [first.piece, second.piece];
  steps.push({ cut: cutName(job, blade), piece, blade, fence: umToMm(fence), gives, take: umToMm(kerfUm) });
  return [first, second];
}

/** All cuts of a tree after the trims, stage by stage, the sheet parted first before the child of index `early`, if there is one. */
export function cutTree(root: Stack, trimmed: string, early: number | null, kerfUm: Um): PlanStep[] {
  const steps: PlanStep[] = [];
  const sheet = newJob(root, trimmed, '', 0, [bladeFor(root.axis)]);
  if (early === null) cutTogether([sheet], kerfUm, steps);
  else for (const half of partEarly(sheet, early, kerfUm, steps)) cutTogether([half], kerfUm, steps);
  for (let stage = jobsOf(sheet); stage.length > 0; stage = stage.flatMap(jobsOf)) {
    for (const together of groupBySettings(stage)) cutTogether(together, kerfUm, steps);
  }
  return steps;
}

/**
 * All cuts of a tree after the trims, stage by stage with equal fence settings together. The sheet is parted near its
 * middle first where that spares cuts through heavy pieces, or leaves lighter ones, and takes no more cuts and settings.
 * `sheetAreaUm2` is that of the raw sheet.
 */
export function lightestWay(root: Stack, trimmed: string, kerfUm: Um, sheetAreaUm2: number): PlanStep[] {
  const plain = cutTree(root, trimmed, null, kerfUm);
  const most = fenceSettingsOf(plain);
  for (const early of earlyPartings(root, kerfUm, sheetAreaUm2)) {
    const steps = cutTree(root, trimmed, early, kerfUm);
    if (steps.length <= plain.length && fenceSettingsOf(steps) <= most) return steps;
  }
  return plain;
}
