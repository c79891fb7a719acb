import { axes, axisFaces, extentSize, faceAxis } from '../basics/boxes.ts';
import { printMm } from '../basics/lengths.ts';
import type { ExpandedHole, ExpandedPanel } from '../model/expanded.ts';
import type { Finding } from '../model/finding.ts';
import type { EdgeHole, Hole, Panel } from '../model/furniture.ts';
import type { Axis, Box, Um } from '../model/geometry.ts';

/** A drill stops so far before the face behind; the point of the screw finds its own way. Common practice, no source. */
const LEAST_FLOOR_UM = 1500;

/** A panel with the box that its holes are written in. */
export interface DrilledPanel {
  readonly expanded: ExpandedPanel;
  readonly panel: Panel;
}

/** What a screw goes into behind the panel that it holds. */
interface Behind {
  readonly index: number;
  /** How deep its end is in there. */
  readonly depthUm: Um;
}

type Screw = ExpandedHole & { readonly screw: NonNullable<ExpandedHole['screw']> };

/**
 * The panels of a unit with the holes in which the threads of its screws hold: in the panel that lies behind the one
 * drilled through, in its edge or its broad face, as deep as the end of the screw reaches. A screw that reaches no panel
 * is a finding.
 */
export function withPilotHoles(unit: string, drilled: readonly DrilledPanel[], findings: Finding[]): Panel[] {
  const holes = drilled.map((): Hole[] => []);
  const edgeHoles = drilled.map((): EdgeHole[] => []);
  drilled.forEach(({ expanded, panel }, from) => {
    for (const hole of expanded.holes) {
      if (!isScrew(hole) || faceAxis[hole.from] !== panel.thicknessAxis) continue;
      const behind = panelBehind(hole, from, drilled);
      if (behind === null) {
        findings.push(nothingBehind(hole, panel, unit));
        continue;
      }
      const into = drilled[behind.index]!.panel;
      const axis = faceAxis[hole.from];
      if (axis === into.thicknessAxis) holes[behind.index]!.push(inFace(hole, into, behind.depthUm));
      else edgeHoles[behind.index]!.push(inEdge(hole, into, behind.depthUm));
    }
  });
  return drilled.map(({ panel }, index) => {
    const [own, inEdges] = [holes[index]!, edgeHoles[index]!];
    if (own.length === 0 && inEdges.length === 0) return panel;
    const all = own.length === 0 ? panel.holes : [...panel.holes, ...own];
    return { ...panel, holes: all, ...(inEdges.length === 0 ? {} : { edgeHoles: inEdges }) };
  });
}

function isScrew(hole: ExpandedHole): hole is Screw {
  return hole.screw !== undefined;
}

/** Whether the screw goes from the low to the high end of its axis. */
function goesUp(hole: ExpandedHole): boolean {
  return axisFaces[faceAxis[hole.from]][0] === hole.from;
}

/** The nearest panel that the screw enters after the one it holds; none beyond its end. */
function panelBehind(hole: Screw, from: number, drilled: readonly DrilledPanel[]): Behind | null {
  const axis = faceAxis[hole.from];
  const own = drilled[from]!.panel.box[axis];
  const entryUm = goesUp(hole) ? own[0] : own[1];
  /** How far from its head the screw enters and would leave a box. */
  const wayThrough = ({ [axis]: [low, high] }: Box) =>
    goesUp(hole) ? [low - entryUm, high - entryUm] : [entryUm - high, entryUm - low];
  let nearest: (Behind & { readonly entersUm: Um }) | null = null;
  drilled.forEach(({ panel: { box } }, index) => {
    if (index === from || !isOverBox(hole, box, axis)) return;
    const [entersUm, leavesUm] = wayThrough(box) as [Um, Um];
    // One that is let in from behind begins within the panel held; one in front of it is held by another screw.
    if (entersUm <= 0 || leavesUm <= extentSize(own) || entersUm >= hole.screw.lengthUm) return;
    if (nearest !== null && nearest.entersUm <= entersUm) return;
    nearest = { index, entersUm, depthUm: hole.screw.lengthUm - entersUm };
  });
  return nearest;
}

/** Whether the line of the screw runs through a box, seen along it. */
function isOverBox(hole: ExpandedHole, box: Box, axis: Axis): boolean {
  return axes.every((across) => {
    if (across === axis) return true;
    const at = hole[across];
    return at !== null && at > box[across][0] && at < box[across][1];
  });
}

function inFace(hole: Screw, into: Panel, reachUm: Um): Hole {
  const depthUm = reachUm < into.thicknessUm ? Math.min(reachUm, into.thicknessUm - LEAST_FLOOR_UM) : reachUm;
  return {
    name: hole.name,
    alongLengthUm: hole[into.lengthAxis]! - into.box[into.lengthAxis][0],
    alongWidthUm: hole[into.widthAxis]! - into.box[into.widthAxis][0],
    diameterUm: hole.screw.intoUm,
    depthUm,
    face: hole.from,
    place: hole.place,
  };
}

function inEdge(hole: Screw, into: Panel, depthUm: Um): EdgeHole {
  const along = faceAxis[hole.from] === into.lengthAxis ? into.widthAxis : into.lengthAxis;
  return {
    name: hole.name,
    face: hole.from,
    alongUm: hole[along]! - into.box[along][0],
    acrossUm: hole[into.thicknessAxis]! - into.box[into.thicknessAxis][0],
    diameterUm: hole.screw.intoUm,
    depthUm,
    place: hole.place,
  };
}

function nothingBehind(hole: Screw, panel: Panel, unit: string): Finding {
  return {
    code: 'screw-holds-nothing',
    severity: 'warning',
    message: `the screw “${hole.name}” of the ${panel.name} of ${unit} reaches no panel behind it`,
    place: hole.place,
    found: `${printMm(hole.screw.lengthUm)} mm long, from the ${hole.from}`,
    advice: 'move it over a panel, or drill a plain hole where it goes into something else',
  };
}
