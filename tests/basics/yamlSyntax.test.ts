import { describe, expect, it } from 'vitest';
import { readPlacedYaml } from '../../src/basics/placedYaml.ts';

describe('mistakes in the form of a file', () => {
  it.each([
    ['a: "x\nb: 1\nc: 2\n', '1:4', 'A quote is opened here but not closed.'],
    ['a: 1\nb: "x\nc: "y"\nd: 1\n', '2:4', 'A quote is opened here but not closed.'],
    ['a: 1\r\nb: "x\r\n', '2:4', 'A quote is opened here but not closed.'],
    ["a: 1\nb: 'x", '2:4', 'A quote is opened here but not closed.'],
    ['a: "it\'s\nb: 1\n', '1:4', 'A quote is opened here but not closed.'],
    ['a: "say \\"so\nb: 1\n', '1:4', 'A quote is opened here but not closed.'],
    ["a: 'it''s \"so\"\nb: 1\n", '1:4', 'A quote is opened here but not closed.'],
    ['"a: 1\n', '1:1', 'A quote is opened here but not closed.'],
    ['a: 1\nb: [1, 2\nc: 3\nd: 4\n', '2:4', 'A bracket is opened here but not closed'],
    ['a: {b: [1], c: 2\nd: 4\n', '1:4', 'A bracket is opened here but not closed'],
    ['a: {b: [1, c: 2\nd: 4\n', '1:8', 'A bracket is opened here but not closed'],
    ['a: [x y: z\n', '1:4', 'A bracket is opened here but not closed'],
    ['a: [1, 2', '1:4', 'A bracket is opened here but not closed'],
    ['a: {b: "x" c: 1}\n', '1:12', 'A comma or a closing bracket is missing here.'],
    ['a: [1,, 2]\n', '1:7', 'There is nothing before this comma.'],
    ['a: ]\nb: 1\n', '1:4', 'A bracket is closed here that was not opened.'],
    ['a: [1, 2]]\nb: 1\n', '1:10', 'A bracket is closed here that was not opened.'],
    ['a: b: c\nd: 1\n', '1:5', 'There are two colons with a space in this line.'],
    ['a:1\nb: 2\n', '1:1', 'This is neither `field: value` nor an entry of a list.'],
    ['a: 1\nb', '2:1', 'This is neither `field: value` nor an entry of a list.'],
    ['a: 1\nb\n', '2:1', 'This is neither `field: value` nor an entry of a list.'],
    ['a:\n  b: 1\n  c # note\nd: 1\n', '3:3', 'This is neither `field: value` nor an entry of a list.'],
    ['a: 1\n"b"\nc: 2\n', '2:1', 'This is neither `field: value` nor an entry of a list.'],
    ['a: 1\n\n# note\n  b\n', '4:3', 'The indentation does not fit the lines above.'],
    ['a: 1\nb\n# note\nc: 2\n', '2:1', 'This is neither `field: value` nor an entry of a list.'],
    ['a: 1\n b: 2\nc: 3\n', '2:2', 'The indentation does not fit the lines above.'],
    ['a:\n  b: 1\n c: 2\n', '3:2', 'The indentation does not fit the lines above.'],
    ['a: |\n  x\n y\nb: 1\n', '3:2', 'The indentation does not fit the lines above.'],
    ['a: 1\n\tb: 2\n', '2:1', 'This line is indented with a tab.'],
    ['a:\n\tb: 2\n', '2:1', 'This line is indented with a tab.'],
    ['a: { b: [0, 1] \t}\n', '1:16', 'There is a tab in this line where only spaces can be.'],
    ['a: @x\n', '1:4', 'A value cannot begin with this character.'],
    ['a: `x`\n', '1:4', 'A value cannot begin with this character.'],
    ['a: %x\n', '1:4', 'A value cannot begin with this character.'],
    ['a: "\\q"\n', '1:5', 'A backslash in double quotes has a meaning, and this one has none.'],
    ['a: "\\u12"\n', '1:5', 'A backslash in double quotes has a meaning, and this one has none.'],
    ['a: *x y\n', '1:7', 'A value that begins with &, * or ! is read as a mark of YAML.'],
    ['a: & 1\n', '1:5', 'A value that begins with &, * or ! is read as a mark of YAML.'],
    ['a: "x" y\n', '1:8', 'The quotes end before the value does.'],
    ["a: 'it's'\nb: 1\n", '1:8', 'The quotes end before the value does.'],
    ['a: - b\n', '1:4', 'A list cannot begin on the line of its field.'],
    ['a: 1\n- b\n', '2:1', 'An entry of a list cannot stand here.'],
    ['- a\nb: 1\n', '2:1', 'The indentation does not fit the lines above.'],
    ['a: |x\n', '1:5', 'Behind > or | the line ends, and its text begins on the next.'],
    ['%YAML 1.2\na: 1\n', '1:1', 'A line that begins with % has no place in these files.'],
    ['a: 1\n---\nb: 2\n', '2:1', 'A second document begins here.'],
    ['---\na: 1\n---\nb: 2\n', '3:1', 'A second document begins here.'],
    ['a: "---"\n...\nb: 2\n', '2:1', 'A second document begins here.'],
  ])('%j is told at %s', (text, place, message) => {
    const { yaml, findings } = readPlacedYaml(text, 'a.yaml');
    expect(yaml).toBeUndefined();
    expect(findings.map((each) => [each.code, `${each.place?.line}:${each.place?.column}`])).toEqual([
      ['yaml-syntax', place],
    ]);
    expect(findings[0]!.message).toContain(message);
    expect(findings[0]!.advice).toMatch(/\S/);
  });

  it('of a very long text is told where the reading stopped', () => {
    const start = performance.now();
    const { findings } = readPlacedYaml(`a: [\n${'  b,\n'.repeat(200_000)}`, 'a.yaml');
    expect(findings).toMatchObject([{ code: 'yaml-syntax', place: { line: 200_002 } }]);
    expect(findings[0]!.message).toBe('A quote or a bracket is opened above but not closed.');
    expect(performance.now() - start).toBeLessThan(5000);
  });

  it.each([
    ['a: b: c\nd: 1\ne: @x\nf: "y\ng: 2\n', [1, 3, 4]],
    // What belongs to a line that is wrong is not told of.
    ['a: : \n  b: 1\n\n    c: 2\nd: [1,\n  2\ne: 3\nf: }\n', [1, 5, 8]],
    ['- a: "x\n  b: 2\n- c: *\n- d: 1\n', [1, 3]],
    [Array.from({ length: 9 }, (_, i) => `k${i}: a: b`).join('\n'), [1, 2, 3, 4, 5]],
    ['a: b: c\nd: x\u0007y\ne: f: g\n', [1, 2]],
  ])('all in %j are told at once', (text, expected) => {
    const { yaml, findings } = readPlacedYaml(text, 'a.yaml');
    expect(yaml).toBeUndefined();
    expect(findings.map(({ place }) => place?.line)).toEqual(expected);
  });

  it('a character that cannot be seen is named', () => {
    const { findings } = readPlacedYaml('a: 1\nb: x\u0007y\n', 'a.yaml');
    expect(findings).toMatchObject([{ code: 'unreadable-text', place: { line: 2, column: 5 } }]);
    expect(findings[0]!.message).toContain('U+0007');
  });

  it('of many lines in a quote or bracket the opening one is found at once', () => {
    for (const opening of ['a: "', 'a: [']) {
      const text = `first: 1\n${opening}\n${' b,\n'.repeat(30_000)}`;
      const start = performance.now();
      expect(readPlacedYaml(text, 'a.yaml').findings).toMatchObject([{ place: { line: 2, column: 4 } }]);
      expect(performance.now() - start).toBeLessThan(5000);
    }
  });
});
