import { describe, expect, it } from 'vitest';
import { bookPages } from '../../../src/documents/book/bookPages.ts';
import { de } from '../../../src/documents/words/de.ts';
import { en } from '../../../src/documents/words/en.ts';
import { type BookWishes, makeBookOf } from '../../../src/pipeline/makeBook.ts';
import { measure } from '../../drawing/drawingTools.ts';
import { demoOrders, plannedOrder } from '../../helpers/demoPlan.ts';
import { assertReadable, usedHeight } from './readable.ts';

/** Each order in one of these ways; the books of `demo-long` are read in all of them elsewhere. */
const ways: readonly Pick<BookWishes, 'language' | 'lengths' | 'page'>[] = [
  { language: 'en', lengths: 'mm', page: 'A4' },
  { language: 'de', lengths: 'mm', page: 'A3' },
  { language: 'en', lengths: 'inches', page: 'A4' },
  { language: 'de', lengths: 'inches-32', page: 'A4' },
];

describe.each(demoOrders.map((name, index) => [name, ways[index % ways.length]!] as const))(
  'the job book of %s',
  (name, wishes) => {
    const { job, proven } = plannedOrder(name);
    const pages = bookPages(makeBookOf(job, proven, measure, wishes), wishes.page, measure);

    it('has no text over text and none outside a page', () => {
      for (const page of pages) assertReadable(page);
    });

    it('breaks no heading of the table of masses, and has a row for each appliance', () => {
      const texts = pages.flatMap(({ shapes }) =>
        shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])),
      );
      const { mass, appliances } = wishes.language === 'de' ? de : en;
      expect(texts).toEqual(expect.arrayContaining([...mass.columns, appliances.heading]));
      const held = job.ordered!.furniture.units.flatMap((unit) => unit.appliances ?? []);
      expect(held.length).toBeGreaterThan(0);
      for (const { title } of held) expect(texts.join(' ')).toContain(title);
    });

    it('leaves no page nearly empty', () => {
      for (const page of pages) expect(usedHeight(page), page.title).toBeGreaterThan(0.2);
    });

    it('has a title block on every drawing, no wider than 180 mm, with the job in it', () => {
      // ISO 7200: a title block is 180 mm wide at most; from a summary of the standard.
      const heads = (wishes.language === 'de' ? de : en).drawings.page;
      let drawings = 0;
      for (const { shapes } of pages) {
        const frames = shapes.filter(({ kind, layer }) => kind === 'rect' && layer === 'frame');
        const blocks = shapes.flatMap((shape) =>
          shape.kind === 'rect' && shape.layer === 'title block' ? [shape.box.x1 - shape.box.x0] : [],
        );
        const texts = shapes.flatMap((shape) =>
          shape.kind === 'text' && shape.layer === 'title block' ? [shape.text] : [],
        );
        expect(blocks).toHaveLength(frames.length);
        for (const wide of blocks) expect(wide).toBeLessThanOrEqual(180);
        for (const head of [heads.workshop, heads.job, heads.document, heads.date]) {
          expect(texts.filter((text) => text === head)).toHaveLength(frames.length);
        }
        drawings += frames.length;
      }
      expect(drawings).toBeGreaterThan(20);
    });

    it('numbers each page once, at its foot', () => {
      const words = wishes.language === 'de' ? de : en;
      pages.forEach((page, index) => {
        const texts = page.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
        const number = words.pageOf(index + 1, pages.length);
        expect(texts.filter((text) => text === number)).toHaveLength(1);
        expect(texts).not.toContain(words.drawings.page.page);
      });
    });
  },
);
