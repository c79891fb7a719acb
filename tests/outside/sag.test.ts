import { describe, expect, it } from 'vitest';
import { type LoadedStrip, sagMm } from '../../src/checks/sagFormula.ts';

/**
 * Sag of a shelf: Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-282), chapter 9, equations 9-2 and 9-3 with the
 * factors of table 9-1 for a load spread evenly on simply supported ends, worked with g = 9.80665 m/s².
 */
const shelf: LoadedStrip = {
  loadKg: 15,
  spanMm: 600,
  widthMm: 300,
  thicknessMm: 15,
  stiffnessMPa: 6000,
  shearMPa: null,
};

describe('sag of a strip under an even load, worked', () => {
  it('600 mm of 15 mm board, 300 wide, E 6000 MPa, 15 kg: I = 84375 mm⁴, 0.817 mm', () => {
    expect(sagMm(shelf)).toBeCloseTo(0.817, 3);
    // The same by hand: 5 · 147.09975 N · 600³ / (384 · 6000 · 84375).
    expect(sagMm(shelf)).toBeCloseTo((5 * 15 * 9.80665 * 600 ** 3) / (384 * 6000 * 84_375), 12);
  });

  it('800 mm of the same board, 20 kg: 2.583 mm, a 310th of the span', () => {
    const sag = sagMm({ ...shelf, spanMm: 800, loadKg: 20 });
    expect(sag).toBeCloseTo(2.583, 3);
    expect(Math.round(800 / sag)).toBe(310);
  });

  it('800 mm of 18 mm board, E 8000 and G 500 MPa, 20 kg: 1.121 mm by bending and 0.0087 mm by shear', () => {
    const bent = { ...shelf, spanMm: 800, loadKg: 20, thicknessMm: 18, stiffnessMPa: 8000 };
    expect(sagMm(bent)).toBeCloseTo(1.121, 3);
    expect(sagMm({ ...bent, shearMPa: 500 }) - sagMm(bent)).toBeCloseTo(0.0087, 4);
  });

  it('grows with the third power of the span and falls with the third of the thickness', () => {
    expect(sagMm({ ...shelf, spanMm: 1200 })).toBeCloseTo(8 * sagMm(shelf), 12);
    expect(sagMm({ ...shelf, thicknessMm: 30 })).toBeCloseTo(sagMm(shelf) / 8, 12);
    expect(sagMm({ ...shelf, widthMm: 600, loadKg: 30 })).toBeCloseTo(sagMm(shelf), 12);
  });
});
