import { axes, axisFaces, boxAround } from '../basics/boxes.ts';
import { facing, type Joint, jointOf } from '../basics/joints.ts';
import type { Finding } from '../model/finding.ts';
import type { Hanging, Panel, PlacedUnit } from '../model/furniture.ts';
import type { Face } from '../model/geometry.ts';
import { mm, panelFinding, panelOfUnit, panelPhrase, unitFinding } from './names.ts';

/**
 * Whether a unit can be put together as it is drawn: no two panels through each other except in a declared housing, every
 * panel touching, let into or held by another, all of them one piece, and the outside box filled to each of its sides.
 */
export function checkAssembly(unit: PlacedUnit): Finding[] {
  const findings: Finding[] = [];
  const joined = new Pieces(unit.panels.map((panel) => panel.id));
  for (const [index, a] of unit.panels.entries()) {
    for (const b of unit.panels.slice(index + 1)) {
      const joint = jointOf(a, b);
      findings.push(...jointFindings(joint));
      if (joint.kind !== 'apart' && joint.kind !== 'through opening') joined.join(a.id, b.id);
    }
  }
  findings.push(...unit.panels.flatMap((panel) => housingFindings(panel, unit)));
  for (const hanging of unit.hangings ?? []) findings.push(...hang(hanging, unit, joined));
  findings.push(...looseFindings(unit, joined), ...outsideFindings(unit));
  return findings;
}

function jointFindings(joint: Joint): Finding[] {
  if (joint.kind !== 'clash') return [];
  const { inner, outer, depthUm } = joint;
  const housing = inner.housings.find(({ into }) => into === outer.id);
  const declared = housing === undefined ? '' : `; it is let in by ${mm(housing.depthUm)}`;
  const message = `${panelOfUnit(inner)} goes ${mm(depthUm)} into ${panelPhrase(outer)}${declared}`;
  return [
    panelFinding(
      'panels-clash',
      inner,
      message,
      housing === undefined ? 'shorten one of them, or declare the housing with `let into`' : undefined,
    ),
  ];
}

/** A housing that is declared must be there, as deep as it says. */
function housingFindings(panel: Panel, unit: PlacedUnit): Finding[] {
  return panel.housings.flatMap(({ into, depthUm }) => {
    const outer = unit.panels.find((other) => other.id === into);
    if (outer === undefined) return [];
    const joint = jointOf(panel, outer);
    const reached = joint.kind === 'let in' && joint.inner === panel ? joint.depthUm : 0;
    if (joint.kind === 'clash' || reached === depthUm) return [];
    const message = `${panelOfUnit(panel)} is to be let ${mm(depthUm)} into ${panelPhrase(outer)}, but reaches ${mm(reached)} into it`;
    return [panelFinding('housing-not-reached', panel, message, 'lengthen it, or correct the depth')];
  });
}

function hang(hanging: Hanging, unit: PlacedUnit, joined: Pieces): Finding[] {
  const panels = (ids: readonly string[]) => unit.panels.filter((panel) => ids.includes(panel.id));
  const held = panels(hanging.panels);
  let least = Number.POSITIVE_INFINITY;
  let bridged = false;
  for (const panel of held) {
    for (const on of panels(hanging.on)) {
      const gapUm = facing(panel.box, on.box)?.gapUm ?? Number.POSITIVE_INFINITY;
      least = Math.min(least, gapUm);
      if (gapUm !== hanging.gapUm) continue;
      bridged = true;
      joined.join(panel.id, on.id);
    }
  }
  if (bridged || held.length === 0) return [];
  const first = held[0]!;
  const on = panelPhrase(panels(hanging.on)[0]!);
  const stands = Number.isFinite(least) ? `stands ${mm(least)} away` : 'does not stand in front of it';
  const message = `${panelOfUnit(first)} is held by ${on} across ${mm(hanging.gapUm)}, but ${stands}`;
  return [{ code: 'not-held', severity: 'error', message, place: hanging.place }];
}

function looseFindings(unit: PlacedUnit, joined: Pieces): Finding[] {
  if (unit.panels.length === 0) {
    return [
      unitFinding(
        'no-panels',
        unit,
        `the ${unit.name} has no panels`,
        'leave it out, or check its conditions',
      ),
    ];
  }
  const pieces = joined.all();
  if (pieces.length < 2) return [];
  const main = pieces.reduce((most, piece) => (piece.length > most.length ? piece : most));
  return pieces
    .filter((piece) => piece !== main)
    .map((piece) => {
      const panels = unit.panels.filter((panel) => piece.includes(panel.id));
      const first = panels[0]!;
      const message =
        panels.length === 1
          ? `${panelOfUnit(first)} touches no other panel, and nothing holds it`
          : `${panels.map(panelPhrase).join(', ')} of the ${unit.name} touch no other panel, and nothing holds them`;
      return panelFinding(
        'panel-loose',
        first,
        message,
        'move it against another panel, or declare `held by`',
      );
    });
}

function outsideFindings(unit: PlacedUnit): Finding[] {
  const around = boxAround(unit.panels.map((panel) => panel.box));
  if (around === null) return [];
  return axes.flatMap((axis) =>
    ([0, 1] as const).flatMap((end): Finding[] => {
      const outward = end === 0 ? -1 : 1;
      const overUm = outward * (around[axis][end] - unit.outside[axis][end]);
      const side = axisFaces[axis][end];
      // A side that follows the wall ends where the wall is.
      if (overUm === 0 || (overUm < 0 && followsWall(unit, side))) return [];
      if (overUm < 0) {
        const message = `the panels of the ${unit.name} end ${mm(-overUm)} short of the ${side} of its outside box`;
        return [unitFinding('outside-not-filled', unit, message)];
      }
      const panel = unit.panels.find((candidate) => candidate.box[axis][end] === around[axis][end])!;
      const message = `${panelOfUnit(panel)} stands ${mm(overUm)} over the ${side} of its unit's outside box`;
      return [panelFinding('panel-outside', panel, message)];
    }),
  );
}

function followsWall(unit: PlacedUnit, side: Face): boolean {
  return unit.panels.some((panel) => panel.scribed?.some(({ face }) => face === side));
}

/** Which panels hang together. */
class Pieces {
  private readonly leader = new Map<string, string>();

  constructor(ids: readonly string[]) {
    for (const id of ids) this.leader.set(id, id);
  }

  join(a: string, b: string): void {
    this.leader.set(this.find(a), this.find(b));
  }

  all(): string[][] {
    const pieces = new Map<string, string[]>();
    for (const id of this.leader.keys()) {
      const leader = this.find(id);
      pieces.set(leader, [...(pieces.get(leader) ?? []), id]);
    }
    return [...pieces.values()];
  }

  private find(id: string): string {
    let at = id;
    while (this.leader.get(at) !== at) at = this.leader.get(at)!;
    return at;
  }
}
