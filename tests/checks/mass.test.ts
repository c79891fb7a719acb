import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { furnitureMass } from '../../src/basics/furnitureMass.ts';
import { payloadAccount, personsOf } from '../../src/basics/payload.ts';
import { checkMass } from '../../src/checks/mass.ts';
import type { Furniture } from '../../src/model/furniture.ts';
import type { Library, Vehicle } from '../../src/model/library.ts';
import type { Order } from '../../src/model/order.ts';
import { demoLibrary, demoOrder, formula, furnish } from '../helpers/demoVan.ts';
import {
  box,
  boxVan,
  heldAppliance,
  weighedFurniture,
  weighedLibrary,
  weighedPanel,
  weighedUnit,
  withAppliances,
} from '../helpers/weighedFurniture.ts';

const library = weighedLibrary as unknown as Library;
const order = { place: { file: 'order.yaml', line: 1, column: 1 } } as Order;

function found(furniture: Furniture, vehicle: Partial<Vehicle>, asked: Partial<Order> = {}) {
  return checkMass(furniture, { ...boxVan, ...vehicle }, { ...order, ...asked }, library);
}

describe('the mass of furniture', () => {
  it('is told by material, by side and by end, with its centre', () => {
    const mass = furnitureMass(weighedFurniture(), boxVan, library);
    expect(mass.totalKg).toBeCloseTo(10.56 + 30.2, 9);
    expect(mass.boardsKg).toBeCloseTo(40, 9);
    expect(mass.edgingKg).toBeCloseTo(0.06, 9);
    expect(mass.fittingsKg).toBeCloseTo(0.7, 9);
    expect(mass.leftKg).toBeCloseTo(10.56 + 30.2 / 3, 9);
    expect(mass.frontKg).toBeCloseTo(10.56, 9);
    // (10.56 · 1000 + 30.2 · 3000) / 40.76 and (10.56 · 250 + 30.2 · 1250) / 40.76, in mm.
    expect(mass.centreUm).toEqual({ x: 2_481_845, y: 990_922, z: 585_231 });
  });

  it('is nothing, and has no centre, where there is no furniture', () => {
    const mass = furnitureMass(weighedFurniture({ units: [] }), boxVan, library);
    expect(mass).toMatchObject({ totalKg: 0, leftKg: 0, rightKg: 0, centreUm: null, perUnit: [] });
  });

  it('adds up: by unit, by material, by side and by end, wherever units stand', () => {
    const span = (most: number) =>
      fc
        .tuple(fc.integer({ min: -200, max: most }), fc.integer({ min: 1, max: 900 }))
        .map(([from, size]): [number, number] => [from, from + size]);
    const placed = fc.record({
      x: span(3900),
      y: span(1900),
      z: span(1900),
      kg: fc.integer({ min: 0, max: 90 }),
    });
    fc.assert(
      fc.property(fc.array(placed, { minLength: 1, maxLength: 6 }), (places) => {
        const units = places.map(({ x, y, z, kg }, index) => {
          const at = box(x, y, z);
          const held = heldAppliance('pump', at, index % 2 === 0 ? kg / 2 : null);
          return weighedUnit(
            `u${index}`,
            [weighedPanel('p', at, kg + 0.03, 1000)],
            [{ fitting: 'hinge', count: index }],
            at,
            { appliances: [held] },
          );
        });
        const mass = furnitureMass(weighedFurniture({ units }), boxVan, library);
        const parts = mass.boardsKg + mass.edgingKg + mass.fittingsKg + mass.appliancesKg;
        expect(parts).toBeCloseTo(mass.totalKg, 9);
        expect(mass.leftKg + mass.rightKg).toBeCloseTo(mass.totalKg, 9);
        expect(mass.frontKg + mass.rearKg).toBeCloseTo(mass.totalKg, 9);
        for (const key of [
          'totalKg',
          'edgingKg',
          'fittingsKg',
          'appliancesKg',
          'leftKg',
          'rearKg',
        ] as const) {
          expect(mass.perUnit.reduce((sum, unit) => sum + unit[key], 0)).toBeCloseTo(mass[key], 9);
        }
        expect(Math.min(mass.leftKg, mass.rightKg, mass.frontKg, mass.rearKg)).toBeGreaterThanOrEqual(-1e-9);
      }),
    );
  });

  it('of a whole order is what its panels and fittings weigh', () => {
    const demo = demoLibrary();
    const asked = demoOrder(demo);
    const furniture = furnish(asked, demo).furniture!;
    const mass = furnitureMass(furniture, demo.vehicles.get(asked.vehicle)!, demo);
    const panels = furniture.units.flatMap((unit) => unit.panels);
    const panelsKg = panels.reduce((sum, panel) => sum + panel.massKg, 0);
    expect(mass.boardsKg + mass.edgingKg).toBeCloseTo(panelsKg, 9);
    expect(mass.edgingKg).toBeGreaterThan(1);
    expect(mass.totalKg).toBeGreaterThan(150);
    expect(mass.totalKg).toBeLessThan(300);
  });
});

describe('who rides', () => {
  it('is said by the order, else by the choices, else by the seats of the layout, else it is the driver', () => {
    expect(personsOf({ persons: 3 }, { seats: 4 })).toEqual({ count: 3, from: 'order' });
    expect(personsOf({}, { seats: 4 })).toEqual({ count: 4, from: 'seats' });
    expect(personsOf({}, { persons: 2, seats: 4 })).toEqual({ count: 2, from: 'choices' });
    expect(personsOf({ persons: 3 }, { persons: 2, seats: 4 })).toEqual({ count: 3, from: 'order' });
    expect(personsOf({}, {})).toEqual({ count: 1, from: 'driver alone' });
  });
});

describe('the payload', () => {
  it('is told line by line', () => {
    const vehicle = { payloadKg: 600, overallLengthUm: 5_990_000 };
    expect(
      payloadAccount(vehicle, { furnitureKg: 155.5, appliancesKg: 25 }, { count: 4, from: 'order' }),
    ).toEqual({
      payloadKg: 600,
      furnitureKg: 155.5,
      appliancesKg: 25,
      persons: 4,
      personsFrom: 'order',
      passengersKg: 225,
      leftKg: 194.5,
      overallLengthUm: 5_990_000,
      leastKg: 99.9,
      restKg: expect.closeTo(94.6, 9),
    });
  });

  it('is taken by appliances, and they count for the balance, where their mass is known', () => {
    const message = (furniture: Furniture, payloadKg: number) => found(furniture, { payloadKg })[0]?.message;
    expect(message(withAppliances(), 43)).toBe(
      'the furniture weighs 43.8 kg, its appliances included, which is 0.8 kg more than the payload of the box van',
    );
    // Without the cupboard: two thirds of 30.2 kg and all of 3 kg.
    const { units, ...rest } = withAppliances();
    expect(message({ ...rest, units: units.slice(1) }, 400)).toContain(
      'the right side carries 23.1 kg of 33.2 kg, 70 % of furniture and appliances; their centre of mass',
    );
  });

  it('may be exceeded by the furniture alone, which is an error', () => {
    const findings = found(weighedFurniture(), { payloadKg: 40 });
    expect(findings).toMatchObject([
      {
        code: 'over-payload',
        severity: 'error',
        message: 'the furniture weighs 40.8 kg, which is 0.8 kg more than the payload of the box van',
        place: order.place,
      },
    ]);
  });

  it.each([
    // 10 · (1 + 5.99) = 69.9 kg must be kept by the driver.
    ['the driver alone', 1, 40.76 + 69.9],
    // 10 · (4 + 5.99) = 99.9 kg, and three passengers weigh 225 kg.
    ['four persons', 4, 40.76 + 225 + 99.9],
  ])('is warned of where less than the rule is left, with %s', (_who, persons, justEnoughKg) => {
    expect(found(weighedFurniture(), { payloadKg: justEnoughKg + 0.01 }, { persons })).toEqual([]);
    const [finding] = found(weighedFurniture(), { payloadKg: justEnoughKg - 0.01 }, { persons });
    expect(finding).toMatchObject({ code: 'little-payload', severity: 'warning' });
    expect(finding?.advice).toContain('furniture is not all of the conversion');
  });

  it('says how much is left and by which rule, or how much is missing', () => {
    const message = (payloadKg: number, persons: number) =>
      found(weighedFurniture(), { payloadKg }, { persons })[0]?.message;
    expect(message(300, 4)).toBe(
      'the furniture weighs 40.8 kg; with the driver and 3 passengers of 75 kg each, 34.2 kg are left of the payload of the box van, where at least 99.9 kg must be kept: 10 kg for each of 4 persons and for each metre of its 5990 mm',
    );
    expect(message(100, 2)).toBe(
      'the furniture weighs 40.8 kg; with the driver and 1 passenger of 75 kg, 15.8 kg are missing of the payload of the box van, where at least 79.9 kg must be kept: 10 kg for each of 2 persons and for each metre of its 5990 mm',
    );
    expect(message(100, 1)).toContain('with the driver alone, 59.2 kg are left');
  });

  it('takes the seats of the layout where the order does not say who rides', () => {
    const furniture = weighedFurniture({ seats: 4 });
    expect(found(furniture, { payloadKg: 300 })[0]?.message).toContain('3 passengers');
    expect(found(furniture, { payloadKg: 300 }, { persons: 2 })).toEqual([]);
  });

  it('takes what was chosen of the layout before its seats', () => {
    const furniture = weighedFurniture({ seats: 4, persons: 2 });
    expect(found(furniture, { payloadKg: 300 })).toEqual([]);
    expect(found(furniture, { payloadKg: 300 }, { persons: 4 })[0]?.message).toContain('3 passengers');
    const demo = demoLibrary();
    const chosen = (persons: number) => {
      const choices = new Map(
        Object.entries({ persons, cab_seats: 3, right_side: "'low-bed'" }).map(([name, value]) => [
          name,
          formula(value),
        ]),
      );
      const asked = { ...demoOrder(demo), layout: 'roof-bed-and-galley', choices, changes: [] };
      return personsOf(asked, furnish(asked, demo).furniture!);
    };
    expect([1, 2, 3].map(chosen)).toEqual([1, 2, 3].map((count) => ({ count, from: 'choices' })));
  });

  it('is warned of with more persons than seats', () => {
    const furniture = weighedFurniture({ seats: 2 });
    expect(found(furniture, { payloadKg: 900 }, { persons: 2 })).toEqual([]);
    expect(found(furniture, { payloadKg: 900 }, { persons: 3 })).toMatchObject([
      {
        code: 'few-seats',
        severity: 'warning',
        message: '3 persons ride, the driver included, and the layout has seats for 2',
      },
    ]);
  });

  it('takes what lies on the roof, as far as the roof bears it', () => {
    const codes = (vehicle: Partial<Vehicle>, onRoofKg: number) =>
      found(weighedFurniture(), vehicle, { onRoofKg, persons: 1 }).map(({ code }) => code);
    expect(codes({ roofBearsKg: 100, payloadKg: 900 }, 100)).toEqual([]);
    expect(codes({ roofBearsKg: 100, payloadKg: 900 }, 100.5)).toEqual(['over-roof']);
    expect(codes({ payloadKg: 900 }, 20)).toEqual(['roof-unknown']);
    // 150 − 40.76 kg are left.
    expect(codes({ roofBearsKg: 120, payloadKg: 150 }, 109)).toEqual([]);
    expect(codes({ roofBearsKg: 120, payloadKg: 150 }, 110)).toEqual(['little-payload']);
    expect(
      found(weighedFurniture(), { roofBearsKg: 75, payloadKg: 900 }, { onRoofKg: 80.25 })[0],
    ).toMatchObject({
      severity: 'error',
      message: '80.3 kg are to lie on the roof, which is 5.3 kg more than that of the box van bears',
      place: order.place,
    });
  });

  it('of the demonstration vans bears 100 kg on the roof', () => {
    const demo = demoLibrary();
    const asked = demoOrder(demo);
    const codes = (onRoofKg: number) =>
      furnish({ ...asked, onRoofKg }, demo)
        .findings.filter(({ severity }) => severity === 'error')
        .map(({ code }) => code);
    expect(codes(100)).toEqual([]);
    expect(codes(101)).toEqual(['over-roof']);
  });

  it('is nothing to a room, nor is balance', () => {
    expect(found(weighedFurniture(), { payloadKg: null })).toEqual([]);
    const oneSide = weighedFurniture();
    const alone = { ...oneSide, units: oneSide.units.slice(0, 1) };
    expect(found(alone, { payloadKg: null })).toEqual([]);
    expect(found(alone, {})).toMatchObject([
      {
        code: 'uneven-mass',
        severity: 'caution',
        // All of it 750 mm left of the middle of 2000 mm: 10.56 · 750 / 500 kg, 500 mm right of it.
        message:
          'the left side carries 10.6 kg of 10.6 kg, 100 % of the furniture; its centre of mass lies 750 mm left of the middle',
        advice:
          'place the water tank, battery and other heavy things on the other side: 16 kg half-way to its wall even it out',
      },
    ]);
  });
});
