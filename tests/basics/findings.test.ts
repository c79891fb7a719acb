import { expect, test } from 'vitest';
import {
  checkedValue,
  errorFinding,
  listWords,
  ordinal,
  shownText,
  sortFindings,
  unknownWord,
  warningFinding,
} from '../../src/basics/findings.ts';
import { formatFinding } from '../../src/basics/findingText.ts';

test('the nearest word is shown without control characters, even where a name has some', () => {
  expect(unknownWord('poplar-15', 'a board', ['p\tplar-15']).nearest).toBe('p plar-15');
});

test('a finding is printed with its place first and what helps below', () => {
  const place = { file: 'boards.yaml', line: 3, column: 14, field: 'poplar-15 › core' };
  expect(
    formatFinding(unknownWord('poplr', 'a core', ['poplar', 'birch'], place, 'See the maker’s sheet.')),
  ).toBe(
    [
      'boards.yaml:3:14: error: `poplr` is not a core.',
      '    in: poplar-15 › core',
      '    found: poplr',
      '    expected: poplar or birch',
      '    did you mean: poplar',
      '    advice: See the maker’s sheet.',
    ].join('\n'),
  );
});

test('a finding without a place is printed as a sentence', () => {
  expect(formatFinding(warningFinding('odd', 'This is odd.'))).toBe('warning: This is odd.');
  expect(formatFinding(errorFinding('gone', 'Gone.', { file: 'a.yaml' }))).toBe('a.yaml: error: Gone.');
});

test('what a file holds cannot break the terminal or the line', () => {
  expect(shownText('a\u001b[31m\nb\u202ec\u0000')).toBe('a [31m b c');
  // Half of a pair is no letter.
  expect(shownText(`${'9'.repeat(58)}\u{1d11e}${'9'.repeat(9)}`)).toBe(`${'9'.repeat(58)}…`);
  expect(shownText('x'.repeat(100))).toHaveLength(60);
  expect(shownText('x'.repeat(1_000_000))).toHaveLength(60);
});

test('words are listed as a person does', () => {
  expect(listWords([])).toBe('nothing');
  expect(listWords(['a'])).toBe('a');
  expect(listWords(['a', 'b', 'c'])).toBe('a, b or c');
  expect(listWords(['a', 'b'], 'and')).toBe('a and b');
  expect(listWords(Array.from({ length: 40 }, (_, i) => String(i)))).toContain('(40 in all)');
});

test('ordinals', () => {
  expect([1, 2, 3, 4, 11, 12, 13, 21, 22, 101, 111].map(ordinal)).toEqual([
    '1st',
    '2nd',
    '3rd',
    '4th',
    '11th',
    '12th',
    '13th',
    '21st',
    '22nd',
    '101st',
    '111th',
  ]);
});

test('findings are sorted by file and place, and equal ones keep their order', () => {
  const at = (file: string, line: number, code: string) => errorFinding(code, code, { file, line });
  const sorted = sortFindings([at('b', 1, 'd'), at('a', 9, 'c'), at('a', 2, 'a'), at('a', 2, 'b')]);
  expect(sorted.map((finding) => finding.code)).toEqual(['a', 'b', 'c', 'd']);
});

test('a value comes with warnings, never with an error', () => {
  expect(checkedValue(5, [warningFinding('w', 'W.')])).toMatchObject({ ok: true, value: 5 });
  expect(checkedValue(5, [errorFinding('e', 'E.')])).not.toHaveProperty('value');
  expect(() => checkedValue(undefined, [])).toThrow();
});
