import { describe, expect, it } from 'vitest';
import { runsOfNames } from '../../../src/documents/book/runsOfNames.ts';

const slats = (numbers: readonly number[], from = 1, unit = 'roof bed') =>
  numbers.map((number, index) => ({ number, name: `slat ${from + index}`, unit }));

describe('names of panels that look alike', () => {
  it('tell a long run by its first and last', () => {
    expect(runsOfNames(slats([80, 81, 82, 83, 84]))).toEqual(['80–84 slat 1–5, roof bed']);
  });

  it('are all told where they are few, or do not follow each other', () => {
    expect(runsOfNames(slats([3, 4, 5]))).toEqual([
      '3 slat 1, roof bed',
      '4 slat 2, roof bed',
      '5 slat 3, roof bed',
    ]);
    expect(runsOfNames(slats([3, 4, 6, 7]))).toHaveLength(4);
    const sides = ['left side', 'right side', 'top', 'bottom'].map((name, index) => ({
      number: index + 1,
      name,
      unit: '',
    }));
    expect(runsOfNames(sides)).toEqual(['1 left side', '2 right side', '3 top', '4 bottom']);
    expect(runsOfNames([...slats([1, 2, 3]), ...slats([4, 5, 6], 4, 'bed')])).toHaveLength(6);
  });
});
