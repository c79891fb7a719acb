import { describe, expect, it } from 'vitest';
import { drawCutPlan } from '../../src/drawing/cutPlan.ts';
import { measure, toSvg, window, words } from '../drawing/drawingTools.ts';
import { stripPlan } from '../drawing/planFixtures.ts';

const { group, sheet } = stripPlan([{ name: 'side', size: [800, 400], count: 2 }]);

function rootOf(page: 'A4' | 'A3'): Element {
  const svg = toSvg(drawCutPlan(group, sheet, { measure, words, job: 'job', page })[0]!);
  return new window.DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
}

describe('pages in true millimetres', () => {
  // ISO 216: A4 is 210 × 297 mm, A3 is 297 × 420 mm.
  it.each([
    ['A4', 297, 210],
    ['A3', 420, 297],
  ] as const)('%s lies across with the sizes of ISO 216', (page, width, height) => {
    const root = rootOf(page);
    expect(root.getAttribute('width')).toBe(`${width}mm`);
    expect(root.getAttribute('height')).toBe(`${height}mm`);
  });

  // SVG 1.1 (Second Edition), 7.7 and 7.10: with a viewBox of the same numbers as width and height, one user unit is
  // one of the unit that width and height are given in.
  it('has a viewBox in the numbers of its width and height', () => {
    expect(rootOf('A4').getAttribute('viewBox')).toBe('0 0 297 210');
  });

  // CSS Values and Units Level 3, 6.2: 1in = 2.54cm = 96px.
  it('is 1122.52 by 793.70 CSS pixels as A4', () => {
    const root = rootOf('A4');
    const pixels = (attribute: string) => (Number.parseFloat(root.getAttribute(attribute)!) / 25.4) * 96;
    expect(pixels('width')).toBeCloseTo(1122.52, 2);
    expect(pixels('height')).toBeCloseTo(793.7, 2);
  });

  // ISO 5455: 1 : 10. A sheet of 2440 × 1220 is 244 × 122 mm on paper.
  it('draws a 2440 × 1220 sheet at 1 : 10 as 244 × 122', () => {
    const outlines = [...rootOf('A4').querySelectorAll('g.sheet rect')];
    expect(outlines.map((rect) => [rect.getAttribute('width'), rect.getAttribute('height')])).toContainEqual([
      '244',
      '122',
    ]);
  });

  // ISO 5457, margins of 20 mm on the left for filing and 10 mm on the other sides (from a second-hand summary).
  it('keeps the margins of ISO 5457', () => {
    const frame = [...rootOf('A4').querySelectorAll('g.frame rect')].at(-1)!;
    const numbers = ['x', 'y', 'width', 'height'].map((name) => Number(frame.getAttribute(name)));
    expect(numbers).toEqual([20, 10, 267, 190]);
  });
});
