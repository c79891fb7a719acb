import { describe, expect, it } from 'vitest';
import type { Book } from '../../../src/documents/book/book.ts';
import { bookPages } from '../../../src/documents/book/bookPages.ts';
import { en } from '../../../src/documents/words/en.ts';
import { measure } from '../../drawing/drawingTools.ts';
import { assertReadable, usedHeight } from './readable.ts';

/** A book of one list with so many lines and a chapter of a few words after it. */
function bookOf(lines: number, after = 0): Book {
  return {
    title: 'A job',
    words: en,
    sections: [
      {
        id: 'list',
        heading: 'A list',
        level: 2,
        startsPage: false,
        blocks: [
          {
            kind: 'table',
            caption: 'Panels',
            columns: [
              { heading: 'panel', weight: 3 },
              { heading: 'done', weight: 1 },
            ],
            rows: Array.from({ length: lines }, (_, index) => ({
              cells: [`panel ${index + 1}`, ''],
              tick: `${index}`,
            })),
          },
        ],
      },
      {
        id: 'after',
        heading: 'After it',
        level: 2,
        startsPage: false,
        blocks: after === 0 ? [] : [{ kind: 'ticks', items: [{ key: 'after', text: 'All is done.' }] }],
      },
    ],
  };
}

const textsOn = (page: { readonly shapes: readonly { readonly kind: string; readonly text?: string }[] }) =>
  page.shapes.flatMap(({ kind, text }) => (kind === 'text' ? [text] : []));

describe('a list that is a little longer than its pages', () => {
  const pagesOf = (lines: number, after = 0) => bookPages(bookOf(lines, after), 'A4', measure);
  const counts = Array.from({ length: 100 }, (_, index) => pagesOf(index + 1).length);

  it('is laid closer, so that no page is begun for a few lines', () => {
    const firstOnTwo = counts.indexOf(2) + 1;
    expect(counts[firstOnTwo - 2]).toBe(1);
    // The first list that needs a second page has more on it than the lines that closer rows make room for.
    const pages = pagesOf(firstOnTwo);
    expect(usedHeight(pages[1]!)).toBeGreaterThan(0.15);
    for (let lines = firstOnTwo - 12; lines <= firstOnTwo + 2; lines++) {
      const laid = pagesOf(lines);
      for (const page of laid) assertReadable(page);
      const texts = laid.flatMap(textsOn);
      for (let line = 1; line <= lines; line++) {
        expect(texts.filter((text) => text === `panel ${line}`)).toHaveLength(1);
      }
    }
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
  });

  it('has its usual rows where pages are filled well', () => {
    const pitch = (lines: number) => {
      const shapes = pagesOf(lines)[0]!.shapes;
      const y = (name: string) => shapes.find((shape) => shape.kind === 'text' && shape.text === name);
      const [first, second] = [y('panel 1'), y('panel 2')];
      return first?.kind === 'text' && second?.kind === 'text' ? second.y - first.y : 0;
    };
    const lastOnOne = counts.lastIndexOf(1) + 1;
    expect(pitch(lastOnOne)).toBeLessThan(pitch(20));
    // Two pages full, with the caption on both.
    expect(pitch(88)).toBe(pitch(20));
  });

  it('has a short chapter after it on the same page while there is room, under its own name at the foot', () => {
    const one = pagesOf(10, 1);
    expect(one).toHaveLength(1);
    expect(textsOn(one[0]!)).toContain('A job · Job book · A list · After it');
    // Closer rows make room for it where the list alone just fills the page, and where not it has the rest of the list with it.
    const lastOnOne = counts.lastIndexOf(1) + 1;
    expect(pagesOf(lastOnOne - 9, 1)).toHaveLength(1);
    const two = pagesOf(lastOnOne, 1);
    expect(two).toHaveLength(2);
    expect(textsOn(two[1]!)).toContain('A job · A list · After it');
  });
});
