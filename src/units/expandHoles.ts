import { axes, faceAxis } from '../basics/boxes.ts';
import type { FormulaScope } from '../basics/formulaScope.ts';
import { printMm } from '../basics/lengths.ts';
import { nearestWord } from '../basics/nearestWord.ts';
import type { ExpandedHole } from '../model/expanded.ts';
import type { Finding } from '../model/finding.ts';
import type { Axis, Face, Um } from '../model/geometry.ts';
import type { DrillingPattern, HoleDefinition, Library, PanelDefinition } from '../model/library.ts';
import { runs } from './repeats.ts';

/** Faces at the high end of their axis: a pattern laid towards one of the others counts backwards. */
const HIGH_FACES: readonly Face[] = ['right', 'back', 'top'];

type Middle = Readonly<Record<Axis, Um | null>>;

/**
 * The holes of one panel with their formulas worked out, in the unit's frame. `scope` knows the panel's own counter.
 * Holes that come to no width or depth, and patterns that the library lacks, are findings.
 */
export function expandHoles(
  panel: PanelDefinition,
  scope: FormulaScope,
  library: Library,
  findings: Finding[],
): ExpandedHole[] {
  return panel.holes.flatMap((hole) =>
    runs(hole.repeat, scope).flatMap((run) => {
      if (run.scope.condition(hole.when) !== true) return [];
      const middle = middleOf(hole, run.scope);
      if (middle === undefined) return [];
      const name = `${hole.name}${run.ending}`;
      if (hole.drill.kind === 'hole') return single(hole, hole.drill, name, middle, run.scope);
      if (hole.drill.kind === 'screw')
        return screwed(hole, hole.drill.fitting, name, middle, library, findings);
      const pattern = library.drilling.get(hole.drill.pattern);
      if (pattern !== undefined) return laid(pattern, hole, hole.drill.towards, name, middle);
      findings.push(unknownPattern(hole, hole.drill.pattern, library));
      return [];
    }),
  );
}

/** Holes of a unit inside another, moved to where that unit stands. */
export function movedHole(hole: ExpandedHole, by: Readonly<Record<Axis, Um>>): ExpandedHole {
  const moved = (axis: Axis) => (hole[axis] === null ? null : hole[axis] + by[axis]);
  return { ...hole, x: moved('x'), y: moved('y'), z: moved('z') };
}

function middleOf(hole: HoleDefinition, scope: FormulaScope): Middle | undefined {
  const along = (axis: Axis) => {
    const formula = hole.at[axis];
    return formula === null ? null : scope.lengthUm(formula);
  };
  const middle = { x: along('x'), y: along('y'), z: along('z') };
  return axes.some((axis) => middle[axis] === undefined) ? undefined : (middle as Middle);
}

function single(
  hole: HoleDefinition,
  drill: HoleDefinition['drill'] & { readonly kind: 'hole' },
  name: string,
  middle: Middle,
  scope: FormulaScope,
): ExpandedHole[] {
  const diameterUm = scope.lengthUm(drill.diameter);
  const depthUm = drill.depth === null ? null : scope.lengthUm(drill.depth);
  if (diameterUm === undefined || depthUm === undefined) return [];
  for (const [what, um, formula] of [
    ['wide', diameterUm, drill.diameter],
    ['deep', depthUm, drill.depth],
  ] as const) {
    if (um === null || um > 0 || formula === null) continue;
    scope.findings.push({
      code: 'hole-wrong',
      severity: 'error',
      message: `the hole “${name}” comes to ${printMm(um)} mm ${what}`,
      place: formula.place,
      found: formula.text,
      expected: 'more than 0',
    });
    return [];
  }
  return [{ name, place: hole.place, ...middle, from: hole.from, diameterUm, depthUm }];
}

function screwed(
  hole: HoleDefinition,
  fitting: string,
  name: string,
  middle: Middle,
  library: Library,
  findings: Finding[],
): ExpandedHole[] {
  const screw = library.fittings.get(fitting)?.screw;
  if (screw !== undefined) {
    const { lengthUm, throughUm, intoUm } = screw;
    const through = { from: hole.from, diameterUm: throughUm, depthUm: null };
    return [{ name, place: hole.place, ...middle, ...through, screw: { fitting, lengthUm, intoUm } }];
  }
  findings.push({
    code: 'no-screw',
    severity: 'error',
    message: `fittings.yaml does not say which holes “${fitting}” takes`,
    place: hole.place,
    found: fitting,
    advice:
      'give the fitting a `screw` with its length and both diameters, or the hole a diameter and a depth',
  });
  return [];
}

function laid(
  pattern: DrillingPattern,
  hole: HoleDefinition,
  towards: Face,
  name: string,
  middle: Middle,
): ExpandedHole[] {
  const along = faceAxis[towards];
  const across = axes.find((axis) => axis !== along && axis !== faceAxis[hole.from]);
  if (across === undefined) throw new Error(`the pattern ${pattern.id} is laid towards ${towards}`);
  const sign = HIGH_FACES.includes(towards) ? 1 : -1;
  return pattern.holes.map((one) => ({
    name: `${name} ${one.name}`,
    place: hole.place,
    ...middle,
    [along]: (middle[along] ?? 0) + sign * one.alongUm,
    [across]: (middle[across] ?? 0) + one.acrossUm,
    from: hole.from,
    diameterUm: one.diameterUm,
    depthUm: one.depthUm,
  }));
}

function unknownPattern(hole: HoleDefinition, pattern: string, library: Library): Finding {
  const nearest = nearestWord(pattern, library.drilling.keys());
  return {
    code: 'unknown-pattern',
    severity: 'error',
    message: `the library has no drilling pattern “${pattern}”`,
    place: hole.place,
    found: pattern,
    ...(nearest === undefined ? {} : { nearest }),
  };
}
