import { printMm } from '../basics/lengths.ts';
import type { Finding } from '../model/finding.ts';
import type { CutOut, Hole, Panel } from '../model/furniture.ts';
import type { Um } from '../model/geometry.ts';
import { holeEdgeDistanceUm } from './holeDistances.ts';
import { mm, panelOfUnit } from './names.ts';

/** Board left under a blind hole, or its bottom shows on the other side. Common practice, no source. */
const LEAST_FLOOR_UM = 1500;
/** Wood between a hole and the edge: the least at which cups of hinges are bored. */
const LEAST_RIM_UM = 3000;
/** Wood between two holes, or a hole and an opening. Common practice, no source. */
const LEAST_WEB_UM = 2000;

type Severity = 'error' | 'warning';
type Problem = {
  readonly hole: Hole;
  readonly code: string;
  readonly severity: Severity;
  readonly says: string;
};

/** Holes that cannot be drilled where they are, or that leave too little of the board around them. */
export function checkDrilling(panel: Panel): Finding[] {
  const problems = [
    ...panel.holes.flatMap((hole) => [
      ...depthProblem(hole, panel),
      ...edgeProblem(hole, panel),
      ...panel.cutOuts.flatMap((cutOut) => openingProblem(hole, cutOut)),
    ]),
    ...neighbours(panel.holes).flatMap(([first, second]) => pairProblem(first, second, panel)),
  ];
  return toldOnce(problems, panel);
}

/** Holes that stand close enough to each other to be looked at, each pair once. */
function neighbours(holes: readonly Hole[]): (readonly [Hole, Hole])[] {
  const sorted = holes.toSorted((a, b) => a.alongLengthUm - b.alongLengthUm);
  const widestUm = holes.reduce((most, hole) => Math.max(most, hole.diameterUm), 0);
  return sorted.flatMap((first, index) => {
    const pairs: (readonly [Hole, Hole])[] = [];
    for (let other = index + 1; other < sorted.length; other++) {
      const second = sorted[other]!;
      if (second.alongLengthUm - first.alongLengthUm > widestUm + LEAST_WEB_UM) break;
      pairs.push([first, second]);
    }
    return pairs;
  });
}

function depthProblem(hole: Hole, panel: Panel): Problem[] {
  if (hole.depthUm === null) return [];
  const leftUm = panel.thicknessUm - hole.depthUm;
  const deep = `is ${mm(hole.depthUm)} deep in a board of ${mm(panel.thicknessUm)}`;
  if (leftUm <= 0) {
    const says = `${deep}, so it comes out on the other side`;
    return [{ hole, code: 'hole-too-deep', severity: 'error', says }];
  }
  if (leftUm >= LEAST_FLOOR_UM) return [];
  const says = `${deep}, which leaves ${mm(leftUm)} under it; ${mm(LEAST_FLOOR_UM)} are needed`;
  return [{ hole, code: 'hole-too-deep', severity: 'warning', says }];
}

function edgeProblem(hole: Hole, panel: Panel): Problem[] {
  const rimUm = holeEdgeDistanceUm(hole, panel) - hole.diameterUm / 2;
  if (rimUm <= -hole.diameterUm) {
    return [{ hole, code: 'hole-outside', severity: 'error', says: 'lies outside the panel' }];
  }
  if (rimUm < 0) {
    const says = `runs ${mm(-rimUm)} over the edge`;
    return [{ hole, code: 'hole-outside', severity: 'error', says }];
  }
  if (rimUm >= LEAST_RIM_UM) return [];
  const says = `leaves ${mm(rimUm)} of board to the edge; ${mm(LEAST_RIM_UM)} are needed`;
  return [{ hole, code: 'hole-near-edge', severity: 'warning', says }];
}

function openingProblem(hole: Hole, cutOut: CutOut): Problem[] {
  const outside = (at: Um, [from, to]: readonly [Um, Um]) => Math.max(from - at, at - to, 0);
  const distanceUm = length(
    outside(hole.alongLengthUm, cutOut.alongLength),
    outside(hole.alongWidthUm, cutOut.alongWidth),
  );
  return webProblem(hole, distanceUm - hole.diameterUm / 2, `the cut-out “${cutOut.name}”`);
}

function pairProblem(first: Hole, second: Hole, panel: Panel): Problem[] {
  const distanceUm = length(
    first.alongLengthUm - second.alongLengthUm,
    first.alongWidthUm - second.alongWidthUm,
  );
  const webUm = distanceUm - (first.diameterUm + second.diameterUm) / 2;
  if (webUm >= LEAST_WEB_UM || passEachOther(first, second, panel)) return [];
  if (distanceUm === 0 && stepped(first, second)) return [];
  return webProblem(second, webUm, `the hole “${first.name}”`);
}

function webProblem(hole: Hole, webUm: Um, other: string): Problem[] {
  if (webUm < 0) {
    return [{ hole, code: 'holes-overlap', severity: 'error', says: `runs into ${other}` }];
  }
  if (webUm >= LEAST_WEB_UM) return [];
  const says = `leaves ${mm(webUm)} of board to ${other}; ${mm(LEAST_WEB_UM)} are needed`;
  return [{ hole, code: 'holes-near', severity: 'warning', says }];
}

/** Two blind holes from opposite faces with enough board between their bottoms. */
function passEachOther(first: Hole, second: Hole, panel: Panel): boolean {
  if (first.face === second.face || first.depthUm === null || second.depthUm === null) return false;
  return panel.thicknessUm - first.depthUm - second.depthUm >= LEAST_FLOOR_UM;
}

/** A wider, shallower hole about a narrower, deeper one, as for the head of a screw. */
function stepped(first: Hole, second: Hole): boolean {
  if (first.face !== second.face) return first.depthUm === null || second.depthUm === null;
  const [wide, narrow] = first.diameterUm > second.diameterUm ? [first, second] : [second, first];
  if (wide.diameterUm === narrow.diameterUm || wide.depthUm === null) return false;
  return narrow.depthUm === null || narrow.depthUm > wide.depthUm;
}

function length(a: Um, b: Um): Um {
  return Math.sqrt(a * a + b * b);
}

/** A row of holes that is wrong is one mistake, told with its first hole. */
function toldOnce(problems: readonly Problem[], panel: Panel): Finding[] {
  const rows = new Map<string, Problem[]>();
  for (const problem of problems) {
    const { place } = problem.hole;
    const key = [problem.code, problem.severity, place?.file, place?.line, place?.column].join(' ');
    rows.set(key, [...(rows.get(key) ?? []), problem]);
  }
  return [...rows.values()].map((row) => {
    const { hole, code, severity, says } = row[0]!;
    const others = new Set(row.map((problem) => problem.hole)).size - 1;
    const more = others === 0 ? '' : `, and ${others} more of its row likewise`;
    const at = `${printMm(hole.alongLengthUm)} × ${printMm(hole.alongWidthUm)}`;
    return {
      code,
      severity,
      message: `the hole “${hole.name}” of ${panelOfUnit(panel)} ${says}${more}`,
      found: `Ø ${printMm(hole.diameterUm)} at ${at} mm of the panel`,
      ...(hole.place === undefined ? {} : { place: hole.place }),
    };
  });
}
