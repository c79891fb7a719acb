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

  it('names every panel of a unit inside, each once, or that unit as a whole', () => {
    const plain = smallLibrary();
    const box = 'libraries/small/units/drawer-box.yaml';
    const door = 'libraries/small/units/base-door.yaml';
    const rear =
      '  rear: { role: back, x: [0, width], y: [396, 400], z: [0, 60], grain: any, when: width > 9000 }';
    const saidOf = (steps: string) => {
      const files = new Map(plain)
        .set(box, `${plain.get(box)!.trimEnd()}\n${rear}\n`)
        .set(door, `${plain.get(door)!.trimEnd()}\nassembly:\n${steps}`);
      return readLibrary(files, 'libraries/small').findings.map(
        ({ message, place, nearest }) => `${place?.line}: ${message}${nearest ? ` ${nearest}` : ''}`,
      );
    };
    const first = '  - put: [left side, shelf, door]\n';
    expect(saidOf(`${first}  - hang: [inner]\n`)).toEqual([]);
    expect(saidOf(`${first}  - apart: [inner]\n  - hang: [inner rear]\n`)).toEqual([]);
    expect(saidOf(`${first}  - apart: [inner bottom, inner rear]\n`)).toEqual([]);
    expect(saidOf(`${first}  - apart: [inner bottom]\n`)).toEqual([
      expect.stringMatching(/^\d+: `assembly` does not say when “inner rear” is put on\.$/),
    ]);
    expect(saidOf(`${first}  - apart: [inner bottom, inner rare]\n`)).toEqual([
      expect.stringMatching(/“inner rear” is put on\.$/),
      expect.stringMatching(/^\d+: `inner rare` is not a panel of this unit .* inner rear$/),
    ]);
    expect(saidOf(`${first}  - apart: [inner, inner bottom, inner bottom]\n`)).toEqual([
      expect.stringMatching(/^\d+: “inner bottom” is put on twice\.$/),
    ]);
  });

  it('does not take a panel for one of a unit that begins with the same word', () => {
    const path = 'libraries/small/units/base-door.yaml';
    const plain = smallLibrary().get(path)!;
    const files = smallLibrary().set(
      path,
      `${plain.replace('  inner: {', '  left: {').trimEnd()}\nassembly:\n  - put: [left side, shelf, door]\n`,
    );
    const { findings } = readLibrary(files, 'libraries/small');
    expect(findings.map(({ message }) => message)).toEqual([
      '`assembly` does not say when “left” is put on.',
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
