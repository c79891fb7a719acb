import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TextBlock } from '../../../src/documents/book/book.ts';
import { Flow, LARGER_SIZES, NoRoom, noMore, PAGE_SIZES } from '../../../src/documents/book/flow.ts';
import { layBlock } from '../../../src/documents/book/layBlock.ts';
import { stepsInWords } from '../../../src/documents/stepsInWords.ts';
import { de } from '../../../src/documents/words/de.ts';
import { en } from '../../../src/documents/words/en.ts';
import { type Drawing, textBox } from '../../../src/drawing/drawing.ts';
import { Sketch } from '../../../src/drawing/sketch.ts';
import { measure } from '../../drawing/drawingTools.ts';
import { bookOf, demoJob } from './demoBook.ts';
import { assertReadable } from './readable.ts';

const made = demoJob();
const { plan } = made.proven;

function textsOf(drawing: Drawing): string[] {
  return drawing.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
}

/** Sizes of pages, the shorter side first. */
function sizesOf(pages: readonly Drawing[]): string[] {
  const size = ({ widthMm: w, heightMm: h }: Drawing) => `${Math.min(w, h)} × ${Math.max(w, h)}`;
  return [...new Set(pages.map(size))];
}

const sheetHeadings = plan.groups.flatMap((group) =>
  group.sheets.map((sheet) => {
    const library = made.job.ordered!.library;
    const words = `${library.boards.get(group.board)!.title}, ${library.finishes.get(group.finish)!.title}`;
    return { group, sheet, heading: en.plans.plan(sheet.number, group.sheets.length, words) };
  }),
);

/** Pages of a chapter, by what stands at their foot. */
function pagesOf(pages: readonly Drawing[], heading: string): Drawing[] {
  return pages.filter((page) => textsOf(page).some((text) => text.endsWith(` · ${heading}`)));
}

/** All words of a page in the order written, as one text: sentences are broken over lines. */
const flat = (pages: readonly Drawing[]) =>
  pages.flatMap(textsOf).join(' ').replaceAll('\u00a0', ' ').replaceAll(/\s+/g, ' ');

describe('the job book on A4', () => {
  const { pages } = bookOf(made);

  it('is A4 throughout', () => expect(sizesOf(pages)).toEqual(['210 × 297']));

  it('has each cut plan on at most two pages, with every step of it once', () => {
    for (const { group, sheet, heading } of sheetHeadings) {
      const own = pagesOf(pages, heading);
      expect(own.length, heading).toBeGreaterThan(0);
      expect(own.length, heading).toBeLessThanOrEqual(2);
      const number = new Map(
        plan.groups.flatMap((each) => each.panels).map((panel, index) => [panel.id, index + 1]),
      );
      const text = flat(own);
      for (const { sentence } of stepsInWords(group, sheet, (id) => number.get(id)!, en)) {
        const found = text.split(sentence.replaceAll('\u00a0', ' ')).length - 1;
        expect(found, `${heading}: ${sentence}`).toBe(1);
      }
    }
  });

  it('has each unit on its own pages, with its panels and its fittings', () => {
    const library = made.job.ordered!.library;
    for (const unit of made.job.ordered!.furniture.units) {
      const own = flat(pagesOf(pages, unit.name));
      for (const panel of unit.panels) expect(own).toContain(panel.name);
      for (const { fitting } of unit.fittings) expect(own).toContain(library.fittings.get(fitting)!.title);
    }
  });
});

describe('units on A4', () => {
  const { pages } = bookOf(made);

  it('take one page where they have few panels, and two where they have more', () => {
    const count = (unit: string) => pagesOf(pages, unit).length;
    expect(['left worktop', 'side table'].map(count)).toEqual([1, 1]);
    expect(['base cupboard', 'wardrobe'].map(count)).toEqual([2, 2]);
  });
});

describe('the job book on A3', () => {
  const { pages } = bookOf(made, { page: 'A3' });

  it('is A3 throughout, and readable', () => {
    expect(sizesOf(pages)).toEqual(['297 × 420']);
    for (const page of pages) assertReadable(page);
  });

  it('has each cut plan with all its steps on one page', () => {
    for (const { sheet, heading } of sheetHeadings) {
      const own = pagesOf(pages, heading);
      expect(own, heading).toHaveLength(1);
      const texts = textsOf(own[0]!);
      sheet.steps.forEach((_, index) => {
        expect(texts.filter((text) => text === String(index + 1)).length).toBeGreaterThan(0);
      });
    }
  });
});

describe('the job book in inches', () => {
  it('is readable, with the mm of every setting', () => {
    for (const lengths of ['inches', 'inches-32'] as const) {
      for (const page of bookOf(made, { lengths }).pages) assertReadable(page);
    }
    for (const { group, sheet } of sheetHeadings) {
      const inMm = stepsInWords(group, sheet, () => 1, en);
      stepsInWords(group, sheet, () => 1, en, 'inches').forEach(({ sentence }, index) => {
        const [, mm] = /\((\d+\.\d)\)/.exec(sentence) ?? [];
        expect(inMm[index]!.sentence).toMatch(new RegExp(`(?:fence|trim) ${mm}[, ]`));
      });
    }
  });
});

describe('the job book in German', () => {
  /** Every fixed text of a language, by where it stands. */
  function fixedTexts(words: unknown, path = ''): [string, string][] {
    if (typeof words === 'string') return [[path, words]];
    if (typeof words !== 'object' || words === null) return [];
    return Object.entries(words).flatMap(([key, value]) => fixedTexts(value, `${path}.${key}`));
  }

  it('has no English text on its pages, drawings included, and is readable', () => {
    const german = new Map(fixedTexts(de));
    const kept = new Set(german.values());
    // A single word may also be the name of a panel or a unit, which are those of the library.
    const english = new Set(
      fixedTexts(en).flatMap(([path, text]) =>
        german.get(path) !== text && !kept.has(text) && (text.includes(' ') || /^[A-Z]{2}/.test(text))
          ? [text]
          : [],
      ),
    );
    expect(english.size).toBeGreaterThan(80);
    for (const page of bookOf(made, { language: 'de' }).pages) {
      assertReadable(page);
      expect(textsOf(page).filter((text) => english.has(text))).toEqual([]);
    }
  });
});

describe('texts laid into rooms of a page', () => {
  const word = fc.stringMatching(/^[a-zäß]{1,14}$/);
  const sentence = fc.array(word, { minLength: 1, maxLength: 25 }).map((words) => words.join(' '));
  const block: fc.Arbitrary<TextBlock> = fc.oneof(
    sentence.map((text): TextBlock => ({ kind: 'paragraph', text })),
    sentence.map((text): TextBlock => ({ kind: 'heading', text })),
    fc.array(sentence, { maxLength: 6 }).map((items): TextBlock => ({ kind: 'list', items })),
    fc
      .array(sentence, { minLength: 1, maxLength: 30 })
      .map(
        (items): TextBlock => ({ kind: 'ticks', items: items.map((text, key) => ({ key: `${key}`, text })) }),
      ),
    fc.array(fc.tuple(sentence, sentence), { minLength: 1, maxLength: 20 }).map(
      (rows): TextBlock => ({
        kind: 'table',
        caption: 'caption',
        columns: [
          { heading: 'one', weight: 2 },
          { heading: 'two', weight: 1, anchor: 'end' },
        ],
        rows: rows.map((cells) => ({ cells })),
      }),
    ),
  );
  const rooms = fc.array(
    fc.record({ wide: fc.integer({ min: 40, max: 180 }), high: fc.integer({ min: 3, max: 120 }) }),
    {
      minLength: 1,
      maxLength: 4,
    },
  );
  const wordsOf = (of: TextBlock): string[] => {
    switch (of.kind) {
      case 'paragraph':
      case 'heading':
        return of.text.split(' ');
      case 'list':
        return of.items.flatMap((item) => item.split(' '));
      case 'ticks':
        return of.items.flatMap(({ text }) => text.split(' '));
      case 'table':
        return of.rows.flatMap(({ cells }) => cells.flatMap((cell) => cell.split(' ')));
      default:
        return [];
    }
  };

  it('refuse a row of a table that is higher than the last of a few low rooms', () => {
    const table = {
      kind: 'table',
      caption: 'caption',
      columns: [
        { heading: 'one', weight: 2 },
        { heading: 'two', weight: 1, anchor: 'end' },
      ],
      rows: [{ cells: ['ä', 'a'] }],
    } as const;
    const places = [10, 5, 5, 3].map((high, index) => ({
      x0: index * 200,
      y0: 10,
      x1: index * 200 + 40,
      y1: 10 + high,
    }));
    const flow = new Flow(measure, LARGER_SIZES, { sketch: new Sketch(measure), rooms: places }, noMore);
    expect(() => layBlock(flow, table, en)).toThrow(NoRoom);
  });

  it('stay inside their rooms and off each other, and none is lost, or all are refused', () => {
    fc.assert(
      fc.property(fc.array(block, { minLength: 1, maxLength: 5 }), rooms, (blocks, sizes) => {
        const sketch = new Sketch(measure);
        const places = sizes.map(({ wide, high }, index) => ({
          x0: index * 200,
          y0: 10,
          x1: index * 200 + wide,
          y1: 10 + high,
        }));
        try {
          const flow = new Flow(measure, LARGER_SIZES, { sketch, rooms: places }, noMore);
          for (const each of blocks) layBlock(flow, each, en);
        } catch (error) {
          if (error instanceof NoRoom) return;
          throw error;
        }
        const texts = sketch.shapes.filter((shape) => shape.kind === 'text');
        for (const text of texts) {
          const box = textBox(text);
          const inside = places.some(
            (room) =>
              box.x0 >= room.x0 - 0.01 &&
              box.x1 <= room.x1 + 0.5 &&
              box.y0 >= room.y0 - 1 &&
              box.y1 <= room.y1 + 1,
          );
          if (!inside) throw new Error(`outside every room: ${text.text}`);
        }
        const drawing = {
          widthMm: 1000,
          heightMm: 1000,
          title: 'rooms',
          description: '',
          shapes: sketch.shapes,
        };
        assertReadable(drawing);
        const written = texts
          .map(({ text }) => text)
          .join('')
          .replaceAll(' ', '');
        for (const each of blocks) for (const one of wordsOf(each)) expect(written).toContain(one);
      }),
      { numRuns: 150 },
    );
  });

  it('go on over pages, however many it takes', () => {
    fc.assert(
      fc.property(fc.array(block, { minLength: 5, maxLength: 20 }), (blocks) => {
        const pages: Sketch[] = [];
        const more = () => {
          if (pages.length > 200) throw new Error('no end of pages');
          const sketch = new Sketch(measure);
          pages.push(sketch);
          return { sketch, rooms: [{ x0: 20, y0: 15, x1: 120, y1: 100 }] };
        };
        const flow = new Flow(measure, PAGE_SIZES, more(), more);
        for (const each of blocks) layBlock(flow, each, en);
        pages.forEach(({ shapes }) => {
          assertReadable({ widthMm: 140, heightMm: 110, title: 'page', description: '', shapes });
        });
      }),
      { numRuns: 60 },
    );
  });
});
