import { describe, expect, it } from 'vitest';
import { drawCutPlan } from '../../src/drawing/cutPlan.ts';
import { drawHandWork } from '../../src/drawing/handWork.ts';
import type { SawnEnd } from '../../src/drawing/sawnSheet.ts';
import { makeView } from '../../src/drawing/sheetView.ts';
import { Sketch } from '../../src/drawing/sketch.ts';
import type { PlanPanel } from '../../src/model/plan.ts';
import { measure, words } from './drawingTools.ts';
import { panelOf, stripPlan } from './planFixtures.ts';

const options = { units: 'mm', offcut: 'OFFCUT' } as const;

function lines(byHand: NonNullable<PlanPanel['byHand']>, lengthAlong: 'length' | 'width') {
  const panel = { ...panelOf({ name: 'side', size: [800, 500] }, 0), byHand };
  // On a sheet of 2000 × 1000 at 1:1, its top left corner at the page's; the panel 100 in from the left, 200 from near.
  const [x, y] = lengthAlong === 'length' ? [800, 500] : [500, 800];
  const rect = { x0: 100_000, y0: 200_000, x1: (100 + x) * 1000, y1: (200 + y) * 1000 };
  const end = {
    piece: { name: '1', rect },
    ending: { is: 'panel', piece: '1', panel: 'p1', lengthAlong },
    panel,
  };
  const raw = { x0: 0, y0: 0, x1: 2_000_000, y1: 1_000_000 };
  const sketch = new Sketch(measure);
  drawHandWork(sketch, [end as SawnEnd], makeView(raw, [0, 0], 1, 'as it lies'), options);
  const drawn = sketch.shapes.flatMap((shape) => (shape.kind === 'lines' ? shape.segments : []));
  return { drawn: drawn.map((segment) => segment.map(Math.round)), sketch };
}

describe('what is cut by hand, on the cut plan', () => {
  const outline: [number, number][] = [
    [0, 0],
    [800, 0],
    [800, 400],
    [300, 500],
    [0, 500],
  ];

  it('is a line inside the panel, without the sides that are sawn', () => {
    // Up the page is across the sheet: the near side is at y = 1000 of the page.
    expect(lines({ outline, openings: [] }, 'length').drawn).toEqual([[900, 400, 400, 300]]);
  });

  it('turns with the panel, its edge at width 0 on the right', () => {
    expect(lines({ outline, openings: [] }, 'width').drawn).toEqual([[200, 0, 100, 500]]);
  });

  it('shows openings, and what is kept of them', () => {
    const opening = { name: 'hob', length: [200, 600], width: [100, 450] } as const;
    const kept = { length: 380, width: 330 };
    const { drawn, sketch } = lines(
      { openings: [{ name: 'hob', length: [200, 600], width: [100, 450], kept }] },
      'length',
    );
    expect(drawn).toHaveLength(4);
    expect(drawn[0]).toEqual([300, 700, 700, 700]);
    const texts = (of: Sketch) => of.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    expect(texts(sketch)).toEqual(['OFFCUT', '380\u00a0×\u00a0330']);
    const waste = lines({ openings: [{ ...opening, length: [200, 600], width: [100, 450] }] }, 'length');
    expect(texts(waste.sketch)).toEqual([]);
  });

  it('is explained in the legend only where there is any', () => {
    const said = (byHand?: PlanPanel['byHand']) => {
      const { group, sheet } = stripPlan([{ name: 'side', size: [800, 500] }]);
      if (byHand) group.panels[0]!.byHand = byHand;
      const shapes = drawCutPlan(group, sheet, { measure, words, job: 'test' })[0]!.shapes;
      return shapes.some((shape) => shape.kind === 'text' && shape.text === words.cutPlan.legend.byHand);
    };
    expect(said({ outline, openings: [] })).toBe(true);
    expect(said()).toBe(false);
  });
});
