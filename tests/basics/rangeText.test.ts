import { describe, expect, it } from 'vitest';
import { rangeFromText, valuesOfRange } from '../../src/basics/rangeText.ts';

describe('rangeFromText', () => {
  it.each([
    ['galley sink.depth=440..480', 'galley sink', 'depth', 440, 480, 1],
    ['bed_width = 1200 .. 1300 / 2.5', null, 'bed_width', 1200, 1300, 2.5],
    ['a.b=10 in..11 1/2 in', 'a', 'b', 254, 292.1, 1],
    ['a.b=10 in..12 in/1/2 in', 'a', 'b', 254, 304.8, 12.7],
  ])('reads %s', (text, of, parameter, least, most, step) => {
    expect(rangeFromText(text)).toMatchObject({ of, parameter, least, most, step });
  });

  it.each(['depth', 'a.b=5', 'a.b=6..5', 'a.b=5..6/0', 'a.b=5..6/-1', 'a.b=5...6', 'a.b=x..y', 'a.b=..6'])(
    'refuses %s',
    (text) => {
      expect(rangeFromText(text)).toBeUndefined();
    },
  );

  it('gives whole steps from the least value on', () => {
    expect(valuesOfRange({ least: 0.1, most: 0.5, step: 0.1 })).toEqual([0.1, 0.2, 0.3, 0.4, 0.5]);
    expect(valuesOfRange({ least: 300, most: 311, step: 5 })).toEqual([300, 305, 310]);
    expect(valuesOfRange({ least: 0, most: 2000, step: 1 })).toBeNull();
  });
});
