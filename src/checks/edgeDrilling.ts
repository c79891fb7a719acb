import { printMm } from '../basics/lengths.ts';
import type { Finding } from '../model/finding.ts';
import type { EdgeHole, Panel } from '../model/furniture.ts';
import { mm, panelOfUnit } from './names.ts';

/** Wood between a hole in an edge and the broad face beside it, or it splits. Common practice, no source. */
const LEAST_WALL_UM = 3000;

/** Holes in edges that come out of a broad face, leave too little wood to it, or have no room along the edge. */
export function checkEdgeDrilling(panel: Panel): Finding[] {
  const told = new Set<string>();
  return (panel.edgeHoles ?? []).flatMap((hole) => {
    const problem = problemOf(hole, panel);
    if (problem === null) return [];
    // A row of holes that is wrong is one mistake, told with its first hole.
    const key = [problem.code, hole.face, hole.place?.file, hole.place?.line].join(' ');
    if (told.has(key)) return [];
    told.add(key);
    const { code, severity, says } = problem;
    return [
      {
        code,
        severity,
        message: `the hole for “${hole.name}” in the ${hole.face} edge of ${panelOfUnit(panel)} ${says}`,
        found: `Ø ${printMm(hole.diameterUm)}, ${printMm(hole.depthUm)} deep, ${printMm(hole.alongUm)} along the edge`,
        ...(hole.place === undefined ? {} : { place: hole.place }),
      },
    ];
  });
}

type Problem = Pick<Finding, 'code' | 'severity'> & { readonly says: string };

function problemOf(hole: EdgeHole, panel: Panel): Problem | null {
  const edge = panel.edges.find(({ face }) => face === hole.face);
  const radiusUm = hole.diameterUm / 2;
  const wallUm = Math.min(hole.acrossUm, panel.thicknessUm - hole.acrossUm) - radiusUm;
  const endUm =
    Math.min(hole.alongUm, (edge?.lengthUm ?? Number.POSITIVE_INFINITY) - hole.alongUm) - radiusUm;
  if (wallUm < 0 || endUm < 0) {
    const where = wallUm < 0 ? 'a broad face' : 'the end of the edge';
    return { code: 'hole-outside', severity: 'error', says: `runs out of ${where}` };
  }
  if (wallUm >= LEAST_WALL_UM) return null;
  const says = `leaves ${mm(wallUm)} of board beside it; ${mm(LEAST_WALL_UM)} are needed`;
  return { code: 'hole-near-edge', severity: 'warning', says };
}
