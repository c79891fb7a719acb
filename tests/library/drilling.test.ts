import { describe, expect, it } from 'vitest';
import { readLibrary } from '../../src/library/index.ts';
import type { HoleDefinition } from '../../src/model/library.ts';
import { smallLibrary } from '../helpers/smallLibrary.ts';

const patterns = `hinge-cup:
  title: Hinge cup
  holes:
    cup: { along: 0, across: 0, diameter: 35, depth: 1/2 in }
    fixing: { along: 9.5, across: -22.5, diameter: 8, depth: through }
`;

/** The small library with patterns, and its left side with holes as written, one line each. */
function read(holes: readonly string[], drilling: string | null = patterns) {
  const lines = ['    edging: [front]', '    holes:', ...holes.map((line) => `      ${line}`)].join('\n');
  const files = smallLibrary(['units/base-door.yaml', '    edging: [front]', lines]);
  if (drilling !== null) files.set('libraries/small/drilling.yaml', drilling);
  return readLibrary(files, 'libraries/small');
}

function holesOf(...holes: readonly string[]): readonly HoleDefinition[] {
  const library = read(holes);
  if (!library.ok) throw new Error(library.findings.map(({ message }) => message).join('\n'));
  return library.value.units.get('base-door')!.panels[0]!.holes;
}

function said(...holes: readonly string[]): readonly (readonly [string, string, number | undefined])[] {
  return read(holes).findings.map(({ code, message, place }) => [code, message, place?.line] as const);
}

describe('holes in a unit file', () => {
  it('are read as written, through or not, in rows and on condition', () => {
    expect(
      holesOf(
        'pin: { at: { y: 37, z: 100 + n * 32 }, from: right, diameter: 5, depth: 12, repeat: { n: 10 }, when: shelves > 0 }',
        'screw: { at: { y: 50, z: 50 }, from: left, diameter: 1/4 in, depth: through }',
        'plate: { at: { y: 37, z: 100 }, from: right, drill: hinge-cup, towards: back }',
      ),
    ).toMatchObject([
      {
        name: 'pin',
        from: 'right',
        at: { x: null, y: { text: '37' }, z: { text: '100 + n * 32' } },
        drill: { kind: 'hole', diameter: { text: '5' }, depth: { text: '12' } },
        repeat: { counter: 'n', count: { text: '10' } },
        when: { text: 'shelves > 0' },
      },
      { name: 'screw', drill: { kind: 'hole', diameter: { text: '6.35' }, depth: null }, repeat: null },
      { name: 'plate', drill: { kind: 'pattern', pattern: 'hinge-cup', towards: 'back' } },
    ]);
  });

  it('know the patterns of drilling.yaml', () => {
    const library = read(['a: { at: { y: 37, z: 50 }, from: right, diameter: 5, depth: 12 }']);
    expect(library.ok && library.value.drilling.get('hinge-cup')).toEqual({
      id: 'hinge-cup',
      title: 'Hinge cup',
      holes: [
        { name: 'cup', alongUm: 0, acrossUm: 0, diameterUm: 35_000, depthUm: 12_700 },
        { name: 'fixing', alongUm: 9500, acrossUm: -22_500, diameterUm: 8000, depthUm: null },
      ],
    });
  });

  it('are refused in words, each with its line', () => {
    expect(
      said(
        'a: { at: { y: 37 }, from: right, diameter: 5, depth: 12 }',
        'b: { at: { x: 37, z: 5 }, from: right, diameter: 5, depth: 12 }',
        'c: { at: { y: 37, z: 5 }, from: right, diameter: 5 }',
        'd: { at: { y: 37, z: 5 }, from: right, diameter: 5, depth: 12, towards: top }',
        'e: { at: { y: 37, z: 5 }, from: right, drill: hinge-cup }',
        'f: { at: { y: 37, z: 5 }, from: right, drill: hinge-cup, towards: left }',
        'g: { at: { y: 37, z: 5 }, from: right, drill: hinge-cup, towards: top, depth: 3 }',
      ),
    ).toEqual([
      ['bad-hole', 'A hole drilled from the right stands at y and z.', 22],
      ['bad-hole', 'A hole drilled from the right stands at y and z.', 23],
      ['bad-hole', 'A hole needs a diameter and a depth.', 24],
      ['bad-hole', 'A single round hole points nowhere.', 25],
      ['bad-hole', 'A pattern is laid towards an edge of the panel.', 26],
      ['bad-hole', 'A pattern is laid towards an edge of the panel.', 27],
      ['bad-hole', 'The pattern says how wide and deep its holes are.', 28],
    ]);
  });

  it('are told the nearest pattern, and that a counter is taken', () => {
    const [wrong] = read(['a: { at: { y: 37, z: 5 }, from: right, drill: hing-cup, towards: top }']).findings;
    expect(wrong).toMatchObject({ code: 'unknown-word', nearest: 'hinge-cup', place: { line: 22 } });
    const taken = 'a: { at: { y: 3, z: width }, from: right, diameter: 5, depth: 2, repeat: { width: 3 } }';
    expect(said(taken)).toMatchObject([['duplicate-name', expect.stringContaining('`width`'), 22]]);
  });

  it('need no patterns in the library until they name one', () => {
    const hole = 'a: { at: { y: 37, z: 50 }, from: right, diameter: 5, depth: 12 }';
    expect(read([hole], null).findings).toEqual([]);
    const named = 'a: { at: { y: 37, z: 50 }, from: right, drill: hinge-cup, towards: top }';
    expect(read([named], null).findings).toMatchObject([
      { code: 'unknown-word', expected: 'none is defined' },
    ]);
    expect(read([hole], 'hinge-cup: { title: Nothing, holes: {} }\n').findings).toMatchObject([
      { code: 'empty-pattern' },
    ]);
  });
});
