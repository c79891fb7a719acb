import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxesOverlap } from '../../src/drawing/drawing.ts';
import { printLength, printRect, printSetting, printSize } from '../../src/drawing/lengthsInWords.ts';
import { plainText, SMALL, shorten, wrap } from '../../src/drawing/lettering.ts';
import { edgingsOnPage } from '../../src/drawing/pieces.ts';
import { makeView, viewOfSheet } from '../../src/drawing/sheetView.ts';
import { findRoom } from '../../src/drawing/sketch.ts';
import { measure } from './drawingTools.ts';
import { panelOf } from './planFixtures.ts';

describe('plain text', () => {
  it('keeps to one line and takes out what must not reach a drawing', () => {
    expect(plainText(' a\r\nb\tc ')).toBe('a b c');
    expect(plainText('bell\u0007 and null\u0000')).toBe('bell and null');
    expect(plainText('over\u202eride')).toBe('override');
    expect(plainText('half \ud800 pair 😀')).toBe('half \ufffd pair 😀');
    expect(plainText('بيت')).toBe('بيت');
  });
});

describe('breaking and shortening', () => {
  const words = fc.string({ unit: fc.constantFrom('a', 'W', 'i', ' ', 'é', 'ق', '漢', '-'), maxLength: 60 });

  it('loses no letter and no line is too wide', () => {
    fc.assert(
      fc.property(words, fc.integer({ min: 6, max: 60 }), (raw, width) => {
        const text = raw.replace(/ +/g, ' ').trim();
        const lines = wrap(text, width, SMALL, 'regular', measure);
        expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
        for (const line of lines) expect(measure(line, SMALL, 'regular')).toBeLessThanOrEqual(width);
      }),
    );
  });

  it('breaks a word that is too long behind a stroke or a hyphen, where one is near', () => {
    const code = 'PW1/TWO-SINGLES-LONG/POPLAR-20-WHITE-STONE/OFF/1/A3/1';
    const lines = wrap(code, 55, SMALL, 'regular', measure);
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.join('')).toBe(code);
    for (const line of lines.slice(0, -1)) expect(line).toMatch(/[/-]$/);
  });

  it('shortens to the width asked for and leaves what fits alone', () => {
    fc.assert(
      fc.property(words, fc.integer({ min: 6, max: 60 }), (text, width) => {
        const short = shorten(text, width, SMALL, 'regular', measure);
        expect(measure(short, SMALL, 'regular')).toBeLessThanOrEqual(width);
        if (measure(text, SMALL, 'regular') <= width) expect(short).toBe(text);
        else expect(short.endsWith('…')).toBe(true);
      }),
    );
  });
});

describe('lengths in words', () => {
  it('prints settings to 0.1 mm and sizes without needless noughts', () => {
    expect(printSetting(412_000, 'mm')).toBe('412.0');
    expect(printSize(600_000, 397_500, 'mm')).toBe('600\u00a0×\u00a0397.5');
  });

  it('prints inches to the nearest 1/64 or 1/32 in lowest terms', () => {
    expect(printLength(25_400, 'inches')).toBe('1"');
    expect(printLength(12_700, 'inches')).toBe('1/2"');
    expect(printLength(412_000, 'inches')).toBe('16\u00a07/32"');
    expect(printLength(25_300, 'inches')).toBe('1"');
    expect(printLength(0, 'inches')).toBe('0"');
    // 1/64 in is 396.875 µm, so 198 µm is nearer to nothing and 199 µm to it.
    expect([198, 199].map((um) => printLength(um, 'inches'))).toEqual(['0"', '1/64"']);
    expect([396, 397].map((um) => printLength(um, 'inches-32'))).toEqual(['0"', '1/32"']);
    // 3/64 in lies in the middle between 1/32 and 2/32: 1190.625 µm.
    expect([1190, 1191].map((um) => printLength(um, 'inches-32'))).toEqual(['1/32"', '1/16"']);
    expect(printLength(-25_400, 'inches')).toBe('−1"');
  });

  it('keeps the mm beside a setting in inches', () => {
    expect(printSetting(412_000, 'inches')).toBe('16\u00a07/32" (412.0)');
  });

  it('prints no fraction that is more than half of the finest off, and none that another is nearer to', () => {
    const read = (text: string): [bigint, bigint] => {
      const found = /^(?:(\d+)\u00a0)?(\d+)(?:\/(\d+))?"$/.exec(text)!;
      const of = BigInt(found[3] ?? '1');
      return [BigInt(found[1] ?? '0') * of + BigInt(found[2]!), of];
    };
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 10_000_000 }),
        fc.constantFrom(['inches', 64n] as const, ['inches-32', 32n] as const),
        (um, [units, finest]) => {
          const [above, below] = read(printLength(um, units));
          expect(finest % below).toBe(0n);
          // |above/below · 25400 − um| ≤ 25400 / (2 · finest), in whole numbers.
          const off = above * 25_400n - BigInt(um) * below;
          expect((off < 0n ? -off : off) * 2n * finest <= 25_400n * below).toBe(true);
          if (below > 1n) expect(above % 2n).toBe(1n);
        },
      ),
    );
  });

  it('gives the figure along the grain first', () => {
    const rect = { x0: 0, y0: 0, x1: 300_000, y1: 700_000 };
    expect(printRect(rect, 'length', 'mm')).toBe('300\u00a0×\u00a0700');
    expect(printRect(rect, 'width', 'mm')).toBe('700\u00a0×\u00a0300');
    expect(printRect(rect, 'none', 'mm')).toBe('300\u00a0×\u00a0700');
  });
});

describe('how a sheet lies on the page', () => {
  const raw = { x0: 0, y0: 0, x1: 1_220_000, y1: 2_440_000 };
  const corner = { x0: 0, y0: 0, x1: 100_000, y1: 50_000 };

  it('has its near left corner at the lower left', () => {
    const view = makeView(raw, [0, 0], 10, 'as it lies');
    expect(view.place(corner)).toEqual({ x0: 0, y0: 239, x1: 10, y1: 244 });
    expect(view.onPage('x')).toBe('across');
  });

  it('turned anticlockwise has it at the lower right, and is not mirrored', () => {
    const view = makeView(raw, [0, 0], 10, 'turned');
    // 100 along the length goes up the page, 50 along the width to the left.
    expect(view.place(corner)).toEqual({ x0: 239, y0: 112, x1: 244, y1: 122 });
    expect(view.onPage('x')).toBe('up');
  });

  it('takes the larger of both positions and a scale that fits', () => {
    const view = viewOfSheet(raw, { x0: 0, y0: 0, x1: 252, y1: 140 });
    expect(view.lies).toBe('turned');
    expect(view.reduction).toBe(10);
    expect(view.box).toEqual({ x0: 0, y0: 0, x1: 244, y1: 122 });
  });

  it('turns edgings with the panel', () => {
    const panel = panelOf({ name: 'shelf', size: [400, 300], edged: 'near' }, 0);
    const straight = makeView(raw, [0, 0], 10, 'as it lies');
    const turned = makeView(raw, [0, 0], 10, 'turned');
    const sides = (along: 'length' | 'width', view: typeof straight) => [
      ...edgingsOnPage(panel, along, view).keys(),
    ];
    expect(sides('length', straight)).toEqual(['bottom']);
    expect(sides('width', straight)).toEqual(['right']);
    expect(sides('length', turned)).toEqual(['right']);
    expect(sides('width', turned)).toEqual(['top']);
  });
});

describe('finding room', () => {
  const field = { x0: 0, y0: 0, x1: 40, y1: 30 };
  const box = fc
    .tuple(
      fc.integer({ min: 0, max: 38 }),
      fc.integer({ min: 0, max: 28 }),
      fc.integer({ min: 1, max: 25 }),
      fc.integer({ min: 1, max: 20 }),
    )
    .map(([x0, y0, w, h]) => ({ x0, y0, x1: x0 + w, y1: y0 + h }));

  it('finds a free place exactly when a search of every half millimetre does, and none nearer is free', () => {
    fc.assert(
      fc.property(
        fc.array(box, { maxLength: 6 }),
        fc.integer({ min: 2, max: 20 }),
        fc.integer({ min: 2, max: 20 }),
        (obstacles, w, h) => {
          const wanted = [20, 15] as const;
          let nearest = Number.POSITIVE_INFINITY;
          for (let x = w / 2; x <= 40 - w / 2; x += 0.5) {
            for (let y = h / 2; y <= 30 - h / 2; y += 0.5) {
              const here = { x0: x - w / 2, y0: y - h / 2, x1: x + w / 2, y1: y + h / 2 };
              const far = (x - 20) * (x - 20) + (y - 15) * (y - 15);
              if (far < nearest && !obstacles.some((one) => boxesOverlap(one, here))) nearest = far;
            }
          }
          const found = findRoom(field, w, h, wanted, obstacles);
          if (!found) {
            // Only a gap of exactly the size asked for may be missed, by the hair that keeps boxes apart.
            const hair = findRoom(field, w - 0.001, h - 0.001, wanted, obstacles);
            expect(nearest === Number.POSITIVE_INFINITY || hair !== null).toBe(true);
            return;
          }
          const [x, y] = found;
          const there = { x0: x - w / 2, y0: y - h / 2, x1: x + w / 2, y1: y + h / 2 };
          expect(obstacles.some((one) => boxesOverlap(one, there))).toBe(false);
          expect(there.x0 >= 0 && there.y0 >= 0 && there.x1 <= 40 && there.y1 <= 30).toBe(true);
          const exactGap = findRoom(field, w - 0.001, h - 0.001, wanted, obstacles)!;
          const far = (exactGap[0] - 20) * (exactGap[0] - 20) + (exactGap[1] - 15) * (exactGap[1] - 15);
          expect(far).toBeLessThanOrEqual(nearest + 1e-3);
        },
      ),
    );
  });
});
