import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unbroken, wrap } from '../../src/drawing/lettering.ts';

/** Every letter is 1 mm wide. */
const measure = (text: string) => [...text].length;
const lines = (text: string, widthMm: number) => wrap(text, widthMm, 1, 'regular', measure);

describe('a text in lines', () => {
  it('keeps sizes, counts and figures with their mm on one line', () => {
    expect(lines('4 × Small angle, with four screws 4 × 15', 12)).toEqual([
      '4 × Small',
      'angle, with',
      'four screws',
      '4 × 15',
    ]);
    expect(lines('2 × Cup hinge 35 mm with plate', 16)).toEqual(['2 × Cup hinge', '35 mm with plate']);
    expect(lines('6\u00a0× Corner bracket', 13)).toEqual(['6\u00a0× Corner', 'bracket']);
  });

  it('breaks them too where a line has no room for them', () => {
    expect(lines('1750 × 531.8', 8)).toEqual(['1750 ×', '531.8']);
    expect(lines('', 8)).toEqual(['']);
  });

  it('has every word of it in order, and no cross at an end where there is room', () => {
    const part = fc.constantFrom('left', 'screws', '4 × 40', '12.7 mm', '600 × 397.5 × 16.2', 'a');
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 1, maxLength: 12 }),
        fc.integer({ min: 1, max: 40 }),
        (parts, wide) => {
          const text = parts.join(' ');
          const made = lines(text, wide);
          expect(made.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
          for (const line of made) expect(measure(line)).toBeLessThanOrEqual(wide);
          if (unbroken(text).some((each) => measure(each) > wide)) return;
          for (const line of made) expect(line).not.toMatch(/^(×|mm)|×$/);
        },
      ),
    );
  });
});
