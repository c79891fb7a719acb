import { describe, expect, it } from 'vitest';
import { sheetsMeant, sheetsWithout } from '../../src/changes/sheetsOfPlan.ts';
import type { PlanFile, PlanGroup, SawnCopies } from '../../src/model/plan.ts';
import type { SheetSupply } from '../../src/model/stock.ts';
import type { BookingLine, Draft, Ledger, SheetItem } from '../../src/model/store.ts';
import { finishCut } from '../../src/pipeline/finishCut.ts';
import { sameStock } from '../../src/store/applyLine.ts';
import { book, emptyLedger, reversal } from '../../src/store/book.ts';
import { lineOf } from '../../src/store/items.ts';
import { offcutsFor } from '../../src/store/offcutsFor.ts';
import { sheetsBooked } from '../../src/store/planBookings.ts';
import { sheetsOnHand } from '../../src/store/sheetsOnHand.ts';
import { draft, offcut, sheet } from './histories.ts';

const trim = { left: 0, right: 0, near: 0, far: 0 };
const stock = { grain: 'length', price: 0, count: null, trim } as const;

/** Three sheets cut alike, each with a worktop out of whose opening a piece is kept, and one offcut of the store. */
const group = {
  id: 'poplar-15-pale-grey',
  board: 'poplar-15',
  finish: 'pale-grey',
  thickness: 16.2,
  panels: [
    {
      id: 'top',
      name: 'top',
      unit: 'galley',
      order: 'van-1',
      length: 900,
      width: 600,
      finishedLength: 900,
      finishedWidth: 600,
      count: 4,
      grain: 'length',
      edging: { alongLength: [null, null], alongWidth: [null, null] },
      byHand: {
        openings: [
          { name: 'hob', length: [100, 200], width: [100, 200] },
          { name: 'sink', length: [300, 800], width: [100, 500], kept: { length: 480, width: 380 } },
        ],
      },
    },
  ],
  stock: [
    { ...stock, id: 'large', kind: 'sheet', length: 2500, width: 1250 },
    { ...stock, id: 'of line 3', kind: 'offcut', length: 700, width: 400 },
  ],
  sheets: [
    {
      number: 1,
      stock: 'large',
      copies: 3,
      start: 'sheet',
      steps: [],
      pieces: [
        { is: 'panel', piece: 'A', panel: 'top', lengthAlong: 'width' },
        { is: 'offcut', piece: 'B', length: 1000, width: 1250 },
        { is: 'waste', piece: 'C', length: 10, width: 1250 },
      ],
    },
    { number: 2, stock: 'of line 3', copies: 1, start: 'sheet', steps: [], pieces: [] },
  ],
};
const plan = { job: 'Van 1', groups: [group as unknown as PlanGroup] } as unknown as PlanFile;

function booked(...drafts: Draft[]): Ledger {
  return drafts.reduce((ledger, one) => {
    const after = book(ledger, one);
    if (!after.ok) throw new Error(after.findings[0]!.message);
    return after.value;
  }, emptyLedger);
}

function linesOf(ledger: Ledger): BookingLine[] {
  const lines = finishCut(plan, ledger, { job: 'van-1', place: 'rack 1' });
  if (!lines.ok) throw new Error(lines.findings[0]!.message);
  return lines.value;
}

const received = draft('receive', [
  lineOf(sheet, 5, 'in'),
  lineOf(offcut('A1'), 1, 'in'),
  lineOf(offcut('A2'), 1, 'in'),
]);

describe('finishing a cut', () => {
  it('takes out every copy, what is reserved for the order first', () => {
    const kept = draft('reserve', [
      lineOf(sheet, 2, 'reserve', 'van-1'),
      lineOf(offcut('A1'), 1, 'reserve', 'van-2'),
    ]);
    const out = linesOf(booked(received, kept)).filter(({ move }) => move === 'out');
    expect(out).toEqual([
      lineOf(sheet, 2, 'out', 'van-1'),
      lineOf(sheet, 1, 'out'),
      // The plan's row has no label of the store, so that it is any of its size that is free.
      lineOf(offcut('A2'), 1, 'out'),
    ]);
  });

  it('books in each kept piece under the text of its label, as it lay on the sheet', () => {
    const kept = linesOf(booked(received)).flatMap((line) =>
      line.move === 'in' && line.item === 'offcut' ? [[line.label, line.length, line.width]] : [],
    );
    const start = 'PW1/VAN-1/POPLAR-15-PALE-GREY';
    const cutOuts = [1, 2, 3].map((piece) => [`${start}/OUT/1/${piece}/2`, 380, 480]);
    const offcuts = [1, 2, 3].map((copy) => [`${start}/OFF/1/B/${copy}`, 1000, 1250]);
    expect(kept.sort()).toEqual([...offcuts, ...cutOuts].sort());
  });

  it('can be booked as it is, once, and again when that is reversed', () => {
    const before = booked(received);
    const hash = 'a'.repeat(64);
    const cut = draft('cut', linesOf(before), { order: 'van-1', plan: hash });
    const after = book(before, cut);
    if (!after.ok) throw new Error(after.findings[0]!.message);
    expect(book(after.value, cut).findings).toMatchObject([{ code: 'cut-twice' }]);
    const about = { date: '2026-03-02', who: 'M. Beck', why: '' };
    const reversed = book(after.value, reversal(after.value, 2, about));
    if (!reversed.ok) throw new Error(reversed.findings[0]!.message);
    const again = book(reversed.value, cut);
    if (!again.ok) throw new Error(again.findings[0]!.message);
    // Bringing the first one back would saw every sheet twice.
    expect(book(again.value, reversal(again.value, 3, about)).findings[0]!.code).toBe('cut-twice');
  });

  it('books some sheets today and the rest later, each once, and to the same as all at once', () => {
    const start = booked(received);
    const hash = 'a'.repeat(64);
    const part = (ledger: Ledger, words: readonly string[]) => {
      const done = sheetsBooked(ledger, hash);
      const sheets = sheetsMeant(plan, words, done === 'all' ? [] : done);
      if (!sheets.ok) throw new Error(sheets.findings[0]!.code);
      const goesOn = done.length > 0;
      const lines = finishCut(plan, ledger, { job: 'van-1', place: 'rack 1', sheets: sheets.value, goesOn });
      if (!lines.ok) throw new Error(lines.findings[0]!.message);
      const after = book(
        ledger,
        draft('cut', lines.value, { order: 'van-1', plan: hash, sheets: sheets.value }),
      );
      if (!after.ok) throw new Error(after.findings[0]!.message);
      return after.value;
    };
    const first = part(start, [`${group.id}/1x2`]);
    expect(sheetsBooked(first, hash)).toEqual([{ group: group.id, number: 1, copies: [1, 2] }]);
    expect(() => part(first, [`${group.id}/1x2`])).toThrow('too-many-sheets');
    const all = part(part(first, ['1']), [group.id]);
    expect(() => part(all, [`${group.id}/1`])).toThrow('sheet-sawn-already');
    expect(() => part(all, [group.id])).toThrow('sheet-sawn-already');
    expect(() => part(all, [`${group.id}/3`])).toThrow('sheet-unknown');
    expect(() => part(all, ['oak/1'])).toThrow('unknown-word');
    const once = book(start, draft('cut', linesOf(start), { order: 'van-1', plan: hash }));
    expect(once.ok && sameStock(once.value.stock, all.stock)).toBe(true);
    expect(sheetsWithout(plan, sheetsBooked(all, hash) as SawnCopies[])).toEqual([]);
  });

  it('tells an offcut of the plan that the store does not have', () => {
    const ledger = booked(draft('receive', [lineOf(sheet, 5, 'in')]));
    const lines = finishCut(plan, ledger, { job: 'van-1', place: '' });
    expect(lines.findings).toMatchObject([{ code: 'not-in-store', expected: '1' }]);
  });
});

it('an order is offered the offcuts that are free or reserved for it', () => {
  const ledger = booked(received, draft('reserve', [lineOf(offcut('A1'), 1, 'reserve', 'van-1')]));
  expect(offcutsFor(ledger, 'van-1').map(({ id }) => id)).toEqual(['A1', 'A2']);
  expect(offcutsFor(ledger, 'van-2')).toMatchObject([
    { id: 'A2', kind: 'offcut', lengthUm: 700_000, widthUm: 400_000, thicknessUm: 16_200, count: 1 },
  ]);
});

it('an order that buys nothing is offered the sheets that are free or reserved for it, of any size', () => {
  const other: SheetItem = { ...sheet, length: 1250 };
  const ledger = booked(
    draft('receive', [lineOf(sheet, 5, 'in'), lineOf(other, 2, 'in')]),
    draft('reserve', [lineOf(sheet, 2, 'reserve', 'van-1'), lineOf(sheet, 1, 'reserve', 'van-2')]),
  );
  const offer = (id: string, lengthUm: number, count: number | null): SheetSupply => ({
    id,
    board: 'poplar-15',
    finish: 'pale-grey',
    thicknessUm: 16_200,
    lengthUm,
    widthUm: 1_250_000,
    grain: 'length',
    priceMinor: 10_000,
    count,
    kind: 'sheet',
  });
  const offered = [offer('large', 2_500_000, null), offer('huge', 3_000_000, null)];
  const there = (order: string) => sheetsOnHand(ledger, order, offered).map(({ id, count }) => [id, count]);
  const halves = 'poplar-15-pale-grey-1250x1250';
  expect(there('van-1')).toEqual([
    ['large', 4],
    ['huge', 0],
    [halves, 2],
  ]);
  expect(there('van-3')).toEqual([
    ['large', 2],
    ['huge', 0],
    [halves, 2],
  ]);
  // By area at the price of the cheapest; a list that counts has no more than it says.
  expect(sheetsOnHand(ledger, 'van-1', offered)[2]!.priceMinor).toBe(4167);
  expect(sheetsOnHand(ledger, 'van-1', [offer('large', 2_500_000, 1)])[0]!.count).toBe(1);
});
