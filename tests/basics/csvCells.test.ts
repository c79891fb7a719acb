import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { disarmedCell, plainCell } from '../../src/basics/csvCells.ts';

describe('a cell that a spreadsheet would run', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['+cmd', "'+cmd"],
    ['-2+3', "'-2+3"],
    ['\uff1d1', "'\uff1d1"],
    ['\t=1', "'\t'=1"],
    ['\rx', "'\rx"],
    ["'=1", "''=1"],
    ["''-a", "'''-a"],
    // A spreadsheet set to semicolons takes these for the beginning of a cell.
    ['a;=1+1', "a;'=1+1"],
    ['a;-5', "a;'-5"],
    ['two\n=lines', "two\n'=lines"],
  ])('%j is written as %j', (text, written) => {
    expect(disarmedCell(text)).toBe(written);
    expect(plainCell(written)).toBe(text);
  });

  it.each(['-5', '-5.2', '+3', '+3,5', 'a=b', 'a-b', "it's", "'s", 'a;b', ' x ', ''])(
    '%j is written as it is',
    (text) => expect(disarmedCell(text)).toBe(text),
  );

  const signs = fc.constantFrom(
    '=',
    '+',
    '-',
    '@',
    "'",
    ';',
    ',',
    '"',
    '\t',
    '\n',
    '\r',
    '1',
    '.',
    'a',
    ' ',
    '\uff0d',
  );
  const text = fc.oneof(
    fc.string({ unit: signs, maxLength: 12 }),
    fc.string({ unit: 'binary', maxLength: 12 }),
  );

  it('comes back as it was, whatever it is', () => {
    fc.assert(
      fc.property(text, (each) => {
        expect(plainCell(disarmedCell(each))).toBe(each);
      }),
      { numRuns: 2000 },
    );
  });

  it('begins no formula, however the line is split into cells', () => {
    fc.assert(
      fc.property(text, (each) => {
        for (const part of disarmedCell(each).split(/[;\t\r\n]/)) {
          expect(part).toMatch(/^(?![=@+\-\uff1d\uff0b\uff0d\uff20])|^[+-]\d+(?:[.,]\d+)?$/);
        }
      }),
      { numRuns: 2000 },
    );
  });
});
