import { describe, expect, it } from 'vitest';
import type { Column, TextBlock } from '../../../src/documents/book/book.ts';
import { Flow, noMore, PAGE_SIZES } from '../../../src/documents/book/flow.ts';
import { layTable } from '../../../src/documents/book/flowTable.ts';
import { Sketch } from '../../../src/drawing/sketch.ts';
import { measure } from '../../drawing/drawingTools.ts';

type Table = Extract<TextBlock, { kind: 'table' }>;

function laid(columns: readonly Column[], rows: readonly (readonly string[])[], wide = 100) {
  const sketch = new Sketch(measure);
  const rooms = [{ x0: 20, y0: 15, x1: 20 + wide, y1: 280 }];
  const table: Table = {
    kind: 'table',
    caption: 'Panels',
    columns,
    rows: rows.map((cells) => ({ cells })),
  };
  layTable(new Flow(measure, PAGE_SIZES, { sketch, rooms }, noMore), table);
  return sketch.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : []));
}

const size = (text: string) => text.replaceAll(' ', '\u00a0');

describe('a table of the book', () => {
  const columns: readonly Column[] = [
    { heading: 'panel', weight: 4 },
    { heading: 'size', weight: 1 },
    { heading: 'let into', weight: 3 },
    { heading: 'kg', weight: 1, anchor: 'end' },
  ];

  it('breaks no size while other columns have room to spare', () => {
    const texts = laid(columns, [
      ['left side', size('828.4 × 502.8'), '', '3.4'],
      ['bottom', size('347.6 × 502.8'), '6, 7', '1.4'],
    ]).map(({ text }) => text);
    for (const whole of ['828.4 × 502.8', '347.6 × 502.8', '3.4', '1.4', 'left side', 'let into', 'kg']) {
      expect(texts).toContain(
        size(whole) === whole ? whole : texts.find((text) => size(text) === size(whole)),
      );
    }
    expect(texts.filter((text) => size(text) === size('828.4 × 502.8'))).toHaveLength(1);
  });

  it('has its caption and its headings again on each page that it goes on', () => {
    const rows = Array.from({ length: 150 }, (_, index) => [`panel ${index}`, '1 × 1', '', '1']);
    const sketch = new Sketch(measure);
    const room = { x0: 20, y0: 15, x1: 120, y1: 280 };
    let pages = 1;
    const more = () => {
      pages += 1;
      return { sketch, rooms: [room] };
    };
    const table: Table = {
      kind: 'table',
      caption: 'Birch, grey',
      columns,
      rows: rows.map((cells) => ({ cells })),
    };
    layTable(new Flow(measure, PAGE_SIZES, { sketch, rooms: [room] }, more), table);
    const texts = sketch.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    expect(pages).toBeGreaterThan(1);
    expect(texts.filter((text) => text === 'Birch, grey')).toHaveLength(pages);
    expect(texts.filter((text) => text === 'let into')).toHaveLength(pages);
  });

  it('keeps a sum on a page with something that it adds up', () => {
    const pagesOf = (lines: number) => {
      const room = { x0: 20, y0: 15, x1: 120, y1: 100 };
      const pages = [new Sketch(measure)];
      const more = () => {
        pages.push(new Sketch(measure));
        return { sketch: pages.at(-1)!, rooms: [room] };
      };
      const rows = Array.from({ length: lines }, (_, index) => ({ cells: [`row ${index}`, '', '', '1'] }));
      const sum = { cells: ['all together', '', '', String(lines)] };
      const table: Table = { kind: 'table', caption: 'Mass', columns, rows: [...rows, sum], sum: true };
      layTable(new Flow(measure, PAGE_SIZES, { sketch: pages[0]!, rooms: [room] }, more), table);
      return pages.map(({ shapes }) =>
        shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])),
      );
    };
    const counts = new Set<number>();
    for (let lines = 1; lines <= 40; lines++) {
      const pages = pagesOf(lines);
      counts.add(pages.length);
      const last = pages.at(-1)!;
      expect(last, `${lines} rows`).toContain('all together');
      expect(last, `${lines} rows`).toContain(`row ${lines - 1}`);
      const told = pages.flat().filter((text) => /^row /.test(text));
      expect(told).toEqual(Array.from({ length: lines }, (_, index) => `row ${index}`));
    }
    expect(counts).toContain(3);
  });

  it('keeps sizes and figures whole where a list of names must be broken', () => {
    const names =
      'base cupboard 2; flap cupboard 2; fridge housing 2; wardrobe 5; sink cupboard 4; bed base 2';
    const texts = laid(columns, [['left side', size('1750.4 × 632.8'), names, '12.4']]).map(
      ({ text }) => text,
    );
    expect(texts.map(size)).toContain(size('1750.4 × 632.8'));
    expect(texts).toContain('12.4');
    expect(texts).toContain('left side');
    expect(texts.filter((text) => names.includes(text) && text.length > 5).join(' ')).toContain('wardrobe 5');
  });

  it('breaks no word of a heading while a cell of several words can be broken', () => {
    const headings: readonly Column[] = [
      { heading: 'Platte und Oberfläche', weight: 8 },
      { heading: 'Durchgänge', weight: 1, anchor: 'end' },
      { heading: 'Anschlag gestellt', weight: 1, anchor: 'end' },
      { heading: 'schwerstes Stück', weight: 1, anchor: 'end' },
    ];
    const board = 'Poplar plywood 15 mm, laminated on both faces, Pale grey';
    const texts = laid(headings, [[board, '1', '19', '30.3 kg']]).map(({ text }) => text);
    for (const word of ['Durchgänge', 'Anschlag', 'gestellt', 'schwerstes', 'Stück'])
      expect(texts).toContain(word);
  });

  it('has its columns where their weights set them when all cells have room there', () => {
    const rows = (last: string) => [['a', 'b', 'c', last]];
    const places = (texts: ReturnType<typeof laid>) =>
      texts.filter(({ text }) => columns.some(({ heading }) => heading === text)).map(({ x }) => x);
    expect(places(laid(columns, rows('1')))).toEqual(places(laid(columns, rows('2.25'))));
    const [panel, second, third] = places(laid(columns, rows('1')));
    expect(second! - panel!).toBeCloseTo((100 * 4) / 9);
    expect(third! - second!).toBeCloseTo(100 / 9);
  });
});
