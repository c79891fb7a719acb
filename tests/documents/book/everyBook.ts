import { describe, expect, it } from 'vitest';
import { bookPages } from '../../../src/documents/book/bookPages.ts';
import { de } from '../../../src/documents/words/de.ts';
import { en } from '../../../src/documents/words/en.ts';
import type { Drawing } from '../../../src/drawing/drawing.ts';
import { type BookWishes, makeBookOf } from '../../../src/pipeline/makeBook.ts';
import { measure } from '../../drawing/drawingTools.ts';
import { type DemoOrder, plannedOrder } from '../../helpers/demoPlan.ts';
import { assertReadable, usedHeight } from './readable.ts';

const ways: readonly Pick<BookWishes, 'language' | 'lengths' | 'page'>[] = [
  { language: 'en', lengths: 'mm', page: 'A4' },
  { language: 'de', lengths: 'mm', page: 'A4' },
  { language: 'de', lengths: 'mm', page: 'A3' },
  { language: 'en', lengths: 'inches', page: 'A4' },
  { language: 'de', lengths: 'inches-32', page: 'A4' },
];

const textsOf = ({ shapes }: Drawing) => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : []));

/** Whether a box to tick stands just below a heading. */
function boxBelow({ shapes }: Drawing, heading: { readonly x: number; readonly y: number }): boolean {
  return shapes.some(
    (shape) =>
      shape.kind === 'rect' &&
      shape.layer === 'tables' &&
      Math.abs(shape.box.x0 - heading.x - 1) < 0.1 &&
      shape.box.y0 > heading.y &&
      shape.box.y0 < heading.y + 5,
  );
}

/** Looks through every page of the books of these orders, in every language, unit and size of paper. */
export function everyBookIsWellLaid(orders: readonly DemoOrder[]): void {
  describe.each(orders)('the job book of %s', (name) => {
    const { job, proven } = plannedOrder(name);

    describe.each(ways)('in $language and $lengths on $page', (wishes) => {
      const words = wishes.language === 'de' ? de : en;
      const pages = bookPages(makeBookOf(job, proven, measure, wishes), wishes.page, measure);

      it('has no text over text, nothing outside a page, and no word close to the number of a cut', () => {
        for (const page of pages) assertReadable(page);
      });

      it('says so where steps go on further left on their page', () => {
        for (const page of pages) {
          const texts = textsOf(page);
          const marks = texts.filter(
            ({ text, anchor, weight }) => /^\d+$/.test(text) && anchor === 'end' && weight === 'bold',
          );
          marks.slice(1).forEach((mark, index) => {
            const before = marks[index]!;
            if (Number(mark.text) !== Number(before.text) + 1 || mark.x > before.x - 10) return;
            const heading = texts.find(({ text }) => text === words.steps.goesOnHere(mark.text));
            const pointer = texts.find(({ text }) => text === words.steps.goesOn(mark.text));
            expect(heading?.y, page.title).toBeLessThan(mark.y);
            expect(pointer?.y, page.title).toBeGreaterThan(before.y);
          });
        }
      });

      it('speaks of what guides its saw, and of nothing else that could', () => {
        const text = pages.flatMap((page) => textsOf(page).map((one) => one.text)).join(' ');
        const isRail = job.groups.every(({ saw }) => saw.guidedBy === 'rail');
        const fence =
          /\b([Ff]ence|[Pp]ush stick|[Rr]iving knife|Anschlag|Schiebestock|Schiebeholz|Spaltkeil)/g;
        const rail = /\b(rail at|rail laid|[Ss]upport the rail|Schiene)\b/g;
        const said = (pattern: RegExp) => [...text.matchAll(pattern)].map(([word]) => word);
        expect(said(isRail ? rail : fence).length).toBeGreaterThan(1);
        expect(said(isRail ? fence : rail)).toEqual([]);
      });

      it('tears no size or count, and no figure from its unit', () => {
        const texts = pages.flatMap((page) => textsOf(page).map(({ text }) => text));
        expect(texts.filter((text) => /^(×|mm\b|m$|m²)|×$/.test(text))).toEqual([]);
      });

      it('says how many of a fitting a unit takes apart from its name, which may end in a number', () => {
        const texts = pages.flatMap((page) => textsOf(page).map(({ text }) => text)).join(' ');
        for (const { name, fittings } of job.ordered!.furniture.units) {
          if (fittings.length > 0) expect(texts).toContain(`${name}:\u00a0${fittings[0]!.count}`);
        }
      });

      it('needs one page for a unit of one panel', () => {
        if (wishes.page !== 'A4') return;
        const { title } = job.ordered!.order;
        const texts = pages.map((page) => textsOf(page).map(({ text }) => text));
        for (const { name, panels } of job.ordered!.furniture.units) {
          const own = texts.filter((all) => all.includes(`${title} · ${name}`));
          // What is marked out along the wall has its table beside the panel drawn alone.
          const isRectangle = panels.every(({ byHand }) => byHand?.outline === undefined);
          if (panels.length === 1 && isRectangle) expect(own.length, name).toBe(1);
        }
      });

      it('has each distance to drill on paper', () => {
        const said = pages.filter((page) =>
          textsOf(page).some(({ text }) => text === words.drawings.panel.noRoom),
        );
        expect(said.map(({ title }) => title)).toEqual([]);
      });

      it('breaks no heading of the table of masses, and has a row for each appliance', () => {
        const texts = pages.flatMap((page) => textsOf(page).map(({ text }) => text));
        expect(texts).toEqual(expect.arrayContaining([...words.mass.columns, words.appliances.heading]));
        const held = job.ordered!.furniture.units.flatMap((unit) => unit.appliances ?? []);
        expect(held.length).toBeGreaterThan(0);
        for (const { title } of held) expect(texts.join(' ')).toContain(title);
      });

      it('leaves no page nearly empty; only the checks before all is done may have one to themselves', () => {
        for (const page of pages) {
          expect(usedHeight(page), page.title).toBeGreaterThan(page === pages.at(-1) ? 0.2 : 0.25);
        }
      });

      it('has a title block on every drawing, no wider than 180 mm, with the job in it', () => {
        // ISO 7200: a title block is 180 mm wide at most; from a summary of the standard.
        const heads = words.drawings.page;
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
        pages.forEach((page, index) => {
          const texts = textsOf(page).map(({ text }) => text);
          const number = words.pageOf(index + 1, pages.length);
          expect(texts.filter((text) => text === number)).toHaveLength(1);
          expect(texts).not.toContain(words.drawings.page.page);
        });
      });

      it('parts no list of panels from its heading', () => {
        const found = pages.flatMap((page) =>
          textsOf(page)
            .filter(({ text, weight }) => text === words.plans.pieces && weight === 'bold')
            .map((heading) => ({ page, heading })),
        );
        expect(found).toHaveLength(proven.plan.groups.reduce((sum, { sheets }) => sum + sheets.length, 0));
        for (const { page, heading } of found) expect(boxBelow(page, heading), page.title).toBe(true);
      });
    });
  });
}
