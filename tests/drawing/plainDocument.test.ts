import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Box, Shape } from '../../src/drawing/drawing.ts';
import { plainWindow } from '../../src/drawing/plainDocument.ts';
import { svgFromDrawing } from '../../src/drawing/svg.ts';
import { window } from './drawingTools.ts';

const mm = fc.oneof(fc.integer({ min: -5, max: 900 }), fc.double({ min: -9, max: 9, noNaN: true }));
const tone = fc.double({ min: 0, max: 1, noNaN: true });
const layer = fc.constantFrom('frame' as const, 'title block' as const, 'hidden lines' as const);
const stroke = fc.record({ widthMm: tone, dashMm: fc.array(tone, { maxLength: 3 }) });
const box: fc.Arbitrary<Box> = fc.record({ x0: mm, y0: mm, x1: mm, y1: mm });
const words = fc.string({ unit: fc.oneof(fc.constantFrom('&', '<', '"', ' ', '#', '1'), fc.string()) });

const shape: fc.Arbitrary<Shape> = fc.oneof(
  fc.record({ kind: fc.constant('line' as const), layer, x0: mm, y0: mm, x1: mm, y1: mm, stroke }),
  fc.record({
    kind: fc.constant('lines' as const),
    layer,
    segments: fc.array(fc.tuple(mm, mm, mm, mm), { maxLength: 3 }),
    stroke,
  }),
  fc.record({
    kind: fc.constant('rect' as const),
    layer,
    box,
    radiusMm: fc.constantFrom(0, 1.5),
    stroke: fc.option(stroke),
    fill: fc.option(tone),
  }),
  fc.record({
    kind: fc.constant('rects' as const),
    layer,
    boxes: fc.array(box, { maxLength: 3 }),
    fill: tone,
  }),
  fc.record({
    kind: fc.constant('polygon' as const),
    layer,
    points: fc.array(fc.tuple(mm, mm), { maxLength: 4 }),
    fill: tone,
  }),
  fc.record({ kind: fc.constant('circle' as const), layer, x: mm, y: mm, radiusMm: tone, stroke }),
  fc.record({
    kind: fc.constant('text' as const),
    layer,
    text: words,
    x: mm,
    y: mm,
    sizeMm: tone,
    weight: fc.constantFrom('regular' as const, 'bold' as const),
    anchor: fc.constantFrom('start' as const, 'middle' as const, 'end' as const),
    reads: fc.constantFrom('across' as const, 'up' as const),
    widthMm: tone,
  }),
);
const drawing = fc.record({
  widthMm: mm,
  heightMm: mm,
  title: words,
  description: words,
  shapes: fc.array(shape, { maxLength: 12 }),
});

describe('the plain document', () => {
  it('has every drawing written as in a document of a browser’s kind', () => {
    fc.assert(
      fc.property(drawing, (drawn) => {
        expect(svgFromDrawing(drawn)).toBe(svgFromDrawing(drawn, window));
      }),
    );
  });

  it('keeps the order of nodes as they are hung up, moved and taken off', () => {
    const { document } = plainWindow;
    const named = (name: string) => document.createElementNS(null, name);
    const [root, a, b, c] = [named('svg'), named('a'), named('b'), named('c')];
    const forwards = () => {
      const names: string[] = [];
      for (let node = root.firstChild; node !== null; node = node.nextSibling) names.push(node.nodeName);
      return names;
    };
    const backwards = () => {
      const names: string[] = [];
      for (let node = root.lastChild; node !== null; node = node.previousSibling)
        names.unshift(node.nodeName);
      return names;
    };
    for (const node of [a, b, c]) root.appendChild(node);
    root.appendChild(a);
    expect([forwards(), backwards()]).toEqual([
      ['b', 'c', 'a'],
      ['b', 'c', 'a'],
    ]);
    root.removeChild(c);
    expect([forwards(), backwards()]).toEqual([
      ['b', 'a'],
      ['b', 'a'],
    ]);
    b.appendChild(a);
    expect([forwards(), a.parentNode, a.previousSibling]).toEqual([['b'], b, null]);
    expect(() => root.removeChild(a)).toThrow('hangs here');
    expect(() => a.appendChild(b)).toThrow('under itself');
  });

  it('has one text in place of what an element had', () => {
    const { document } = plainWindow;
    const element = document.createElementNS(null, 'text');
    element.textContent = 'first';
    element.textContent = 'then';
    expect([element.firstChild?.nodeValue, element.firstChild?.nextSibling]).toEqual(['then', null]);
    element.textContent = '';
    expect(element.firstChild).toBeNull();
  });
});
