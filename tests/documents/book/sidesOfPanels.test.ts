import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import { numberPanels } from '../../../src/documents/cuttingList.ts';
import type { Panel } from '../../../src/model/furniture.ts';
import type { Axis, Face } from '../../../src/model/geometry.ts';
import { bookOf, demoJob } from './demoBook.ts';

const made = demoJob();
const page = new JSDOM(bookOf(made).html).window.document;
const numbers = new Map(numberPanels(made.proven.plan).map(({ panel, number }) => [panel.id, number]));
const panels = made.job.ordered!.furniture.units.flatMap((unit) => unit.panels);

/** Cells of the rows of a chapter, by the number of the panel in the first. */
function rowsOf(id: string): Map<number, string[][]> {
  const rows = new Map<number, string[][]>();
  for (const row of page.querySelectorAll(`#${id} tbody tr`)) {
    const cells = [...row.querySelectorAll('td')].map((cell) => cell.textContent!.trim());
    const number = Number(cells[0]);
    rows.set(number, [...(rows.get(number) ?? []), cells]);
  }
  return rows;
}

describe('the edging of a panel', () => {
  it('is told by the sides of its unit, just those that the unit has edged', () => {
    const told = rowsOf('edging');
    let edged = 0;
    for (const panel of panels) {
      const faces = panel.edges.filter(({ edging }) => edging !== null).map(({ face }) => face);
      const cells = (told.get(numbers.get(panel.id)!) ?? []).map((row) => row[2]!).join(', ');
      const sides = [...cells.matchAll(/\((\w+)\)/g)].map((found) => found[1]!);
      expect(sides.sort(), `${panel.name}, ${panel.unit}`).toEqual([...faces].sort());
      edged += faces.length;
    }
    expect(edged).toBeGreaterThan(100);
  });
});

describe('a cut-out', () => {
  const axes: Record<Face, readonly [axis: Axis, end: 0 | 1]> = {
    left: ['x', 0],
    right: ['x', 1],
    front: ['y', 0],
    back: ['y', 1],
    bottom: ['z', 0],
    top: ['z', 1],
  };

  /** How far an opening is from a side of its panel, from the panel's box alone. */
  function fromSide(panel: Panel, opening: Panel['cutOuts'][number], side: Face): readonly number[] {
    const [axis, end] = axes[side];
    const along = axis === panel.lengthAxis ? opening.alongLength : opening.alongWidth;
    const size = panel.box[axis][1] - panel.box[axis][0];
    const [from, to] = end === 0 ? along : [size - along[1], size - along[0]];
    return [from, to];
  }

  it('is measured from the sides that are named, and lies as its panel is drawn', () => {
    const told = rowsOf('cut-outs');
    let far = 0;
    for (const panel of panels) {
      const rows = told.get(numbers.get(panel.id)!) ?? [];
      expect(rows).toHaveLength(panel.cutOuts.length);
      panel.cutOuts.forEach((opening, index) => {
        const [, , name, lies, along, across] = rows[index]!;
        expect(name).toBe(opening.name);
        const [, up, first, second] = /^(\w+) up; from (\w+), (\w+)$/.exec(lies!)!;
        expect(axes[up as Face][0]).toBe(panel.thicknessAxis);
        for (const [said, side] of [
          [along, first],
          [across, second],
        ]) {
          const told = said!.split(' to ').map((text) => Math.round(Number(text) * 1000));
          // Printed to a tenth of a mm.
          fromSide(panel, opening, side as Face).forEach((um, end) => {
            expect(Math.abs(told[end]! - um)).toBeLessThanOrEqual(50);
          });
        }
        if (axes[second as Face][1] === 1) far++;
      });
    }
    // Some panels lie with the side up that has its holes, and are measured from their other edge.
    expect(far).toBeGreaterThan(0);
  });
});
