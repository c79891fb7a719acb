import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bound, NestPiece } from '../../src/model/nest.ts';
import { nest } from '../../src/nesting/index.ts';
import { assertNest } from '../helpers/assertNest.ts';
import { smallStockGroup, stockGroup } from '../helpers/stockGroups.ts';

const noBound: Bound = { sheets: 0, costMinor: 0, certificate: { method: 'area' } };
const someWork = { seed: 1, workLimit: 2000 };

function nested(group: Parameters<typeof nest>[0], work = someWork) {
  const outcome = nest(group, noBound, work);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
  assertNest(group, outcome.nest);
  return outcome.nest;
}

function leaves(piece: NestPiece): NestPiece[] {
  return piece.kind === 'stack' ? piece.children.flatMap(leaves) : [piece];
}

describe('any small group', () => {
  it('gives trees that can be sawn, with every piece, within the sheets and the rules of the saw', () => {
    fc.assert(
      fc.property(smallStockGroup, fc.integer({ min: 0, max: 0xffffffff }), (group, seed) => {
        const outcome = nest(group, noBound, { seed, workLimit: 300 });
        if (outcome.ok) assertNest(group, outcome.nest);
        else expect(['too large', 'cut too long', 'sheets run out']).toContain(outcome.failure.kind);
      }),
      { numRuns: 1500 },
    );
  });

  it('gives the same bytes for the same seed and work', () => {
    fc.assert(
      fc.property(smallStockGroup, fc.integer({ min: 0, max: 100 }), (group, seed) => {
        const first = JSON.stringify(nest(group, noBound, { seed, workLimit: 200 }));
        expect(JSON.stringify(nest(group, noBound, { seed, workLimit: 200 }))).toBe(first);
      }),
      { numRuns: 100 },
    );
  });
});

describe('cases that can be checked by hand', () => {
  it('uses a sheet whole when a piece is as large as what the trims leave', () => {
    const trim = { left: 10_000, right: 10_000, near: 10_000, far: 10_000 };
    const plan = nested(
      stockGroup({
        demands: [[980, 480, 2]],
        sheets: [{ lengthMm: 1000, widthMm: 500, trim }],
        saw: { kerfUm: 3200 },
      }),
    );
    expect(plan.sheets).toEqual([
      {
        sheet: 0,
        copies: 2,
        root: { kind: 'demand', xUm: 980_000, yUm: 480_000, demand: 0, lengthAlong: 'x' },
      },
    ]);
  });

  it('says which piece is a tenth of a millimetre too large', () => {
    const outcome = nest(
      stockGroup({
        demands: [
          [300, 300, 1],
          [1000.1, 500, 1],
        ],
        sheets: [{ lengthMm: 1000, widthMm: 500 }],
      }),
      noBound,
      someWork,
    );
    expect(outcome).toEqual({ ok: false, failure: { kind: 'too large', demand: 1 } });
  });

  it('counts the kerf between two halves', () => {
    const halves = (width: number) =>
      nested(
        stockGroup({
          demands: [[1000, width, 2]],
          sheets: [{ lengthMm: 1000, widthMm: 500 }],
          saw: { kerfUm: 3200 },
        }),
      ).costMinor;
    expect(halves(248.4)).toBe(1);
    expect(halves(248.5)).toBe(2);
  });

  it('turns a piece only where the grain allows it', () => {
    const sheetsFor = (grain: 'length' | 'none') =>
      nested(stockGroup({ demands: [[500, 1000, 2, grain]], sheets: [{ lengthMm: 1000, widthMm: 1000 }] }));
    expect(sheetsFor('length').costMinor).toBe(1);
    const tall = nest(
      stockGroup({ demands: [[500, 1000, 1, 'length']], sheets: [{ lengthMm: 1000, widthMm: 500 }] }),
      noBound,
      someWork,
    );
    expect(tall).toEqual({ ok: false, failure: { kind: 'too large', demand: 0 } });
    const turned = nested(
      stockGroup({ demands: [[500, 1000, 1]], sheets: [{ lengthMm: 1000, widthMm: 500 }] }),
    );
    expect(leaves(turned.sheets[0]!.root)).toMatchObject([{ kind: 'demand', lengthAlong: 'y' }]);
  });

  it('lays the length along the width of a sheet whose grain runs that way', () => {
    const plan = nested(
      stockGroup({
        demands: [[500, 100, 1, 'length']],
        sheets: [{ lengthMm: 1000, widthMm: 500, grain: 'width' }],
      }),
    );
    expect(leaves(plan.sheets[0]!.root)).toMatchObject([
      { kind: 'demand', xUm: 100_000, yUm: 500_000, lengthAlong: 'y' },
      { kind: 'spare', xUm: 900_000, yUm: 500_000, use: 'offcut' },
    ]);
  });

  it('takes the offcut that is paid for, and the cheapest mix of sheets', () => {
    const plan = nested(
      stockGroup({
        demands: [[900, 500, 3]],
        sheets: [
          { lengthMm: 1000, widthMm: 1000, priceMinor: 50 },
          { lengthMm: 1000, widthMm: 500, priceMinor: 30 },
          { lengthMm: 900, widthMm: 500, priceMinor: 0, count: 1, kind: 'offcut' },
        ],
      }),
    );
    expect(plan.costMinor).toBe(50);
    expect(plan.sheets.map(({ sheet, copies }) => [sheet, copies])).toEqual([
      [0, 1],
      [2, 1],
    ]);
  });

  it('says what is left when the sheets run out', () => {
    const outcome = nest(
      stockGroup({ demands: [[900, 400, 5]], sheets: [{ lengthMm: 1000, widthMm: 900, count: 2 }] }),
      noBound,
      someWork,
    );
    expect(outcome).toEqual({
      ok: false,
      failure: { kind: 'sheets run out', unplaced: [{ demand: 0, count: 1 }] },
    });
  });

  it('needs nothing for no pieces', () => {
    expect(nested(stockGroup({ demands: [[900, 400, 0]] }))).toMatchObject({
      sheets: [],
      costMinor: 0,
      proved: true,
    });
  });
});
