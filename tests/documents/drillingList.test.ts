import { describe, expect, it } from 'vitest';
import { drillingList } from '../../src/documents/drillingList.ts';
import { csvFromTable } from '../../src/documents/table.ts';
import type { Axis, Box, Face } from '../../src/model/geometry.ts';
import { demoPlan } from '../helpers/demoPlan.ts';
import { readCsv } from '../helpers/readCsv.ts';

const axisOf: Record<Face, Axis> = { left: 'x', right: 'x', front: 'y', back: 'y', bottom: 'z', top: 'z' };
const low = new Set<Face>(['left', 'front', 'bottom']);

/** Where a distance from an edge ends, in the unit's frame. */
function measured(box: Box, edge: Face, mm: number): readonly [Axis, number] {
  const axis = axisOf[edge];
  const um = Math.round(mm * 1000);
  return [axis, low.has(edge) ? box[axis][0] + um : box[axis][1] - um];
}

describe.each(['demo-long', 'demo-short'] as const)('the drilling list of %s', (name) => {
  const { plan, ordered } = demoPlan(name);
  const rows = readCsv(csvFromTable(drillingList(plan, ordered.furniture, ordered.library)));

  it('has every hole once, and measured from its edges it lies where the unit has it', () => {
    let line = 0;
    let inEdges = 0;
    const panels = new Map(
      ordered.furniture.units.flatMap((unit) => unit.panels.map((panel) => [panel.id, panel] as const)),
    );
    for (const group of plan.groups) {
      for (const { id } of group.panels) {
        const panel = panels.get(id)!;
        for (const hole of panel.holes) {
          const row = rows[line++]!;
          expect([row['id'], row['hole'], row['drilled from']]).toEqual([id, hole.name, hole.face]);
          const along = measured(panel.box, row['left edge'] as Face, Number(row['from left']));
          const across = measured(panel.box, row['near edge'] as Face, Number(row['from near']));
          expect(along).toEqual([panel.lengthAxis, panel.box[panel.lengthAxis][0] + hole.alongLengthUm]);
          expect(across).toEqual([panel.widthAxis, panel.box[panel.widthAxis][0] + hole.alongWidthUm]);
          expect(Number(row['diameter']) * 1000).toBe(hole.diameterUm);
          expect(row['depth'] === '' ? null : Number(row['depth']) * 1000).toBe(hole.depthUm);
          expect(row['below face up']).toBe('');
        }
        for (const hole of panel.edgeHoles ?? []) {
          const row = rows[line++]!;
          expect([row['id'], row['hole'], row['drilled from']]).toEqual([id, hole.name, hole.face]);
          const [lengthAxis, along] = measured(panel.box, row['left edge'] as Face, Number(row['from left']));
          const [widthAxis, across] = measured(panel.box, row['near edge'] as Face, Number(row['from near']));
          const below = measured(panel.box, row['face up'] as Face, Number(row['below face up']));
          const at = { [lengthAxis]: along, [widthAxis]: across, [below[0]]: below[1] };
          const axis = axisOf[hole.face];
          const other = axis === panel.lengthAxis ? panel.widthAxis : panel.lengthAxis;
          expect(at[axis]).toBe(panel.box[axis][low.has(hole.face) ? 0 : 1]);
          expect(at[other]).toBe(panel.box[other][0] + hole.alongUm);
          expect(at[panel.thicknessAxis]).toBe(panel.box[panel.thicknessAxis][0] + hole.acrossUm);
          expect([row['diameter'], row['depth']].map((text) => Number(text) * 1000)).toEqual([
            hole.diameterUm,
            hole.depthUm,
          ]);
          inEdges++;
        }
      }
    }
    expect(rows).toHaveLength(line);
    expect(inEdges).toBeGreaterThan(60);
  });

  it('lays no panel upside down: left edge, near edge and the face up turn as a right hand does', () => {
    // Towards a face is from its opposite. Right, away and up must be right-handed in the unit's right-handed frame.
    const direction = (face: Face, way: 1 | -1) => {
      const vector = { x: 0, y: 0, z: 0 };
      vector[axisOf[face]] = (low.has(face) ? -1 : 1) * way;
      return [vector.x, vector.y, vector.z] as const;
    };
    for (const row of rows) {
      const a = direction(row['left edge'] as Face, -1);
      const b = direction(row['near edge'] as Face, -1);
      const up = direction(row['face up'] as Face, 1);
      const cross = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
      expect(cross.map((part) => part + 0)).toEqual(up.map((part) => part + 0));
    }
  });
});
