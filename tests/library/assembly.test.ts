import { describe, expect, it } from 'vitest';
import { readLibrary } from '../../src/library/index.ts';
import { smallLibrary } from '../helpers/smallLibrary.ts';

/** The small library with steps of assembly for its cupboard, one line each. */
function read(...lines: readonly string[]) {
  const path = 'libraries/small/units/base-door.yaml';
  const files = smallLibrary();
  files.set(
    path,
    `${files.get(path)!.trimEnd()}\nassembly:\n${lines.map((line) => `  - ${line}\n`).join('')}`,
  );
  return readLibrary(files, 'libraries/small');
}

function said(...lines: readonly string[]) {
  return read(...lines).findings.map(({ code, message, nearest }) => [code, message, nearest]);
}

describe('how a unit says that it goes together', () => {
  it('is read step by step, with panels and units inside', () => {
    const library = read('begin: [left side]', 'put: [shelf]', 'apart: [inner]', 'hang: [door]');
    expect(library.findings).toEqual([]);
    const { assembly } = (library.ok ? library.value : undefined)!.units.get('base-door')!;
    expect(assembly!.map(({ way, names }) => [way, ...names.map(({ name }) => name)])).toEqual([
      ['begin', 'left side'],
      ['put', 'shelf'],
      ['apart', 'inner'],
      ['hang', 'door'],
    ]);
    expect(assembly![1]!.names[0]!.place.line).toBeGreaterThan(20);
  });

  it('is not there where nothing is said', () => {
    const plain = readLibrary(smallLibrary(), 'libraries/small');
    expect((plain.ok ? plain.value : undefined)!.units.get('base-door')).not.toHaveProperty('assembly');
  });

  it('names every panel, each once; units inside as a whole or by their panels', () => {
    expect(said('put: [left side, shelf, door]', 'put: [inner bottom]')).toEqual([]);
    expect(said('put: [left side, shelf, door]')).toEqual([
      ['assembly-without', '`assembly` does not say when “inner” is put on.', undefined],
    ]);
    expect(said('put: [left side, shelf, inner]')).toEqual([
      ['assembly-without', '`assembly` does not say when “door” is put on.', undefined],
    ]);
    expect(said('put: [left side, shelf, inner, door]', 'hang: [door]')).toEqual([
      ['assembly-twice', '“door” is put on twice.', undefined],
    ]);
    expect(said('put: [left side, shelf, inner, door, dor]')[0]).toEqual([
      'unknown-word',
      '`dor` is not a panel of this unit or a unit inside it.',
      'door',
    ]);
  });

  it('has one way in each step', () => {
    expect(said('{ put: [left side, shelf, inner], hang: [door] }')).toEqual([
      ['assembly-step', 'A step of `assembly` has one way with its panels.', undefined],
    ]);
    expect(said('{}', 'put: [left side, shelf, inner]')).toHaveLength(1);
    expect(
      said('glue: [left side, shelf, inner, door]')
        .map(([, message]) => message)
        .join(),
    ).toContain('glue');
    expect(said('put: []')).not.toEqual([]);
  });
});
