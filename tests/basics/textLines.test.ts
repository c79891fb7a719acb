import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TextLines } from '../../src/basics/textLines.ts';

describe('lines of a text', () => {
  it('end with LF, CR LF or CR; a byte order mark is on none', () => {
    const lines = new TextLines('\ufeffa\nb\r\n\rc');
    expect([1, 2, 3, 4, 5].map((line) => lines.content(line))).toEqual(['a', 'b', '', 'c', '']);
    expect(lines.placeAt(1)).toEqual({ line: 1, column: 1 });
    expect(lines.placeAt(3)).toEqual({ line: 2, column: 1 });
    expect(lines.placeAt(7)).toEqual({ line: 4, column: 1 });
    expect(lines.startOf(9)).toBe(8);
  });

  it('are those that come of splitting the text, with each place in its own', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom('a', ' ', '\n', '\r', '\r\n') }), (text) => {
        const lines = new TextLines(text);
        const split = text.split(/\r\n|\r|\n/);
        split.forEach((content, index) => {
          expect(lines.content(index + 1)).toBe(content);
          const start = lines.startOf(index + 1);
          for (let column = 1; column <= content.length + 1; column++) {
            expect(lines.placeAt(start + column - 1)).toEqual({ line: index + 1, column });
          }
        });
      }),
    );
  });
});
