import { describe, expect, it } from 'vitest';
import type { Panel } from '../../src/model/furniture.ts';
import { alone, demoLibrary, demoOrder, messages } from '../helpers/demoVan.ts';

const library = demoLibrary();
const order = demoOrder(library);

type Values = Readonly<Record<string, string | number>>;

function built(unit: string, set: Values = {}) {
  const { findings, unit: placed } = alone(unit, set, library, order);
  expect(messages(findings.filter(({ severity }) => severity !== 'caution'))).toEqual([]);
  return placed!;
}

function refused(unit: string, set: Values, from = library): string {
  // Alone in its place a unit is on one side.
  const { findings } = alone(unit, set, from, order);
  return messages(findings.filter(({ severity }) => severity !== 'caution')).join('\n');
}

function panel(panels: readonly Panel[], name: string): Panel {
  return panels.find((each) => each.name === name)!;
}

describe('end-panel', () => {
  it('edges what shows, and is screwed with screws shorter than two boards', () => {
    const edged = (seen: string) =>
      built('end-panel', { seen })
        .panels[0]!.edges.filter(({ edging }) => edging !== null)
        .map(({ face }) => face)
        .sort();
    expect(edged('front')).toEqual(['front']);
    expect(edged('front-and-top')).toEqual(['front', 'top']);
    expect(edged('all-round')).toEqual(['back', 'bottom', 'front', 'top']);
    expect(built('end-panel').fittings).toEqual([
      expect.objectContaining({ fitting: 'panel-screw', count: 8 }),
    ]);
  });
});

describe('tall-cupboard', () => {
  it('hinges doors further apart than they are wide, and takes a third hinge for a high one', () => {
    const hinges = (set: Values) =>
      built('tall-cupboard', set).fittings.find(({ fitting }) => fitting === 'hinge')!.count;
    expect(hinges({ split: 900 })).toBe(4);
    expect(hinges({ split: 1000 })).toBe(5);
    expect(refused('tall-cupboard', { width: 600, split: 1250 })).toContain(
      'the upper door would be too low',
    );
  });

  it('lets a food can stand between its shelves', () => {
    expect(refused('tall-cupboard', { height: 1400, split: 900, upper_shelves: 4 })).toContain('no food can');
  });
});

describe('the fixed front of a cooker cupboard', () => {
  it.each([
    ['cooker-cupboard', {}],
    ['cooker-drawer-cupboard', { fuel: 'gas' }],
    ['cooker-drawer-cupboard', { fuel: 'spirit' }],
    ['cooker-drawer-cupboard', { fuel: 'electric' }],
  ])('of %s (%o) is held where no board keeps angles from it and the sides', (unit, set) => {
    const { panels, fittings } = built(unit, set);
    const [rail, shelf, front] = ['front rail', 'guard shelf', 'fixed front'].map(
      (name) => panel(panels, name).box,
    );
    // Both boards come up to the front from side to side, so only between them angles reach both.
    for (const board of [rail!, shelf!]) expect(board.y[0] - front!.y[1]).toBe(1000);
    expect(rail!.z[0] - shelf!.z[1]).toBeGreaterThan(60_000);
    const angles = fittings.find(({ fitting }) => fitting === 'front-angle')!;
    expect(angles.count).toBe(4);
    expect(angles.where).toContainEqual(
      expect.stringMatching(/just above the guard shelf and just below the front rail/),
    );
  });
});

describe('seat-box', () => {
  it('is one lid to 700 mm, and two lids over a wall from there', () => {
    const panels = (width: number) => built('seat-box', { width }).panels.map(({ name }) => name);
    expect(panels(700).filter((name) => name.startsWith('lid'))).toHaveLength(1);
    expect(panels(700)).not.toContain('middle wall');
    expect(panels(710).filter((name) => name.startsWith('lid'))).toHaveLength(2);
    expect(panels(710)).toContain('middle wall');
  });

  it('keeps each lid in place by cleats with 3 mm of play between the walls', () => {
    const { panels } = built('seat-box', { width: 1200 });
    const cleat = panel(panels, 'front cleat 2').box;
    expect(cleat.x[0] - panel(panels, 'middle wall').box.x[1]).toBe(3000);
    expect(panel(panels, 'right side').box.x[0] - cleat.x[1]).toBe(3000);
    expect(cleat.y[0] - panel(panels, 'front').box.y[1]).toBe(3000);
  });

  it('is held by the floor, and its backrest by fins down to the floor', () => {
    const bench = built('seat-box', { backrest: 'board', depth: 650 });
    expect(bench.fittings).toContainEqual(expect.objectContaining({ fitting: 'floor-anchor', count: 6 }));
    const fins = bench.panels.filter(({ name }) => name.endsWith('fin'));
    expect(fins.map(({ box }) => box.z)).toEqual(Array(3).fill([0, 830_000]));
    expect(refused('seat-box', { backrest: 'board', depth: 480 })).toContain('less than 400 mm deep');
  });
});

describe('boot-divider', () => {
  it('lifts out: nothing lies over its boards or under their hand holes', () => {
    const { panels } = built('boot-divider', { height: 1000 });
    const upper = panel(panels, 'upper board');
    expect(upper.box.z).toEqual([500_000, 1_000_000]);
    const over = panels.filter(({ box }) => box.z[1] > upper.box.z[1]);
    expect(over).toEqual([]);
    expect(upper.housings.map(({ depthUm }) => depthUm)).toEqual([6000, 6000]);
    expect(upper.cutOuts.map(({ name }) => name)).toEqual(['hand hole', 'lower slot', 'upper slot']);
  });
});

describe('toilet-cubby', () => {
  it('says which way a toilet is too large', () => {
    const size = 'width: 380, depth: 420, height: 330';
    const larger = (other: string) => demoLibrary(['appliances.yaml', size, other]);
    const [wide, deep, high] = [
      '410, depth: 420, height: 330',
      '380, depth: 450, height: 330',
      '380, depth: 420, height: 400',
    ];
    expect(refused('toilet-cubby', { width: 430 })).toBe('');
    expect(refused('toilet-cubby', { width: 430 }, larger(`width: ${wide}`))).toContain('too wide');
    expect(refused('toilet-cubby', { depth: 480 }, larger(`width: ${deep}`))).toContain('too deep');
    expect(refused('toilet-cubby', { height: 380 }, larger(`width: ${high}`))).toContain('too high');
  });

  it('has room below its flap for it to drop', () => {
    const flap = panel(built('toilet-cubby').panels, 'flap').box;
    expect(flap.z[0]).toBeGreaterThan(flap.y[1] - flap.y[0]);
  });
});

describe('bed-bridge', () => {
  it('lays its boards on both ledges, with ribs between them', () => {
    const { panels } = built('bed-bridge', { width: 1200, depth: 790, boards: 3 });
    const [front, rear] = [panel(panels, 'front ledge').box, panel(panels, 'rear ledge').box];
    for (const i of [1, 2, 3]) {
      const board = panel(panels, `board ${i}`).box;
      expect(board.y[0]).toBeLessThan(front.y[1]);
      expect(board.y[1]).toBeGreaterThan(rear.y[0]);
      const rib = panel(panels, `left rib ${i}`).box;
      expect(rib.y).toEqual([front.y[1] + 3000, rear.y[0] - 3000]);
    }
  });
});

describe('single-bed', () => {
  it('stands clear of the wheel arch', () => {
    const set = { arch_from: 620, arch_width: 780, arch_depth: 210, arch_height: 340, depth: 640 };
    const { panels } = built('single-bed', set);
    const arch = { x: [620_000, 1_400_000], y: [430_000, 640_000], z: [0, 340_000] } as const;
    const through = panels.filter(({ box }) =>
      (['x', 'y', 'z'] as const).every(
        (axis) => box[axis][0] < arch[axis][1] && arch[axis][0] < box[axis][1],
      ),
    );
    expect(through.map(({ name }) => name)).toEqual([]);
  });

  it('keeps finger holes free of ribs', () => {
    const { panels } = built('single-bed', { arch_from: 700 });
    const decks = panels.filter(({ name }) => name.endsWith('deck'));
    const ribs = panels.filter(({ name }) => / rib /.test(name));
    expect(decks).toHaveLength(3);
    for (const deck of decks) {
      const hole = deck.cutOuts[0]!;
      const [from, to] = deck.lengthAxis === 'x' ? hole.alongLength : hole.alongWidth;
      const over = ribs.filter(({ box }) => box.x[0] < deck.box.x[0] + to && deck.box.x[0] + from < box.x[1]);
      expect(over.map(({ name }) => name)).toEqual([]);
    }
  });

  it('refuses a bed that is too low for its arch', () => {
    expect(refused('single-bed', { height: 440, arch_height: 390 })).toContain('too low to reach over');
  });
});

describe('wall-table', () => {
  it('folds its brackets beside each other, and says when they come out too short', () => {
    const { panels } = built('wall-table', { width: 700, depth: 500 });
    const length = (name: string) => {
      const { y } = panel(panels, name).box;
      return y[1] - y[0];
    };
    const between = panel(panels, 'right bracket').box.x[0] - panel(panels, 'left bracket').box.x[1];
    expect(length('left bracket') + length('right bracket')).toBeLessThan(between);
    expect(refused('wall-table', { width: 500, depth: 600 })).toContain('the brackets would be too short');
  });
});

describe('splash-back and open-base', () => {
  it('say where sockets and hands have no room', () => {
    expect(refused('splash-back', { socket_width: 150, socket_at: 100 })).toContain(
      'closer than 80 mm to an end',
    );
    expect(refused('splash-back', { socket_width: 150, height: 100 })).toContain('too low for sockets');
    expect(refused('open-base', { height: 600, shelves: 3, lip: 100 })).toContain('no hand goes between');
  });
});
