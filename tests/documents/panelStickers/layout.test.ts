import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, boxesOverlap } from '../../../src/drawing/drawing.ts';
import type { PanelSticker, StickerEdge, StickerPicture } from '../../../src/drawing/panelSticker.ts';
import {
  type StickerFormat,
  stickerCorner,
  stickerPadding,
} from '../../../src/drawing/panelStickerFormats.ts';
import { LEAST_MODULE_MM, QUIET_MODULES, qrCode } from '../../../src/drawing/panelStickerQr.ts';
import { codesOn, grown } from './scan.ts';
import { allFormats, draw, formatOf, roomOf, textsOf } from './stickerFixtures.ts';

/** Names as people write them, in scripts of all kinds, and as nobody should. */
const anyName = fc.oneof(
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 80 }),
  fc.string({ unit: 'binary', maxLength: 80 }),
  fc
    .array(
      fc.constantFrom(
        'left',
        'Schubkastenvorderstück',
        'side',
        'küche',
        '抽屉',
        'ящик',
        '🚐',
        'נגרות',
        'درج',
        'W'.repeat(40),
      ),
      {
        minLength: 1,
        maxLength: 8,
      },
    )
    .map((words) => words.join(' ').slice(0, 80)),
);

const sides = ['length1', 'length2', 'width1', 'width2'] as const;
const edges: fc.Arbitrary<StickerEdge[]> = fc
  .array(fc.option(fc.integer({ min: 0, max: 3 }), { nil: null }), { minLength: 4, maxLength: 4 })
  .map((all) =>
    all.flatMap((edging, index) =>
      edging === null ? [] : [{ side: sides[index]!, name: ['L1', 'L2', 'B1', 'W2'][index]!, edging }],
    ),
  );

const picture: fc.Arbitrary<StickerPicture> = fc
  .record({
    kind: fc.constantFrom('panel' as const, 'offcut' as const),
    lengthUm: fc.integer({ min: 30_000, max: 3_600_000 }),
    widthUm: fc.integer({ min: 30_000, max: 3_600_000 }),
    grain: fc.constantFrom('length' as const, 'width' as const, 'none' as const),
    edges,
    places: fc.array(fc.tuple(fc.nat(90), fc.nat(90)), { maxLength: 3 }),
  })
  .map(({ places, ...rest }) => ({
    ...rest,
    openings: places.map(([along, across]) => ({
      alongLength: [(rest.lengthUm * along) / 100, (rest.lengthUm * (along + 10)) / 100] as const,
      alongWidth: [(rest.widthUm * across) / 100, (rest.widthUm * (across + 10)) / 100] as const,
    })),
  }));

const finished = '2440.5\u00a0×\u00a01220.5';
const cut = '2438.5\u00a0×\u00a01218.5\u00a0×\u00a019.5';
const sticker: fc.Arbitrary<PanelSticker> = fc
  .record({
    mark: fc.constantFrom('1', '120', '9999', 'OFFCUT', 'REST'),
    heading: anyName,
    unit: anyName,
    job: anyName,
    board: anyName,
    edgings: fc.array(anyName, { maxLength: 4 }),
    fillIn: fc.constantFrom(null, 'put back on'),
    code: fc.constantFrom(
      'PW1/A/PLY/1/1',
      'PW1/DEMO-LONG/POPLAR-15-PALE-GREY/12/2',
      `PW1/${'W'.repeat(20)}/${'M'.repeat(24)}/10000/10000`,
      'PW1/A-VERY-LONG-N+1B2C3D/POPLAR-RAW-15-RAW+A1B2C3/OFF/120/A12B12C/100',
    ),
    picture,
  })
  .map(({ unit, job, board, edgings, ...rest }) => ({
    ...rest,
    lines: [
      { text: unit, weight: 'regular', most: 2, need: 'always' },
      { text: job, weight: 'regular', most: 2, need: 'optional' },
      { text: `finished ${finished}`, weight: 'bold', most: 2, need: 'whole' },
      { text: `cut ${cut}`, weight: 'regular', most: 2, need: 'whole' },
      { text: board, weight: 'regular', most: 2, need: 'optional' },
      // An offcut has a line to write on where a panel has edging.
      ...(rest.fillIn === null ? edgings : []).map(
        (name) => ({ text: `L1 W1: ${name}`, weight: 'regular', most: 2, need: 'always' }) as const,
      ),
      {
        text: 'next: cut to shape → edge → groove → drill → cut out → assemble',
        weight: 'bold',
        most: 2,
        need: 'always',
      },
    ],
  }));

/** The printed part of the label at a place. */
function printed(format: StickerFormat, place: number, pageHeight: number): Box {
  const [x, y] = stickerCorner(format, place);
  const [across, down] = stickerPadding(format);
  const high = format.labelMm[1] ?? pageHeight;
  return { x0: x + across, y0: y + down, x1: x + format.labelMm[0] - across, y1: y + high - down };
}

function isInside(inner: Box, outer: Box): boolean {
  const slack = 1e-6;
  return (
    inner.x0 >= outer.x0 - slack &&
    inner.y0 >= outer.y0 - slack &&
    inner.x1 <= outer.x1 + slack &&
    inner.y1 <= outer.y1 + slack
  );
}

/** A hair smaller, so that what only touches does not overlap. */
const shrunk = (box: Box) => grown(box, -1e-6);

describe.each(allFormats)('a label of $name', (format) => {
  it('has nothing outside its printed part, and no text on another or on the code and its white border', () => {
    fc.assert(
      fc.property(sticker, (one) => {
        const page = draw([one], format)[0]!;
        const label = printed(format, 0, page.heightMm);
        for (const shape of page.shapes)
          expect(isInside(roomOf(shape), label), JSON.stringify(shape)).toBe(true);
        const texts = textsOf(page).map(roomOf).map(shrunk);
        for (const [index, text] of texts.entries()) {
          const other = texts.slice(index + 1).find((later) => boxesOverlap(text, later));
          expect(other, `${textsOf(page)[index]!.text} lies on another text`).toBeUndefined();
        }
        const code = codesOn(page)[0]!;
        const moduleMm = (code.x1 - code.x0) / qrCode(one.code).modules.size;
        expect(moduleMm).toBeGreaterThanOrEqual(LEAST_MODULE_MM);
        const quiet = shrunk(grown(code, QUIET_MODULES * moduleMm));
        expect(isInside(quiet, label)).toBe(true);
        for (const shape of page.shapes) {
          if (shape.kind !== 'rects')
            expect(boxesOverlap(roomOf(shape), quiet), JSON.stringify(shape)).toBe(false);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('keeps its text clear of the panel, and all of its sizes', () => {
    fc.assert(
      fc.property(sticker, (one) => {
        const page = draw([one], format)[0]!;
        const bars = page.shapes.filter((shape) => shape.layer === 'edging' && shape.kind !== 'text');
        const piece = page.shapes.filter((shape) => shape.layer === 'panels' && shape.kind === 'rect')[1]!;
        for (const text of textsOf(page).map(roomOf).map(shrunk)) {
          for (const drawn of [piece, ...bars]) expect(boxesOverlap(text, roomOf(drawn))).toBe(false);
        }
        for (const bar of bars) expect(isInside(roomOf(bar), grown(roomOf(piece), 0.1))).toBe(true);
        const said = textsOf(page)
          .map(({ text }) => text)
          .join(' ');
        expect(said).toContain(finished);
        expect(said).toContain(cut);
        expect(said).toContain(one.mark);
        expect(said.replaceAll(' ', '')).toContain(one.code);
      }),
      { numRuns: 40 },
    );
  });
});

const plain: PanelSticker = {
  code: 'PW1/A/PLY/1/1',
  mark: '1',
  heading: 'shelf',
  lines: [],
  fillIn: null,
  picture: { kind: 'panel', lengthUm: 2_400_000, widthUm: 30_000, grain: 'length', edges: [], openings: [] },
};

describe('the picture on a label', () => {
  const drawn = (more: Partial<StickerPicture>) => {
    const one = { ...plain, picture: { ...plain.picture, ...more } };
    const { shapes } = draw([one], formatOf('99.1x38.1'))[0]!;
    const piece = roomOf(shapes.filter((shape) => shape.layer === 'panels' && shape.kind === 'rect')[1]!);
    return { shapes, piece };
  };
  const grainOf = (shapes: ReturnType<typeof drawn>['shapes']) => {
    const line = shapes.find((shape) => shape.layer === 'grain' && shape.kind === 'line');
    return line?.kind === 'line' ? line : null;
  };

  it('shows both edges and the grain of a strip of 2400 × 30', () => {
    const { shapes, piece } = drawn({
      edges: [
        { side: 'length1', name: 'L1', edging: 0 },
        { side: 'length2', name: 'L2', edging: 1 },
      ],
    });
    expect(piece.y1 - piece.y0).toBeGreaterThan(3);
    const [first, second] = shapes
      .filter((shape) => shape.layer === 'edging' && shape.kind === 'line')
      .map(roomOf);
    const grain = grainOf(shapes)!;
    expect(grain.y0).toBe(grain.y1);
    expect(boxesOverlap(roomOf(grain), first!) || boxesOverlap(roomOf(grain), second!)).toBe(false);
    // Edge length 1 is at width 0, which is drawn below.
    expect(first!.y0).toBeGreaterThan(second!.y1);
  });

  it('draws a square of 60 × 60 as a square', () => {
    const { piece } = drawn({ lengthUm: 60_000, widthUm: 60_000 });
    expect(piece.x1 - piece.x0).toBeCloseTo(piece.y1 - piece.y0, 6);
  });

  it('has the grain of an offcut run up where it runs along the width', () => {
    const { shapes } = drawn({ kind: 'offcut', widthUm: 900_000, grain: 'width' });
    const grain = grainOf(shapes)!;
    expect(grain.x0).toBe(grain.x1);
    expect(grain.y0).not.toBe(grain.y1);
  });

  it('has no arrow for a panel that may be turned', () => {
    expect(grainOf(drawn({ grain: 'none' }).shapes)).toBeNull();
  });

  it('lays the arrow beside openings rather than along their border', () => {
    // The front of a bed: left of its two openings there is more room than above them.
    const opening = (from: number) =>
      ({ alongLength: [from, from + 600_000], alongWidth: [40_000, 420_000] }) as const;
    const { shapes } = drawn({
      lengthUm: 1_800_000,
      widthUm: 505_000,
      openings: [opening(480_000), opening(1_150_000)],
    });
    const holes = shapes
      .filter((shape) => shape.layer === 'panels' && shape.kind === 'rect')
      .slice(2)
      .map(roomOf);
    expect(holes).toHaveLength(2);
    const arrow = roomOf(grainOf(shapes)!);
    const around = { x0: arrow.x0, x1: arrow.x1, y0: arrow.y0 - 0.9, y1: arrow.y1 + 0.9 };
    expect(holes.filter((hole) => boxesOverlap(around, hole))).toEqual([]);
  });

  it('keeps the arrow off an opening', () => {
    const opening = { alongLength: [900_000, 1_500_000], alongWidth: [200_000, 700_000] } as const;
    const { shapes } = drawn({ widthUm: 900_000, openings: [opening] });
    const hole = shapes.filter((shape) => shape.layer === 'panels' && shape.kind === 'rect')[2]!;
    expect(boxesOverlap(roomOf(hole), roomOf(grainOf(shapes)!))).toBe(false);
  });

  it('shows the true shape of a panel that is no rectangle', () => {
    const outline = [
      [0, 0],
      [1_000_000, 0],
      [700_000, 500_000],
      [0, 500_000],
    ] as const;
    const { shapes, piece } = drawn({ lengthUm: 1_000_000, widthUm: 500_000, outline });
    const lines = shapes.find((shape) => shape.kind === 'lines');
    const segments = lines?.kind === 'lines' ? lines.segments : [];
    expect(segments).toHaveLength(4);
    const at = piece.x0 + 0.7 * (piece.x1 - piece.x0);
    expect(segments[1]![2]).toBeCloseTo(at, 0);
    expect(segments[1]![3]).toBeCloseTo(piece.y0, 0);
  });
});

describe('a sheet of labels', () => {
  const many = Array.from({ length: 30 }, (_, index) => ({
    ...plain,
    code: `PW1/A/PLY/${index + 1}/1`,
    mark: `${index + 1}`,
  }));
  /** Marks of a page with the corner of the printed part of their label. */
  const marks = (pages: ReturnType<typeof draw>) =>
    pages.map((page) =>
      page.shapes.flatMap((shape, index) => {
        const frame = page.shapes[index - 1];
        const isMark = shape.kind === 'text' && shape.anchor === 'middle' && frame?.kind === 'rect';
        return isMark
          ? [
              [
                shape.text,
                ...[frame.box.x0 - 0.2, frame.box.y0 - 0.2].map((mm) => Math.round(mm * 100) / 100),
              ],
            ]
          : [];
      }),
    );

  // Worked by hand: 3 labels of 63.5 and 2 gaps of 2.5 are 195.5 of 210, 7 labels of 38.1 are 266.7 of 297.
  it('has its labels in the middle of the page, row after row', () => {
    const first = marks(draw(many, formatOf('63.5x38.1')))[0]!;
    expect(first).toHaveLength(21);
    expect(first.slice(0, 4)).toEqual([
      ['1', 9.25, 17.15],
      ['2', 75.25, 17.15],
      ['3', 141.25, 17.15],
      ['4', 9.25, 55.25],
    ]);
  });

  it('begins at the first free label and goes on on a new sheet', () => {
    const pages = marks(draw(many, formatOf('63.5x38.1'), 20));
    expect(pages.map((page) => page.length)).toEqual([2, 21, 7]);
    expect(pages[0]![0]).toEqual(['1', 75.25, 245.75]);
    expect(pages[1]![0]).toEqual(['3', 9.25, 17.15]);
  });

  it('has no page too many when the last sheet is full', () => {
    expect(draw(many.slice(0, 21), formatOf('63.5x38.1'))).toHaveLength(1);
    expect(draw(many.slice(0, 21), formatOf('63.5x38.1'), 2)).toHaveLength(2);
    expect(draw([], formatOf('63.5x38.1'))).toEqual([]);
  });

  it('keeps what is printed 4.5 mm from the border of the sheet where labels reach it', () => {
    const first = marks(draw(many, formatOf('70x37')))[0]!;
    // 8 labels of 37 are 296 of 297: labels begin 0.5 below the border.
    expect(first[0]).toEqual(['1', 4.5, 4.5]);
    expect(first[1]).toEqual(['2', 74.5, 4.5]);
  });

  it('refuses a label that the sheet does not have', () => {
    expect(() => draw(many, formatOf('63.5x38.1'), 22)).toThrow('no label 22');
  });

  it('is as long as what stands on it, on a roll', () => {
    const tall = { ...plain, picture: { ...plain.picture, widthUm: 2_400_000 } };
    const [low, high] = draw([plain, tall], formatOf('roll-62'));
    expect(low!.widthMm).toBe(62);
    expect(high!.heightMm).toBeGreaterThan(low!.heightMm + 10);
  });
});
