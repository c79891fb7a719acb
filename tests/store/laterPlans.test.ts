import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allSheets, countSheets, sheetsWithout } from '../../src/changes/sheetsOfPlan.ts';
import { labelledPieces } from '../../src/documents/panelStickerPieces.ts';
import type { PlanFile, SawnCopies } from '../../src/model/plan.ts';
import type { BookingLine, Ledger, StoreItem } from '../../src/model/store.ts';
import { finishCut } from '../../src/pipeline/finishCut.ts';
import type { Job } from '../../src/pipeline/job.ts';
import { type ProvenPlan, provePlan } from '../../src/pipeline/makePapers.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { prepareAfter } from '../../src/pipeline/planAfter.ts';
import { suppliesOf } from '../../src/pipeline/prepareOrder.ts';
import { prepareRecut } from '../../src/pipeline/recutPlan.ts';
import { suppliesOfCut } from '../../src/pipeline/suppliesOfCut.ts';
import { replay } from '../../src/replay/index.ts';
import { sameStock } from '../../src/store/applyLine.ts';
import { book, emptyLedger, reversal } from '../../src/store/book.ts';
import { amountOf, itemKey, itemOf, lineOf } from '../../src/store/items.ts';
import { offcutsFor } from '../../src/store/offcutsFor.ts';
import { sheetsBooked } from '../../src/store/planBookings.ts';
import { plannedOrder } from '../helpers/demoPlan.ts';
import { amountIn, draft } from './histories.ts';

const hash = 'a'.repeat(64);
const about = { date: '2026-03-02', who: 'M. Beck', why: '' };
const first = plannedOrder('demo-short');
const changed = plannedOrder(
  'demo-short',
  ['bed_width: 1200', 'bed_width: 1250'],
  ['sink: large', 'sink: small'],
);
const { plan } = first.proven;
const ordered = first.job.ordered!;

function booked(ledger: Ledger, ...args: Parameters<typeof draft>): Ledger {
  const after = book(ledger, draft(...args));
  if (!after.ok) throw new Error(after.findings.map(({ message }) => message).join('\n'));
  return after.value;
}

function good<T>(checked: { ok: boolean; value?: T; findings: readonly { message: string }[] }): T {
  if (!checked.ok) throw new Error(checked.findings.map(({ message }) => message).join('\n'));
  return checked.value!;
}

/** A store that has every sheet of some plans, and edging and fittings in plenty. */
function fullStore(...plans: readonly PlanFile[]): Ledger {
  const lines = plans.flatMap(({ groups }) =>
    groups.flatMap(({ board, finish, thickness, stock, sheets }) =>
      stock.flatMap(({ id, kind, length, width, grain }): BookingLine[] => {
        const count = sheets.reduce((sum, one) => (one.stock === id ? sum + one.copies : sum), 0);
        if (kind === 'offcut' || count === 0) return [];
        return [lineOf({ item: 'sheet', board, finish, thickness, length, width, grain }, count, 'in')];
      }),
    ),
  );
  const { library } = ordered;
  const edging = [...library.edgings.keys()].map((id) =>
    lineOf({ item: 'edging', edging: id }, 500_000, 'in'),
  );
  const fittings = [...library.fittings.keys()].map((id) =>
    lineOf({ item: 'fitting', fitting: id }, 500, 'in'),
  );
  return booked(emptyLedger, 'receive', [...lines, ...edging, ...fittings]);
}

/** Books sheets of a plan as sawn, with what goes with them. */
function saw(ledger: Ledger, of: PlanFile, planHash: string, sheets: readonly SawnCopies[]): Ledger {
  const done = sheetsBooked(ledger, planHash);
  if (done === 'all') throw new Error('a part was booked as all');
  const lines = good(
    finishCut(of, ledger, { job: 'demo-short', place: 'rack', sheets, goesOn: done.length > 0 }),
  );
  const cut = { plan: of, hash: planHash, job: 'demo-short', sawn: [...done, ...sheets] };
  const supplies = suppliesOfCut(cut, [ordered], ledger);
  expect(supplies.findings).toEqual([]);
  return booked(ledger, 'cut', [...lines, ...supplies.lines], {
    order: 'demo-short',
    plan: planHash,
    sheets: [...sheets],
  });
}

function taken(before: Ledger, after: Ledger, item: StoreItem): number {
  return amountIn(before, item) - amountIn(after, item);
}

function nested(job: Job): ProvenPlan {
  const nests = job.groups.map((group) => {
    const outcome = nestGroup(group, null, { seed: 1, workLimit: 0 });
    if (!outcome.ok) throw new Error(`${group.id} was not nested`);
    return outcome.nest;
  });
  const proven = provePlan(job, nests, 1);
  if (!proven.ok) throw new Error(proven.findings.map(({ message }) => message).join('\n'));
  return proven;
}

/** The sheets of a plan in parts, in any order. */
const parts = fc.shuffledSubarray(allSheets(plan), { minLength: allSheets(plan).length }).chain((sheets) =>
  fc
    .array(fc.integer({ min: 1, max: 3 }), { minLength: sheets.length, maxLength: sheets.length })
    .map((sizes) => {
      const made: SawnCopies[][] = [];
      const rest = [...sheets];
      for (const size of sizes) if (rest.length > 0) made.push(rest.splice(0, size));
      return made;
    }),
);

describe('a plan that is sawn in parts', () => {
  const store = fullStore(plan);

  it('comes to the same in any parts and any order, edging and fittings too, and can be taken back', () => {
    const once = saw(store, plan, hash, allSheets(plan));
    for (const id of ordered.library.edgings.keys()) {
      // Whole metres only.
      expect(taken(store, once, { item: 'edging', edging: id }) % 1000).toBe(0);
    }
    fc.assert(
      fc.property(parts, (all) => {
        let ledger = store;
        for (const sheets of all) ledger = saw(ledger, plan, hash, sheets);
        expect(sameStock(ledger.stock, once.stock)).toBe(true);
        for (let number = ledger.bookings.length; number > 1; number--) {
          ledger = good(book(ledger, reversal(ledger, number, about)));
        }
        expect(sameStock(ledger.stock, store.stock)).toBe(true);
        expect(sheetsBooked(ledger, hash)).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });

  it('takes out what there is where edging is short, tells it, and takes the rest with a later part', () => {
    const [edging] = [...ordered.library.edgings.keys()].filter(
      (id) => taken(store, saw(store, plan, hash, allSheets(plan)), { item: 'edging', edging: id }) > 3000,
    );
    const item: StoreItem = { item: 'edging', edging: edging! };
    const poor = booked(store, 'issue', [lineOf(item, amountIn(store, item) - 2000, 'out')]);
    const cut = { plan, hash, job: 'demo-short', sawn: allSheets(plan) };
    const supplies = suppliesOfCut(cut, [ordered], poor);
    const own = supplies.lines.filter((line) => itemKey(itemOf(line)) === itemKey(item));
    expect(own.map(amountOf)).toEqual([2000]);
    expect(supplies.findings).toMatchObject([
      { code: 'too-little-in-store', severity: 'warning', found: '2 m' },
    ]);
  });
});

describe('spoiled panels', () => {
  const all = labelledPieces(plan, 'demo-short').filter(({ is }) => is === 'panel');

  it('are cut anew, whichever they are, under the labels they had', () => {
    fc.assert(
      fc.property(fc.subarray(all, { minLength: 1, maxLength: 6 }), fc.boolean(), (spoiled, whole) => {
        const prepared = good(
          prepareRecut({
            plan,
            planHash: hash,
            job: 'demo-short',
            file: 'plan.json',
            words: spoiled.map(({ code }) => ({ text: code })),
            why: 'dropped',
            number: 1,
            rows: whole ? 'whole' : 'as spoiled',
            offcuts: [],
            ordered,
            language: 'en',
          }),
        );
        const proven = nested(prepared.job);
        const codes = labelledPieces(proven.plan, 'x').flatMap(({ is, code }) =>
          is === 'panel' ? [code] : [],
        );
        expect([...codes].sort()).toEqual([...proven.plan.recut!.spoiled].sort());
        for (const { code } of spoiled) expect(codes).toContain(code);
        if (!whole) expect(codes).toHaveLength(spoiled.length);
      }),
      { numRuns: 15 },
    );
  });

  it('do not pass the replay with a label twice, or fewer panels than were spoiled', () => {
    const words = all.slice(0, 2).map(({ code }) => ({ text: code }));
    const { job } = good(
      prepareRecut({
        plan,
        planHash: hash,
        job: 'demo-short',
        file: 'plan.json',
        words,
        why: '',
        number: 1,
        rows: 'as spoiled',
        offcuts: [],
        language: 'en',
      }),
    );
    const { text } = nested(job);
    const faults = (change: (plan: PlanFile) => void) => {
      const spoilt: PlanFile = JSON.parse(text);
      change(spoilt);
      return replay(JSON.stringify(spoilt)).findings.map(({ code }) => code);
    };
    expect(faults(() => undefined)).toEqual([]);
    expect(faults((one) => one.recut!.spoiled.pop())).toEqual(['label-wrong']);
    expect(
      faults((one) => {
        const panels = one.groups.flatMap((group) => group.panels);
        panels[1]!.label = panels[0]!.label;
      }),
    ).toEqual(['label-wrong']);
    expect(faults((one) => one.groups[0]!.panels[0]!.label!.pieces.push(9))).toEqual(['label-wrong']);
  });
});

describe('an order that goes on after some sheets', () => {
  it('has every panel once, sawn or to be sawn, and is booked in parts as well as at once', () => {
    const orders = [first, changed].map(({ job }) => job.ordered!);
    fc.assert(
      fc.property(fc.subarray(allSheets(plan), { minLength: 1 }), fc.constantFrom(...orders), (sawn, now) => {
        if (sheetsWithout(plan, sawn).length === 0) return;
        const store = saw(fullStore(plan), plan, hash, sawn);
        const job = good(
          prepareAfter({
            ordered: now,
            plan,
            planHash: hash,
            job: 'demo-short',
            sawn,
            supplies: [...suppliesOf(now.library), ...offcutsFor(store, 'demo-short')],
            isBooked: true,
            rows: 'as sawn',
            language: 'en',
            file: 'order.yaml',
          }),
        );
        const after = nested(job).plan;
        const count = new Map<string, number>();
        for (const group of [...after.groups, ...after.sawn!.groups]) {
          for (const panel of group.panels) count.set(panel.id, (count.get(panel.id) ?? 0) + panel.count);
        }
        const wanted = now.furniture.units.flatMap(({ panels }) =>
          panels.map(({ id, count: n }) => [id, n] as const),
        );
        expect([...count].sort()).toEqual([...wanted].sort());
        // Each sawn panel is used or left over.
        const pieces = after.sawn!.groups.flatMap(({ panels, left }) => [
          ...panels.flatMap(({ codes }) => codes),
          ...left.map(({ code }) => code),
        ]);
        const expected = labelledPieces(plan, 'demo-short').filter(
          ({ is, group, sheet, copy }) =>
            is === 'panel' &&
            sawn.some(
              (one) => one.group === group.id && one.number === sheet.number && one.copies.includes(copy),
            ),
        );
        expect([...pieces].sort()).toEqual(expected.map(({ code }) => code).sort());
        // It is booked in two parts as well as in one.
        const there = booked(store, 'receive', fullStore(after).bookings[0]!.lines);
        const sheets = allSheets(after);
        const second = 'b'.repeat(64);
        const whole = saw(there, after, second, sheets);
        const two = saw(saw(there, after, second, sheets.slice(0, 1)), after, second, sheets.slice(1));
        expect(sameStock(two.stock, whole.stock)).toBe(true);
        expect(countSheets(sheets)).toBeGreaterThan(0);
      }),
      { numRuns: 8 },
    );
  });
});
