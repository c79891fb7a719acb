import { describe, expect, it } from 'vitest';
import { viewHoles } from '../../src/drawing/drawnHoles.ts';
import { bodyOf, FROM_ABOVE, FROM_FRONT, FROM_LEFT, type Look } from '../../src/drawing/unitProjection.ts';
import { alone, demoLibrary, demoOrder } from '../helpers/demoVan.ts';
import { type PanelText, unit, withUnits } from '../helpers/handBuilt.ts';

const library = demoLibrary();
const order = demoOrder(library);
const t = 'thickness.carcass';

/** A shelf of 400 × 300 on a wall that stands under its left end, with what holes the test gives them. */
function holesOf(holes: Record<string, PanelText['holes']>, look: Look) {
  const test = unit('test', [400, 300, 500], {
    shelf: { x: [0, 400], y: [0, 300], z: [`500 - ${t}`, 500], grain: 'x', holes: holes['shelf'] ?? {} },
    wall: { x: [0, t], y: [0, 300], z: [0, `500 - ${t}`], grain: 'z', holes: holes['wall'] ?? {} },
    floor: { x: [t, 400], y: [0, 300], z: [0, t], grain: 'x', holes: holes['floor'] ?? {} },
  });
  const panels = alone('test', {}, withUnits(library, test), order).unit!.panels;
  return viewHoles(panels, panels.map(bodyOf), look);
}

describe('holes in views', () => {
  it('are seen from the side that the drill comes from, and from both when they go through', () => {
    const at = { y: 100, z: 200 };
    const bore = [5, 10] as const;
    const from = (face: 'left' | 'right', depth: number | 'through') =>
      holesOf({ wall: { hole: { at, from: face, bore: [bore[0], depth] } } }, FROM_LEFT);
    // Seen from the left the front is on the right.
    expect(from('left', 10)).toEqual([{ u: -100_000, v: 200_000, diameterUm: 5000, seen: true }]);
    expect(from('right', 10)).toMatchObject([{ seen: false }]);
    expect(from('right', 'through')).toMatchObject([{ seen: true }]);
  });

  it('are hidden behind other panels, and told once where they lie over each other', () => {
    const hole = { at: { x: 200, y: 100 }, from: 'top', bore: [5, 'through'] } as const;
    expect(holesOf({ floor: { hole } }, FROM_ABOVE)).toMatchObject([{ seen: false }]);
    expect(holesOf({ floor: { hole }, shelf: { hole } }, FROM_ABOVE)).toMatchObject([{ seen: true }]);
  });

  it('are left out where the view does not look into them', () => {
    const hole = { at: { x: 200, y: 100 }, from: 'top', bore: [5, 10] } as const;
    expect(holesOf({ shelf: { hole } }, FROM_FRONT)).toEqual([]);
  });
});
