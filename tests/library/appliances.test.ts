import { describe, expect, it } from 'vitest';
import { readLibrary } from '../../src/library/index.ts';
import { demoFiles, demoLibrary, demoOrder, demoRoot, furnish } from '../helpers/demoVan.ts';

/** Errors of the demonstration library with a text of one of its files changed. */
function errorsOf(file: string, before: string, after: string) {
  const files = demoFiles();
  const path = `${demoRoot}/${file}`;
  const text = files.get(path)!;
  expect(text).toContain(before);
  files.set(path, text.replace(before, after));
  return readLibrary(files, demoRoot).findings.map(({ message, nearest, place }) => ({
    message,
    nearest,
    file: place?.file,
  }));
}

describe('appliances.yaml', () => {
  it('gives each appliance its size, what stays clear, its door and its air', () => {
    const fridge = demoLibrary().appliances!.get('small-fridge')!;
    expect(fridge).toMatchObject({ widthUm: 420_000, depthUm: 430_000, heightUm: 560_000, door: 'left' });
    expect(fridge.clearUm).toEqual({
      left: 10_000,
      right: 10_000,
      front: 0,
      back: 40_000,
      above: 40_000,
      below: 0,
    });
    expect(fridge.airCm2).toEqual({ in: 100, out: 100 });
    expect(fridge.massKg).toBe(18.5);
  });

  it('may leave out what it weighs, and refuses less than nothing', () => {
    const without = demoLibrary(['appliances.yaml', 'height: 560, mass: 18.5,', 'height: 560,']);
    expect(without.appliances!.get('small-fridge')!.massKg).toBeNull();
    const file = 'appliances.yaml';
    expect(errorsOf(file, 'height: 560, mass: 18.5,', 'height: 560, mass: -1,')).toHaveLength(1);
  });

  it.each([
    ['a side that there is not', 'appliances.yaml', 'above: 40 }', 'abov: 40 }'],
    ['a door that opens nowhere', 'appliances.yaml', 'door: left', 'door: front'],
    ['a caution that nobody knows', 'appliances.yaml', 'cautions: [electrics, heat]', 'cautions: [electric]'],
    ['a panel that the unit has not', 'units/worktop.yaml', 'through: [top]', 'through: [tops]'],
    ['an opening of such a panel', 'units/fridge-housing.yaml', 'bottom: fresh air }', 'bottm: fresh air }'],
  ])('is refused with %s, at its place', (_what, file, before, after) => {
    const errors = errorsOf(file, before, after);
    expect(errors).toHaveLength(1);
    expect(errors[0]!.file).toBe(`${demoRoot}/${file}`);
  });

  it('names the nearest appliance where a unit asks for one that there is not', () => {
    const library = demoLibrary([
      'units/fridge-housing.yaml',
      '    appliance: fridge\n',
      '    appliance: smal-fridge\n',
    ]);
    const finding = furnish(demoOrder(library), library).findings.find(
      ({ code }) => code === 'unknown-appliance',
    );
    expect(finding).toMatchObject({ found: 'smal-fridge', nearest: 'small-fridge', severity: 'error' });
    expect(finding?.place?.file).toBe(`${demoRoot}/units/fridge-housing.yaml`);
  });

  it('brings its cautions to the unit that holds it', () => {
    const library = demoLibrary();
    const { furniture } = furnish(demoOrder(library), library);
    const worktop = furniture!.units.find(({ name }) => name === 'galley worktop')!;
    expect(worktop.cautions).toEqual(expect.arrayContaining(['gas', 'heat', 'ventilation', 'water']));
  });
});
