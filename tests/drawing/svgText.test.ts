import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textOfSvg } from '../../src/drawing/svgText.ts';
import { window } from './drawingTools.ts';

const SVG = 'http://www.w3.org/2000/svg';

interface Tree {
  readonly name: string;
  readonly attributes: readonly (readonly [string, string])[];
  readonly children: readonly (Tree | string)[];
}

/** Any characters that XML may have, those that are escaped more often than others. */
const words = fc.string({
  unit: fc.oneof(
    fc.constantFrom('&', '<', '>', '"', "'", '\t', '\n', ']]>', 'a'),
    fc.string({ unit: 'grapheme', maxLength: 1 }),
  ),
});
const { tree } = fc.letrec<{ tree: Tree }>((tie) => ({
  tree: fc.record({
    name: fc.constantFrom('g', 'rect', 'line', 'text', 'tspan', 'desc'),
    attributes: fc.uniqueArray(fc.tuple(fc.constantFrom('x', 'viewBox', 'font-size', 'class', 'd'), words), {
      selector: ([name]) => name,
      maxLength: 4,
    }),
    // A line end in a text would be taken for one before a shape; drawings have none in their texts.
    children: fc.array(
      fc.oneof(
        { maxDepth: 3 },
        words.map((text) => text.replaceAll('\n', ' ')),
        tie('tree'),
      ),
      { maxLength: 4 },
    ),
  }),
}));

function elementOf({ name, attributes, children }: Tree): Element {
  const element = window.document.createElementNS(SVG, name);
  for (const [key, value] of attributes) element.setAttribute(key, value);
  for (const child of children) {
    element.append(typeof child === 'string' ? window.document.createTextNode(child) : elementOf(child));
  }
  return element;
}

describe('the text of a drawing', () => {
  it('is what the serializer of the document writes, with line ends before shapes', () => {
    fc.assert(
      fc.property(tree, (drawn) => {
        const element = elementOf(drawn);
        const reference = new window.XMLSerializer().serializeToString(element);
        const withoutLines = (text: string) => text.replaceAll(/\n(?=<)/g, '');
        expect(withoutLines(textOfSvg(element, SVG))).toBe(withoutLines(reference));
      }),
    );
  });

  it('has each shape and each end of a group on a line', () => {
    const shape: Tree = { name: 'rect', attributes: [['x', '1']], children: [] };
    const drawn = elementOf({
      name: 'g',
      attributes: [],
      children: [shape, { ...shape, name: 'text', children: ['a & b'] }],
    });
    expect(textOfSvg(drawn, SVG)).toBe(
      `\n<g xmlns="${SVG}">\n<rect x="1"/>\n<text x="1">a &amp; b</text>\n</g>`,
    );
  });
});
