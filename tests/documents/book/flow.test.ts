import { describe, expect, it } from 'vitest';
import { BESIDE_SIZES, Flow, noMore, type Room } from '../../../src/documents/book/flow.ts';
import { Sketch } from '../../../src/drawing/sketch.ts';
import { measure } from '../../drawing/drawingTools.ts';

const turn = { goesOn: (step: string) => `go on: ${step}`, goesOnHere: (step: string) => `from ${step}` };

/** Ten steps in two rooms; the texts in the order of writing. */
function steps(rooms: readonly Room[]) {
  const sketch = new Sketch(measure);
  const flow = new Flow(measure, BESIDE_SIZES, { sketch, rooms }, noMore);
  flow.entries(
    Array.from({ length: 10 }, (_, index) => ({
      mark: String(index + 1),
      lines: [{ text: `step ${index + 1} of ten`, weight: 'regular' as const }],
    })),
    turn,
  );
  return sketch.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : []));
}

const right: Room = { x0: 100, y0: 10, x1: 160, y1: 34 };
const below: Room = { x0: 10, y0: 50, x1: 70, y1: 90 };

describe('steps that go on in another room', () => {
  it('say so at both ends where it lies further left, with the step that comes there', () => {
    const texts = steps([right, below]);
    const at = texts.findIndex(({ text }) => text.startsWith('go on: '));
    const next = texts[at]!.text.slice('go on: '.length);
    expect(texts.slice(at, at + 3).map(({ text }) => text)).toEqual([`go on: ${next}`, `from ${next}`, next]);
    expect(texts[at]!.y).toBeLessThanOrEqual(right.y1);
    expect(texts[at + 1]!.x).toBe(below.x0);
    for (let step = 1; step <= 10; step++) expect(texts.map(({ text }) => text)).toContain(String(step));
  });

  it('say nothing where it lies further right, or where all fits', () => {
    const roomy = { ...right, y1: 80 };
    for (const rooms of [
      [below, right],
      [roomy, below],
    ]) {
      expect(steps(rooms).filter(({ text }) => /^(go on|from)/.test(text))).toEqual([]);
    }
  });
});
