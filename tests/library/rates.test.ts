import { describe, expect, it } from 'vitest';
import { readLibrary } from '../../src/library/index.ts';
import { smallLibrary } from '../helpers/smallLibrary.ts';

function read(rates: string | null) {
  const files = new Map(smallLibrary());
  if (rates !== null) files.set('libraries/small/rates.yaml', rates);
  return readLibrary(files, 'libraries/small');
}

function ratesOf(text: string | null) {
  const found = read(text);
  if (!found.ok) throw new Error(JSON.stringify(found.findings));
  return found.value.rates;
}

function findingsOf(text: string) {
  return read(text).findings.map(({ code, place, found, expected, nearest }) => ({
    code,
    line: place?.line,
    found,
    expected,
    nearest,
  }));
}

describe('rates', () => {
  it('may be left out', () => {
    expect(ratesOf(null)).toBeUndefined();
  });

  it('are read in ms, minor units and hundredths of a percent', () => {
    const rates = ratesOf(`hour: 50
sawing: { hour: 56.50, metre: 7.5, cut: 6 s }
assembly: { unit: 25 min, units: { base-door: 1.5 h } }
mark-up: { material: 12.25 }
VAT: 20
valid days: 30
extras: { carriage: { title: Carriage, price: 45, for: order } }
`)!;
    expect(rates.work.get('sawing')).toEqual({
      hourMinor: 5650,
      timesMs: new Map([
        ['metre', 7500],
        ['cut', 6000],
      ]),
    });
    expect(rates.work.get('assembly')).toEqual({
      hourMinor: 5000,
      timesMs: new Map([['unit', 1_500_000]]),
      byUnitMs: new Map([['base-door', 5_400_000]]),
    });
    expect(rates.work.has('drilling')).toBe(false);
    expect(rates.charges).toEqual({ sheets: 'whole', edging: 'metres', fittings: 'pieces' });
    expect(rates.markUp).toEqual({ material: 1225, work: 0 });
    expect([rates.vat, rates.validDays]).toEqual([2000, 30]);
    expect(rates.extras).toEqual([{ id: 'carriage', title: 'Carriage', priceMinor: 4500, for: 'order' }]);
  });

  it('tell a unit that there is not, with the nearest', () => {
    const [first] = findingsOf('hour: 50\nassembly:\n  units:\n    base-dor: 20 min\n');
    expect(first).toMatchObject({ code: 'unknown-word', line: 4, found: 'base-dor', nearest: 'base-door' });
  });

  it('tell a time that is none, a word that is none and an hour that is not there', () => {
    expect(findingsOf('hour: 50\nsawing: { cut: 6 hours }\n')[0]).toMatchObject({
      line: 2,
      expected: expect.stringContaining('4 min'),
    });
    expect(findingsOf('hour: 50\nsawing: { cutt: 6 }\n')[0]).toMatchObject({ nearest: 'cut' });
    expect(findingsOf('sawing: { cut: 6 }\n')[0]).toMatchObject({ code: 'missing-field', line: 1 });
    expect(findingsOf('VAT: 7.125\n')[0]).toMatchObject({ code: 'wrong-form', found: '7.125' });
  });
});
