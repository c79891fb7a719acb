import { describe, expect, it } from 'vitest';
import type { Checked } from '../../src/model/finding.ts';
import type { ItemWish, OffcutItem, StoreItem } from '../../src/model/store.ts';
import { changedOffcut, itemComingIn, itemInStore, itemOnOrder } from '../../src/store/findItem.ts';
import { lineOf } from '../../src/store/items.ts';
import { draft, edging, fitting, ledgerAfterAll, marks, offcut, otherSheet, sheet } from './histories.ts';

const ledger = () =>
  ledgerAfterAll(
    draft('receive', [
      lineOf(sheet, 4, 'in'),
      lineOf(otherSheet, 2, 'in'),
      lineOf(edging, 50_000, 'in'),
      lineOf(fitting, 10, 'in'),
      lineOf(offcut('a1'), 1, 'in'),
      lineOf(offcut('A2', 'rack 2'), 1, 'in'),
    ]),
    draft('expect', [
      lineOf(sheet, 6, 'expect', undefined, marks[0]),
      lineOf(sheet, 2, 'expect', 'van-1', marks[1]),
      lineOf({ item: 'edging', edging: 'black-2' }, 9_000, 'expect', undefined, marks[0]),
    ]),
  );

/** The item, or what is told with its code. */
function told(checked: Checked<StoreItem>) {
  if (checked.ok) {
    expect(checked.findings).toEqual([]);
    return checked.value;
  }
  expect(checked.findings).toHaveLength(1);
  const { code, message, found, expected, advice } = checked.findings[0]!;
  return [code, message, found, expected, advice].filter((text) => text !== undefined);
}

const inStore = (wish: ItemWish) => told(itemInStore(ledger(), wish));
const onOrder = (wish: ItemWish) => told(itemOnOrder(ledger(), wish));
const comingIn = (wish: ItemWish) => told(itemComingIn(ledger(), wish));

describe('an item in the store', () => {
  it('is the one sheet that fits all that was said', () => {
    expect(inStore({ item: 'sheet', board: 'poplar-15', width: 1220 })).toEqual(otherSheet);
    expect(inStore({ item: 'sheet', width: 1250 })).toEqual(sheet);
    expect(inStore({ item: 'sheet', width: 1250, finish: 'white' })).toEqual([
      'not-in-store',
      'No such sheet is in the store.',
    ]);
    expect(inStore({ item: 'sheet', length: 2500 })).toEqual([
      'several-fit',
      'Several kinds of sheet fit what was said.',
      'sheet poplar-15 pale-grey 16.2 mm, 2500 × 1250 grain length and sheet poplar-15 pale-grey 16.2 mm, 2500 × 1220 grain length',
      'say more: --board, --finish, --thickness, --length, --width, --grain',
    ]);
  });

  it('names at most eight of many that fit', () => {
    const many = Array.from({ length: 10 }, (_, index) => ({ ...sheet, width: 100 + index }));
    const full = ledgerAfterAll(
      draft(
        'receive',
        many.map((one) => lineOf(one, 1, 'in')),
      ),
    );
    const [finding] = itemInStore(full, { item: 'sheet' }).findings;
    expect(finding?.found?.match(/grain/g)).toHaveLength(8);
  });

  it('is an offcut by its label, however it is written', () => {
    expect(inStore({ item: 'offcut', label: 'A1' })).toEqual(offcut('a1'));
    expect(inStore({ item: 'offcut', label: 'a2' })).toEqual(offcut('A2', 'rack 2'));
    expect(inStore({ item: 'offcut', label: 'B7' })).toEqual([
      'not-in-store',
      '`B7` is not an offcut in the store.',
      'B7',
      'a1 or A2',
    ]);
    expect(inStore({ item: 'offcut' })).toEqual([
      'option-missing',
      '--label is missing: an offcut is known by it.',
    ]);
  });

  it('is edging or a fitting by its name', () => {
    expect(inStore({ item: 'edging', name: 'grey-1' })).toEqual(edging);
    expect(inStore({ item: 'fitting', name: 'hinge' })).toEqual(fitting);
    expect(inStore({ item: 'edging', name: 'hinge' })).toEqual([
      'not-in-store',
      '`hinge` is not an edging in the store.',
      'hinge',
      'grey-1',
    ]);
    expect(inStore({ item: 'fitting', name: 'grey-1' })).toEqual([
      'not-in-store',
      '`grey-1` is not a fitting in the store.',
      'grey-1',
      'hinge',
    ]);
    expect(inStore({ item: 'edging' })).toEqual(['option-missing', '--name is missing: which edging.']);
  });
});

describe('an item on order', () => {
  it('is one of what is on order, however often it is', () => {
    expect(onOrder({ item: 'sheet' })).toEqual(sheet);
    expect(onOrder({ item: 'edging', name: 'black-2' })).toEqual({ item: 'edging', edging: 'black-2' });
    expect(onOrder({ item: 'edging', name: 'grey-1' })).toEqual([
      'not-on-order',
      '`grey-1` is not an edging on order.',
      'grey-1',
      'black-2',
    ]);
    expect(onOrder({ item: 'sheet', width: 1220 })).toEqual(['not-on-order', 'No such sheet is on order.']);
  });
});

describe('an item that comes in', () => {
  const whole = { board: 'birch-18', finish: 'oiled', thickness: 18, length: 1500, width: 1500 } as const;

  it('is the one that was there before where it fits, even when none is left', () => {
    expect(comingIn({ item: 'sheet', width: 1220 })).toEqual(otherSheet);
    const gone = ledgerAfterAll(
      draft('receive', [lineOf(otherSheet, 2, 'in')]),
      draft('issue', [lineOf(otherSheet, 2, 'out')]),
      draft('receive', [lineOf(edging, 1000, 'in')]),
    );
    expect(told(itemComingIn(gone, { item: 'sheet' }))).toEqual(otherSheet);
  });

  it('is a new one where all is said', () => {
    const made = { item: 'sheet', ...whole, grain: 'none' } as const;
    expect(comingIn(made)).toEqual(made);
    // Nothing is said of board and thickness: a plain sheet of a list that names none.
    const { length, width } = whole;
    expect(comingIn({ item: 'sheet', board: '', length, width, grain: 'none' })).toEqual({
      ...made,
      board: '',
      finish: '',
      thickness: 0,
    });
    expect(told(itemComingIn(ledgerAfterAll(), { item: 'sheet', length, width, grain: 'none' }))).toEqual({
      ...made,
      board: '',
      finish: '',
      thickness: 0,
    });
  });

  it.each([
    ['length', 'this size is not known to the store yet'],
    ['width', 'this size is not known to the store yet'],
    ['grain', 'length, width or none; this size is not known yet'],
    ['thickness', 'this size is not known yet'],
  ] as const)('asks for the %s of a new one', (field, why) => {
    const { [field]: _left, ...rest } = { ...whole, grain: 'none' as const };
    const message = `--${field} is missing: ${why}.`;
    expect(comingIn({ item: 'sheet', ...rest })).toEqual(['option-missing', message]);
    expect(comingIn({ item: 'offcut', label: 'B1', ...rest })).toEqual(['option-missing', message]);
  });

  it('is told where several that were there fit', () => {
    expect(comingIn({ item: 'sheet', board: 'poplar-15' })).toEqual(
      expect.arrayContaining(['several-fit', 'Several kinds of sheet fit what was said.']),
    );
  });

  it('is an offcut as it was when it was there last, but for what is said', () => {
    const left = ledgerAfterAll(
      draft('receive', [lineOf(offcut('a1'), 1, 'in'), lineOf(offcut('A2'), 1, 'in')]),
      draft('issue', [lineOf(offcut('a1'), 1, 'out')]),
      draft('put back', [lineOf(offcut('a1', 'rack 9'), 1, 'in')]),
      draft('issue', [lineOf(offcut('a1', 'rack 9'), 1, 'out')]),
    );
    expect(told(itemComingIn(left, { item: 'offcut', label: 'A1' }))).toEqual(offcut('a1', 'rack 9'));
    expect(told(itemComingIn(left, { item: 'offcut', label: 'A1', place: 'floor', length: 650 }))).toEqual({
      ...offcut('a1', 'floor'),
      length: 650,
    });
    const all = { ...whole, grain: 'length' } as const;
    expect(told(itemComingIn(left, { item: 'offcut', label: 'B1', ...all }))).toEqual({
      item: 'offcut',
      label: 'B1',
      place: '',
      ...all,
    });
    expect(told(itemComingIn(left, { item: 'offcut' }))).toEqual([
      'option-missing',
      '--label is missing: what is written on the offcut.',
    ]);
  });

  it('is edging or a fitting of any name', () => {
    expect(comingIn({ item: 'edging', name: 'new' })).toEqual({ item: 'edging', edging: 'new' });
    expect(comingIn({ item: 'fitting', name: 'new' })).toEqual({ item: 'fitting', fitting: 'new' });
    expect(comingIn({ item: 'edging' })).toEqual(['option-missing', '--name is missing: which edging.']);
    expect(comingIn({ item: 'fitting' })).toEqual(['option-missing', '--name is missing: which fitting.']);
  });
});

it('an offcut is changed in what is said, and keeps its label', () => {
  const before = offcut('a1') as OffcutItem;
  expect(changedOffcut(before, { item: 'offcut', label: 'A1', place: 'floor', width: 390 })).toEqual({
    ...before,
    place: 'floor',
    width: 390,
  });
});
