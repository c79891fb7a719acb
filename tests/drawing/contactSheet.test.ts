import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { drawContactSheet } from '../../src/drawing/contactSheet.ts';
import { boxesOverlap, type Drawing, inset, type TextShape, textBox } from '../../src/drawing/drawing.ts';
import type { PlacedUnit } from '../../src/model/furniture.ts';
import { alone, demoLibrary, demoOrder } from '../helpers/demoVan.ts';
import { measure, words } from './drawingTools.ts';

const root = resolve(import.meta.dirname, '../..');
const library = demoLibrary();
const order = demoOrder(library);
const units = [...library.units.keys()].map((id) => alone(id, {}, library, order).unit!);
const titles = new Map([...library.units.values()].map(({ id, title }) => [id, title]));

function sheetOf(shown: readonly PlacedUnit[], named: ReadonlyMap<string, string> = titles): Drawing[] {
  return drawContactSheet(shown, { measure, words, job: library.title, titles: named });
}

function textsOf({ shapes }: Drawing): TextShape[] {
  return shapes.filter((shape) => shape.kind === 'text');
}

function size(unit: PlacedUnit): string {
  const sizes = [unit.outside.x, unit.outside.y, unit.outside.z].map(([from, to]) => (to - from) / 1000);
  return `${sizes.join(' × ')}, ${unit.panels.length} panel${unit.panels.length === 1 ? '' : 's'}`;
}

describe('the contact sheet of a library', () => {
  const pages = sheetOf(units);

  it('has every unit once, with its name, outside size and number of panels', () => {
    const texts = pages.flatMap((page) => textsOf(page).map(({ text }) => text));
    for (const unit of units) {
      expect(
        texts.filter((text) => text === unit.unit),
        unit.unit,
      ).toHaveLength(1);
      expect(texts, unit.unit).toContain(size(unit));
    }
    expect(pages).toHaveLength(Math.ceil(units.length / 12));
  });

  it('draws each panel of each unit', () => {
    const wanted = units.reduce((sum, { panels }) => sum + panels.length, 0);
    const drawn = pages.flatMap(({ shapes }) => shapes).filter((shape) => shape.kind === 'polygon');
    // Three faces of each box, and openings besides.
    expect(drawn.length).toBeGreaterThanOrEqual(3 * wanted);
  });

  it('lays no text on another and nothing outside the frame, however long a title is', () => {
    const long = new Map(
      units.map(({ unit }) => [unit, `${'a long title of many words '.repeat(6)}${unit}`]),
    );
    for (const page of [...pages, ...sheetOf(units, long)]) {
      const boxes = textsOf(page).map(textBox);
      boxes.forEach((box, index) => {
        expect(boxes.slice(index + 1).some((other) => boxesOverlap(inset(box, 0.05), other))).toBe(false);
        expect([box.x0 > 20, box.y0 > 10, box.x1 < 287, box.y1 < 200]).not.toContain(false);
      });
      for (const shape of page.shapes) {
        if (shape.kind !== 'polygon') continue;
        for (const [x, y] of shape.points) expect(x > 20 && x < 287 && y > 10 && y < 200).toBe(true);
        expect(
          shape.points.some(([x, y]) =>
            boxes.some((box) => x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1),
          ),
        ).toBe(false);
      }
    }
  });

  it('is an empty page without units', () => {
    expect(sheetOf([])).toHaveLength(1);
  });
});

describe('the page of units', () => {
  it('shows every page of both libraries', () => {
    const page = readFileSync(join(root, 'parts-libraries/UNITS.md'), 'utf8');
    const shown = [...page.matchAll(/\]\(\.\.\/tests\/pictures\/golden\/(units-for-[^)]+)\)/g)].map(
      ([, file]) => file,
    );
    const golden = readdirSync(join(root, 'tests/pictures/golden')).filter((file) =>
      /^units-for-.*\d\.svg$/.test(file),
    );
    expect(shown.sort()).toEqual(golden.sort());
  });
});
