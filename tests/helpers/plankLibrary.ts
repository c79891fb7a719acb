import { readLibrary } from '../../src/library/index.ts';
import type { Library } from '../../src/model/library.ts';
import { must } from './demoVan.ts';
import { smallLibrary } from './smallLibrary.ts';

/** What a unit of planks has otherwise: a sentence that must hold of `length`, `depth` and `rows`. */
export interface PlankOptions {
  readonly must?: string;
}

/**
 * The texts of the small test library, under `libraries/small/`, with a unit of equal planks lying on each other, whose number on a sheet can be worked out by
 * hand: a sheet is 2500 by 1220 mm, 2480 by 1200 mm after its trims, the kerf 3.2 mm, and the grain runs along.
 */
export function plankFiles({ must: that }: PlankOptions = {}): Map<string, string> {
  const files = smallLibrary();
  files.set(
    'libraries/small/units/planks.yaml',
    `title: Planks
parameters:
  length: { default: 800, least: 100, most: 2400 }
  depth: { default: 300, least: 60, most: 1100 }
  rows: { default: 6, least: 1, most: 60, counts: true }
outside: { x: [0, length], y: [0, depth], z: [0, rows * thickness.carcass] }
${that === undefined ? '' : `musts:\n  - { that: ${that}, says: it would not do }\n`}panels:
  plank:
    role: carcass
    x: [0, length]
    y: [0, depth]
    z: ["(i - 1) * thickness.carcass", "i * thickness.carcass"]
    grain: x
    repeat: { i: rows }
`,
  );
  files.set(
    'libraries/small/layouts/planks.yaml',
    `title: Planks
vehicles: [van-long]
choices:
  shelf_depth: { default: 200, least: 60, most: 1100 }
units:
  planks: { unit: planks, at: { x: 100, y: 0, z: 0 }, facing: left, set: { depth: shelf_depth } }
`,
  );
  return files;
}

/** The same, read. */
export function plankLibrary(options: PlankOptions = {}): Library {
  return must(readLibrary(plankFiles(options), 'libraries/small'));
}

/** An order of planks. */
export function plankOrder(size: {
  readonly length: number;
  readonly depth: number;
  readonly rows: number;
}): string {
  return `title: Planks
library: small
layout: planks
vehicle: van-long
saw: panel-saw
choices: { shelf_depth: 200 }
roles:
  carcass: { board: poplar-15, finish: oak, edging: none }
  front: { board: poplar-15, finish: oak, edging: none }
  back: { board: poplar-4, finish: pale-grey, edging: none }
changes:
  - { unit: planks, set: { length: ${size.length}, depth: ${size.depth}, rows: ${size.rows} } }
`;
}
