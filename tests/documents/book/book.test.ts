import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import { pdfFromDrawings } from '../../../cli/papers/pdfFromDrawings.ts';
import { numberPanels } from '../../../src/documents/cuttingList.ts';
import { labelledPieces } from '../../../src/documents/panelStickerPieces.ts';
import { bookOf, demoJob, sha256 } from './demoBook.ts';
import { pdfText } from './pdfText.ts';
import { assertReadable } from './readable.ts';

const made = demoJob();
const book = bookOf(made);
const page = new JSDOM(book.html).window.document;
const panels = numberPanels(made.proven.plan);
const about = { title: book.title, language: 'en' };

describe('the job book as HTML', () => {
  it('has a box to tick for every panel, with its number, name, unit and size', () => {
    for (const { number, panel } of panels) {
      const boxes = [...page.querySelectorAll(`input[data-panel="${number}"]`)];
      expect(boxes).toHaveLength(panel.count);
      for (const box of boxes) {
        expect(box.closest('label')!.textContent).toContain(`${number}  ${panel.name}, ${panel.unit}`);
      }
    }
    expect(
      new Set([...page.querySelectorAll('input[data-tick]')].map((box) => box.getAttribute('data-tick')))
        .size,
    ).toBe(page.querySelectorAll('input[data-tick]').length);
  });

  it('lists every panel in the cutting list and every unit on a page', () => {
    const rows = page.querySelectorAll('#cutting-list tr[data-counts]');
    expect(rows).toHaveLength(panels.length);
    for (const unit of made.job.ordered!.furniture.units) expect(page.body.textContent).toContain(unit.name);
  });

  it('says what a plus or a stroke in the name of a piece is, where a plan has such a piece', () => {
    const plans = made.proven.plan.groups.flatMap((group, index) =>
      group.sheets.map((sheet) => ({ id: `plan-${index + 1}-${sheet.number}`, sheet })),
    );
    for (const { id, sheet } of plans) {
      const rest = sheet.steps.find(({ piece }) => piece.endsWith('+'))?.piece;
      const text = page.getElementById(id)!.textContent!;
      expect(text.includes('and all after it, in one piece')).toBe(rest !== undefined);
      if (rest !== undefined) expect(text).toContain(`“${rest}” is ${rest.slice(0, -1)} and all after it`);
      const [, first, last] = sheet.steps.flatMap(({ piece }) => /^([A-Z]+)-([A-Z]+)$/.exec(piece) ?? []);
      expect(text.includes('still in one piece')).toBe(first !== undefined);
      if (first !== undefined) expect(text).toContain(`“${first}-${last}” is ${first} to ${last}, still`);
    }
  });

  it('names every offcut to put back by the text of its label, with a box each', () => {
    const codes = labelledPieces(made.proven.plan, made.job.name)
      .filter((piece) => piece.is !== 'panel')
      .map(({ code }) => code);
    expect(codes.length).toBeGreaterThan(3);
    const rows = [...page.querySelectorAll('#offcuts tbody tr')];
    expect(rows.map((row) => row.querySelector('td')!.textContent!.split(';')[0]).sort()).toEqual(
      codes.sort(),
    );
    for (const row of rows) expect(row.querySelectorAll('input[data-tick]')).toHaveLength(1);
  });

  it('allows only its own style and script, by their hashes, and leans on no other file', () => {
    const policy = page.querySelector('meta[http-equiv]')!.getAttribute('content')!;
    expect(policy).toContain("default-src 'none'");
    const [style] = page.querySelectorAll('style');
    const script = page.querySelector('script:not([type])')!;
    expect(policy).toContain(`style-src 'sha256-${sha256(style!.textContent!)}'`);
    expect(policy).toContain(`script-src 'sha256-${sha256(script.textContent!)}'`);
    expect(page.querySelectorAll('[src], link, iframe, object, [style]')).toHaveLength(0);
    for (const link of page.querySelectorAll('a')) expect(link.getAttribute('href')).toMatch(/^#/);
    for (const element of page.querySelectorAll('*')) {
      for (const { name } of element.attributes) expect(name).not.toMatch(/^on/);
    }
  });

  it('takes every link to where it says', () => {
    for (const link of page.querySelectorAll('nav a')) {
      expect(page.querySelector(link.getAttribute('href')!)).not.toBeNull();
    }
  });

  it('shows hostile texts as texts', () => {
    const hostile = `</title><script>alert(1)</script><img src=x onerror='alert(2)'>"&amp; ]]> \\u202e`;
    const html = bookOf(
      demoJob(
        ['title: Demonstration order, long van', `title: ${JSON.stringify(hostile)}`],
        ['note: Invented. No such customer, van or price exists.', `note: ${JSON.stringify(hostile)}`],
      ),
    ).html;
    const document = new JSDOM(html).window.document;
    expect(document.querySelectorAll('img')).toHaveLength(0);
    expect(document.querySelectorAll('script')).toHaveLength(2);
    expect(document.querySelector('h1')!.textContent).toContain(`</title><script>alert(1)</script>`);
    expect(document.title).toContain('</title><script>');
  });

  it('warns of a cooker only where the order has one', () => {
    expect(page.querySelector('#cautions')!.textContent).toContain('cooker');
    const without = bookOf(demoJob(['cooker: two-burner', 'cooker: none'])).html;
    const cautions = new JSDOM(without).window.document.querySelector('#cautions')!.textContent;
    expect(cautions).not.toContain('cooker');
  });

  it('is the same for the same plan, byte for byte', () => {
    expect(bookOf(made).html).toBe(book.html);
  });
});

describe('the job book in German', () => {
  const german = new JSDOM(bookOf(made, { language: 'de' }).html).window.document;

  it('says so, and has no English sentence left outside the drawings', () => {
    expect(german.documentElement.lang).toBe('de');
    for (const svg of german.querySelectorAll('svg, script, style')) svg.remove();
    const english = /\b(the|piece|panel|sheet|fence|gives|edge|offcut|waste|done|found|count|finish)\b/i;
    const own = [...german.querySelectorAll('h2, h3, h4, th, p, li, button, caption, label')].filter(
      // Names of panels, units, roles and boards are those of the order and its library.
      (element) => !element.closest('ul.ticks, details, #found') && !element.matches('.gives, :has(li)'),
    );
    expect(own.length).toBeGreaterThan(100);
    // Pieces are called as in the plan file: `sheet 2`.
    const found = own
      .map((element) => element.textContent!.trim().replaceAll(/\bsheet\b( \d)?/g, ''))
      // Fittings, too, are called as in the library.
      .filter(
        (text) => english.test(text) && !/^(Zuerst |Zuletzt, [^:]+, )?Beschläge anbringen: /.test(text),
      );
    expect(found.filter((text) => !/^(Möbel|Vermerk|Fahrzeug|Säge): /.test(text))).toEqual([]);
  });

  it('has every panel as the English one has', () => {
    const keys = (document: Document) =>
      [...document.querySelectorAll('input[data-tick]')].map((box) => box.getAttribute('data-tick'));
    expect(keys(german)).toEqual(keys(page));
  });
});

describe('the job book on paper', () => {
  it('has no text over text and none outside the page', () => {
    for (const drawing of book.pages) assertReadable(drawing);
  });

  it('numbers its pages', async () => {
    const pages = pdfText(await pdfFromDrawings(book.pages, about));
    expect(pages).toHaveLength(book.pages.length);
    pages.forEach((text, index) => {
      expect(text).toContain(`page ${index + 1} of ${pages.length}`);
    });
  });

  it('has every panel in its text, in the cutting list and among the steps of a sheet', async () => {
    const text = pdfText(await pdfFromDrawings(book.pages, about)).join('\n');
    const flat = text.replace(/\s+/g, ' ');
    for (const { number, panel } of panels) {
      expect(text.split('\n')).toContain(String(number));
      expect(flat).toContain(`is panel ${number}, ${panel.name},`);
    }
  });

  it('is the same for the same plan, byte for byte, has its fonts inside, and is not too large with its page', async () => {
    const pdf = Buffer.from(await pdfFromDrawings(book.pages, about));
    expect(pdf.length + book.html.length).toBeLessThan(5_000_000);
    expect(pdf.equals(Buffer.from(await pdfFromDrawings(book.pages, about)))).toBe(true);
    const text = pdf.toString('latin1');
    expect(text.match(/\/FontFile2/g)).toHaveLength(2);
    expect(text).not.toMatch(/Helvetica|Times/);
  });
});
