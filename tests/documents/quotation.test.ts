import { describe, expect, it } from 'vitest';
import { printPercent, printTime } from '../../src/documents/quotation.ts';
import { quotationCsv, quotationPages, quoteOrder } from '../../src/pipeline/makeQuote.ts';
import { measure } from '../drawing/drawingTools.ts';
import { plannedOrder } from '../helpers/demoPlan.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { assertReadable } from './book/readable.ts';

const made = plannedOrder('demo-short');
const quoted = quoteOrder(made.job.ordered!, made.proven.plan);

function textsOf(language: string, of = quoted): string[][] {
  return quotationPages(of, measure, { date: '2026-01-31', language }).pages.map(({ shapes }) =>
    shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])),
  );
}

const printed = (minor: number) => (minor / 100).toFixed(2);

describe.each(['en', 'de'])('the pages of an estimate in %s', (language) => {
  const written = textsOf(language);
  const texts = written.flat();

  it('have every line with its number and amount, every sum, and what it is', () => {
    const { lines, sums } = quoted.quotation;
    for (const line of lines) {
      expect(texts).toContain(String(line.number));
      expect(texts).toContain(printed(line.amountMinor));
    }
    for (const sum of [sums.materialMinor, sums.workMinor, sums.netMinor, sums.vatMinor!, sums.totalMinor]) {
      expect(texts).toContain(`${printed(sum)} EUR`);
    }
    const whole = texts.join(' ');
    expect(whole).toContain(language === 'en' ? 'not an invoice' : 'keine Rechnung');
    expect(whole).toContain(language === 'en' ? 'charged whole' : 'ganz berechnet');
    // Thirty days from the end of January.
    expect(whole).toContain('2026-03-02');
    expect(whole).not.toMatch(/undefined|NaN|\[object/);
  });

  it('say which page of how many each is', () => {
    const of = language === 'en' ? 'page' : 'Seite';
    const last = language === 'en' ? 'of' : 'von';
    written.forEach((page, index) => {
      expect(page).toContain(`${of} ${index + 1} ${last} ${written.length}`);
    });
  });

  it('have no text on another or beyond the page', () => {
    const { pages } = quotationPages(quoted, measure, { date: '2026-01-31', language });
    for (const page of pages) assertReadable(page);
  });
});

describe('the list of an estimate', () => {
  it('has all lines, then the sums, each with the lines that it is the sum of', () => {
    const rows = readCsv(quotationCsv(quoted));
    const lines = rows.filter(({ line }) => line !== '');
    expect(lines).toHaveLength(quoted.quotation.lines.length);
    expect(rows.slice(lines.length).map(({ item }) => item)).toEqual([
      'material',
      'work',
      'extras',
      'mark-up',
      'net',
      'VAT',
      'total',
    ]);
    expect(lines.every((row) => row['price from'] !== '' && row['amount'] !== '')).toBe(true);
    expect(rows.at(-1)!['base lines']).toBe(`1–${lines.length}`);
  });

  it('says by how much sheets are charged, and who stated the tax', () => {
    const share = quoteOrder(made.job.ordered!, made.proven.plan, { sheets: 'share', vat: 700 });
    const rows = readCsv(quotationCsv(share));
    const sheets = rows.filter(({ unit }) => unit === 'share');
    expect(sheets.length).toBeGreaterThan(3);
    expect(sheets.some(({ quantity }) => !Number.isInteger(Number(quantity)))).toBe(true);
    expect(rows.find(({ item, section }) => item === 'VAT' && section === 'added')).toMatchObject({
      percent: '7',
      'price from': 'option --vat',
    });
    expect(textsOf('en', share).flat().join(' ')).toContain('charged by share');
  });
});

it('times and percentages are printed in the unit in which they are whole', () => {
  expect([0, 7500, 60_000, 90_000, 3_600_000, 5_400_000].map(printTime)).toEqual([
    '0 s',
    '7.5 s',
    '1 min',
    '90 s',
    '1 h',
    '90 min',
  ]);
  expect([1500, 750, 1925].map(printPercent)).toEqual(['15 %', '7.5 %', '19.25 %']);
});
