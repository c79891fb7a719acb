import { describe, expect, it } from 'vitest';
import { panelOnBench } from '../../src/basics/panelOnBench.ts';
import { alone, demoLibrary, demoOrder } from '../helpers/demoVan.ts';

const library = demoLibrary();
const order = demoOrder(library);

/** A panel of a unit with its defaults, away from any wall that would shape it. */
function onBench(unit: string, name: string) {
  const panels = alone(unit, {}, library, order).unit!.panels;
  const panel = panels.find((one) => one.name === name);
  if (panel === undefined) throw new Error(`${unit} has no ${name}`);
  return panelOnBench(panel, panels, library.edgings);
}

describe('a panel on the bench', () => {
  it('lies with the face up that is drilled most, its unit’s own edges named', () => {
    // The length runs up. With the inside, its right face, up and the foot on the left, the front of a left side is far:
    // seen from the right its front is on the left when it stands; laid to the right by a quarter it comes to lie far.
    const side = onBench('wardrobe', 'left side');
    expect(side.faceUp).toBe('right');
    expect(side.sides).toEqual({ left: 'bottom', right: 'top', near: 'back', far: 'front' });
    expect(side.edging).toMatchObject({ left: null, right: null, near: null });
    expect(side.edging.far).not.toBeNull();
  });

  it('mirrors nothing: the two sides of a cupboard are each other’s mirror images on the bench', () => {
    const left = onBench('sink-cupboard', 'left side');
    const right = onBench('sink-cupboard', 'right side');
    expect(right.faceUp).toBe('left');
    expect(right.sides).toEqual({ left: 'bottom', right: 'top', near: 'front', far: 'back' });
    const mirrored = left.holes.map((hole) => ({ ...hole, nearUm: left.widthUm - hole.nearUm, face: '' }));
    expect(right.holes.map((hole) => ({ ...hole, face: '' }))).toEqual(mirrored);
    expect(right.holes.some((hole) => hole.goes === 'in from above')).toBe(true);
    expect(right.holes.every((hole) => hole.goes !== 'in from below')).toBe(true);
  });

  it('has the sawn part inside by the edging that is deducted', () => {
    // All four edges have 1 mm.
    const door = onBench('wardrobe', 'door');
    expect(door.sawn.left).toEqual([1000, door.lengthUm - 1000]);
    expect(door.sawn.near).toEqual([1000, door.widthUm - 1000]);
    const side = onBench('wardrobe', 'left side');
    expect(side.sawn).toEqual({ left: [0, side.lengthUm], near: [0, side.widthUm - 1000] });
  });

  it('shows grooves for what is let in', () => {
    const side = onBench('wardrobe', 'left side');
    // The back stands 12 mm in from the rear edge, is 4 mm thick and let in by 6 mm.
    expect(side.grooves).toMatchObject([
      { holds: 'back', depthUm: 6000, face: 'right', goes: 'in from above', near: [12_000, 16_000] },
    ]);
  });

  it('gives a rectangle counter-clockwise from its near left corner', () => {
    for (const name of ['left side', 'right side', 'door']) {
      const { outline, lengthUm, widthUm } = onBench('wardrobe', name);
      expect(outline.map(({ leftUm, nearUm }) => [leftUm, nearUm])).toEqual([
        [0, 0],
        [lengthUm, 0],
        [lengthUm, widthUm],
        [0, widthUm],
      ]);
    }
  });
});
