import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLibrary } from '../../src/library/index.ts';
import type { Finding } from '../../src/model/finding.ts';
import type { Library } from '../../src/model/library.ts';
import { libraryOfOrder, readOrder } from '../../src/order/index.ts';
import { mutations } from '../helpers/mutateText.ts';
import { smallLibrary, smallOrder } from '../helpers/smallLibrary.ts';

function library(...changes: (readonly [string, string, string])[]): Library {
  const read = readLibrary(smallLibrary(...changes), 'libraries/small');
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.value;
}

const small = library();
const file = 'orders/small-order.yaml';

function changed(...changes: readonly (readonly [string, string])[]): string {
  return changes.reduce((text, [before, after]) => {
    if (!text.includes(before)) throw new Error(`the order has no ${before}`);
    return text.replace(before, () => after);
  }, smallOrder);
}

describe('an order without errors', () => {
  const read = readOrder(smallOrder, file, small);
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  const order = read.value;

  test('is named after its file', () => {
    expect(read.findings).toEqual([]);
    expect(order).toMatchObject({
      id: 'small-order',
      library: 'small',
      layout: 'galley',
      vehicle: 'van-long',
      saw: 'panel-saw',
      count: 1,
    });
  });

  test('has its choices ready to be evaluated', () => {
    expect([...order.choices].map(([name, { text }]) => [name, text])).toEqual([
      ['bed_width', '1250'],
      ['cooker', '"two-burner"'],
    ]);
    expect(order.choices.get('cooker')?.place).toEqual({
      file,
      line: 8,
      column: 37,
      field: 'choices › cooker',
    });
  });

  test('has an edging where none is named: the first of the finish that covers the board', () => {
    expect(order.roles.get('carcass')?.edging).toBe('pale-grey-1');
    expect(order.roles.get('front')?.edging).toBe('oak-wide');
    expect(order.roles.get('back')?.edging).toBeNull();
    const narrow = readOrder(changed([', edging: oak-wide', '']), file, small);
    expect(narrow.ok && narrow.value.roles.get('front')?.edging).toBe('oak-wide');
  });

  test('has its changes in order', () => {
    expect(order.changes.map((change) => change.kind)).toEqual(['set', 'leave out', 'add']);
    expect(order.changes[2]).toMatchObject({ name: 'shoe cupboard', unit: 'base-door', facing: 'left' });
  });

  test('may leave out note, count, choices and changes', () => {
    const text = smallOrder
      .split('\n')
      .filter((line) => !/^(note|count|choices)/.test(line))
      .join('\n')
      .replace(/changes:[\s\S]*$/, '');
    const bare = readOrder(text, file, small);
    expect(bare.ok && bare.value).toMatchObject({ count: 1, note: '', changes: [] });
  });

  test('can change a unit that it has added', () => {
    const more = readOrder(`${smallOrder}  - { unit: shoe cupboard, set: { shelves: 0 } }\n`, file, small);
    expect(more.findings).toEqual([]);
  });
});

describe('one wrong line', () => {
  test.each<readonly [string, readonly [string, string], Partial<Finding>]>([
    ['layout', ['layout: galley', 'layout: gallery'], { code: 'unknown-word', nearest: 'galley' }],
    ['vehicle', ['vehicle: van-long', 'vehicle: van-lang'], { code: 'unknown-word', nearest: 'van-long' }],
    ['saw', ['saw: panel-saw', 'saw: panelsaw'], { code: 'unknown-word', nearest: 'panel-saw' }],
    ['count 0', ['count: 1', 'count: 0'], { code: 'out-of-range' }],
    ['count 1.5', ['count: 1', 'count: 1.5'], { code: 'wrong-kind' }],
    ['count text', ['count: 1', 'count: one'], { code: 'wrong-kind' }],
    ['choice name', ['bed_width', 'bedwidth'], { code: 'unknown-word', nearest: 'bed_width' }],
    ['choice word', ['two-burner', 'two-burners'], { code: 'unknown-word', nearest: 'two-burner' }],
    ['choice number', ['two-burner', '2'], { code: 'unknown-word' }],
    ['role name', ['  carcass:', '  carcas:'], { code: 'unknown-word', nearest: 'carcass' }],
    [
      'role left out',
      ['  back: { board: poplar-4, finish: pale-grey, edging: none }\n', ''],
      { code: 'missing-role' },
    ],
    ['board', ['board: poplar-4', 'board: popla-4'], { code: 'unknown-word', nearest: 'poplar-4' }],
    ['finish', ['finish: oak', 'finish: aok'], { code: 'unknown-word', nearest: 'oak' }],
    ['edging', ['edging: oak-wide', 'edging: oak-wid'], { code: 'unknown-word', nearest: 'oak-wide' }],
    [
      'narrow edging',
      ['oak-wide', 'oak-narrow'],
      { code: 'edging-too-narrow', expected: 'oak-wide or none' },
    ],
    [
      'not sold',
      ['{ board: poplar-4, finish: pale-grey', '{ board: poplar-4, finish: oak'],
      { code: 'not-sold', expected: 'pale-grey' },
    ],
    ['no board', ['{ board: poplar-4, finish', '{ finish'], { code: 'missing-field' }],
    [
      'changed unit',
      ['unit: galley cupboard', 'unit: galley cubboard'],
      { code: 'unknown-word', nearest: 'galley cupboard' },
    ],
    ['changed parameter', ['shelves: 2', 'shelfs: 2'], { code: 'unknown-word', nearest: 'shelves' }],
    ['changed choice', ['hand: left', 'hand: lift'], { code: 'unknown-word', nearest: 'left' }],
    ['left out', ['leave out: bench', 'leave out: bensh'], { code: 'unknown-word', nearest: 'bench' }],
    ['added unit', ['add: base-door', 'add: base-dor'], { code: 'unknown-word', nearest: 'base-door' }],
    ['added name', ['as: shoe cupboard', 'as: galley cupboard'], { code: 'duplicate-name' }],
    ['misspelt change', ['leave out:', 'leave-out:'], { nearest: 'leave out' }],
    ['no facing', ['facing: left, ', ''], { code: 'missing-field' }],
    ['change is a text', ['{ leave out: bench }', 'leave out bench'], { code: 'wrong-kind' }],
    ['twice', ['count: 1', 'count: 1\ncount: 2'], { code: 'duplicate-field' }],
  ])('%s', (_, change, finding) => {
    const text = changed(change);
    const { findings } = readOrder(text, file, small);
    expect(findings.map((each) => each.code)).toHaveLength(1);
    expect(findings[0]).toMatchObject({ severity: 'error', ...finding });
    expect(findings[0]!.place?.file).toBe(file);
    const line = findings[0]!.place!.line!;
    const first = smallOrder.split('\n').findIndex((each, index) => each !== text.split('\n')[index]) + 1;
    expect(line === first || findings[0]!.code === 'missing-role').toBe(true);
  });

  test('a vehicle that the layout is not drawn for', () => {
    const only = library(['layouts/galley.yaml', '[van-short, van-long]', '[van-short]']);
    expect(readOrder(smallOrder, file, only).findings).toMatchObject([
      { code: 'vehicle-not-fitting', found: 'van-long', expected: 'van-short' },
    ]);
  });

  test('no edging of the finish covers the board', () => {
    const none = library(['edgings.yaml', 'width: 3/4 in', 'width: 15']);
    const { findings } = readOrder(changed([', edging: oak-wide', '']), file, none);
    expect(findings).toMatchObject([{ code: 'no-edging', advice: expect.stringContaining('edging: none') }]);
  });

  test('a unit left out cannot be changed afterwards', () => {
    const { findings } = readOrder(`${smallOrder}  - { unit: bench, set: { shelves: 0 } }\n`, file, small);
    expect(findings).toMatchObject([{ code: 'already-left-out', place: { line: 17 } }]);
  });

  test.each(['My Order', 'con', 'a..b', '-x', 'ä', 'x'.repeat(70)])('the file name %s is refused', (name) => {
    expect(readOrder(smallOrder, `orders/${name}.yaml`, small).findings).toMatchObject([
      { code: 'bad-name' },
    ]);
  });
});

test('what is wrong in several lines is told at once', () => {
  const text = changed(
    ['saw: panel-saw\n', ''],
    ['two-burner', 'three'],
    ['finish: oak', 'finish: aok'],
    ['leave out: bench', 'leave out: bensh'],
    ['count: 1', 'count: many'],
  );
  expect(readOrder(text, file, small).findings.map((each) => [each.place?.line, each.code])).toEqual([
    [1, 'missing-field'],
    [6, 'wrong-kind'],
    [7, 'unknown-word'],
    [10, 'unknown-word'],
    [14, 'unknown-word'],
  ]);
});

test('the library of an order is found before anything else is read', () => {
  expect(libraryOfOrder(smallOrder, file)).toBe('small');
  expect(libraryOfOrder('library: ../a b/c\nlayout: [', file)).toBeUndefined();
  expect(libraryOfOrder('library: ../a b/c\nlayuot: 3', file)).toBe('../a b/c');
  expect(libraryOfOrder('library: 3', file)).toBeUndefined();
  expect(libraryOfOrder('- library', file)).toBeUndefined();
  expect(libraryOfOrder('', file)).toBeUndefined();
});

test('an order changed at random is read or refused in words, and never throws', () => {
  fc.assert(
    fc.property(mutations, (mutate) => {
      const text = mutate(smallOrder);
      libraryOfOrder(text, file);
      const read = readOrder(text, file, small);
      expect(read.ok).toBe(read.findings.every((finding) => finding.severity !== 'error'));
      for (const finding of read.findings) {
        expect(finding.place?.file).toBe(file);
        expect(finding.place?.line).toBeGreaterThan(0);
        expect(finding.message).toMatch(/^[^\p{Cc}\p{Cs}]{5,}\.$/u);
      }
      if (!read.ok) return;
      expect([...read.value.roles.keys()].sort()).toEqual(['back', 'carcass', 'front']);
      for (const value of read.value.choices.values()) expect(value.place.line).toBeGreaterThan(0);
    }),
    { numRuns: 400 },
  );
});
