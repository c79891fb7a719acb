import { makePurchase } from '../../src/buying/index.ts';
import type { Need, PurchaseReport, Spare, WayResult } from '../../src/model/purchase.ts';
import { offer, sheetNeed, supplier } from './offers.ts';

export const longName =
  'Plywood of a tree with a long name, laminated on both faces in a colour with a longer one';

function needs(count: number): Need[] {
  const sheets = Array.from({ length: count }, (_, index) =>
    sheetNeed(index + 1, {
      title: index % 3 === 0 ? longName : `Ply ${index}`,
      item: {
        item: 'sheet',
        board: `ply-${index}`,
        finish: 'grey',
        thickness: 15,
        length: 2500,
        width: 1250.5,
        grain: index % 2 === 0 ? 'length' : 'none',
      },
      offers: [
        offer({
          id: `sheet-${index}`,
          supplier: 'yard',
          priceMinor: 11_150,
          breaks: [{ from: 3, priceMinor: 7000 }],
        }),
      ],
      start: '2026-03-20',
      orders: ['van-1'],
      available: index === 1 ? 1 : 0,
      keptForOthers: index === 2 ? 4 : 0,
    }),
  );
  const edging: Need = {
    ...sheetNeed(60_200_001),
    title: 'Grey edging',
    item: { item: 'edging', edging: 'grey-19' },
    available: 10_000_000,
    orders: ['van-1', 'van-2'],
    start: '2026-03-09',
    offers: [offer({ id: 'grey-19', supplier: 'post', unit: 50_000_000, priceMinor: 55 })],
  };
  const screws: Need = {
    ...sheetNeed(210),
    title: 'Screw',
    item: { item: 'fitting', fitting: 'screw' },
    offers: [offer({ id: 'screw', pack: 200, priceMinor: 5 })],
  };
  return [...sheets, edging, screws];
}

/** A purchase of so many kinds of sheets, an edging and a fitting, of two suppliers and nobody. */
export function purchaseReport(count: number, spare: Spare, today = '2026-03-02'): PurchaseReport {
  const purchase = makePurchase(needs(count), {
    today,
    spare,
    suppliers: new Map(
      [
        supplier('yard', {
          title: longName,
          contact: [longName, 'Lane 1'],
          deliveryMinor: 4500,
          leastOrderMinor: 10_000_000,
        }),
        supplier('post', { title: 'By post', deliveryMinor: 590, freeDeliveryFromMinor: 1000 }),
      ].map((each) => [each.id, each]),
    ),
    freeDays: new Set(),
    starts: new Map([
      ['van-1', '2026-03-20'],
      ['van-2', '2026-03-09'],
    ]),
  });
  const way = (which: 'together' | 'apart', sheets: number): WayResult => ({
    way: which,
    groups: [
      {
        board: 'ply-0',
        finish: 'grey',
        thickness: 15,
        panels: 40,
        sheets,
        offcuts: 2,
        least: 4,
        proved: false,
        withinPercent: 12.5,
        sheetAreaUm2: 4e12,
        panelAreaUm2: 3e12,
      },
      {
        board: 'ply-1',
        finish: 'grey',
        thickness: 15,
        panels: 2,
        sheets: 1,
        offcuts: 0,
        least: 1,
        proved: true,
        withinPercent: 0,
        sheetAreaUm2: 0,
        panelAreaUm2: 0,
      },
    ],
    purchase,
  });
  return {
    name: 'purchase-march',
    title: 'march',
    currency: 'EUR',
    orders: [
      { id: 'van-1', title: longName, start: '2026-03-20', panels: 40 },
      { id: 'van-2', title: 'Two', start: null, panels: 2 },
    ],
    chosen: way('together', 4),
    other: way('apart', 6),
  };
}
