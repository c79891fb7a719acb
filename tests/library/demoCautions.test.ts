import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { cautionsOf } from '../../src/basics/orderCautions.ts';
import { readOrder } from '../../src/order/index.ts';
import { demoLibrary, demoRoot, furnish, must } from '../helpers/demoVan.ts';

const library = demoLibrary();
const folder = `${demoRoot}/orders`;
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.yaml'))
  .sort();

/** The cautions of an order by word, with the units that bring them; lines of it changed or added. */
function cautionsIn(file: string, ...changes: readonly (readonly [RegExp, string])[]) {
  let text = readFileSync(`${folder}/${file}`, 'utf8');
  for (const [pattern, after] of changes) {
    if (!pattern.test(text)) throw new Error(`${file} has no ${pattern}`);
    text = text.replace(pattern, after);
  }
  const order = must(readOrder(text, `${folder}/${file}`, library));
  const { furniture, findings } = furnish(order, library);
  if (furniture === null) throw new Error(findings.map(({ message }) => message).join('\n'));
  const told = cautionsOf({ order, furniture, library });
  return { furniture, cautions: new Map(told.map(({ caution, units }) => [caution, units])) };
}

describe('the cautions of the demonstration orders', () => {
  it.each(files)('%s: what its units are, and nothing that it has not', (file) => {
    const { furniture, cautions } = cautionsIn(file);
    const named = (ids: readonly string[]) =>
      furniture.units.filter(({ unit }) => ids.includes(unit)).map(({ name }) => name);
    const beds = ['bed-base', 'passage-bed-base', 'single-bed', 'slatted-roof-bed'];
    const fuel = furniture.units
      .find(({ unit }) => unit === 'cooker-drawer-cupboard')
      ?.parameters.get('fuel');
    for (const locker of named(['gas-locker'])) expect(cautions.get('gas')).toContain(locker);
    expect(cautions.get('electrics') ?? []).toEqual(expect.arrayContaining(named(['fridge-housing'])));
    for (const bed of named(beds)) expect(cautions.get('ways-out')).toContain(bed);
    expect(cautions.get('animals') ?? []).toEqual(named(['dog-space']));
    expect(cautions.has('spirit')).toBe(fuel === 'spirit');
    if (fuel !== undefined) expect(cautions.has('gas')).toBe(fuel === 'gas');
    expect(cautions.has('wall-fixing')).toBe(false);
    for (const always of ['saw', 'dust', 'edges', 'fixing', 'latches', 'overloading']) {
      expect(cautions.get(always)).toEqual([]);
    }
  });

  it('have no gas and nothing hot where there is no cooker', () => {
    const cooked = cautionsIn('demo-long.yaml').cautions;
    expect(cooked.has('gas') && cooked.has('heat')).toBe(true);
    const cold = cautionsIn('demo-long.yaml', [/cooker: two-burner/, 'cooker: none']).cautions;
    expect(cold.has('gas') || cold.has('heat')).toBe(false);
  });

  it('have no water where there is no sink', () => {
    expect(cautionsIn('demo-long.yaml').cautions.get('water')).toEqual(['galley worktop']);
    expect(cautionsIn('demo-long.yaml', [/sink: small/, 'sink: none']).cautions.has('water')).toBe(false);
  });

  it('warn of gas stays only beside fronts that have them', () => {
    const { furniture, cautions } = cautionsIn('demo-short.yaml');
    const withStays = furniture.units.filter(({ fittings }) =>
      fittings.some(({ fitting }) => fitting === 'lift-stay' || fitting === 'bed-stay'),
    );
    expect(cautions.get('gas-stays')).toEqual(withStays.map(({ name }) => name));
  });
});
