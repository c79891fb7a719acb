import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { purchaseFindings } from '../../src/buying/findings.ts';
import { makePurchase, type Terms } from '../../src/buying/index.ts';
import type { Need } from '../../src/model/purchase.ts';
import { anyOffer, offer, sheetNeed, supplier } from './offers.ts';

/** Bought on a Monday. */
function terms(more: Partial<Terms> = {}): Terms {
  return {
    today: '2026-03-02',
    spare: { kind: 'none' },
    suppliers: new Map(),
    freeDays: new Set(),
    starts: new Map(),
    ...more,
  };
}

function from(...all: ReturnType<typeof supplier>[]): Pick<Terms, 'suppliers'> {
  return { suppliers: new Map(all.map((each) => [each.id, each])) };
}

const yard = (more = {}) => supplier('yard', more);
const ofYard = [offer({ supplier: 'yard', priceMinor: 1000 })];

describe('a purchase', () => {
  it('takes what the store has first', () => {
    const [line] = makePurchase([sheetNeed(7, { available: 3 })], terms()).lines;
    expect(line).toMatchObject({ fromStore: 3, toBuy: 4, missing: 0, quantities: [{ units: 4 }] });
    const [all] = makePurchase([sheetNeed(7, { available: 9 })], terms()).lines;
    expect(all).toMatchObject({ fromStore: 7, toBuy: 0, quantities: [] });
  });

  it('then takes what is on order, and tells what comes too late or should have come', () => {
    const part = (amount: number, expected: string | null) => ({
      amount,
      purchase: 'purchase-may',
      supplier: 'yard',
      expected,
    });
    const coming = [part(2, '2026-03-04'), part(1, '2026-03-01'), part(5, '2026-03-19')];
    const need = sheetNeed(7, { available: 3, coming, start: '2026-03-16' });
    const [line] = makePurchase([need], terms()).lines;
    expect(line).toMatchObject({ fromStore: 3, fromOnOrder: 4, toBuy: 0, quantities: [] });
    // Needed on Friday the 13th.
    expect(line).toMatchObject({ expected: '2026-03-19', comesLate: { thereBy: '2026-03-13' } });
    expect(line!.overdue.map(({ amount }) => amount)).toEqual([1]);
    const made = makePurchase([need], terms());
    expect(purchaseFindings(made, 'EUR').map(({ code }) => code)).toEqual(['comes-too-late', 'overdue']);
    const [early] = makePurchase(
      [sheetNeed(5, { available: 3, coming, start: '2026-03-16' })],
      terms(),
    ).lines;
    expect(early).toMatchObject({ fromOnOrder: 2, expected: '2026-03-04', comesLate: null, overdue: [] });
    const [more] = makePurchase([sheetNeed(20, { coming: [part(4, null)] })], terms()).lines;
    expect(more).toMatchObject({ fromOnOrder: 4, expected: null, comesLate: null, toBuy: 16 });
  });

  it('says on which day goods are there that are ordered today', () => {
    // Three working days after Monday the 2nd; from Thursday the 5th over a weekend.
    const expected = (today: string) =>
      makePurchase([sheetNeed(1, { offers: ofYard })], terms({ ...from(yard()), today })).suppliers[0]!
        .expected;
    expect([expected('2026-03-02'), expected('2026-03-05')]).toEqual(['2026-03-05', '2026-03-10']);
    expect(makePurchase([sheetNeed(1)], terms()).suppliers[0]!.expected).toBeNull();
  });

  it('asks each supplier once and adds what bringing costs', () => {
    const made = makePurchase(
      [
        sheetNeed(3, { offers: ofYard }),
        sheetNeed(2, { offers: [offer({ supplier: 'post', priceMinor: 200 })] }),
        sheetNeed(1, { offers: ofYard }),
        sheetNeed(1),
      ],
      terms(
        from(
          yard({ deliveryMinor: 500, freeDeliveryFromMinor: 5000, leastOrderMinor: 4500 }),
          supplier('post', { deliveryMinor: 300, freeDeliveryFromMinor: 400 }),
          supplier('nobody'),
        ),
      ),
    );
    expect(
      made.suppliers.map((each) => [
        each.supplier?.id,
        each.lines.length,
        each.goodsMinor,
        each.deliveryMinor,
      ]),
    ).toEqual([
      ['yard', 2, 4000, 500],
      ['post', 1, 400, 0],
      [undefined, 1, 100, 0],
    ]);
    expect(made.suppliers[0]!.belowLeastMinor).toBe(500);
    expect(made).toMatchObject({ goodsMinor: 4500, deliveryMinor: 500 });
  });

  it('has a last day to order, the earliest of its lines', () => {
    // Work on the 16th, a Monday: there on Friday the 13th, so ordered on Tuesday the 10th.
    const needs = [
      sheetNeed(1, { offers: ofYard, start: '2026-03-20', orders: ['late'] }),
      sheetNeed(1, { offers: ofYard, start: '2026-03-16', orders: ['early'] }),
    ];
    const starts = new Map([
      ['late', '2026-03-20'],
      ['early', '2026-03-16'],
    ]);
    const [order] = makePurchase(needs, terms({ ...from(yard()), starts })).suppliers;
    expect(order).toMatchObject({ orderBy: '2026-03-10', start: '2026-03-16', tooLate: null });
    expect(order!.lines.map((line) => line.orderBy)).toEqual(['2026-03-16', '2026-03-10']);
    const [onTheDay] = makePurchase(needs, terms({ ...from(yard()), starts, today: '2026-03-10' })).suppliers;
    expect(onTheDay!.tooLate).toBeNull();
    const [tooLate] = makePurchase(needs, terms({ ...from(yard()), starts, today: '2026-03-11' })).suppliers;
    expect(tooLate!.tooLate).toEqual({ canBegin: '2026-03-17', orders: ['early'] });
  });

  it('ordered on a Sunday comes as early as ordered on the Friday before', () => {
    const needs = [sheetNeed(1, { offers: ofYard, start: '2026-03-12' })];
    const made = (today: string) =>
      makePurchase(needs, terms({ ...from(yard()), today, starts: new Map([['one', '2026-03-12']]) }))
        .suppliers[0]!;
    expect(made('2026-03-08')).toMatchObject({ orderBy: '2026-03-06', tooLate: null });
    expect(made('2026-03-09').tooLate).not.toBeNull();
  });

  it('knows no last day where nobody says when work begins', () => {
    expect(makePurchase([sheetNeed(1, { offers: ofYard })], terms(from(yard()))).suppliers[0]).toMatchObject({
      orderBy: null,
      tooLate: null,
    });
  });
});

describe('the spare', () => {
  const why = 'veneer tears';
  const amounts = (needs: Need[], spare: Terms['spare']) =>
    makePurchase(needs, terms({ spare })).lines.map((line) => line.spare);

  it('in percent is added to everything, rounded up to whole pieces', () => {
    const screw = (amount: number) =>
      sheetNeed(amount, { item: { item: 'fitting', fitting: `screw ${amount}` } });
    const needs = [screw(7), screw(20), screw(0)];
    expect(amounts(needs, { kind: 'percent of need', hundredths: 500, why })).toEqual([1, 1, 0]);
    expect(amounts(needs, { kind: 'percent of bought', hundredths: 5000, why })).toEqual([7, 20, 0]);
  });

  it('in percent of sheets is counted for each board and finish, not for each size', () => {
    const needs = [sheetNeed(7), sheetNeed(20), sheetNeed(0)];
    expect(amounts(needs, { kind: 'percent of need', hundredths: 500, why })).toEqual([0, 2, 0]);
    expect(amounts(needs, { kind: 'percent of bought', hundredths: 5000, why })).toEqual([0, 27, 0]);
  });

  it('in sheets is added to the size that each stock group takes most', () => {
    const other = { ...sheetNeed(1).item, board: 'birch' } as Need['item'];
    const edging: Need = { ...sheetNeed(9000), item: { item: 'edging', edging: 'e' } };
    const needs = [sheetNeed(2), sheetNeed(5), sheetNeed(5), { ...sheetNeed(1), item: other }, edging];
    expect(amounts(needs, { kind: 'sheets', count: 2, why })).toEqual([0, 2, 0, 2, 0]);
  });

  it('in sheets is of a size that is sold, even where more of another is in the store', () => {
    const needs = [sheetNeed(9, { available: 9, offers: [] }), sheetNeed(2)];
    expect(amounts(needs, { kind: 'sheets', count: 1, why })).toEqual([0, 1]);
  });

  it('is taken from the store too', () => {
    const [line] = makePurchase(
      [sheetNeed(4, { available: 5 })],
      terms({ spare: { kind: 'sheets', count: 2, why } }),
    ).lines;
    expect(line).toMatchObject({ spare: 2, fromStore: 5, toBuy: 1 });
  });
});

it('buys no less than is needed, takes no more from the store than it has, and adds up', () => {
  const anyNeed = fc
    .record({
      amount: fc.integer({ min: 0, max: 60 }),
      available: fc.integer({ min: 0, max: 40 }),
      offers: fc.array(
        anyOffer.map((sold) => ({ ...sold, unit: 1, most: null })),
        { minLength: 1, maxLength: 3 },
      ),
      seller: fc.constantFrom('yard', 'post', null),
    })
    .map(({ seller, ...need }) =>
      sheetNeed(need.amount, { ...need, offers: need.offers.map((sold) => ({ ...sold, supplier: seller })) }),
    );
  const anySpare = fc.oneof(
    fc.constant({ kind: 'none' as const }),
    fc.record({
      kind: fc.constantFrom('percent of need' as const, 'percent of bought' as const),
      hundredths: fc.integer({ min: 0, max: 9000 }),
      why: fc.constant('x'),
    }),
    fc.record({
      kind: fc.constant('sheets' as const),
      count: fc.integer({ min: 0, max: 5 }),
      why: fc.constant('x'),
    }),
  );
  fc.assert(
    fc.property(fc.array(anyNeed, { maxLength: 6 }), anySpare, (needs, spare) => {
      const suppliers = from(
        yard({ deliveryMinor: 700, freeDeliveryFromMinor: 9000 }),
        supplier('post', { deliveryMinor: 90 }),
      );
      const made = makePurchase(needs, terms({ ...suppliers, spare }));
      made.lines.forEach((line, index) => {
        const need = needs[index]!;
        const ordered = line.quantities.reduce((sum, { units }) => sum + units, 0);
        expect(line.fromStore).toBeLessThanOrEqual(need.available);
        expect(ordered + line.fromStore).toBeGreaterThanOrEqual(need.amount + line.spare);
        if (need.available >= need.amount + line.spare) expect(ordered).toBe(0);
      });
      if (spare.kind === 'percent of bought') {
        // All are of one board and finish.
        const amount = needs.reduce((sum, need) => sum + need.amount, 0);
        const all = amount + made.lines.reduce((sum, line) => sum + line.spare, 0);
        expect(all - (all * spare.hundredths) / 10_000).toBeGreaterThanOrEqual(amount - 1e-9);
      }
      const lines = made.suppliers.flatMap((each) => each.lines);
      expect(lines.length).toBe(made.lines.reduce((sum, line) => sum + line.quantities.length, 0));
      expect(lines.reduce((sum, { quantity }) => sum + quantity.priceMinor, 0)).toBe(made.goodsMinor);
      for (const { supplier: who, goodsMinor, deliveryMinor } of made.suppliers) {
        const free = who?.freeDeliveryFromMinor ?? null;
        const usual = who?.deliveryMinor ?? 0;
        expect(deliveryMinor).toBe(free !== null && goodsMinor >= free ? 0 : usual);
      }
    }),
  );
});
