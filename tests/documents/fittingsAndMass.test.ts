import { describe, expect, it } from 'vitest';
import { applianceNeeds, appliancesList } from '../../src/documents/appliancesList.ts';
import { fittingNeeds, fittingsList } from '../../src/documents/fittingsList.ts';
import { massByUnit } from '../../src/documents/massByUnit.ts';
import { csvFromTable } from '../../src/documents/table.ts';
import { demoLibrary, demoOrder, furnish } from '../helpers/demoVan.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { boxVan, weighedFurniture, weighedLibrary, withAppliances } from '../helpers/weighedFurniture.ts';

const rowsOf = (table: Parameters<typeof csvFromTable>[0]) => readCsv(csvFromTable(table));

describe('the list of fittings', () => {
  it('counts each fitting over all units, in whole packs, in the order of the library', () => {
    expect(rowsOf(fittingsList(weighedFurniture(), weighedLibrary))).toEqual([
      {
        fitting: 'hinge',
        description: 'The hinge',
        count: '4',
        pack: '10',
        packs: '1',
        'price each': '2.40',
        // Ten are bought.
        price: '24.00',
        currency: 'EUR',
        mass: '0.400',
        units: 'cupboard 4',
      },
      {
        fitting: 'screw',
        description: 'The screw',
        count: '60',
        pack: '200',
        packs: '1',
        'price each': '0.05',
        price: '10.00',
        currency: 'EUR',
        mass: '0.300',
        units: 'cupboard 20; bed 40',
      },
    ]);
  });

  it('counts for all that are alike', () => {
    const four = fittingsList(weighedFurniture({ count: 4 }), weighedLibrary);
    // 16 hinges and 240 screws: two packs each.
    expect(rowsOf(four).map((row) => [row['count'], row['packs'], row['units']])).toEqual([
      ['16', '2', 'cupboard 16'],
      ['240', '2', 'cupboard 80; bed 160'],
    ]);
  });

  it('is a list with its columns where nothing is needed', () => {
    const text = csvFromTable(fittingsList(weighedFurniture({ units: [] }), weighedLibrary));
    expect(text).toBe('fitting,description,count,pack,packs,price each,price,currency,mass,units\r\n');
  });

  it('refuses a fitting that the library does not have', () => {
    const without = { ...weighedLibrary, fittings: new Map() };
    expect(() => fittingsList(weighedFurniture(), without)).toThrow('hinge');
  });

  it('holds every fitting of a whole order once, and what the packs cost', () => {
    const library = demoLibrary();
    const order = demoOrder(library);
    const furniture = furnish(order, library).furniture!;
    const needs = fittingNeeds(furniture, library);
    const used = furniture.units.flatMap((unit) => unit.fittings);
    expect(needs.reduce((sum, need) => sum + need.count, 0)).toBe(
      used.reduce((sum, use) => sum + use.count, 0) * order.count,
    );
    expect(new Set(needs.map((need) => need.fitting))).toEqual(new Set(used.map((use) => use.fitting)));
    for (const need of needs) {
      const { pack, priceMinor } = library.fittings.get(need.fitting)!;
      expect((need.packs - 1) * pack).toBeLessThan(need.count);
      expect(need.packs * pack).toBeGreaterThanOrEqual(need.count);
      expect(need.priceMinor).toBe(need.packs * pack * priceMinor);
    }
  });
});

describe('the list of appliances', () => {
  it('has each with its size, its mass where that is known, and the units that hold it, for all that are alike', () => {
    expect(rowsOf(appliancesList(withAppliances({ count: 2 })))).toEqual([
      {
        appliance: 'toilet-kind',
        description: 'The toilet',
        count: '2',
        width: '500.0',
        depth: '1000.0',
        height: '400.0',
        mass: '3.000',
        units: 'bed 2',
      },
      expect.objectContaining({ appliance: 'heater-kind', mass: '', units: 'bed 2' }),
    ]);
  });

  it('is a list with its columns where nothing is held', () => {
    expect(csvFromTable(appliancesList(weighedFurniture()))).toBe(
      'appliance,description,count,width,depth,height,mass,units\r\n',
    );
  });

  it.each([
    ['demo-long', ['large-fridge 1', 'gas-hob-two 1', 'sink-small 1']],
    ['weekend-dog-long', ['large-fridge 1', 'electric-plate 1', 'sink-large-short 1']],
  ])('of %s has what was chosen', (name, wanted) => {
    const library = demoLibrary();
    const needs = applianceNeeds(furnish(demoOrder(library, name), library).furniture!);
    expect(needs.map(({ held, count }) => `${held.appliance} ${count}`)).toEqual(wanted);
    for (const { held } of needs) {
      const entry = library.appliances!.get(held.appliance)!;
      expect(held).toMatchObject({ title: entry.title, massKg: entry.massKg });
    }
  });
});

describe('the mass by unit', () => {
  const table = massByUnit(withAppliances(), boxVan, weighedLibrary);

  it('has boards, edging, fittings and appliances, sides and ends, and the centre of each unit', () => {
    expect(rowsOf(table)).toEqual([
      {
        unit: 'cupboard',
        kind: 'cupboard-kind',
        // 10 kg of board, 2 m of 0.03 kg/m, 4 · 0.1 + 20 · 0.005 kg.
        total: '10.560',
        boards: '10.000',
        edging: '0.060',
        fittings: '0.500',
        appliances: '0.000',
        left: '10.560',
        right: '0.000',
        front: '10.560',
        rear: '0.000',
        'centre x': '1000.0',
        'centre y': '250.0',
        'centre z': '400.0',
      },
      {
        unit: 'bed',
        kind: 'bed-kind',
        total: '33.200',
        boards: '30.000',
        edging: '0.000',
        fittings: '0.200',
        appliances: '3.000',
        // From 500 to 2000 across: a third is left of the middle at 1000.
        left: '10.067',
        // All of the toilet.
        right: '23.133',
        front: '0.000',
        rear: '33.200',
        // (30.2 · 3000 + 3 · 3250) / 33.2, and so on.
        'centre x': '3022.6',
        'centre y': '1272.6',
        'centre z': '609.3',
      },
    ]);
  });
});
