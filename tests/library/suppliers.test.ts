import { describe, expect, it } from 'vitest';
import { readLibrary } from '../../src/library/index.ts';
import { readOrder } from '../../src/order/index.ts';
import { demoLibrary } from '../helpers/demoVan.ts';
import { smallLibrary, smallOrder } from '../helpers/smallLibrary.ts';

type Change = readonly [string, string, string];

const suppliers = `board-yard: { title: Board yard, delivery days: 5, least order value: 200, delivery price: 40,
  free delivery from: 1000, contact: "Lane 1\\nTown" }
by-post: { title: By post, delivery days: 0 }
`;

function read(suppliersFile: string | null, ...changes: Change[]) {
  const files = new Map(smallLibrary(...changes));
  if (suppliersFile !== null) files.set('libraries/small/suppliers.yaml', suppliersFile);
  return readLibrary(files, 'libraries/small');
}

function library(suppliersFile: string | null, ...changes: Change[]) {
  const found = read(suppliersFile, ...changes);
  if (!found.ok) throw new Error(JSON.stringify(found.findings));
  return found.value;
}

const boughtSheet: Change = [
  'sheets.yaml',
  'price: 92.50 }',
  'price: 92.50, supplier: board-yard, pack: 2, least quantity: 4, price breaks: [{ from: 10, price: 88.25 }, { from: 20, price: 80 }] }',
];

describe('how things are bought', () => {
  it('may be left out, as in libraries that know nothing of it', () => {
    const found = library(null);
    expect(found.suppliers.size).toBe(0);
    expect(found.freeDays.size).toBe(0);
    expect(Object.keys(found.sheets[0]!)).not.toContain('supplier');
  });

  it('is read with prices in minor units', () => {
    const found = library(suppliers, boughtSheet, [
      'edgings.yaml',
      'roll: 75 }',
      'roll: 75, supplier: by-post, price breaks: [{ from: 2, price: 0.5 }] }',
    ]);
    expect(found.suppliers.get('board-yard')).toEqual({
      id: 'board-yard',
      title: 'Board yard',
      contact: ['Lane 1', 'Town'],
      deliveryDays: 5,
      leastOrderMinor: 20_000,
      deliveryMinor: 4000,
      freeDeliveryFromMinor: 100_000,
    });
    expect(found.suppliers.get('by-post')).toMatchObject({
      deliveryMinor: 0,
      leastOrderMinor: null,
      contact: [],
    });
    expect(found.sheets[0]).toMatchObject({
      supplier: 'board-yard',
      pack: 2,
      least: 4,
      breaks: [
        { from: 10, priceMinor: 8825 },
        { from: 20, priceMinor: 8000 },
      ],
    });
    expect(found.edgings.get('pale-grey-1')?.breaks).toEqual([{ from: 2, priceMinor: 50 }]);
  });

  it.each<[string, string | null, Change, object]>([
    [
      'an unknown supplier',
      suppliers,
      ['fittings.yaml', 'pack: 10', 'pack: 10, supplier: bord-yard'],
      { code: 'unknown-word', nearest: undefined },
    ],
    [
      'a misspelt supplier',
      suppliers,
      ['sheets.yaml', 'price: 92.50', 'price: 92.50, supplier: board-yart'],
      { code: 'unknown-word', nearest: 'board-yard' },
    ],
    [
      'a supplier without a file',
      null,
      ['fittings.yaml', 'pack: 10', 'pack: 10, supplier: x'],
      { advice: 'Name suppliers in suppliers.yaml.' },
    ],
    [
      'breaks out of order',
      suppliers,
      [
        'fittings.yaml',
        'pack: 10',
        'pack: 10, price breaks: [{ from: 9, price: 1 }, { from: 3, price: 0.5 }]',
      ],
      { code: 'breaks-unsorted', found: '3 after 9' },
    ],
    [
      'a break with three decimals',
      suppliers,
      ['fittings.yaml', 'pack: 10', 'pack: 10, price breaks: [{ from: 9, price: 1.005 }]'],
      { code: 'wrong-form' },
    ],
  ])('%s is told', (_, file, change, expected) => {
    const found = read(file, change);
    expect(found.ok).toBe(false);
    const { nearest, ...rest } = expected as { nearest?: string };
    expect(found.findings).toEqual([expect.objectContaining({ ...rest, ...(nearest && { nearest }) })]);
  });

  it('a break that is not cheaper is worth a warning', () => {
    const found = read(suppliers, [
      'fittings.yaml',
      'pack: 10',
      'pack: 10, price breaks: [{ from: 9, price: 2.10 }]',
    ]);
    expect(found.ok).toBe(true);
    expect(found.findings).toMatchObject([{ code: 'break-not-lower', severity: 'warning' }]);
  });
});

describe('free days', () => {
  it('are single days and spans', () => {
    const found = library(null, [
      'library.yaml',
      'currency: EUR',
      'currency: EUR\nfree days: [2026-05-01, { from: 2026-12-30, to: 2027-01-02 }]',
    ]);
    expect([...found.freeDays]).toEqual([
      '2026-05-01',
      '2026-12-30',
      '2026-12-31',
      '2027-01-01',
      '2027-01-02',
    ]);
  });

  it.each([
    ['[2026-02-30]', 'not a day of the calendar'],
    ['[{ from: 2026-05-03, to: 2026-05-01 }]', 'end before they begin'],
    ['[{ from: 2026-05-03, to: 2028-05-01 }]', 'longer than a year'],
  ])('%s: %s', (text, message) => {
    const found = read(null, ['library.yaml', 'currency: EUR', `currency: EUR\nfree days: ${text}`]);
    expect(found.findings.map((finding) => finding.message).join()).toContain(message);
  });
});

describe('an order', () => {
  const order = (line: string) =>
    readOrder(smallOrder.replace('saw:', `${line}\nsaw:`), 'orders/one.yaml', library(null));

  it('says when work begins, and what shares no sheet', () => {
    expect(order('start: 2026-05-04\nown sheets: [front]')).toMatchObject({
      ok: true,
      value: { start: '2026-05-04', ownSheets: ['front'] },
    });
    expect(order('own sheets: all')).toMatchObject({ value: { ownSheets: ['carcass', 'front', 'back'] } });
  });

  it.each([
    ['start: 2026-02-30', 'wrong-day'],
    ['start: soon', 'wrong-form'],
    ['own sheets: [fronts]', 'unknown-word'],
  ])('is told that %s is wrong', (line, code) => {
    expect(order(line)).toMatchObject({ ok: false, findings: [{ code }] });
  });
});

it('the demonstration library has a supplier for all that it sells', () => {
  const library = demoLibrary();
  for (const sold of [...library.sheets, ...library.edgings.values(), ...library.fittings.values()]) {
    expect(library.suppliers.has(sold.supplier!), sold.id).toBe(true);
  }
});
