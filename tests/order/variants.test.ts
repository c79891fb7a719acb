import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLibrary } from '../../src/library/index.ts';
import type { Checked } from '../../src/model/finding.ts';
import type { Order } from '../../src/model/order.ts';
import { fileBelow, readOrder } from '../../src/order/index.ts';
import { smallLibrary, smallOrder } from '../helpers/smallLibrary.ts';

const file = 'orders/small-order.yaml';
const variantFile = 'orders/wide-bed.yaml';

function library() {
  const read = readLibrary(smallLibrary(), 'libraries/small');
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.value;
}

const small = library();

function withSet(...set: string[]): Checked<Order> {
  return readOrder(smallOrder, file, small, { below: [], set });
}

function variant(text: string, set: readonly string[] = []): Checked<Order> {
  const below = [{ text: smallOrder, file }];
  return readOrder(`variant of: small-order.yaml\n${text}`, variantFile, small, { below, set });
}

function must<T>(read: Checked<T>): T {
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.value;
}

/** An order without places and name, for what it asks. */
function asked({ choices, roles, changes, ...order }: Order) {
  const bare = (formulas: ReadonlyMap<string, { text: string }>) =>
    [...formulas].map(([name, { text }]) => [name, text]);
  return {
    ...order,
    id: '',
    title: '',
    place: null,
    choices: bare(choices),
    roles: [...roles].map(([name, { board, finish, edging }]) => [name, board, finish, edging]),
    changes: changes.map((change) => [
      change.kind,
      change.kind === 'set' ? [change.unit, bare(change.set)] : '',
    ]),
  };
}

describe('a variant', () => {
  test('is the order where it says nothing, under its own name', () => {
    const order = must(variant(''));
    expect(order).toMatchObject({ id: 'wide-bed', title: 'A small order', note: 'invented for tests' });
    expect(asked(order)).toEqual(asked(must(readOrder(smallOrder, file, small))));
  });

  test('says what is otherwise, each with its place in its own file', () => {
    const order = must(
      variant(
        [
          'title: With a wide bed',
          'choices: { bed_width: 1300 }',
          'roles: { front: { finish: pale-grey } }',
          'changes:',
          '  - { unit: shoe cupboard, set: { width: 400 } }',
          '',
        ].join('\n'),
      ),
    );
    expect(order.title).toBe('With a wide bed');
    expect(order.choices.get('bed_width')).toEqual({
      text: '1300',
      place: { file: variantFile, line: 3, column: 23, field: 'choices › bed_width' },
    });
    expect(order.choices.get('cooker')?.place.file).toBe(file);
    // The edging that was named belonged to the other finish.
    expect(order.roles.get('front')).toMatchObject({
      board: 'poplar-15',
      finish: 'pale-grey',
      edging: 'pale-grey-1',
    });
    expect(order.changes).toHaveLength(4);
    expect(order.changes[3]).toMatchObject({
      kind: 'set',
      unit: 'shoe cupboard',
      place: { file: variantFile },
    });
  });

  test('keeps a named edging with its finish, and raw edges raw', () => {
    const roles = must(variant('roles: { front: { edging: none }, back: { board: poplar-4 } }')).roles;
    expect(roles.get('front')).toMatchObject({ finish: 'oak', edging: null });
    expect(roles.get('back')).toMatchObject({ edging: null });
    expect(must(variant('roles: { front: {} }')).roles.get('front')?.edging).toBe('oak-wide');
  });

  test('may stand on another', () => {
    const below = [
      {
        text: 'variant of: small-order.yaml\nchoices: { bed_width: 1300, cooker: one-burner }\n',
        file: variantFile,
      },
      { text: smallOrder, file },
    ];
    const text = 'variant of: wide-bed.yaml\nchoices: { bed_width: 1320 }\n';
    const order = must(readOrder(text, 'orders/wider-bed.yaml', small, { below, set: [] }));
    expect(order.id).toBe('wider-bed');
    expect(order.choices.get('bed_width')?.text).toBe('1320');
    expect(order.choices.get('cooker')?.text).toBe('"one-burner"');
  });

  test.each([
    ['choices: { bed_wdth: 1300 }', 'unknown-word', 'bed_width', 2],
    ['roles: { fornt: { finish: oak } }', 'unknown-word', 'front', 2],
    ['roles: { front: { finish: okk } }', 'unknown-word', 'oak', 2],
    ['roles: { back: { finish: oak } }', 'not-sold', undefined, 2],
    ['roles: { front: { colour: oak } }', 'unknown-field', undefined, 2],
    ['vehicle: van-lang', 'unknown-word', 'van-long', 2],
    ['chioces: {}', 'unknown-field', 'choices', 2],
    ['changes:\n  - { unit: shoe cupbord, set: { width: 400 } }', 'unknown-word', 'shoe cupboard', 3],
    ['changes:\n  - { unit: bench, set: { shelves: 1 } }', 'already-left-out', undefined, 3],
  ])('tells %s with its line', (text, code, nearest, line) => {
    const { ok, findings } = variant(text);
    expect(ok).toBe(false);
    expect(findings[0]).toMatchObject({ code, place: { file: variantFile, line } });
    expect(findings[0]?.nearest).toBe(nearest);
  });

  test('tells what is wrong with the order below in its own file', () => {
    const below = [{ text: smallOrder.replace('van-long', 'van-lnog'), file }];
    const { findings } = readOrder(
      'variant of: x.yaml\nchoices: { cooker: one-burnr }\n',
      variantFile,
      small,
      {
        below,
        set: [],
      },
    );
    expect(findings.map(({ place, nearest }) => [place?.file, nearest])).toEqual([
      [file, 'van-long'],
      [variantFile, 'one-burner'],
    ]);
  });
});

describe('the file that a variant stands on', () => {
  test.each([
    ['variant of: a/b.yaml\n', 'a/b.yaml'],
    [smallOrder, null],
    ['{{{', null],
    ['- 1', null],
  ])('of %j', (text, below) => {
    expect(fileBelow(text, variantFile)).toEqual({ ok: true, value: below, findings: [] });
  });

  test('is asked for where its field is misspelt or empty', () => {
    expect(fileBelow('title: x\nvarient of: a.yaml\n', variantFile).findings).toMatchObject([
      { code: 'unknown-field', nearest: 'variant of', place: { file: variantFile, line: 2 } },
    ]);
    expect(fileBelow('variant of:\n', variantFile).findings).toMatchObject([{ code: 'wrong-kind' }]);
  });
});

describe('a setting', () => {
  test('makes another order, called after it', () => {
    const order = must(withSet('bed_width=1300', 'galley cupboard.shelves=1', 'front.finish=pale-grey'));
    expect(order.id).toBe('small-order-what-if');
    expect(order.title).toBe(
      'A small order (bed_width=1300, galley cupboard.shelves=1, front.finish=pale-grey)',
    );
    expect(order.choices.get('bed_width')?.text).toBe('1300');
    expect(order.roles.get('front')?.finish).toBe('pale-grey');
    expect(order.changes.at(-1)).toMatchObject({ kind: 'set', unit: 'galley cupboard' });
  });

  test.each([
    ['bed_wdth=1300', 'unknown-word', 'bed_width'],
    ['cooker=one-burnr', 'unknown-word', 'one-burner'],
    ['galey cupboard.shelves=1', 'unknown-word', 'galley cupboard'],
    ['fronnt.finish=oak', 'unknown-word', 'front'],
    ['front.finsh=oak', 'unknown-word', 'finish'],
    ['front.finish=oack', 'unknown-word', 'oak'],
    ['back.finish=oak', 'not-sold', undefined],
    ['galley cupboard.shelfs=1', 'unknown-word', 'shelves'],
    ['bench.shelves=1', 'already-left-out', undefined],
    ['bed_width', 'wrong-form', undefined],
  ])('%s is told with the nearest word', (set, code, nearest) => {
    const { ok, findings } = withSet(set);
    expect(ok).toBe(false);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ code, place: { file: `--set ${set}` } });
    expect(findings[0]?.place?.line).toBeUndefined();
    expect(findings[0]?.nearest).toBe(nearest);
  });

  test('never throws, whatever it says, and goes before what a variant says', () => {
    const word = fc.constantFrom(
      'bed_width',
      'galley cupboard',
      'front',
      'finish',
      '.',
      '=',
      '1300',
      "'",
      '__proto__',
      ' ',
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 6 }), (words) => {
        const read = withSet(words.join(''));
        expect(read.ok || read.findings.length > 0).toBe(true);
      }),
    );
    expect(
      must(variant('choices: { bed_width: 1300 }', ['bed_width=1310'])).choices.get('bed_width')?.text,
    ).toBe('1310');
  });

  test('asks the same as the variant file that says it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1200, max: 1350 }), fc.integer({ min: 0, max: 3 }), (width, shelves) => {
        const set = withSet(`bed_width=${width}`, `galley cupboard.shelves=${shelves}`);
        const file = variant(
          `choices: { bed_width: ${width} }\nchanges:\n  - { unit: galley cupboard, set: { shelves: ${shelves} } }\n`,
        );
        expect(asked(must(set))).toEqual(asked(must(file)));
      }),
    );
  });
});
