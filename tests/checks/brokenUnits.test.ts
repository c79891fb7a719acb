import { describe, expect, it } from 'vitest';
import type { UnitDefinition } from '../../src/model/library.ts';
import { alone, demoLibrary, demoOrder, furnish, messages } from '../helpers/demoVan.ts';
import { type PanelText, unit, withUnits } from '../helpers/handBuilt.ts';

const library = demoLibrary();
const order = demoOrder(library);
const t = 'thickness.carcass';

/** Two sides and a bottom: 16.2 mm board, 400 wide, 300 deep, 500 high. */
const box: Record<string, PanelText> = {
  'left side': { x: [0, t], y: [0, 300], z: [0, 500], grain: 'z' },
  'right side': { x: [`400 - ${t}`, 400], y: [0, 300], z: [0, 500], grain: 'z' },
  bottom: { x: [t, `400 - ${t}`], y: [0, 300], z: [0, t], grain: 'x' },
};

function sentences(panels: Record<string, PanelText>, more: Partial<UnitDefinition> = {}): string[] {
  const test = unit('test', [400, 300, 500], panels, more);
  const { findings } = alone('test', {}, withUnits(library, test), order);
  return messages(findings.filter((finding) => finding.severity === 'error'));
}

describe('the assembly check', () => {
  it('finds nothing wrong with a sound box', () => {
    expect(sentences(box)).toEqual([]);
  });

  it('tells how far one panel goes into another', () => {
    const shelf = {
      x: [`${t} - 4`, `400 - ${t}`],
      y: [0, 300],
      z: ['i * 150', `i * 150 + ${t}`],
      grain: 'x',
      repeat: ['i', 2],
    } as const;
    expect(sentences({ ...box, shelf })).toEqual([
      'shelf 1 of the unit goes 4.0 mm into the left side',
      'shelf 2 of the unit goes 4.0 mm into the left side',
    ]);
  });

  const back = (depth: number, reach: number): Record<string, PanelText> => ({
    ...box,
    back: {
      role: 'back',
      x: [`${t} - ${reach}`, `400 - ${t} + ${reach}`],
      y: [290, 294],
      z: [t, 500],
      letInto: { 'left side': depth, 'right side': depth },
    },
  });

  it('lets a panel into another as deep as it says', () => {
    expect(sentences(back(6, 6))).toEqual([]);
  });

  it('finds a housing deeper than it says', () => {
    expect(sentences(back(6, 7))).toEqual([
      'the back of the unit goes 7.0 mm into the left side; it is let in by 6.0 mm',
      'the back of the unit goes 7.0 mm into the right side; it is let in by 6.0 mm',
    ]);
  });

  it('finds a housing that is not reached', () => {
    expect(sentences(back(6, 5))).toEqual([
      'the back of the unit is to be let 6.0 mm into the left side, but reaches 5.0 mm into it',
      'the back of the unit is to be let 6.0 mm into the right side, but reaches 5.0 mm into it',
    ]);
    expect(sentences(back(6, 0))[0]).toBe(
      'the back of the unit is to be let 6.0 mm into the left side, but reaches 0.0 mm into it',
    );
  });

  it('takes a panel right through another for a clash, housing or not', () => {
    const through = {
      ...box,
      rod: { role: 'drawer', x: [0, 400], y: [100, 112], z: [200, 260], letInto: { 'left side': 16.2 } },
    } as const;
    expect(sentences(through)).toEqual([
      'the rod of the unit goes 16.2 mm into the left side; it is let in by 16.2 mm',
      'the rod of the unit goes 16.2 mm into the right side',
    ]);
  });

  it('does not take a meeting of edges for a joint', () => {
    const shelf: PanelText = { x: [t, `400 - ${t}`], y: [300, 500], z: [500, `500 + ${t}`], grain: 'x' };
    const found = sentences({ ...box, shelf });
    expect(found).toContain('the shelf of the unit touches no other panel, and nothing holds it');
  });

  it('finds a panel that floats, and two that only hold each other', () => {
    const shelf: PanelText = { x: ['30', '370'], y: [0, 280], z: [200, `200 + ${t}`], grain: 'x' };
    const lip: PanelText = { x: ['30', '370'], y: [280, `280 + ${t}`], z: [200, 260], grain: 'x' };
    expect(sentences({ ...box, shelf })).toEqual([
      'the shelf of the unit touches no other panel, and nothing holds it',
    ]);
    expect(sentences({ ...box, shelf, lip })).toEqual([
      'the shelf, the lip of the unit touch no other panel, and nothing holds them',
    ]);
  });

  const door = (gap: number, bridged: number): Record<string, PanelText> => ({
    'left side': { ...box['left side']!, y: [`16.2 + ${gap}`, 300] },
    'right side': { ...box['right side']!, y: [`16.2 + ${gap}`, 300] },
    bottom: { ...box['bottom']!, y: [`16.2 + ${gap}`, 300] },
    door: {
      role: 'front',
      x: [2, 398],
      y: [0, 16.2],
      z: [2, 498],
      grain: 'z',
      heldBy: { 'left side': bridged },
    },
  });

  it('holds a door by its hinges across the gap they bridge, and no other', () => {
    expect(sentences(door(1, 1))).toEqual([]);
    expect(sentences(door(0, 1))).toEqual([
      'the door of the unit is held by the left side across 1.0 mm, but stands 0.0 mm away',
    ]);
    expect(sentences(door(12, 1))).toEqual([
      'the door of the unit is held by the left side across 1.0 mm, but stands 12.0 mm away',
      'the door of the unit touches no other panel, and nothing holds it',
    ]);
  });

  it('wants a held panel to stand in front of what holds it', () => {
    const aside: Record<string, PanelText> = {
      ...box,
      door: { role: 'front', x: [30, 60], y: [310, 326.2], z: [510, 600], heldBy: { bottom: 50 } },
    };
    expect(sentences(aside)[0]).toBe(
      'the door of the unit is held by the bottom across 50.0 mm, but does not stand in front of it',
    );
  });

  it('does not count what an opening takes away as touching', () => {
    const lid = (name: string, at: number): Record<string, PanelText> => ({
      [name]: { role: 'front', x: [100, 200], y: ['100', '116.2'], z: [at, 400], grain: 'x' },
    });
    const withHole: Record<string, PanelText> = {
      ...box,
      bottom: { ...box['bottom']!, cutOuts: { hole: { x: [90, 210], y: [90, 130] } } },
    };
    expect(sentences({ ...withHole, ...lid('post', 16.2) })).toEqual([
      'the post of the unit touches no other panel, and nothing holds it',
    ]);
    expect(sentences({ ...box, ...lid('post', 16.2) })).toEqual([]);
    // Down through the opening it goes through the board without going into it.
    expect(sentences({ ...withHole, ...lid('post', 5) })).toEqual([
      'the post of the unit touches no other panel, and nothing holds it',
    ]);
    expect(sentences({ ...box, ...lid('post', 5) })).toEqual([
      'the post of the unit goes 11.2 mm into the bottom',
    ]);
  });

  it('holds the outside box against what the panels reach', () => {
    const wide = unit('test', [410, 290, 500], box);
    const { findings } = alone('test', {}, withUnits(library, wide), order);
    expect(messages(findings.filter(({ severity }) => severity === 'error'))).toEqual([
      'the panels of the unit end 10.0 mm short of the right of its outside box',
      "the left side of the unit stands 10.0 mm over the back of its unit's outside box",
    ]);
  });

  it('says when nothing is left of a unit', () => {
    expect(sentences({ shelf: { ...box['bottom']!, when: 'false' } })).toEqual(['the unit has no panels']);
  });

  it('finds parts that the saw cannot hold', () => {
    const strip: PanelText = { x: [t, `400 - ${t}`], y: [0, 40], z: [t, `2 * ${t}`], grain: 'x' };
    expect(sentences({ ...box, strip })).toEqual([
      'the strip of the unit is 40.0 mm wide as sawn; Sliding table saw holds nothing narrower than 50.0 mm',
    ]);
  });
});

describe('the demonstration library, broken on purpose', () => {
  it.each<[string, string, string, string]>([
    [
      'base-cupboard',
      'x: [board + shelf_play, width - board - shelf_play]',
      'x: [board - 4, width - board - shelf_play]',
      'shelf 1 of the base cupboard goes 4.0 mm into the left side',
    ],
    [
      'drawer-cupboard',
      'set: { width: inside - 2 * runner,',
      'set: { width: inside - runner,',
      'drawer 1 left of the galley drawers is held by the right side across 13.0 mm, but stands 0.0 mm away',
    ],
    [
      'drawer-cupboard',
      'at: { x: board + runner,',
      'at: { x: board + runner + 2,',
      'drawer 1 left of the galley drawers is held by the left side across 13.0 mm, but stands 15.0 mm away',
    ],
    [
      'wardrobe',
      'z: [split + 1.5, height - 1.5]',
      'z: [split - 6, height - 1.5]',
      'the lift-up front of the wardrobe goes 4.5 mm into the door',
    ],
    [
      'bed-base',
      'arch: { default: 220',
      'arch: { default: 195',
      'the left wall of the bed base goes 5.0 mm into the wheel arch right',
    ],
  ])('%s with %s', (id, before, after, sentence) => {
    const broken = demoLibrary([`units/${id}.yaml`, before, after]);
    const { findings } = furnish(demoOrder(broken), broken);
    expect(messages(findings)).toContain(sentence);
  });
});
