import { describe, expect, it } from 'vitest';
import { checkFit } from '../../src/checks/fit.ts';
import { drawLayout } from '../../src/drawing/index.ts';
import type { Furniture } from '../../src/model/furniture.ts';
import type { Vehicle } from '../../src/model/library.ts';
import { box, boxVan, weighedFurniture, weighedPanel, weighedUnit } from '../helpers/weighedFurniture.ts';
import { measure, words } from './drawingTools.ts';

const pillar = { name: 'pillar', ...box([1400, 1600], [400, 600], [0, 2000]) };
const door = { name: 'back door', ...box([3600, 3900], [1800, 2000], [0, 1900]) };

function textsOf(vehicle: Partial<Vehicle>): string[] {
  const furniture: Furniture = { ...weighedFurniture(), units: [] };
  const [page] = drawLayout(furniture, { ...boxVan, ...vehicle }, new Map(), {
    measure,
    words,
    units: 'mm',
    job: 'job',
    titles: new Map(),
  });
  return page!.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
}

describe('the drawing of a layout', () => {
  it('names the ends of a vehicle, and of a room in words for a room', () => {
    expect(textsOf({})).toEqual(expect.arrayContaining(['Section, looking to the cab']));
    const room = textsOf({ payloadKg: null });
    expect(room).toEqual(expect.arrayContaining(['Section, looking to the front end']));
    expect(room.join('\n')).not.toMatch(/\b(cab|vehicle)\b/);
  });

  it('has in its legend only what there is to keep clear of', () => {
    expect(textsOf({}).join('\n')).not.toMatch(/door opening|wheel arch|stands there/);
    expect(textsOf({ doors: [door] })).toContain('door opening');
    expect(textsOf({ doors: [door], wheelArches: [pillar] })).toContain('door opening, wheel arch');
    expect(textsOf({ payloadKg: null, doors: [door], obstacles: [pillar] })).toEqual(
      expect.arrayContaining(['door opening, what stands there already', 'pillar']),
    );
  });
});

describe('an obstacle', () => {
  it('is called by its name where furniture stands in it', () => {
    const at = box([500, 1500], [0, 500], [0, 800]);
    const panel = { ...weighedPanel('side', at, 1), unit: 'cupboard' };
    const furniture = { ...weighedFurniture(), units: [weighedUnit('cupboard', [panel], [], at)] };
    const found = checkFit(furniture, { ...boxVan, obstacles: [pillar] });
    expect(found).toMatchObject([
      { code: 'in-obstacle', message: 'the side of the cupboard goes 100.0 mm into the pillar' },
    ]);
    expect(checkFit(furniture, { ...boxVan, obstacles: [{ ...pillar, x: [1_500_000, 1_600_000] }] })).toEqual(
      [],
    );
  });
});
