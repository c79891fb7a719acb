import { describe, expect, it } from 'vitest';
import { type BenchPanel, panelOnBench } from '../../src/basics/panelOnBench.ts';
import type { Panel } from '../../src/model/furniture.ts';
import { alone, demoFiles, demoLibrary, demoOrder, demoRoot, furnish } from '../helpers/demoVan.ts';

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

const orders = [...demoFiles().keys()]
  .filter((path) => path.startsWith(`${demoRoot}/orders/`))
  .map((path) => path.slice(`${demoRoot}/orders/`.length, -'.yaml'.length));

/** Whether a place on an edge, so far from the zero corner, is on the outline and not on what is scribed. */
function hasEdgeAt({ outline, scribing }: BenchPanel, side: 'left' | 'near', atUm: number): boolean {
  const flat = outline.map(({ leftUm, nearUm }) => (side === 'left' ? [leftUm, nearUm] : [nearUm, leftUm]));
  const covered = flat.some(([away, along], index) => {
    const [awayBefore, alongBefore] = flat.at(index - 1)!;
    if (away !== 0 || awayBefore !== 0) return false;
    return Math.min(along!, alongBefore!) <= atUm && atUm <= Math.max(along!, alongBefore!);
  });
  return covered && scribing[side] === 0;
}

describe.each(orders)('the zero corner of each panel of %s', (name) => {
  const { furniture } = furnish(demoOrder(library, name), library);
  const laid = furniture!.units.flatMap((unit) =>
    unit.panels.map((panel) => ({ panel, bench: panelOnBench(panel, unit.panels, library.edgings) })),
  );

  it('has both edges there, across from each hole, groove and opening', () => {
    for (const { panel, bench } of laid) {
      const rects = [...bench.grooves, ...bench.cutOuts];
      const points = [...bench.holes, ...bench.edgeHoles];
      const places = {
        left: [0, ...points.map(({ nearUm }) => nearUm), ...rects.flatMap(({ near }) => near)],
        near: [0, ...points.map(({ leftUm }) => leftUm), ...rects.flatMap(({ left }) => left)],
      };
      for (const side of ['left', 'near'] as const) {
        const gone = places[side].filter((atUm) => !hasEdgeAt(bench, side, atUm));
        expect(gone, `${panel.id}, ${side}`).toEqual([]);
      }
      expect(bench.marksFromSawn, panel.id).toEqual({ left: null, near: null });
    }
  });
});

describe('a panel along the wall', () => {
  const wardrobe = () => {
    const { furniture } = furnish(demoOrder(library, 'demo-short'), library);
    return furniture!.units.find(({ name }) => name === 'wardrobe')!.panels;
  };
  const laid = (name: string, changed: Partial<Panel> = {}) => {
    const panels = wardrobe();
    const panel = panels.find((one) => one.name === name)!;
    return panelOnBench({ ...panel, ...changed }, panels, library.edgings);
  };

  it('is measured from its front and top where its back would lie near', () => {
    const side = laid('left side');
    expect(side.faceUp).toBe('right');
    expect(side.sides).toEqual({ left: 'top', right: 'bottom', near: 'front', far: 'back' });
    expect(side.edging.near).not.toBeNull();
    expect(side.scribing).toEqual({ left: 0, right: 0, near: 0, far: 15_000 });
    // Sawn smaller by the edging in front and larger by what is left on along the back.
    expect(side.sawn).toEqual({ left: [0, 1_750_000], near: [1000, 647_800] });
    expect(side.outline[0]).toEqual({ leftUm: 0, nearUm: 0 });
    expect(side.sawnOutline![0]).toEqual({ leftUm: 0, nearUm: 1000 });
  });

  it('is turned, not mirrored: outlines run counter-clockwise and grooves stay towards the wall', () => {
    const side = laid('left side');
    for (const ring of [side.outline, side.sawnOutline!]) {
      const twice = ring.reduce((sum, to, index) => {
        const from = ring.at(index - 1)!;
        return sum + from.leftUm * to.nearUm - to.leftUm * from.nearUm;
      }, 0);
      expect(twice).toBeGreaterThan(0);
    }
    // The rear edge of the back stands 112 mm before the furthest point of the wall, as it does in the other side.
    expect(side.grooves.map(({ near }) => near)).toEqual([[516_800, 520_800]]);
    expect(laid('right side').grooves.map(({ near }) => near)).toEqual([[516_800, 520_800]]);
  });

  it('has holes where the other side has them, counted from the other end', () => {
    const [left, right] = [laid('left side'), laid('right side')];
    const screws = (panel: BenchPanel) => panel.holes.filter(({ name }) => /^top screw/.test(name));
    expect(screws(left).map(({ nearUm }) => nearUm)).toEqual(screws(right).map(({ nearUm }) => nearUm));
    const fromTop = screws(right).map(({ leftUm }) => right.lengthUm - leftUm);
    expect(screws(left).map(({ leftUm }) => leftUm)).toEqual(fromTop);
  });

  it('is said to be marked out before it is cut where the wall shapes both ends', () => {
    const corner = (alongLengthUm: number, alongWidthUm: number) => ({ alongLengthUm, alongWidthUm });
    const { lengthUm, widthUm } = laid('door');
    const both = laid('door', {
      outline: [
        corner(0, 20_000),
        corner(lengthUm, 0),
        corner(lengthUm, widthUm),
        corner(0, widthUm - 30_000),
      ],
      scribed: [
        { face: 'left', allowanceUm: 10_000 },
        { face: 'right', allowanceUm: 12_000 },
      ],
    });
    // All edges have 1 mm of edging, and the near one is the left or right of the unit.
    const left = both.sides.near === 'left' ? 10_000 : 12_000;
    expect(both.marksFromSawn).toEqual({ left: null, near: left - 1000 });
  });
});
