import { describe, expect, test } from 'vitest';
import { readLibrary } from '../../src/library/index.ts';
import type { Library } from '../../src/model/library.ts';
import { readOrder } from '../../src/order/index.ts';
import { smallLibrary, smallOrder } from '../helpers/smallLibrary.ts';

type Change = readonly [string, string, string];

function library(...changes: Change[]): Library {
  const read = readLibrary(smallLibrary(...changes), 'libraries/small');
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.value;
}

/** What is said of one change: code, then the sentence. */
function said(...changes: Change[]): string[] {
  return readLibrary(smallLibrary(...changes), 'libraries/small').findings.map(
    ({ code, message, place }) => `${place?.line}:${place?.column} ${code}: ${message}`,
  );
}

const side = (more: string): Change => [
  'units/base-door.yaml',
  '    z: [0, height]\n    grain: z\n    edging: [front]\n',
  `    z: [0, height]\n    grain: z\n    edging: [front]\n${more}`,
];

describe('panels that follow a wall', () => {
  test('say with which edges, and how much is left on for scribing', () => {
    const unit = library(side('    follows wall: { back: depth / 40, right: 1/2 in }\n')).units.get(
      'base-door',
    );
    const panel = unit?.panels.find(({ name }) => name === 'left side');
    expect(panel?.followsWall?.map(({ face, allowance }) => [face, allowance.text])).toEqual([
      ['back', 'depth / 40'],
      ['right', '12.7'],
    ]);
  });

  test('are refused an edging along the wall, and edges that no wall has', () => {
    expect(said(side('    follows wall: { front: 10 }\n'))).toEqual([
      '21:21 edging-at-wall: The front edge follows the wall, so it gets no edging.',
    ]);
    expect(said(side('    follows wall: { top: 10 }\n'))[0]).toMatch(/top/);
  });
});

describe('loads', () => {
  test('stand at a panel, or at its role for each square metre', () => {
    const read = library(side('    load: width / 30\n'), [
      'library.yaml',
      'roles:',
      'loads: { carcass: 45.5 }\nroles:',
    ]);
    const panel = read.units.get('base-door')?.panels.find(({ name }) => name === 'left side');
    expect(panel?.load?.text).toBe('width / 30');
    expect(read.loadsKgPerM2).toEqual(new Map([['carcass', 45.5]]));
    expect(library()).not.toHaveProperty('loadsKgPerM2');
  });

  test('of a role that there is not are refused', () => {
    const [found] = said(['library.yaml', 'roles:', 'loads: { carcas: 45 }\nroles:']);
    expect(found).toMatch(/^4:10 unknown-word: .*carcas.*role/);
  });
});

describe('stiffness of a board', () => {
  const stated = (text: string): Change => [
    'boards.yaml',
    'decorated faces: 1',
    `decorated faces: 1\n${text}`,
  ];

  test('is stated along and across the grain, or not at all', () => {
    const read = library(stated('  stiffness along: 5500\n  stiffness across: 3500'));
    expect(read.boards.get('poplar-4')?.stiffnessMPa).toEqual({ along: 5500, across: 3500 });
    expect(read.boards.get('poplar-15')).not.toHaveProperty('stiffnessMPa');
    expect(said(stated('  stiffness along: 5500'))).toEqual([
      '2:1 missing-field: The stiffness along the grain is stated, but not the one across it.',
    ]);
    expect(said(stated('  stiffness along: 0\n  stiffness across: 1')).join()).toMatch(/stiffness along/);
  });
});

describe('pieces of cut-outs', () => {
  const asked = (line: string) => readOrder(`${smallOrder}${line}\n`, 'orders/small-order.yaml', library());

  test('are waste unless the order keeps them', () => {
    const read = asked('cut-out pieces: kept');
    expect(read.ok && read.value.cutOutPieces).toBe('kept');
    const silent = asked('');
    expect(silent.ok && silent.value.cutOutPieces).toBe('waste');
    expect(asked('cut-out pieces: sold').findings.map(({ code }) => code)).toEqual(['unknown-word']);
  });
});
