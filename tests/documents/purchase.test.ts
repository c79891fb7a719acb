import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { purchaseFindings } from '../../src/buying/findings.ts';
import { makePurchase } from '../../src/buying/index.ts';
import { paperPages } from '../../src/documents/purchase/paperPages.ts';
import { purchasePapers } from '../../src/documents/purchase/purchasePapers.ts';
import { purchaseTables } from '../../src/documents/purchase/purchaseTables.ts';
import { csvFromTable } from '../../src/documents/table.ts';
import { wordsOf } from '../../src/documents/words/index.ts';
import type { Spare } from '../../src/model/purchase.ts';
import { offer, sheetNeed } from '../buying/offers.ts';
import { longName, purchaseReport } from '../buying/purchaseReport.ts';
import { measure } from '../drawing/drawingTools.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { assertReadable } from './book/readable.ts';

const spares: Spare[] = [
  { kind: 'none' },
  { kind: 'sheets', count: 1, why: longName },
  { kind: 'percent of bought', hundredths: 1250, why: 'knots' },
];

describe('the papers of a purchase', () => {
  it.each(
    (['en', 'de'] as const).flatMap((language) =>
      ([1, 70] as const).flatMap((count) =>
        spares.map((spare, index) => [language, count, index, spare] as const),
      ),
    ),
  )('in %s with %s kinds of sheets (%s) can be read on every page', (language, count, _, spare) => {
    const words = wordsOf(language);
    for (const units of ['mm', 'inches'] as const) {
      for (const [name, paper] of purchasePapers(purchaseReport(count, spare), { words, units })) {
        const pages = paperPages(paper, words, measure);
        if (count === 70 && name !== 'request-post' && name !== 'request-no-supplier')
          expect(pages.length).toBeGreaterThan(1);
        pages.forEach((page, index) => {
          assertReadable(page);
          const texts = page.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
          expect(texts).toContain(words.drawings.page.of(index + 1, pages.length));
          expect(texts).toContain('purchase-march');
        });
      }
    }
  });

  it('say for whom it is too late, what is below the least order and why something is spare', () => {
    const text = (language: string) => {
      const papers = purchasePapers(purchaseReport(3, spares[2]!, '2026-03-05'), {
        words: wordsOf(language),
        units: 'mm',
      });
      return JSON.stringify(papers.get('purchase')!.blocks);
    };
    expect(text('en')).toContain('Too late for van-2: it had to be ordered by 2026-03-03.');
    expect(text('en')).toContain('12.5 % of what is bought, rounded up');
    expect(text('en')).toContain('Reason: knots');
    expect(text('en')).toContain('below the least order value of 100000.00 EUR');
    expect(text('en')).toContain(
      '25.0 % of the area of the sheets is not panels, which is 33.3 % of the area of the panels',
    );
    expect(text('de')).toContain('Zu spät für van-2');
    expect(text('de')).toContain('Grund: knots');
  });

  it('ask each supplier for what is ordered of them', () => {
    const papers = purchasePapers(purchaseReport(2, spares[0]!), { words: wordsOf('en'), units: 'mm' });
    expect([...papers.keys()]).toEqual(['purchase', 'request-yard', 'request-post', 'request-no-supplier']);
    const rows = (name: string) =>
      papers
        .get(name)!
        .blocks.flatMap((block) => (block.kind === 'table' ? block.rows.map(({ cells }) => cells) : []));
    expect(rows('request-post')).toEqual([
      ['1', 'grey-19', 'Grey edging', '2 rolls', '0.55', '55.00'],
      ['', '', '', '', 'total EUR', '55.00'],
    ]);
    expect(rows('request-no-supplier')[0]).toEqual(['1', 'screw', 'Screw', '2 × 200', '0.05', '20.00']);
    // One of the sheets is in the store; two together would not reach the price of three.
    expect(rows('request-yard').map((cells) => cells.slice(3))).toEqual([
      ['1', '111.50', '111.50'],
      ['1', '111.50', '111.50'],
      ['', 'goods', '223.00'],
      ['', 'delivery', '45.00'],
      ['', 'total EUR', '268.00'],
    ]);
  });
});

describe('the lists of a purchase', () => {
  const tables = purchaseTables(purchaseReport(3, spares[1]!));
  const described = readFileSync(new URL('../../src/documents/LISTS.md', import.meta.url), 'utf8');

  it.each(tables.map((table) => [table.name, table] as const))(
    '%s is described, column by column',
    (name, table) => {
      const start = described.indexOf(`## Of a purchase: \`${name}.csv\``);
      expect(start).toBeGreaterThan(0);
      const end = described.indexOf('\n## ', start);
      const rows = [
        ...described.slice(start, end < 0 ? undefined : end).matchAll(/^\| ([a-z][a-z0-9, ]*) \|/gm),
      ];
      expect(rows.slice(1).flatMap((row) => row[1]!.split(', '))).toEqual(
        table.columns.map(({ key }) => key),
      );
    },
  );

  it('have what is ordered, and can be added up', () => {
    const csv = (name: string) => readCsv(csvFromTable(tables.find((table) => table.name === name)!));
    // 60.200001 m less 10 m are two rolls of 50 m; metres are rounded up.
    expect(csv('purchase-edging')).toMatchObject([
      {
        needed: '60.201',
        'from store': '10.000',
        'to buy': '50.201',
        roll: '50',
        rolls: '2',
        metres: '100.000',
        price: '55.00',
        'order by': '2026-03-03',
      },
    ]);
    expect(csv('purchase-fittings')).toMatchObject([
      { needed: '210', pack: '200', packs: '2', count: '400', supplier: '' },
    ]);
    const [first, second, third] = csv('purchase-sheets');
    expect(first).toMatchObject({
      needed: '1',
      spare: '1',
      count: '3',
      'price each': '70.00',
      'order by': '2026-03-16',
    });
    expect(second).toMatchObject({ 'from store': '1', 'to buy': '2' });
    expect(third).toMatchObject({ 'kept for others': '4' });
    const suppliers = csv('purchase-suppliers');
    const goods = suppliers.reduce((sum, row) => sum + Number(row['goods']), 0);
    const all = csv('purchase-ways').find((row) => row['board'] === 'all')!;
    expect(Number(all['goods'])).toBeCloseTo(goods);
    expect(csv('purchase-ways')[0]).toMatchObject({ 'waste of sheets': '25.0', 'waste of panels': '33.3' });
  });
});

describe('what a buyer is told', () => {
  it('names what cannot be had, and how much', () => {
    const few = sheetNeed(5, { offers: [offer({ most: 3 })] });
    const none = sheetNeed(2, { offers: [] });
    const made = makePurchase([few, none], {
      today: '2026-03-02',
      spare: { kind: 'none' },
      suppliers: new Map(),
      freeDays: new Set(),
      starts: new Map(),
    });
    expect(purchaseFindings(made, 'EUR')).toMatchObject([
      { code: 'too-little-sold', severity: 'error', found: '2 missing', expected: '5 to buy' },
      { code: 'too-little-sold', message: 'Nobody in the library sells Grey ply, 2500 × 1250.' },
    ]);
  });

  it('is warned of what comes too late and of orders that are too small', () => {
    const { chosen } = purchaseReport(1, spares[0]!, '2026-03-05');
    expect(
      purchaseFindings(chosen.purchase, 'EUR').map(({ code, severity }) => `${severity} ${code}`),
    ).toEqual(['warning ordered-too-late', 'warning below-least-order']);
  });
});
