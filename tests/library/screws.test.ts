import { describe, expect, it } from 'vitest';
import { checkFurniture } from '../../src/checks/index.ts';
import { readLibrary } from '../../src/library/index.ts';
import type { Finding } from '../../src/model/finding.ts';
import type { Furniture } from '../../src/model/furniture.ts';
import type { Library, UnitDefinition } from '../../src/model/library.ts';
import type { Order } from '../../src/model/order.ts';
import { readOrder } from '../../src/order/index.ts';
import { makePanels } from '../../src/panels/index.ts';
import { unitConstants } from '../../src/units/index.ts';
import { expandUnitAlone, type OtherValue, otherValuesOf } from '../../src/units/unitAlone.ts';
import { libraryFiles, must } from '../helpers/demoVan.ts';

/** What a workshop would curse: a screw into nothing, out of a face, or so near to an edge or another hole that the board splits. */
const OF_HOLES = /^(screw-|hole-|holes-)|-holds-nothing$/;

interface Made {
  readonly values: string;
  readonly furniture: Furniture;
  readonly findings: readonly Finding[];
}

/** A unit with its defaults and with each other value that it takes beside them, as furniture that stands nowhere. */
function madeAlone(unit: UnitDefinition, order: Order, library: Library): Made[] {
  const constants = unitConstants(order, library);
  const vehicle = library.vehicles.get(order.vehicle)!;
  const cases: (OtherValue | null)[] = [null, ...otherValuesOf(unit, constants)];
  return cases.flatMap((other) => {
    const expanded = expandUnitAlone(unit, other, library, constants);
    if (!expanded.ok) return [];
    const whole = { order: order.id, count: 1, vehicle, units: [expanded.value] };
    const made = must(makeAll(whole, order, library));
    const values = other === null ? 'its defaults' : `${other.parameter} = ${other.value}`;
    return [{ values, ...made, findings: [...expanded.findings, ...made.findings] }];
  });
}

function makeAll(whole: Parameters<typeof makePanels>[0], order: Order, library: Library) {
  const made = makePanels(whole, order, library);
  if (!made.ok) return made;
  const findings = [...made.findings, ...checkFurniture(made.value, { ...order, vehicle: '' }, library)];
  return { ok: true as const, value: { furniture: made.value, findings } };
}

describe.each([
  ['demo-van', 'demo-long'],
  ['workshop-bench', 'garage-bench'],
])('in the library %s', (folder, orderName) => {
  const root = `parts-libraries/${folder}`;
  const files = libraryFiles(root);
  const library = must(readLibrary(files, root));
  const path = `${root}/orders/${orderName}.yaml`;
  const order = must(readOrder(files.get(path)!, path, library));

  describe.each([...library.units.values()].map((unit) => [unit.id, unit] as const))('%s', (_id, unit) => {
    const all = madeAlone(unit, order, library);

    it('lists as many screws as its panels have holes for them, and says of all others where they go', () => {
      expect(all.length).toBeGreaterThan(0);
      const wrong = all.flatMap(({ values, furniture }) =>
        furniture.units.flatMap(({ fittings }) =>
          fittings
            .filter(({ fitting }) => library.fittings.get(fitting)!.screw !== undefined)
            .filter(({ count, inHoles = 0, where }) => count !== inHoles && where === undefined)
            .map(({ fitting, count, inHoles = 0 }) => `${values}: ${count} ${fitting}, ${inHoles} holes`),
        ),
      );
      expect(wrong).toEqual([]);
    });

    it('has each hole where its board bears it', () => {
      const told = all.flatMap(({ values, findings }) =>
        findings.filter(({ code }) => OF_HOLES.test(code)).map(({ message }) => `${values}: ${message}`),
      );
      expect(told).toEqual([]);
    });
  });
});
