import type { Panel, PlacedUnit } from '../model/furniture.ts';
import type { Axis, Box, Face } from '../model/geometry.ts';
import { axes, axisFaces, boxAround, extentSize, sharedUm } from './boxes.ts';
import { facing, jointOf } from './joints.ts';

/** What panels are to the piece that they are part of, in the order in which they are put to it where nothing is against it. */
export const ASSEMBLY_KINDS = ['base', 'upright', 'between', 'back', 'top', 'front'] as const;
export type AssemblyKind = (typeof ASSEMBLY_KINDS)[number];

/** Panels that are put to what stands already, one after the other. */
export interface AssemblyStep {
  readonly kind: AssemblyKind;
  readonly panels: readonly Panel[];
  /** The side from which they slide into grooves; null where they are let into nothing that stands already. */
  readonly slidesFrom: Face | null;
}

/** What is held by fittings only: one panel, or a piece of several that is put together for itself, such as a drawer. */
export interface HeldPiece {
  readonly panels: readonly Panel[];
  /** Square to the front, as a door is. */
  readonly isFront: boolean;
}

/** How a unit goes together: its carcass step by step, then what fittings hold, in the order in which it is held. */
export interface AssemblyOrder {
  readonly steps: readonly AssemblyStep[];
  readonly held: readonly HeldPiece[];
}

interface Put {
  readonly panel: Panel;
  readonly kind: AssemblyKind;
  /** The side from which it comes straight to its place past what stands already; null where no way is free. */
  readonly from: Face | null;
  readonly letIn: boolean;
}

/**
 * The order in which the panels of a unit are put together, by their boxes alone: found by taking it apart, each time the panel
 * that can be drawn straight out and leaves the rest in one piece, fronts first and the base last. So each panel is put
 * to one that stands already, and none is in its way. Each panel comes once.
 */
export function assemblyOrder(unit: PlacedUnit): AssemblyOrder {
  const pieces = joinedPieces(unit.panels);
  const largest = pieces.reduce<readonly Panel[]>(
    (most, piece) => (piece.length > most.length ? piece : most),
    [],
  );
  const inside = placedInside(unit, largest);
  const rest = largest.filter((panel) => !inside.flat().includes(panel));
  const lids = lidsWithCleats(rest);
  const main = rest.filter((panel) => !lids.flat().includes(panel));
  const others = [...lids, ...inside, ...pieces.filter((piece) => piece !== largest)];
  return { steps: stepsOf(putTogether(main)), held: inOrderOfHolding(unit, main, others) };
}

function stepsOf(puts: readonly Put[]): AssemblyStep[] {
  const steps: AssemblyStep[] = [];
  for (const { panel, kind, letIn, from } of puts) {
    const slidesFrom = letIn ? from : null;
    const last = steps.at(-1);
    if (last?.kind === kind && last.slidesFrom === slidesFrom) {
      steps[steps.length - 1] = { ...last, panels: [...last.panels, panel] };
    } else steps.push({ kind, panels: [panel], slidesFrom });
  }
  return steps;
}

/**
 * Pieces that are written as units of their own and stand in a unit without fittings, such as crates on a shelf; none where the
 * rest would fall apart without them.
 */
function placedInside(unit: PlacedUnit, main: readonly Panel[]): Panel[][] {
  const own = unit.panels[0]?.place?.file;
  const foreign = main.filter(({ place }) => place?.file !== own);
  const rest = main.filter((panel) => !foreign.includes(panel));
  return rest.length > 0 && isInOnePiece(rest) ? joinedPieces(foreign) : [];
}

/** Lids with what touches nothing but them, such as the cleats that keep them in place; none where the rest would fall apart. */
function lidsWithCleats(main: readonly Panel[]): Panel[][] {
  const lids = main
    .filter((panel) => kindOf(panel, main) === 'top')
    .map((lid) => {
      const cleats = main.filter((panel) => {
        const joined = main.filter((other) => other !== panel && areJoined(panel, other));
        return joined.length === 1 && joined[0] === lid;
      });
      return [lid, ...cleats];
    })
    .filter((piece) => piece.length > 1);
  const rest = main.filter((panel) => !lids.flat().includes(panel));
  return rest.length > 0 && isInOnePiece(rest) ? lids : [];
}

/** Panels that touch, are let into or pass through each other, as pieces. */
export function joinedPieces(panels: readonly Panel[]): Panel[][] {
  const left = new Set(panels);
  const pieces: Panel[][] = [];
  for (const first of panels) {
    if (!left.delete(first)) continue;
    const piece = [first];
    for (const panel of piece) {
      for (const other of left) {
        if (!areJoined(panel, other)) continue;
        left.delete(other);
        piece.push(other);
      }
    }
    pieces.push(panels.filter((panel) => piece.includes(panel)));
  }
  return pieces;
}

function areJoined(a: Panel, b: Panel): boolean {
  const { kind } = jointOf(a, b);
  return kind !== 'apart' && kind !== 'through opening';
}

function isInOnePiece(panels: readonly Panel[]): boolean {
  return joinedPieces(panels).length <= 1;
}

/** The orders of kinds that are tried, the usual one first. */
const RANKS: readonly (readonly AssemblyKind[])[] = [
  ASSEMBLY_KINDS,
  // A frame first, as where cleats are held by front and back.
  ['base', 'upright', 'back', 'front', 'between', 'top'],
  // Upside down: what lies on top is laid on its face, and what stands under it is put to that.
  ['top', 'between', 'upright', 'base', 'back', 'front'],
];

/** The order of one piece: of those tried the first that puts fewest panels to nothing. */
function putTogether(panels: readonly Panel[]): Put[] {
  const kinds = new Map(panels.map((panel) => [panel, kindOf(panel, panels)]));
  const tried = RANKS.map((ranks) => {
    const puts = putInRank(panels, kinds, ranks);
    return { puts, loose: loosePuts(puts, ranks[0]!) };
  });
  return tried.reduce((best, each) => (each.loose < best.loose ? each : best)).puts;
}

/** How many panels touch nothing that stands already, and do not stand or lie by themselves. */
function loosePuts(puts: readonly Put[], first: AssemblyKind): number {
  const bySelf: readonly AssemblyKind[] = first === 'base' ? ['base', 'upright'] : [first];
  return puts.filter(({ panel, kind }, index) => {
    if (index === 0 || bySelf.includes(kind)) return false;
    return !puts.slice(0, index).some((before) => areJoined(panel, before.panel));
  }).length;
}

function putInRank(
  panels: readonly Panel[],
  kinds: ReadonlyMap<Panel, AssemblyKind>,
  ranks: readonly AssemblyKind[],
): Put[] {
  const rank = (panel: Panel) => ranks.indexOf(kinds.get(panel)!);
  const backwards: Put[] = [];
  let left = [...panels];
  while (left.length > 0) {
    const latest = [...left].sort((a, b) => rank(b) - rank(a) || b.number - a.number);
    const rest = (panel: Panel) => left.filter((other) => other !== panel);
    const free = latest.filter((panel) => wayOut(panel, rest(panel)) !== null);
    // Of the same kind first one without which the rest still hangs together, best one that keeps the next kind from coming out.
    const alike = free.filter((panel) => rank(panel) === rank(free[0]!));
    const whole = alike.filter((panel) => isInOnePiece(rest(panel)));
    const caught = latest[0]!;
    const frees = (panel: Panel) =>
      wayOut(
        caught,
        rest(panel).filter((other) => other !== caught),
      ) !== null;
    const next = whole.find(frees) ?? whole[0] ?? free[0] ?? caught;
    const others = rest(next);
    const letIn = others.some((other) => {
      const joint = jointOf(next, other);
      return joint.kind === 'let in' && joint.inner === next;
    });
    backwards.push({ panel: next, kind: kinds.get(next)!, from: wayOut(next, others), letIn });
    left = others;
  }
  return backwards.reverse();
}

/** What a panel is to its piece. */
function kindOf(panel: Panel, panels: readonly Panel[]): AssemblyKind {
  const around = boxAround(panels.map(({ box }) => box))!;
  const { box, thicknessAxis } = panel;
  const others = panels.filter((other) => other !== panel);
  const share = (axis: Axis) => extentSize(box[axis]) / extentSize(around[axis]);
  const middle = (axis: Axis) => box[axis][0] + box[axis][1] - around[axis][0] - around[axis][1];
  const atFace = (axis: Axis, end: 0 | 1) =>
    others.filter((other) => {
      const face = facing(panel.box, other.box);
      return face?.axis === axis && face.gapUm === 0 && other.box[axis][1 - end] === box[axis][end];
    });
  if (thicknessAxis === 'x') {
    return share('z') >= 0.5 || box.z[0] === around.z[0] ? 'upright' : 'between';
  }
  if (thicknessAxis === 'z') {
    const below = atFace('z', 0);
    if (box.z[1] === around.z[1] && below.length > 0) return 'top';
    // As a seat before a backrest; one low down or narrow is a shelf or a slat.
    const covers = share('x') * share('y') >= 0.15 && box.z[1] - around.z[0] >= 0.4 * extentSize(around.z);
    const liesOnUprights = below.some((other) => other.thicknessAxis === 'x') && atFace('z', 1).length === 0;
    if (covers && liesOnUprights) return 'top';
    const level = panels.filter((other) => other.thicknessAxis === 'z');
    const lowest = Math.min(...level.map((other) => other.box.z[0]));
    const isLowest = box.z[0] === lowest && middle('z') < 0 && share('x') >= 0.5;
    // One that is let in, as the bottom of a drawer, needs what it is pushed into.
    if (isLowest) return panel.housings.length > 0 ? 'back' : 'base';
    return 'between';
  }
  if (box.y[0] === around.y[0] && share('z') >= 0.2 && atFace('y', 1).length > 0) return 'front';
  const isLarge = share('x') >= 0.5 && share('z') >= 0.5;
  return middle('y') > 0 && (isLarge || panel.housings.length > 0) ? 'back' : 'between';
}

/** The ways that are tried, the handiest first: up, to the front, to the back, to the sides, down. */
const WAYS: readonly (readonly [axis: Axis, end: 0 | 1])[] = [
  ['z', 1],
  ['y', 0],
  ['y', 1],
  ['x', 0],
  ['x', 1],
  ['z', 0],
];

/** The side to which a panel can be drawn straight out from among others; null where something is in every way. */
export function wayOut(panel: Panel, others: readonly Panel[]): Face | null {
  const way = WAYS.find(([axis, end]) => others.every((other) => !isInTheWay(panel, other, axis, end)));
  return way === undefined ? null : axisFaces[way[0]][way[1]];
}

function isInTheWay(panel: Panel, other: Panel, axis: Axis, end: 0 | 1): boolean {
  const joint = jointOf(panel, other);
  if (joint.kind === 'let in') {
    const { inner, outer } = joint;
    // Along its groove it slides, and square to the face with the groove it is drawn out; across the groove it is caught.
    if (axis === inner.thicknessAxis && axis !== outer.thicknessAxis) return true;
    if (axis !== outer.thicknessAxis) return false;
  }
  if (joint.kind === 'through opening') {
    const pierced = other.cutOuts.length > 0 ? other : panel;
    if (axis === pierced.thicknessAxis) return false;
  }
  const swept: Box = {
    ...panel.box,
    [axis]: end === 1 ? [panel.box[axis][1], Infinity] : [-Infinity, panel.box[axis][0]],
  };
  return axes.every((each) => sharedUm(swept[each], other.box[each]) > 0);
}

/** Pieces that fittings hold, each after one that it is held by. */
function inOrderOfHolding(
  unit: PlacedUnit,
  main: readonly Panel[],
  pieces: readonly (readonly Panel[])[],
): HeldPiece[] {
  const there = new Set(main.map(({ id }) => id));
  const left = [...pieces];
  const ordered: HeldPiece[] = [];
  const isHeld = (piece: readonly Panel[]) =>
    (unit.hangings ?? []).some(
      ({ panels, on }) => on.some((id) => there.has(id)) && piece.some((panel) => panels.includes(panel.id)),
    );
  while (left.length > 0) {
    const next = Math.max(0, left.findIndex(isHeld));
    const [piece] = left.splice(next, 1);
    for (const { id } of piece!) there.add(id);
    const panels = putTogether(piece!).map(({ panel }) => panel);
    ordered.push({ panels, isFront: panels.length === 1 && panels[0]!.thicknessAxis === 'y' });
  }
  return ordered;
}
