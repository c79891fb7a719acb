import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlanFile, PlanGroup, PlanSheet, SawnCopies } from '../../src/model/plan.ts';
import type { BookingLine, Draft, Ledger, SheetItem } from '../../src/model/store.ts';
import { finishCut } from '../../src/pipeline/finishCut.ts';
import { sameStock } from '../../src/store/applyLine.ts';
import { book, emptyLedger, reversal } from '../../src/store/book.ts';
import { amountOf, itemKey, itemOf, lineOf } from '../../src/store/items.ts';
import { sheetsBooked } from '../../src/store/planBookings.ts';
import { demoPlan } from '../helpers/demoPlan.ts';

/**
 * Random histories of a workshop that cuts two real plans: sheets come in, are kept for an order, are sawn a few at a time,
 * and any booking may be reversed. What is there is worked out again here, from the lines alone and from the areas of the
 * plans, in whole µm².
 */
const jobs = (['demo-short', 'demo-long'] as const).map((name, index) => {
  const { plan } = demoPlan(name);
  return { name, plan, hash: String(index + 1).repeat(64) };
});

interface Kind {
  readonly item: SheetItem;
  readonly group: PlanGroup;
}

/** Every size of sheet that the plans take. */
const kinds: readonly Kind[] = jobs.flatMap(({ plan }) =>
  plan.groups.flatMap((group) =>
    group.stock
      .filter((stock) => group.sheets.some((sheet) => sheet.stock === stock.id))
      .map(({ length, width, grain }): Kind => {
        const { board, finish, thickness } = group;
        return { group, item: { item: 'sheet', board, finish, thickness, length, width, grain } };
      }),
  ),
);

const um2 = (length: number, width: number) =>
  BigInt(Math.round(length * 1000)) * BigInt(Math.round(width * 1000));

/** What one sheet of a cut plan gives back to the rack, µm². */
function keptArea(group: PlanGroup, sheet: PlanSheet): bigint {
  return sheet.pieces.reduce((sum, piece) => {
    if (piece.is === 'offcut') return sum + um2(piece.length, piece.width);
    if (piece.is === 'waste') return sum;
    const panel = group.panels.find(({ id }) => id === piece.panel)!;
    return (panel.byHand?.openings ?? []).reduce(
      (all, { kept }) => (kept === undefined ? all : all + um2(kept.length, kept.width)),
      sum,
    );
  }, 0n);
}

function sheetArea(group: PlanGroup, sheet: PlanSheet): bigint {
  const stock = group.stock.find(({ id }) => id === sheet.stock)!;
  return um2(stock.length, stock.width);
}

/** Area that the saw has turned into panels, dust and waste, by what is booked of the plans. */
function sawnAway(ledger: Ledger): bigint {
  return jobs.reduce((total, { plan, hash }) => {
    const done = sheetsBooked(ledger, hash);
    if (done === 'all') throw new Error('every booking says which sheets');
    return done.reduce((sum, { group: id, number, copies }) => {
      const group = plan.groups.find((one) => one.id === id)!;
      const sheet = group.sheets.find((one) => one.number === number)!;
      return sum + BigInt(copies.length) * (sheetArea(group, sheet) - keptArea(group, sheet));
    }, total);
  }, 0n);
}

function areaOf(line: BookingLine): bigint {
  return line.item === 'sheet' || line.item === 'offcut'
    ? um2(line.length, line.width) * BigInt(amountOf(line))
    : 0n;
}

/** Bookings that stand: neither reversed nor a reversal, in any number of turns. */
function standing({ bookings, reversedBy }: Ledger) {
  return bookings.filter(({ number, kind }) => kind !== 'reverse' && !isUndone(number));
  function isUndone(number: number): boolean {
    const by = reversedBy.get(number);
    return by !== undefined && !isUndone(by);
  }
}

function checkLedger(ledger: Ledger): void {
  const sums = new Map<string, number>();
  for (const line of ledger.bookings.flatMap(({ lines }) => lines)) {
    if (line.move !== 'in' && line.move !== 'out') continue;
    const key = itemKey(itemOf(line));
    sums.set(key, (sums.get(key) ?? 0) + (line.move === 'in' ? amountOf(line) : -amountOf(line)));
  }
  for (const [key, amount] of sums) {
    expect(amount).toBeGreaterThanOrEqual(0);
    expect(ledger.stock.get(key)?.amount ?? 0).toBe(amount);
  }
  expect([...ledger.stock.keys()].every((key) => sums.has(key))).toBe(true);
  const received = standing(ledger)
    .filter(({ kind }) => kind === 'receive')
    .flatMap(({ lines }) => lines)
    .reduce((sum, line) => sum + areaOf(line), 0n);
  const there = [...ledger.stock.values()].reduce(
    (sum, { item, amount }) => sum + areaOf(lineOf(item, amount, 'in')),
    0n,
  );
  expect(there + sawnAway(ledger)).toBe(received);
  for (const { amount, reserved } of ledger.stock.values()) {
    const kept = [...reserved.values()].reduce((sum, one) => sum + one, 0);
    expect(kept).toBeLessThanOrEqual(amount);
  }
}

type Asked =
  | {
      readonly does: 'receive' | 'reserve';
      readonly kind: number;
      readonly count: number;
      readonly job: number;
    }
  | { readonly does: 'cut'; readonly job: number; readonly sheet: number; readonly count: number }
  | { readonly does: 'cut all'; readonly job: number }
  | { readonly does: 'reverse'; readonly back: number };

const asked: fc.Arbitrary<Asked> = fc.oneof(
  fc.record({
    does: fc.constantFrom('receive', 'receive', 'reserve'),
    kind: fc.nat(kinds.length - 1),
    count: fc.integer({ min: 1, max: 5 }),
    job: fc.nat(1),
  }),
  fc.record({
    does: fc.constant('cut'),
    job: fc.nat(1),
    sheet: fc.nat(20),
    count: fc.integer({ min: 1, max: 3 }),
  }),
  fc.record({ does: fc.constant('cut all'), job: fc.nat(1) }),
  fc.record({ does: fc.constant('reverse'), back: fc.nat(6) }),
);

const about = { date: '2026-03-02', who: 'M. Beck', why: '' };

/** Sheets of a plan that are not booked yet: some of one cut plan, or all. */
function wanted(plan: PlanFile, ledger: Ledger, hash: string, one: Asked): SawnCopies[] {
  const done = sheetsBooked(ledger, hash) as readonly SawnCopies[];
  const left = plan.groups.flatMap((group) =>
    group.sheets.flatMap(({ number, copies }) => {
      const gone = done.filter((own) => own.group === group.id && own.number === number);
      const open = Array.from({ length: copies }, (_, index) => index + 1).filter(
        (copy) => !gone.some((own) => own.copies.includes(copy)),
      );
      return open.length === 0 ? [] : [{ group: group.id, number, copies: open }];
    }),
  );
  if (one.does !== 'cut' || left.length === 0) return left;
  const sheet = left[one.sheet % left.length]!;
  return [{ ...sheet, copies: sheet.copies.slice(0, one.count) }];
}

function draftOf(ledger: Ledger, one: Asked): Draft | null {
  if (one.does === 'receive') {
    return { ...about, kind: 'receive', lines: [lineOf(kinds[one.kind]!.item, one.count, 'in')] };
  }
  if (one.does === 'reserve') {
    const line = lineOf(kinds[one.kind]!.item, one.count, 'reserve', jobs[one.job]!.name);
    return { ...about, kind: 'reserve', lines: [line] };
  }
  if (one.does === 'reverse') return reversal(ledger, Math.max(1, ledger.bookings.length - one.back), about);
  const { name, plan, hash } = jobs[one.job]!;
  const sheets = wanted(plan, ledger, hash, one);
  if (sheets.length === 0) return null;
  const goesOn = (sheetsBooked(ledger, hash) as readonly SawnCopies[]).length > 0;
  const lines = finishCut(plan, ledger, { job: name, place: 'rack', sheets, goesOn });
  if (!lines.ok || lines.value.length === 0) return null;
  return { ...about, kind: 'cut', order: name, plan: hash, sheets, lines: lines.value };
}

/** Everything that the two plans take, so that histories get to cut something. */
function enough(): Ledger {
  const lines = jobs.flatMap(({ plan }) =>
    plan.groups.flatMap((group) =>
      group.sheets.map((sheet) => {
        const { board, finish, thickness } = group;
        const { length, width, grain } = group.stock.find(({ id }) => id === sheet.stock)!;
        return lineOf({ item: 'sheet', board, finish, thickness, length, width, grain }, sheet.copies, 'in');
      }),
    ),
  );
  const after = book(emptyLedger, { ...about, kind: 'receive', lines });
  if (!after.ok) throw new Error(after.findings[0]!.message);
  return after.value;
}

describe('any history of a workshop with real plans', () => {
  it('has nothing appear or disappear, by number and by area, and is restored when all of it is reversed', () => {
    const seen = { cut: 0, reverse: 0, refused: 0 };
    fc.assert(
      fc.property(fc.boolean(), fc.array(asked, { maxLength: 25, size: 'max' }), (stocked, all) => {
        let ledger = stocked ? enough() : emptyLedger;
        const begun = ledger.bookings.length;
        for (const one of all) {
          const draft = draftOf(ledger, one);
          const after = draft && book(ledger, draft);
          if (!after?.ok) {
            seen.refused++;
            continue;
          }
          ledger = after.value;
          if (draft!.kind === 'cut' || draft!.kind === 'reverse') seen[draft!.kind]++;
          checkLedger(ledger);
        }
        // Last in, first out; reversals are reversed as well.
        for (let number = ledger.bookings.length; number > begun; number--) {
          const after = book(ledger, undoing(ledger, number));
          if (!after.ok) throw new Error(JSON.stringify(after.findings));
          ledger = after.value;
          checkLedger(ledger);
        }
        expect(sameStock(ledger.stock, (stocked ? enough() : emptyLedger).stock)).toBe(true);
        expect(sawnAway(ledger)).toBe(0n);
      }),
      { numRuns: 60 },
    );
    expect(seen.cut).toBeGreaterThan(20);
    expect(seen.reverse).toBeGreaterThan(10);
    expect(seen.refused).toBeGreaterThan(10);
  });

  it('has every panel of a plan once when all of its sheets are booked, in whatever order', () => {
    fc.assert(
      fc.property(fc.nat(1), fc.array(asked, { maxLength: 12 }), (job, some) => {
        let ledger = enough();
        const { plan, hash } = jobs[job]!;
        for (const one of [...some, { does: 'cut all', job } as const]) {
          const draft =
            one.does === 'cut' || one.does === 'cut all' ? draftOf(ledger, { ...one, job }) : null;
          const after = draft && book(ledger, draft);
          if (after?.ok) ledger = after.value;
        }
        const done = sheetsBooked(ledger, hash) as readonly SawnCopies[];
        for (const group of plan.groups) {
          const pieces = done
            .filter((own) => own.group === group.id)
            .flatMap(({ number, copies }) => {
              const sheet = group.sheets.find((one) => one.number === number)!;
              return copies.flatMap(() => sheet.pieces.filter(({ is }) => is === 'panel'));
            });
          expect(pieces).toHaveLength(group.panels.reduce((sum, { count }) => sum + count, 0));
        }
      }),
      { numRuns: 20 },
    );
  });
});

/** What takes the effect of a booking away again; a booking that only brings another back is undone by reversing that. */
function undoing(ledger: Ledger, number: number): Draft {
  const reverses = (of: number) => ledger.bookings[of - 1]!.reverses;
  const first = reverses(number);
  if (first === undefined) return reversal(ledger, number, about);
  const root = reverses(first);
  return reversal(ledger, root ?? ledger.reversedBy.get(first)!, about);
}
