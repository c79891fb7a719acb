import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isMap, isScalar, isSeq, parseDocument } from 'yaml';
import { readPlacedYaml } from '../../src/basics/placedYaml.ts';
import { demoFiles, libraryFiles } from '../helpers/demoVan.ts';
import { mutations } from '../helpers/mutateText.ts';

/** The value as plain objects, names of fields as they are written. */
function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, plain(each)]));
}

/** What the other reader makes of a node, names of fields as they are written. */
function valueOfNode(node: unknown): unknown {
  if (isMap(node))
    return Object.fromEntries(
      node.items.map(({ key, value }) => {
        if (!isScalar(key)) throw new Error('a name is no scalar');
        return [typeof key.value === 'string' ? key.value : key.source!, valueOfNode(value)];
      }),
    );
  if (isSeq(node)) return node.items.map(valueOfNode);
  return isScalar(node) ? node.value : null;
}

function readByOther(text: string): unknown {
  const document = parseDocument(text, { uniqueKeys: false, prettyErrors: false, logLevel: 'error' });
  if (document.errors.length > 0) throw new Error(document.errors[0]!.message);
  return valueOfNode(document.contents);
}

/**
 * YAML Ain't Markup Language version 1.2, revision 1.2.2 (October 2021), section 10.3.2, table and example 10.9 "Core tag
 * resolution" (from memory).
 */
describe('the core schema of YAML 1.2.2', () => {
  it.each([
    ['null', null],
    ['Null', null],
    ['NULL', null],
    ['~', null],
    ['', null],
    ['nUll', 'nUll'],
    ['true', true],
    ['True', true],
    ['false', false],
    ['FALSE', false],
    ['yes', 'yes'],
    ['off', 'off'],
    ['0', 0],
    ['0o7', 7],
    ['0x3A', 58],
    ['-19', -19],
    ['007', 7],
    ['1_000', '1_000'],
    ['0.', 0],
    ['-0.0', -0],
    ['.5', 0.5],
    ['+12e03', 12_000],
    ['-2E+05', -200_000],
    ['.inf', Infinity],
    ['-.Inf', -Infinity],
    ['+.INF', Infinity],
    ['.NAN', Number.NaN],
    ['.', '.'],
    ['e5', 'e5'],
    ['1e', '1e'],
    ['12:30:45', '12:30:45'],
    ['2026-03-02', '2026-03-02'],
  ])('resolves %j', (text, value) => {
    const { yaml } = readPlacedYaml(`a: ${text}\n`, 'a.yaml');
    expect((yaml!.value as { a: unknown }).a).toBe(value);
  });

  it('leaves what is in quotes or a block a text', () => {
    const { yaml } = readPlacedYaml('a: "1"\nb: \'true\'\nc: |\n  1\nd: >-\n  ~\n', 'a.yaml');
    expect({ ...(yaml!.value as object) }).toEqual({ a: '1', b: 'true', c: '1\n', d: '~' });
  });
});

/** Held against the package `yaml`, another reader of YAML 1.2 with no code in common. */
describe('as another reader reads them', () => {
  const files = [...demoFiles(), ...libraryFiles('parts-libraries/workshop-bench')].filter(([path]) =>
    path.endsWith('.yaml'),
  );

  it('are the files of the libraries', () => {
    expect(files.length).toBeGreaterThan(60);
    for (const [path, text] of files) {
      const { yaml, findings } = readPlacedYaml(text, path);
      expect(findings).toEqual([]);
      expect(plain(yaml!.value), path).toEqual(readByOther(text));
    }
  });

  it('are changed ones that are taken without a word', () => {
    let taken = 0;
    fc.assert(
      fc.property(fc.constantFrom(...files), mutations, ([path, text], change) => {
        const changed = change(text);
        const { yaml, findings } = readPlacedYaml(changed, path);
        if (yaml === undefined || findings.length > 0) return;
        taken++;
        expect(plain(yaml.value)).toEqual(readByOther(changed));
      }),
      { numRuns: 1000 },
    );
    expect(taken).toBeGreaterThan(200);
  });
});
