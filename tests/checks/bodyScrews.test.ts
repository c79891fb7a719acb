import { describe, expect, it } from 'vitest';
import { sharedBox } from '../../src/basics/boxes.ts';
import type { Panel, PlacedUnit } from '../../src/model/furniture.ts';
import type { Box } from '../../src/model/geometry.ts';
import { alone, demoFiles, demoLibrary, demoOrder, furnish } from '../helpers/demoVan.ts';

const library = demoLibrary();
const orders = [...demoFiles().keys()].flatMap((path) => /orders\/([^/]+)\.yaml$/.exec(path)?.[1] ?? []);
/** A head with its washer, and as far before the hole as a bit needs at least. */
const [HEAD_UM, BIT_UM] = [16_000, 30_000];

/** Where the screwdriver is before a hole, in the unit's frame. */
function beforeHole({ box, lengthAxis, widthAxis, thicknessAxis }: Panel, hole: Panel['holes'][number]): Box {
  const high = ['right', 'back', 'top'].includes(hole.face);
  const face = box[thicknessAxis][high ? 1 : 0];
  const around = (middle: number) => [middle - HEAD_UM / 2, middle + HEAD_UM / 2] as const;
  return {
    ...box,
    [thicknessAxis]: high ? [face, face + BIT_UM] : [face - BIT_UM, face],
    [lengthAxis]: around(box[lengthAxis][0] + hole.alongLengthUm),
    [widthAxis]: around(box[widthAxis][0] + hole.alongWidthUm),
  };
}

function bodyScrews(unit: PlacedUnit) {
  return unit.panels.flatMap((panel) =>
    panel.holes.filter(({ name }) => name.startsWith('body screw')).map((hole) => ({ panel, hole })),
  );
}

/** Holes for screws into the body, which go in last, that another panel of the unit covers. */
function covered(unit: PlacedUnit): string[] {
  return bodyScrews(unit).flatMap(({ panel, hole }) => {
    const before = beforeHole(panel, hole);
    return unit.panels
      .filter((other) => other !== panel && sharedBox(before, other.box) !== null)
      .map((other) => `${unit.name}, ${panel.name} at ${hole.alongLengthUm / 1000}: ${other.name}`);
  });
}

describe('holes for screws into the body', () => {
  it.each(orders)('are open to the screwdriver in %s', (name) => {
    const { furniture } = furnish(demoOrder(library, name), library);
    expect(furniture!.units.flatMap(covered)).toEqual([]);
  });

  it.each([
    [0, { width: 1750, arch_from: 600 }],
    [1, { width: 1850, arch_from: 400 }],
    [2, { width: 2000, arch_from: 330, arch_width: 500 }],
  ])('are open in a single bed with %i ribs in its right bay', (ribs, set) => {
    const { unit } = alone('single-bed', set, library, demoOrder(library));
    expect(unit!.panels.filter(({ baseName }) => baseName === 'right rib')).toHaveLength(ribs);
    expect(bodyScrews(unit!)).toHaveLength(9);
    expect(covered(unit!)).toEqual([]);
  });
});
