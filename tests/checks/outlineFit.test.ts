import { describe, expect, it } from 'vitest';
import { checkFit } from '../../src/checks/fit.ts';
import { outlineThroughWalls } from '../../src/checks/outlineFit.ts';
import { demoLibrary, demoOrder, messages } from '../helpers/demoVan.ts';
import { type PanelText, unit, withUnits } from '../helpers/handBuilt.ts';
import { body, standing } from '../helpers/standing.ts';

const library = demoLibrary();
const side: PanelText = {
  x: [0, 16.2],
  y: [0, 500],
  z: [0, 1400],
  grain: 'z',
  followsWall: { back: 12 },
};

/** Straight to 1000, drawn in by 100 on each side at 1500. */
const made = body([
  [0, 1760],
  [1000, 1760],
  [1500, 1560],
]);
const furniture = standing(
  'test',
  {},
  {},
  'right',
  made,
  withUnits(library, unit('test', [16.2, 500, 1400], { side })),
  demoOrder(library),
).furniture!;
const placed = furniture.units[0]!;
const panel = placed.panels[0]!;

describe('a panel with an outline', () => {
  it('fits though its rectangle stands through the wall', () => {
    expect(checkFit(furniture, made)).toEqual([]);
    expect(outlineThroughWalls(panel, placed, made).leftUm).toBeLessThanOrEqual(0);
    const { outline: _outline, ...rectangle } = panel;
    const whole = { ...furniture, units: [{ ...placed, panels: [rectangle] }] };
    expect(messages(checkFit(whole, made))).toEqual([
      'the side of the unit stands 80.0 mm through the left wall, between 0 and 1400 mm above the floor',
    ]);
  });

  it('stands through a wall that is further in, at any height', () => {
    const narrower = body([
      [0, 1760],
      [1000, 1760],
      [1500, 1540],
    ]);
    // 400 / 500 of 10 mm at the top.
    expect(messages(checkFit(furniture, narrower))).toEqual([
      'the side of the unit stands 8.0 mm through the left wall, between 0 and 1400 mm above the floor',
    ]);
  });

  it('stands through a rib that lies between its corners', () => {
    const ribbed = body([
      [0, 1760],
      [690, 1760],
      [700, 1730],
      [710, 1760],
      [1000, 1760],
      [1500, 1560],
    ]);
    expect(messages(checkFit(furniture, ribbed))).toEqual([
      'the side of the unit stands 15.0 mm through the left wall, between 0 and 1400 mm above the floor',
    ]);
  });

  it('stands through the other wall when it reaches there', () => {
    expect(outlineThroughWalls(panel, placed, body([[0, 490]])).rightUm).toBe(10_000 - 2);
  });
});
