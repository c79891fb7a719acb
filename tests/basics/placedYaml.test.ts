import { describe, expect, test } from 'vitest';
import { LARGEST_FILE, readPlacedYaml } from '../../src/basics/placedYaml.ts';

function codes(text: string): string[] {
  return readPlacedYaml(text, 'a.yaml').findings.map((finding) => finding.code);
}

describe('places', () => {
  const { yaml } = readPlacedYaml(
    'width: 600\nnames:\n  inside: "width - 2"\n  list: [a, \'b\']\n',
    'a.yaml',
  );
  const root = yaml!.value as { width: number; names: { inside: string; list: string[] } };

  test('a value is where its text begins, behind an opening quote', () => {
    expect(yaml!.placeOf(root, 'width')).toEqual({ file: 'a.yaml', line: 1, column: 8, field: 'width' });
    expect(yaml!.placeOf(root.names, 'inside')).toEqual({
      file: 'a.yaml',
      line: 3,
      column: 12,
      field: 'names › inside',
    });
    expect(yaml!.placeOf(root.names.list, 1)).toMatchObject({
      line: 4,
      column: 14,
      field: 'names › list › 2nd',
    });
  });

  test('a field is where its name begins', () => {
    expect(yaml!.placeOfKey(root.names, 'inside')).toMatchObject({ line: 3, column: 3 });
    expect(yaml!.placeOfAll(root.names.list)).toMatchObject({ line: 4, column: 3 });
    expect(yaml!.placeOfAll(root)).toMatchObject({ line: 1, column: 1 });
  });

  test('places stay right when an entry is dropped', () => {
    const { yaml: file } = readPlacedYaml('- a\n- b\n- c\n', 'a.yaml');
    const list = file!.value as string[];
    file!.drop(list, 0);
    expect(list).toEqual(['b', 'c']);
    expect(file!.placeOf(list, 1)).toMatchObject({ line: 3, field: '3rd entry' });
  });

  test('line ends and a byte-order mark do not shift lines', () => {
    const { yaml: file } = readPlacedYaml('\ufeffa: 1\r\nb: 2\r\n', 'a.yaml');
    expect(file!.placeOf(file!.value as object, 'b')).toMatchObject({ line: 2, column: 4 });
    expect(file!.value).toEqual({ a: 1, b: 2 });
  });
});

describe('what YAML allows but people do not mean', () => {
  test.each([
    ['a: &x 1\nb: 2', 'yaml-alias'],
    ['a: &x 1\nb: *x', 'yaml-alias'],
    ['a: !!str 1', 'yaml-tag'],
    ['a: !own 1', 'yaml-tag'],
    ['!!map\na: 1', 'yaml-tag'],
    ['a: 1\na: 2', 'duplicate-field'],
    ['a: {b: 1, b: 2}', 'duplicate-field'],
    ['<<: {a: 1}', 'yaml-merge'],
    ['__proto__: {a: 1}', 'bad-name'],
    ['"__proto__": 1', 'bad-name'],
    ['? [a, b]\n: 1', 'yaml-key'],
    ['? \n: 1', 'yaml-key'],
    ['a: 1\n---\nb: 2', 'yaml-syntax'],
    ['\ta: 1', 'yaml-syntax'],
    ['a:\n\tb: 1', 'yaml-syntax'],
    ['a: [1, 2', 'yaml-syntax'],
    ['a: "x', 'yaml-syntax'],
    ['a: b: c', 'yaml-syntax'],
    ['a: @x', 'yaml-syntax'],
    ['a: *x', 'yaml-alias'],
    ['a: 1\u0000', 'not-text'],
    ['a: "\\ud800"', 'not-text'],
    ['"\\ud800": 1', 'not-text'],
    ['a: \ufffd', 'not-text'],
  ])('%j gives %s', (text, code) => {
    expect(codes(text)).toContain(code);
    for (const finding of readPlacedYaml(text, 'a.yaml').findings) {
      expect(finding.place?.line).toBeGreaterThan(0);
      expect(finding.advice ?? '').not.toMatch(/\.\.$/);
    }
  });

  test('all of them at once', () => {
    expect(codes('a: &x 1\nb: *x\na: 2\nc: !t 3\n')).toEqual([
      'yaml-alias',
      'yaml-alias',
      'duplicate-field',
      'yaml-tag',
    ]);
  });

  test('a merge key gives nothing to the object', () => {
    const { yaml } = readPlacedYaml('__proto__: {polluted: 1}\na: 1\n', 'a.yaml');
    expect(Object.keys(yaml!.value as object)).toEqual(['a']);
    expect((yaml!.value as { polluted?: unknown }).polluted).toBeUndefined();
  });

  test('names of the language are only names', () => {
    const { yaml, findings } = readPlacedYaml('constructor: 1\ntoString: 2\nhasOwnProperty: 3\n', 'a.yaml');
    expect(findings).toEqual([]);
    expect({ ...(yaml!.value as object) }).toEqual({ constructor: 1, toString: 2, hasOwnProperty: 3 });
  });
});

describe('files that would exhaust the parser', () => {
  test.each([
    ['lists in brackets', '['.repeat(100_000)],
    ['maps in braces', '{a: '.repeat(50_000)],
    ['lists by dashes', `${'- '.repeat(20_000)}a`],
    ['keys by question marks', `${'? '.repeat(20_000)}a`],
    ['brackets over many lines', `a: [\n${'  a: [\n'.repeat(10_000)}`],
    ['indentation', Array.from({ length: 2000 }, (_, i) => `${' '.repeat(i)}a:`).join('\n')],
  ])('%s nested deep are refused at once', (_, text) => {
    const start = performance.now();
    const { yaml, findings } = readPlacedYaml(text, 'a.yaml');
    expect(yaml).toBeUndefined();
    expect(findings[0]).toMatchObject({ code: 'nested-too-deep', severity: 'error' });
    expect(performance.now() - start).toBeLessThan(2000);
  });

  test('a billion laughs are not laughed', () => {
    const lines = ['a: &a [x, x, x, x, x, x, x, x, x]'];
    for (let i = 1; i < 20; i++) {
      const before = String.fromCharCode(96 + i);
      const name = String.fromCharCode(97 + i);
      lines.push(`${name}: &${name} [${Array(9).fill(`*${before}`).join(', ')}]`);
    }
    const start = performance.now();
    expect(codes(lines.join('\n'))).toContain('yaml-alias');
    expect(performance.now() - start).toBeLessThan(2000);
  });

  test('a file of more than 5 MB is refused in words', () => {
    const { yaml, findings } = readPlacedYaml('a'.repeat(LARGEST_FILE + 1), 'a.yaml');
    expect(yaml).toBeUndefined();
    expect(findings[0]).toMatchObject({ code: 'file-too-large', place: { file: 'a.yaml' } });
  });

  test('very many fields take linear time', () => {
    const text = Array.from({ length: 30_000 }, (_, i) => `k${i}: ${i}`).join('\n');
    const start = performance.now();
    expect(readPlacedYaml(text, 'a.yaml').findings).toEqual([]);
    expect(performance.now() - start).toBeLessThan(5000);
  });
});
