import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawCutPlan } from '../../src/drawing/cutPlan.ts';
import { boxesOverlap, type Drawing, type TextShape, textBox } from '../../src/drawing/drawing.ts';
import { plainText } from '../../src/drawing/lettering.ts';
import { drawOverview } from '../../src/drawing/overview.ts';
import { measure, toSvg, window, words } from './drawingTools.ts';
import { emptyGroup, panelOf, randomPlan, stripPlan } from './planFixtures.ts';

/** ISO 3098 height of capitals of the smallest lettering in mm, and DejaVu's capitals as a part of the font size. */
const LEAST_LETTERING_MM = 1.8;
const CAPITALS = 0.729;

const FRAME = { x0: 20, y0: 10, x1: 287, y1: 200 };

function texts(drawing: Drawing): TextShape[] {
  return drawing.shapes.filter((shape) => shape.kind === 'text');
}

function overlapsOf(drawing: Drawing): string[] {
  const all = texts(drawing).map((text) => ({ text, box: textBox(text) }));
  const found: string[] = [];
  all.forEach((a, index) => {
    for (const b of all.slice(index + 1)) {
      // Letters may touch the line box of a neighbour by a hair; ink is well inside it.
      const box = { x0: a.box.x0 + 0.05, y0: a.box.y0 + 0.05, x1: a.box.x1 - 0.05, y1: a.box.y1 - 0.05 };
      if (boxesOverlap(box, b.box)) found.push(`${a.text.text} | ${b.text.text}`);
    }
  });
  return found;
}

function outsideFrame(drawing: Drawing): string[] {
  const found: string[] = [];
  const check = (what: string, x0: number, y0: number, x1: number, y1: number) => {
    const slack = 1e-6;
    const out =
      x0 < FRAME.x0 - slack || y0 < FRAME.y0 - slack || x1 > FRAME.x1 + slack || y1 > FRAME.y1 + slack;
    if (out) found.push(`${what} ${x0} ${y0} ${x1} ${y1}`);
  };
  for (const shape of drawing.shapes) {
    if (shape.kind === 'text') {
      const box = textBox(shape);
      check(shape.text, box.x0, box.y0, box.x1, box.y1);
    } else if (shape.kind === 'rect') check('rect', shape.box.x0, shape.box.y0, shape.box.x1, shape.box.y1);
    else if (shape.kind === 'line') {
      check(
        'line',
        Math.min(shape.x0, shape.x1),
        Math.min(shape.y0, shape.y1),
        Math.max(shape.x0, shape.x1),
        Math.max(shape.y0, shape.y1),
      );
    } else if (shape.kind === 'lines') {
      for (const [x0, y0, x1, y1] of shape.segments) {
        check('lines', Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
      }
    } else if (shape.kind === 'rects') {
      for (const { x0, y0, x1, y1 } of shape.boxes) check('rects', x0, y0, x1, y1);
    } else if (shape.kind === 'circle') {
      const { x, y, radiusMm } = shape;
      check('circle', x - radiusMm, y - radiusMm, x + radiusMm, y + radiusMm);
    } else for (const [x, y] of shape.points) check('polygon', x, y, x, y);
  }
  return found;
}

const seeds = fc.integer({ min: 1, max: 1_000_000 });

describe('a cut plan on paper', () => {
  it('never writes one text over another', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { group, sheet } = randomPlan(seed);
        for (const page of drawCutPlan(group, sheet, { measure, words, job: 'job' })) {
          expect(overlapsOf(page)).toEqual([]);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('keeps everything inside the frame and no lettering below 1.8 mm', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { group, sheet } = randomPlan(seed);
        for (const page of drawCutPlan(group, sheet, { measure, words, job: 'job'.repeat(60) })) {
          expect(outsideFrame(page)).toEqual([]);
          for (const text of texts(page)) {
            expect(text.sizeMm * CAPITALS).toBeGreaterThanOrEqual(LEAST_LETTERING_MM - 0.005);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('lists every cut once, in order', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { group, sheet } = randomPlan(seed);
        const pages = drawCutPlan(group, sheet, { measure, words, job: 'job' });
        const listed = pages.flatMap((page) =>
          texts(page)
            .filter((text) => text.layer === 'tables' && text.anchor === 'end' && text.weight === 'bold')
            .flatMap((text) => {
              const [from, to] = text.text.split('–').map(Number) as [number, number?];
              return Array.from({ length: (to ?? from) - from + 1 }, (_, i) => from + i);
            }),
        );
        expect(listed).toEqual(sheet.steps.map((_, index) => index + 1));
      }),
      { numRuns: 40 },
    );
  });

  it('says the number of a panel once where it is the mark of its name too', () => {
    let beside = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const { group, sheet } = randomPlan(seed);
        const numbers = new Map(group.panels.map(({ id }, index) => [id, index + 101]));
        const [page] = drawCutPlan(group, sheet, { measure, words, job: 'job', numbers });
        const onDrawing = texts(page!).filter((text) => text.layer === 'panels');
        for (const mark of onDrawing.filter(({ text }) => /^1\d\d$/.test(text))) {
          const next = onDrawing.filter(
            (text) =>
              text !== mark &&
              text.reads === mark.reads &&
              (mark.reads === 'up' ? text.x === mark.x : text.y === mark.y),
          );
          for (const { text } of next) expect(text.startsWith(`${mark.text} `)).toBe(false);
          beside += next.filter(({ text }) => /^[a-z]/.test(text)).length;
        }
      }),
      { numRuns: 40 },
    );
    expect(beside).toBeGreaterThan(0);
  });

  it('names every panel on the drawing or by a mark that the key explains', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const { group, sheet } = randomPlan(seed);
        const pages = drawCutPlan(group, sheet, { measure, words, job: 'job' });
        const onDrawing = texts(pages[0]!).filter((text) => text.layer === 'panels');
        const marks = onDrawing.filter((text) => /^[a-z]{1,2}$/.test(text.text) && text.weight === 'bold');
        const key = pages.flatMap(texts).filter((text) => text.layer === 'tables');
        for (const mark of marks) {
          expect(key.some((text) => text.text === mark.text && text.weight === 'bold')).toBe(true);
        }
        const letters = (all: readonly TextShape[]) =>
          all
            .map((text) => text.text)
            .join('')
            .replaceAll(' ', '');
        const said = letters(onDrawing) + letters(key);
        for (const { name } of group.panels) expect(said).toContain(plainText(name).replaceAll(' ', ''));
        const numbered = texts(pages[0]!).filter((text) => text.layer === 'numbers').length;
        if (numbered < sheet.steps.length) expect(letters(key)).toContain('Noroomforthenumbersof');
      }),
      { numRuns: 40 },
    );
  });

  it('holds words of any length, from any order', () => {
    const { group, sheet } = randomPlan(4);
    const long = 'Wide Words '.repeat(27).trim();
    const unbroken = 'W'.repeat(300);
    const rename = new Map<string, string>();
    const renamed = (name: string) => {
      if (!rename.has(name)) rename.set(name, `${unbroken.slice(4)}${rename.size + 1000}`);
      return rename.get(name)!;
    };
    const odd = {
      ...group,
      board: long,
      finish: unbroken,
      saw: { ...group.saw, name: long },
      runs: [{ name: long, follows: 'length' as const, panels: group.panels.slice(0, 2).map((p) => p.id) }],
      panels: group.panels.map((panel, index) => ({
        ...panel,
        name: index % 2 === 0 ? long : unbroken,
        unit: unbroken,
        order: `${long} ${index % 3}`,
        edging: { alongLength: [unbroken, null] as [string, null], alongWidth: [null, null] as [null, null] },
      })),
    };
    const plan = {
      ...sheet,
      start: renamed(sheet.start),
      steps: sheet.steps.map((step) =>
        step.cut === 'trim'
          ? { ...step, piece: renamed(step.piece), leaves: renamed(step.leaves) }
          : { ...step, piece: renamed(step.piece), gives: step.gives.map(renamed) },
      ),
      pieces: sheet.pieces.map((piece) => ({ ...piece, piece: renamed(piece.piece) })),
    };
    const pages = drawCutPlan({ ...odd, sheets: [plan] }, plan, {
      measure,
      words,
      job: long,
      owner: unbroken,
    });
    for (const page of pages) {
      expect(overlapsOf(page)).toEqual([]);
      expect(outsideFrame(page)).toEqual([]);
    }
  });

  it('draws a sheet of hundreds of small pieces without a text over another', () => {
    const { group, sheet } = stripPlan([
      { name: 'block', unit: 'toys', size: [60, 40], grain: 'none', count: 400 },
      { name: 'slip', unit: 'toys', size: [30, 8], grain: 'none', count: 200 },
    ]);
    const pages = drawCutPlan(group, sheet, { measure, words, job: 'job' });
    for (const page of pages) {
      expect(overlapsOf(page)).toEqual([]);
      expect(outsideFrame(page)).toEqual([]);
    }
  });

  it('keeps the legend short for a sheet with very many edgings', () => {
    const wanted = Array.from({ length: 40 }, (_, index) => ({
      name: `shelf ${index}`,
      size: [300, 150] as const,
      edged: 'near',
      edging: `edging number ${index} with a long name that fills a line`,
    }));
    const { group, sheet } = stripPlan(wanted);
    for (const page of drawCutPlan(group, sheet, { measure, words, job: 'job' })) {
      expect(overlapsOf(page)).toEqual([]);
      expect(outsideFrame(page)).toEqual([]);
    }
  });

  it('draws a sheet that is not cut at all', () => {
    const group = emptyGroup({ trim: 0 }, [panelOf({ name: 'whole sheet', size: [2440, 1220] }, 0)]);
    const sheet = {
      number: 1,
      stock: 'sheet',
      copies: 1,
      start: 'sheet',
      steps: [],
      pieces: [{ is: 'panel' as const, piece: 'sheet', panel: 'p1', lengthAlong: 'length' as const }],
    };
    group.sheets.push(sheet);
    const pages = drawCutPlan(group, sheet, { measure, words, job: 'job' });
    expect(pages).toHaveLength(1);
    expect(texts(pages[0]!).some((text) => text.text === 'whole sheet')).toBe(true);
  });

  it('puts a number on the drawing for every cut of a sheet of usual size', () => {
    const { group, sheet } = stripPlan([
      { name: 'side', size: [798.4, 449.2], count: 3 },
      { name: 'shelf', size: [460, 300], count: 3 },
      { name: 'strip', size: [700, 35], grain: 'none', count: 3 },
    ]);
    const [page] = drawCutPlan(group, sheet, { measure, words, job: 'job' });
    const numbers = texts(page!)
      .filter((text) => text.layer === 'numbers')
      .map((text) => Number(text.text))
      .sort((a, b) => a - b);
    expect(numbers).toEqual(sheet.steps.map((_, index) => index + 1));
  });

  it('draws equal sheets once and says how many', () => {
    const { group, sheet } = stripPlan([{ name: 'side', size: [700, 400] }], {}, { copies: 7 });
    const pages = drawCutPlan(group, sheet, { measure, words, job: 'job' });
    expect(texts(pages[0]!).some((text) => text.text === '7 sheets')).toBe(true);
  });

  it('refuses a plan that takes a piece in hand that is not there', () => {
    const { group, sheet } = stripPlan([{ name: 'side', size: [700, 400] }]);
    const broken = { ...sheet, steps: sheet.steps.slice(1) };
    expect(() => drawCutPlan(group, broken, { measure, words, job: 'job' })).toThrow(/no piece/);
  });
});

describe('the SVG of a cut plan', () => {
  it('is well-formed for any names and the same bytes each time', () => {
    fc.assert(
      fc.property(seeds, fc.string({ unit: 'binary', maxLength: 40 }), (seed, odd) => {
        const { group, sheet } = randomPlan(seed);
        group.panels.forEach((panel, index) => {
          if (index % 3 === 0) panel.name = odd;
        });
        const draw = () => drawCutPlan(group, sheet, { measure, words, job: `<&"'\u0000${odd}` }).map(toSvg);
        const first = draw();
        expect(draw()).toEqual(first);
        for (const svg of first) {
          const parsed = new window.DOMParser().parseFromString(svg, 'image/svg+xml');
          expect(parsed.querySelector('parsererror')).toBeNull();
          expect(parsed.documentElement.namespaceURI).toBe('http://www.w3.org/2000/svg');
        }
      }),
      { numRuns: 15 },
    );
  });

  it('writes markup in names as letters', () => {
    const { group, sheet } = stripPlan([{ name: '<b>&amp;"quoted"</b>', size: [700, 400] }]);
    const svg = toSvg(drawCutPlan(group, sheet, { measure, words, job: 'job' })[0]!);
    expect(svg).toContain('&lt;b&gt;&amp;amp;"quoted"&lt;/b&gt;');
    const parsed = new window.DOMParser().parseFromString(svg, 'image/svg+xml');
    const written = [...parsed.querySelectorAll('text')].map((text) => text.textContent);
    expect(written).toContain('<b>&amp;"quoted"</b>');
  });
});

describe('the overview', () => {
  it('keeps its words apart and inside the frame for any number of sheets', () => {
    for (const count of [1, 2, 5, 12, 13, 30]) {
      const { group, sheet } = randomPlan(count);
      group.sheets.length = 0;
      for (let number = 1; number <= count; number++) group.sheets.push({ ...sheet, number, copies: number });
      const pages = drawOverview(group, { measure, words, job: 'job' });
      expect(pages).toHaveLength(Math.ceil(count / 12));
      for (const page of pages) {
        expect(overlapsOf(page)).toEqual([]);
        expect(outsideFrame(page)).toEqual([]);
      }
    }
  });

  it('has no page for a group without sheets', () => {
    expect(drawOverview(emptyGroup({}, []), { measure, words, job: 'job' })).toEqual([]);
  });
});
