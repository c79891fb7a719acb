import { describe, expect, it } from 'vitest';
import { SeededRandom } from '../../src/basics/random.ts';
import { drawCutPlan } from '../../src/drawing/cutPlan.ts';
import { type Box, boxesOverlap, type Drawing, textBox } from '../../src/drawing/drawing.ts';
import { printLength } from '../../src/drawing/lengthsInWords.ts';
import { sawSheet } from '../../src/drawing/sawnSheet.ts';
import type { PlanGroup, PlanSheet } from '../../src/model/plan.ts';
import { measure, words } from './drawingTools.ts';
import { randomPlan, stripPlan, type Wanted } from './planFixtures.ts';

/** Names, marks and grain arrows of panels, and words of spare pieces, as boxes on the first page. */
function labelsOf(page: Drawing): Box[] {
  return page.shapes.flatMap((shape): Box[] => {
    if (shape.kind === 'text') {
      return shape.layer === 'panels' || shape.layer === 'offcuts' ? [textBox(shape)] : [];
    }
    if (shape.kind === 'rect' && shape.layer === 'panels' && shape.stroke !== null) return [shape.box];
    if (shape.kind === 'polygon' && shape.layer === 'grain') {
      const xs = shape.points.map(([x]) => x);
      const ys = shape.points.map(([, y]) => y);
      return [{ x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) }];
    }
    return [];
  });
}

/** Rings of cut numbers that lie on a label, to a tenth of a millimetre. */
function numbersOnLabels(page: Drawing): Box[] {
  const labels = labelsOf(page);
  return page.shapes.flatMap((shape) => {
    if (shape.kind !== 'rect' || shape.layer !== 'numbers') return [];
    const { x0, y0, x1, y1 } = shape.box;
    const ring = { x0: x0 + 0.1, y0: y0 + 0.1, x1: x1 - 0.1, y1: y1 - 0.1 };
    return labels.filter((label) => boxesOverlap(label, ring));
  });
}

const middleOf = ({ x0, y0, x1, y1 }: Box) => [(x0 + x1) / 2, (y0 + y1) / 2] as const;

/** Names of the pieces that are panels and have neither a text in them nor the dot of a leader. */
function bare(page: Drawing, sheet: PlanSheet): string[] {
  const panels = new Set(sheet.pieces.flatMap((ending) => (ending.is === 'panel' ? [ending.piece] : [])));
  const found = page.shapes.flatMap((shape) => {
    if (shape.layer !== 'panels') return [];
    if (shape.kind === 'text') return [middleOf(textBox(shape))];
    return shape.kind === 'rect' && shape.fill === 1 ? [middleOf(shape.box)] : [];
  });
  return page
    .pieces!.filter(({ piece, box }) => {
      const isIn = ([x, y]: readonly [number, number]) =>
        x >= box.x0 && x <= box.x1 && y >= box.y0 && y <= box.y1;
      return panels.has(piece) && !found.some(isIn);
    })
    .map(({ piece }) => piece);
}

/** Places, as `left …, near …`, that the table of panels without a mark gives. */
function placesInTable(pages: readonly Drawing[]): string[] {
  const written = pages
    .flatMap((page) => page.shapes)
    .flatMap((shape) => (shape.kind === 'text' && shape.layer === 'tables' ? [shape.text] : []))
    .join(' ');
  return written.match(/left [\d.]+, near [\d.]+/g) ?? [];
}

/** Panels that are neither named, nor marked, nor placed in the table; and how many that table places. */
function unsaid(made: { group: PlanGroup; sheet: PlanSheet }, pages: readonly Drawing[]) {
  const corners = new Map(sawSheet(made.group, made.sheet).ends.map(({ piece }) => [piece.name, piece.rect]));
  const placed = placesInTable(pages);
  const lost = bare(pages[0]!, made.sheet).filter((piece) => {
    const { x0, y0 } = corners.get(piece)!;
    return !placed.includes(`left ${printLength(x0, 'mm')}, near ${printLength(y0, 'mm')}`);
  });
  return { lost, placed: placed.length };
}

function draw({ group, sheet }: { group: PlanGroup; sheet: PlanSheet }): Drawing[] {
  return drawCutPlan(group, sheet, { measure, words, job: 'job' });
}

/** Strips such as rails, beads and battens, hardly wider on paper than a number is high. */
function narrowStrips(seed: number): Wanted[] {
  const random = new SeededRandom(seed);
  const names = ['rail', 'plinth', 'bead', 'batten', 'edge strip'];
  return Array.from({ length: 3 + random.below(6) }, () => ({
    name: names[random.below(names.length)]!,
    unit: 'galley',
    size: [60 + random.below(1400), 10 + random.below(random.below(2) === 0 ? 120 : 40)] as const,
    count: 1 + random.below(12),
    grain: random.below(2) === 0 ? ('length' as const) : ('none' as const),
    edged: 'near',
  }));
}

describe('on any sheet', () => {
  it('no cut number lies on a label, and every panel has its name or mark, or a place in the table of those without', () => {
    let inTables = 0;
    // 26 and 28 are so crowded that marks are hard to place.
    for (const seed of [1, 2, 3, 4, 5, 6, 7, 8, 26, 28]) {
      for (const made of [randomPlan(seed), stripPlan(narrowStrips(seed))]) {
        const pages = draw(made);
        const { lost, placed } = unsaid(made, pages);
        expect({ seed, lost, over: numbersOnLabels(pages[0]!) }).toEqual({ seed, lost: [], over: [] });
        inTables += placed;
      }
    }
    expect(inTables).toBeLessThan(40);
  });

  it('of hundreds of small pieces as well', () => {
    const made = stripPlan([
      { name: 'block', unit: 'toys', size: [60, 40], grain: 'none', count: 400 },
      { name: 'slip', unit: 'toys', size: [30, 8], grain: 'none', count: 200 },
    ]);
    const pages = draw(made);
    const { lost, placed } = unsaid(made, pages);
    expect(lost).toEqual([]);
    expect(placed).toBeGreaterThan(0);
    expect(numbersOnLabels(pages[0]!)).toEqual([]);
  });
});
