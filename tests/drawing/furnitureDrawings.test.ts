import { describe, expect, it } from 'vitest';
import {
  boxesOverlap,
  type Drawing,
  inset,
  type Segment,
  type Shape,
  type TextShape,
  textBox,
} from '../../src/drawing/drawing.ts';
import { printLength } from '../../src/drawing/lengthsInWords.ts';
import { passesClear } from '../../src/drawing/passesClear.ts';
import { seenFields } from '../../src/drawing/seenFinishes.ts';
import {
  apartFrom,
  footExtents,
  innerExtents,
  openingChains,
  openingRows,
} from '../../src/drawing/unitMeasures.ts';
import { drawUnit } from '../../src/drawing/unitViews.ts';
import { drawLayout } from '../../src/drawing/vehicleViews.ts';
import { alone, demoLibrary, demoOrder, furnish } from '../helpers/demoVan.ts';
import { measure, toSvg, words } from './drawingTools.ts';

const library = demoLibrary();
const options = { measure, words, job: 'Demonstration', titles: new Map<string, string>() };

const NAMES = ['demo-long', 'demo-short', 'weekend-dog-short'] as const;
const LAYOUTS = [
  ...NAMES,
  'weekend-dog-long',
  'two-singles-short',
  'two-singles-long',
  'roof-bed-short',
  'roof-bed-long',
];

function drawingsOf(name: string): Drawing[] {
  const order = demoOrder(library, name);
  const furniture = furnish(order, library).furniture!;
  const vehicle = library.vehicles.get(order.vehicle)!;
  return [
    ...furniture.units.flatMap((unit) => drawUnit(unit, options)),
    ...drawLayout(furniture, vehicle, library.finishes, options),
  ];
}

function pointsOf(shape: Shape): (readonly [number, number])[] {
  switch (shape.kind) {
    case 'line':
      return [
        [shape.x0, shape.y0],
        [shape.x1, shape.y1],
      ];
    case 'lines':
      return shape.segments.flatMap(([x0, y0, x1, y1]) => [[x0, y0] as const, [x1, y1] as const]);
    case 'rect':
      return [
        [shape.box.x0, shape.box.y0],
        [shape.box.x1, shape.box.y1],
      ];
    case 'rects':
      return shape.boxes.flatMap(({ x0, y0, x1, y1 }) => [[x0, y0] as const, [x1, y1] as const]);
    case 'polygon':
      return [...shape.points];
    case 'circle':
      return [
        [shape.x - shape.radiusMm, shape.y - shape.radiusMm],
        [shape.x + shape.radiusMm, shape.y + shape.radiusMm],
      ];
    case 'text': {
      const { x0, y0, x1, y1 } = textBox(shape);
      return [
        [x0, y0],
        [x1, y1],
      ];
    }
  }
}

describe.each(LAYOUTS)('every drawing of the furniture of %s', (name) => {
  const drawings = drawingsOf(name);

  it('has no text on another', () => {
    for (const { shapes, title } of drawings) {
      const texts = shapes.filter((shape): shape is TextShape => shape.kind === 'text');
      texts.forEach((one, index) => {
        const box = textBox(one);
        const on = texts.slice(0, index).filter((other) => boxesOverlap(box, textBox(other)));
        expect(on.map((other) => `${title}: ${one.text} on ${other.text}`)).toEqual([]);
      });
    }
  });

  it('stays inside the frame', () => {
    for (const { shapes, title, widthMm, heightMm } of drawings) {
      for (const [x, y] of shapes.flatMap(pointsOf)) {
        const inside =
          x >= 20 - 0.01 && y >= 10 - 0.01 && x <= widthMm - 10 + 0.01 && y <= heightMm - 10 + 0.01;
        expect(inside, `${title}: ${x}, ${y}`).toBe(true);
      }
    }
  });
});

describe('lines to panels that have no room for their number', () => {
  it.each([
    {},
    { width: 1400, depth: 700, rail: 120, persons: 1, slat: 60, slats: 12 },
    { width: 1900, depth: 1400, rail: 200, clearance: 60, slat: 60, slats: 22, fixing: 'hinged' },
  ])('pass the numbers of others by: a slatted bed of %j', (set: Record<string, string | number>) => {
    const { unit } = alone('slatted-roof-bed', set, library, demoOrder(library));
    const { shapes } = drawUnit(unit!, options)[1]!;
    const numbers = shapes.flatMap((shape) =>
      shape.kind === 'text' && shape.layer === 'numbers' ? [inset(textBox(shape), 0.1)] : [],
    );
    const lines = shapes.flatMap((shape): Segment[] =>
      shape.kind === 'line' && shape.layer === 'numbers' ? [[shape.x0, shape.y0, shape.x1, shape.y1]] : [],
    );
    expect(numbers.length).toBe(unit!.panels.length);
    expect(lines.length).toBeGreaterThan(10);
    for (const line of lines) expect(passesClear(line, numbers)).toBe(true);
  });

  it('are told from lines that end before a number, or run beside it', () => {
    const box = { x0: 10, y0: 10, x1: 14, y1: 12 };
    expect(passesClear([0, 11, 9, 11], [box])).toBe(true);
    expect(passesClear([0, 11, 30, 11], [box])).toBe(false);
    expect(passesClear([0, 13, 30, 13], [box])).toBe(true);
    expect(passesClear([12, 0, 12, 30], [box])).toBe(false);
    expect(passesClear([0, 8, 30, 38], [box])).toBe(true);
    expect(passesClear([11, 11, 13, 11], [box])).toBe(false);
  });
});

describe.each(NAMES)('the drawings of every unit of %s', (name) => {
  it('has the outside sizes of every unit, also of a board that is thinner than its figure', () => {
    for (const unit of furnish(demoOrder(library, name), library).furniture!.units) {
      const figures = drawUnit(unit, options)[0]!.shapes.flatMap((shape) =>
        shape.kind === 'text' && shape.layer === 'dimensions' ? [shape.text] : [],
      );
      const sizes = (['x', 'y', 'z'] as const).map((axis) =>
        printLength(unit.outside[axis][1] - unit.outside[axis][0], 'mm'),
      );
      expect(figures, unit.name).toEqual(expect.arrayContaining(sizes));
    }
  });

  it('says how it is projected, and what a broken line means where there is one', () => {
    for (const unit of furnish(demoOrder(library, name), library).furniture!.units) {
      drawUnit(unit, options).forEach(({ shapes }, page) => {
        const texts = shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
        const { firstAngle, isometric, hiddenLeader } = words.furniture;
        expect(texts.includes(firstAngle), `${unit.name}, page ${page + 1}`).toBe(page === 0);
        expect(texts.includes(isometric), `${unit.name}, page ${page + 1}`).toBe(page > 0);
        const broken = shapes.some(
          (shape) => shape.kind === 'line' && shape.layer === 'numbers' && shape.stroke.dashMm.length > 0,
        );
        expect(texts.includes(hiddenLeader), `${unit.name}, page ${page + 1}`).toBe(broken);
      });
    }
  });

  it('comes out the same, byte for byte', () => {
    expect(drawingsOf(name).map(toSvg)).toEqual(drawingsOf(name).map(toSvg));
  });

  it('has the number of every panel in its unit drawn apart, beside its line in the table', () => {
    const order = demoOrder(library, name);
    for (const unit of furnish(order, library).furniture!.units) {
      const texts = drawUnit(unit, options)
        .slice(1)
        .flatMap(({ shapes }) => shapes)
        .filter((shape): shape is TextShape => shape.kind === 'text');
      for (const { number } of unit.panels) {
        const here = texts.filter(({ text }) => text === String(number)).map(({ layer }) => layer);
        expect(here, `${unit.name} ${number}`).toEqual(expect.arrayContaining(['numbers', 'tables']));
      }
    }
  });
});

describe.each(LAYOUTS)('the layout of %s', (name) => {
  it.each(['A3', 'A4'] as const)(
    'has the number of every unit in one of its views at least, on %s',
    (page) => {
      const order = demoOrder(library, name);
      const furniture = furnish(order, library).furniture!;
      const vehicle = library.vehicles.get(order.vehicle)!;
      const [drawing] = drawLayout(furniture, vehicle, library.finishes, { ...options, page });
      const legend = furniture.units.map((unit, index) => `${index + 1} ${unit.name}`);
      const texts = drawing!.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
      for (const text of legend) expect(texts).toContain(text);
      const inViews = [...texts];
      for (const text of legend) inViews.splice(inViews.lastIndexOf(text), 1);
      for (const [index, { name: unit }] of furniture.units.entries()) {
        const number = new RegExp(`^${index + 1}( |$)`);
        expect(
          inViews.some((text) => number.test(text)),
          `${index + 1} ${unit}`,
        ).toBe(true);
      }
    },
  );
});

describe.each(LAYOUTS)('the layout of %s', (name) => {
  it.each(['A3', 'A4'] as const)(
    'has no number close behind a word, as if it were part of it, on %s',
    (page) => {
      const order = demoOrder(library, name);
      const furniture = furnish(order, library).furniture!;
      const vehicle = library.vehicles.get(order.vehicle)!;
      const [drawing] = drawLayout(furniture, vehicle, library.finishes, { ...options, page });
      const texts = drawing!.shapes.filter((shape): shape is TextShape => shape.kind === 'text');
      const left = ({ x, widthMm, anchor }: TextShape) =>
        x - { start: 0, middle: widthMm / 2, end: widthMm }[anchor];
      const numbers = texts.filter(({ text, layer }) => layer === 'numbers' && /^\d+$/.test(text));
      expect(numbers.length).toBeGreaterThan(3);
      for (const number of numbers) {
        const before = texts.filter((word) => {
          const gap = left(number) - (left(word) + word.widthMm);
          return /[a-z]$/i.test(word.text) && gap > -1 && gap < 1.2 && Math.abs(word.y - number.y) < 2;
        });
        expect(before.map(({ text }) => `${text} ${number.text}`)).toEqual([]);
      }
    },
  );
});

describe('the plan of a layout', () => {
  it('has numbers beside boards on edge that are seen in it, also of those that have theirs on a wall', () => {
    const order = demoOrder(library, 'weekend-dog-long');
    const furniture = furnish(order, library).furniture!;
    const vehicle = library.vehicles.get(order.vehicle)!;
    const [drawing] = drawLayout(furniture, vehicle, library.finishes, { ...options, page: 'A4' });
    const texts = drawing!.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : []));
    const wall = texts.find(({ text }) => text === words.furniture.rightWall)!;
    const section = texts.find(({ text }) => text === words.furniture.inside.vehicle.section)!;
    const inPlan = texts.filter(({ x, y }) => x < section.x && y < wall.y).map(({ text }) => text);
    const divider = furniture.units.findIndex(({ unit }) => unit === 'boot-divider') + 1;
    expect(inPlan).toContain(String(divider));
  });
});

describe('dimensions', () => {
  const order = demoOrder(library);

  it('give the clear sizes of a base cupboard', () => {
    const unit = alone('base-cupboard', { width: 400, depth: 520, height: 800, shelves: 1 }, library, order)
      .unit!;
    const board = library.boards.get('poplar-15')!.thicknessUm;
    const inner = innerExtents(unit);
    expect(inner.x).toEqual([[board, 400_000 - board]]);
    expect(inner.z).toHaveLength(3);
    expect(inner.z[0]).toEqual([0, 60_000]);
    // Below and above the one shelf there is the same room.
    const [, below, above] = inner.z.map(([from, to]) => to - from);
    expect(Math.abs(below! - above!)).toBeLessThanOrEqual(1);
  });

  it('place the openings of a worktop from its edges', () => {
    const set = { width: 1000, depth: 540, sink_at: 300, sink_width: 290, sink_depth: 370 };
    const unit = alone('worktop', set, library, order).unit!;
    const chain = openingChains(unit.panels[0]!, 'x');
    expect(chain).toEqual([
      [
        [0, 155_000],
        [155_000, 445_000],
        [445_000, 1_000_000],
      ],
    ]);
  });

  it('give openings that reach over each other chains of their own', () => {
    const set = {
      width: 1000,
      depth: 540,
      sink_at: 300,
      sink_width: 290,
      sink_depth: 370,
      hob_at: 700,
      hob_width: 300,
      hob_depth: 380,
    };
    const unit = alone('worktop', set, library, order).unit!;
    const panel = unit.panels[0]!;
    expect(openingChains(panel, 'x')).toHaveLength(1);
    const sizes = openingChains(panel, 'y').map((chain) => chain[1]![1] - chain[1]![0]);
    expect(sizes.sort()).toEqual([370_000, 380_000]);
  });

  it('place every opening of every panel, whatever the scale, from an edge of its panel', () => {
    const divider = alone('boot-divider', { width: 1000 }, library, order).unit!;
    // The hand holes of both boards lie above each other, the slots reach over them.
    expect(openingRows(divider, 'y', 'x')).toHaveLength(2);
    const [upright] = openingRows(divider, 'y', 'z');
    expect(upright!.map(({ panel }) => panel.name)).toEqual(['lower board', 'upper board']);
    // In this scale 84 mm are narrower than their figure: running dimensions then, from the plinth's end.
    const housing = alone('fridge-housing', {}, library, order).unit!;
    const texts = drawUnit(housing, options)[0]!.shapes.flatMap((shape) =>
      shape.kind === 'text' && shape.layer === 'dimensions' ? [shape.text] : [],
    );
    const plinth = housing.panels.find(({ name }) => name === 'plinth')!;
    const [opening] = plinth.cutOuts;
    for (const um of opening!.alongLength) expect(texts).toContain(printLength(um, 'mm'));
    for (const um of opening!.alongWidth) expect(texts).toContain(printLength(um, 'mm'));
  });

  it('begin at an edge of what is drawn, also where rows of running dimensions stand beside each other', () => {
    // Two boards of the housing have openings of other depths at its back.
    const set = { width: 480, depth: 500, height: 1500, fridge_height: 600 };
    const { shapes } = drawUnit(alone('fridge-housing', set, library, order).unit!, options)[0]!;
    const origins = shapes.flatMap((shape) =>
      shape.kind === 'circle' && shape.layer === 'dimensions' ? [[shape.x, shape.y] as const] : [],
    );
    // Two of the front and two of the plan: rows from the same edge are one.
    expect(origins).toHaveLength(4);
    const ends = shapes
      .filter(({ layer }) => layer === 'panels' || layer === 'hidden lines')
      .flatMap((shape) => pointsOf(shape));
    for (const [x, y] of origins) {
      expect(ends.some(([at]) => Math.abs(at - x) < 0.01)).toBe(true);
      expect(ends.some(([, at]) => Math.abs(at - y) < 0.01)).toBe(true);
    }
  });

  it('of boards behind each other say how wide the front one is', () => {
    // A bulkhead stands behind the front of this bed, which its wheel arches make narrower than its deck.
    const set = { width: 1400, depth: 2050, height: 700, arch_left: 300, arch_right: 300, passage: 300 };
    const bed = alone('passage-bed-base', set, library, order).unit!;
    const feet = footExtents(bed);
    expect(feet).toContainEqual(bed.panels.find(({ name }) => name === 'front')!.box.x);
    for (const [index, [from]] of feet.slice(1).entries()) {
      expect(from).toBeGreaterThanOrEqual(feet[index]![1]);
    }
  });

  it('place legs and slats', () => {
    const table = alone('dining-table', { width: 700 }, library, order).unit!;
    const leg = table.panels.find(({ name }) => name === 'leg')!;
    expect(footExtents(table)).toContainEqual(leg.box.x);
    expect(innerExtents(table).y).toContainEqual([0, leg.box.y[0]]);
    // A partition that stands on the bottom is no reason to measure the sides of a locker again.
    for (const id of ['base-cupboard', 'overhead-locker', 'open-overhead-locker']) {
      expect(footExtents(alone(id, {}, library, order).unit!)).toEqual([]);
    }
    const bed = alone('slatted-roof-bed', {}, library, order).unit!;
    const slats = bed.panels.filter(({ name }) => name.startsWith('slat'));
    expect(apartFrom(bed, 'x')).toEqual(slats.map(({ box }) => box.x[0]));
    expect(apartFrom(bed, 'y')).toEqual([]);
    // Boards that touch are no slats.
    expect(apartFrom(alone('bed-bridge', {}, library, order).unit!, 'x')).toEqual([]);
  });

  it('of a view have no line of another row through a figure', () => {
    const bed = alone('single-bed', {}, library, order).unit!;
    const { shapes } = drawUnit(bed, options)[0]!;
    const figures = shapes.flatMap((shape, index) =>
      shape.kind === 'text' && shape.layer === 'dimensions' ? [[index, textBox(shape)] as const] : [],
    );
    for (const [index, box] of figures) {
      // A line drawn later would lie over the figure; earlier ones are under its white ground.
      const later = shapes.slice(index + 1).filter((shape) => shape.layer === 'dimensions');
      const through = later.filter(
        (shape) =>
          shape.kind === 'line' &&
          boxesOverlap(box, {
            x0: shape.x0 - 0.01,
            x1: shape.x1 + 0.01,
            y0: shape.y0 - 0.01,
            y1: shape.y1 + 0.01,
          }),
      );
      expect(through).toEqual([]);
    }
  });

  it('of a wall tell how high worktops and lockers are', () => {
    const texts = drawingsOf('demo-long')
      .at(-1)!
      .shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    // Worktop, underside and top of the lockers, of the side table; housing, bed and table.
    for (const figure of ['850', '1350', '1700', '950', '1100', '1750', '700', '720']) {
      expect(texts).toContain(figure);
    }
  });

  it('of the layout name walkway, lengths and the inside', () => {
    const texts = drawingsOf('demo-long')
      .at(-1)!
      .shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    for (const figure of ['walkway 600', '1250', '3900', '1760', '1900']) expect(texts).toContain(figure);
  });
});

describe('appliances', () => {
  const order = demoOrder(library);
  const outlines = ({ shapes }: Drawing) =>
    shapes.flatMap((shape) =>
      shape.kind === 'rect' && shape.stroke?.dashMm.length === 6 ? [shape.box] : [],
    );
  const textsOf = ({ shapes }: Drawing) =>
    shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));

  it('are drawn in all views of the unit that holds them, in their true size, with their name', () => {
    const housing = alone('fridge-housing', {}, library, order).unit!;
    const [views] = drawUnit(housing, options);
    const sizes = outlines(views!).map(({ x0, x1, y0, y1 }) =>
      [x1 - x0, y1 - y0].map((mm) => Math.round(mm * 20)),
    );
    const { widthUm, depthUm, heightUm } = library.appliances!.get('small-fridge')!;
    const [w, d, h] = [widthUm / 1000, depthUm / 1000, heightUm / 1000];
    expect(sizes).toEqual([
      [w, h],
      [d, h],
      [w, d],
    ]);
    expect(textsOf(views!).filter((text) => text === 'Compressor')).toHaveLength(3);
  });

  it('that stand out of their unit have room between its views', () => {
    const set = { sink: 'sink-small', hob: 'gas-hob-one' };
    const worktop = alone('worktop', set, library, order).unit!;
    const [views] = drawUnit(worktop, options);
    const texts = views!.shapes.filter((shape): shape is TextShape => shape.kind === 'text');
    expect(outlines(views!)).toHaveLength(6);
    for (const box of outlines(views!)) {
      const on = texts.filter((text) => text.layer === 'dimensions' && boxesOverlap(box, textBox(text)));
      expect(on.map(({ text }) => text)).toEqual([]);
    }
    expect(texts.map(({ text }) => text)).toContain('Sink, small');
  });

  it.each(LAYOUTS)('are drawn in plan and on a wall of %s, and named in the plan', (name) => {
    const asked = demoOrder(library, name);
    const furniture = furnish(asked, library).furniture!;
    const vehicle = library.vehicles.get(asked.vehicle)!;
    const [drawing] = drawLayout(furniture, vehicle, library.finishes, options);
    const held = furniture.units.flatMap(({ appliances }) => appliances ?? []);
    expect(held.length).toBeGreaterThan(0);
    expect(outlines(drawing!).length).toBeGreaterThanOrEqual(2 * held.length);
    const said = textsOf(drawing!).join(' ');
    for (const { title, name: short } of held) {
      expect(said.includes(title) || textsOf(drawing!).includes(short), title).toBe(true);
    }
    expect(textsOf(drawing!)).toContain(words.furniture.appliance);
  });
});

describe('fields of finishes', () => {
  it('show the nearest face, and every place of the view once', () => {
    const fields = seenFields([
      { u: [0, 10], v: [0, 10], nearUm: 5, owner: 'back' },
      { u: [2, 4], v: [3, 12], nearUm: 1, owner: 'front' },
    ]);
    const area = (owner: string) =>
      fields
        .filter((field) => field.owner === owner)
        .reduce((sum, { u, v }) => sum + (u[1] - u[0]) * (v[1] - v[0]), 0);
    expect(area('front')).toBe(18);
    expect(area('back')).toBe(100 - 14);
  });
});
