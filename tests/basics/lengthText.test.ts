import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lengthAdvice, lengthFromText, millimetresOfMarkedText } from '../../src/basics/lengthText.ts';

describe('lengths as texts', () => {
  test.each([
    ['600', 600_000],
    ['600.5', 600_500],
    ['.5', 500],
    ['18 mm', 18_000],
    ['18mm', 18_000],
    ['18 MM', 18_000],
    ['+3', 3_000],
    ['-3', -3_000],
    ['0', 0],
    ['-0', 0],
    // 1 in = 25.4 mm, so 3/4 in = 19.05 mm and 23 5/8 in = 600.075 mm.
    ['3/4 in', 19_050],
    ['0.75"', 19_050],
    ['1 1/2 in', 38_100],
    ['1-1/2"', 38_100],
    ['23 5/8 in', 600_075],
    ['24″', 609_600],
    ['24 inches', 609_600],
    ['24 IN', 609_600],
  ])('%s is %d µm', (text, um) => {
    expect(lengthFromText(text)).toBe(um);
  });

  test.each([
    '',
    ' ',
    'mm',
    '1,5',
    '1.5 cm',
    '3/4',
    '1/0 in',
    '1e3',
    '0x10',
    '5.',
    '1 2',
    '1 2 in',
    'NaN',
    'Infinity',
    '--5',
    '1/2/3 in',
    '9'.repeat(59),
    '9'.repeat(80),
  ])('%s is not a length', (text) => {
    expect(lengthFromText(text)).toBeUndefined();
  });

  test('only texts with a unit mark are taken out of formulas', () => {
    expect(millimetresOfMarkedText('3/4 in')).toBe(19.05);
    expect(millimetresOfMarkedText('18 mm')).toBe(18);
    expect(millimetresOfMarkedText('18')).toBeUndefined();
    expect(millimetresOfMarkedText('width - 3')).toBeUndefined();
    expect(millimetresOfMarkedText('3 * inch')).toBeUndefined();
  });

  test('what helps with a wrong length', () => {
    expect(lengthAdvice('600,5')).toContain('600.5');
    // Advice does not repeat what nobody reads to its end.
    expect(lengthAdvice(`${'9'.repeat(7000)},5`)).toBeUndefined();
    expect(lengthAdvice('60 cm')).toContain('cm');
    expect(lengthAdvice('3/4')).toContain('3/4 in');
    expect(lengthAdvice('1/0 in')).toContain('over 0');
    expect(lengthAdvice('twelve')).toBeUndefined();
  });

  test('tenths of a millimetre come back exactly', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (tenths) => {
        expect(lengthFromText((tenths / 10).toFixed(1))).toBe(tenths * 100);
      }),
    );
  });

  test('sixty-fourths of an inch are rounded once', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 63 }), (whole, parts) => {
        expect(lengthFromText(`${whole} ${parts}/64 in`)).toBe(
          Math.round(((whole * 64 + parts) * 25_400) / 64),
        );
      }),
    );
  });

  test('no text whatever throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        lengthFromText(text);
        lengthAdvice(text);
      }),
    );
  });
});
