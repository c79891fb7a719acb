import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeStockGroups } from '../../src/demands/index.ts';
import { part, saw, supply, trimAllRound } from '../helpers/parts.ts';

const codes = (made: { findings: readonly { code: string }[] }) => made.findings.map((f) => f.code);

describe('grouping', () => {
  it('makes one group per board, finish and thickness, in the order of the parts', () => {
    const made = makeStockGroups(
      [
        part('a', 600, 400),
        part('b', 600, 400, { finish: 'oak' }),
        part('c', 500, 400),
        part('d', 500, 400, { thicknessUm: 18_000 }),
      ],
      [
        supply(2500, 1250),
        supply(2500, 1250, { finish: 'oak' }),
        supply(2500, 1250, { thicknessUm: 18_000 }),
      ],
      saw(),
    );
    expect(made.findings).toEqual([]);
    expect(made.groups.map((group) => [group.id, group.parts.map((p) => p.id)])).toEqual([
      ['ply-grey-15-mm', ['a', 'c']],
      ['ply-oak', ['b']],
      ['ply-grey-18-mm', ['d']],
    ]);
  });

  it('says which sheets are missing and names the nearest there are', () => {
    const made = makeStockGroups([part('a', 600, 400, { board: 'plywood' })], [supply(2500, 1250)], saw());
    expect(made.groups).toEqual([]);
    expect(made.findings[0]).toMatchObject({
      code: 'no-sheets',
      severity: 'error',
      found: 'plywood in grey, 15 mm thick',
      nearest: 'ply in grey, 15 mm thick',
    });
  });

  it('gives ids that are safe in file names and differ', () => {
    const awkward = ['CON/..\\x', 'con x', 'Größe "1"', '=1+1', '', '日本 板'];
    const parts = awkward.map((board, i) => part(`p${i}`, 600, 400, { board, finish: '' }));
    const supplies = awkward.map((board) => supply(2500, 1250, { board, finish: '' }));
    const ids = makeStockGroups(parts, supplies, saw()).groups.map((group) => group.id);
    expect(ids).toEqual(['con-x-15-mm', 'con-x-15-mm-2', 'große-1', '1-1', '15-mm', '日本-板']);
  });
});

describe('a list that does not say how thick its boards are', () => {
  const ids = (boards: readonly (readonly [board: string, thicknessUm: number])[]) => {
    const kinds = boards.map(([board, thicknessUm]) => ({ board, finish: '', thicknessUm }));
    const parts = kinds.map((kind, i) => part(`p${i}`, 600, 400, kind));
    const supplies = kinds.map((kind) => supply(2500, 1250, kind));
    return makeStockGroups(parts, supplies, saw()).groups.map((group) => group.id);
  };

  it('gets names without a thickness', () => {
    expect(ids([['', 0]])).toEqual(['board']);
    expect(
      ids([
        ['', 0],
        ['', 18_000],
        ['board', 0],
      ]),
    ).toEqual(['board', '18-mm', 'board-2']);
    expect(
      ids([
        ['ply', 0],
        ['ply', 18_000],
      ]),
    ).toEqual(['ply', 'ply-18-mm']);
  });

  it('is told of missing sheets without one', () => {
    const plain = { board: '', finish: '', thicknessUm: 0 };
    const made = makeStockGroups([part('a', 600, 400, plain)], [supply(2500, 1250)], saw());
    expect(made.findings[0]).toMatchObject({ code: 'no-sheets', found: 'board' });
  });
});

describe('demands', () => {
  it('merge parts of equal size and grain, turned ones too where they may be turned', () => {
    const made = makeStockGroups(
      [
        part('a', 600, 400, { count: 2 }),
        part('b', 400, 600, { grain: 'none' }),
        part('c', 600, 400, { grain: 'none', count: 3 }),
        part('d', 400, 600),
        part('e', 600, 400),
      ],
      [supply(2500, 1250)],
      saw(),
    );
    expect(made.groups[0]!.demands).toEqual([
      {
        lengthUm: 600_000,
        widthUm: 400_000,
        grain: 'length',
        count: 3,
        parts: [
          { part: 'a', count: 2 },
          { part: 'e', count: 1 },
        ],
      },
      {
        lengthUm: 600_000,
        widthUm: 400_000,
        grain: 'none',
        count: 4,
        parts: [
          { part: 'b', count: 1 },
          { part: 'c', count: 3 },
        ],
      },
      { lengthUm: 400_000, widthUm: 600_000, grain: 'length', count: 1, parts: [{ part: 'd', count: 1 }] },
    ]);
  });

  it('hold every part with its whole count, whatever the list', () => {
    const anyPart = fc.record({
      length: fc.integer({ min: 50, max: 900 }),
      width: fc.integer({ min: 50, max: 900 }),
      count: fc.integer({ min: 1, max: 5 }),
      grain: fc.constantFrom('length' as const, 'none' as const),
      run: fc.option(fc.constantFrom('r', 's'), { nil: undefined }),
      follows: fc.constantFrom('length' as const, 'width' as const),
      position: fc.nat(6),
    });
    fc.assert(
      fc.property(fc.array(anyPart, { minLength: 1, maxLength: 20 }), (drawn) => {
        const parts = drawn.map(({ length, width, count, grain, run, follows, position }, i) =>
          part(`p${i}`, length, width, {
            count,
            grain,
            ...(run ? { match: { run, position, follows } } : {}),
          }),
        );
        const { groups } = makeStockGroups(parts, [supply(2500, 1250)], saw());
        const group = groups[0]!;
        const counts = new Map<string, number>();
        for (const demand of group.demands) {
          for (const entry of demand.parts) {
            expect(counts.has(entry.part)).toBe(false);
            counts.set(entry.part, entry.count);
          }
          const inParts = demand.parts.map((entry) => entry.count);
          if (demand.blank) expect(inParts).toEqual(demand.parts.map(() => demand.count));
          else expect(inParts.reduce((a, b) => a + b, 0)).toBe(demand.count);
        }
        expect(parts.map((p) => counts.get(p.id))).toEqual(parts.map((p) => p.count));
      }),
      { numRuns: 200 },
    );
  });
});

describe('sheets', () => {
  it('are rounded down, kerf and trims up, offcuts not trimmed', () => {
    const made = makeStockGroups(
      [part('a', 600, 400)],
      [supply(2440.05, 1219.99), supply(800.55, 700, { kind: 'offcut', count: 1, priceMinor: null })],
      saw({ kerfUm: 3175, trimUm: trimAllRound(9.525) }),
    );
    const group = made.groups[0]!;
    expect(group.saw.kerfUm).toBe(3200);
    expect(group.saw).not.toHaveProperty('trimUm');
    expect(group.sheets).toMatchObject([
      { lengthUm: 2_440_000, widthUm: 1_219_900, trim: { left: 9600, right: 9600, near: 9600, far: 9600 } },
      { lengthUm: 800_500, widthUm: 700_000, trim: { left: 0, far: 0 }, priceMinor: 0 },
    ]);
    expect(group.pricedBy).toBe('price');
  });

  it('are compared by area in mm² when one of them has no price', () => {
    const made = makeStockGroups(
      [part('a', 600, 400)],
      [
        supply(2500, 1250),
        supply(2000, 1000, { priceMinor: null }),
        supply(800, 700, { kind: 'offcut', priceMinor: null }),
      ],
      saw(),
    );
    const group = made.groups[0]!;
    expect(group.pricedBy).toBe('area');
    expect(group.sheets.map((sheet) => sheet.priceMinor)).toEqual([3_125_000, 2_000_000, 0]);
    expect(made.findings).toEqual([]);
  });

  it('that are used up or trimmed to nothing are passed over, with a word on the latter', () => {
    const made = makeStockGroups(
      [part('a', 600, 400)],
      [supply(2500, 1250, { count: 0 }), supply(2500, 20), supply(1000, 1000)],
      saw(),
    );
    expect(made.groups[0]!.sheets.map((sheet) => sheet.id)).toEqual(['1000x1000']);
    expect(codes(made)).toEqual(['sheet-too-small']);
  });

  it('get ids that differ', () => {
    const made = makeStockGroups(
      [part('a', 600, 400)],
      [supply(2500, 1250, { id: 's' }), supply(2500, 1000, { id: 's' })],
      saw(),
    );
    expect(made.groups[0]!.sheets.map((sheet) => sheet.id)).toEqual(['s', 's (2)']);
  });
});

describe('sizes', () => {
  it('refuses a panel that only fits across the grain, and says so', () => {
    // 2500 × 1250 less 10 all round leaves 2480 × 1230: 1230.1 wide is too much, 2480 along the grain just fits.
    const sheets = [supply(2500, 1250)];
    expect(codes(makeStockGroups([part('a', 2480, 1230)], sheets, saw()))).toEqual([]);
    const wide = makeStockGroups([part('a', 1000, 1230.1), part('b', 2480.1, 300)], sheets, saw());
    expect(wide.groups).toEqual([]);
    expect(wide.findings.map((f) => [f.code, f.found])).toEqual([
      ['panel-too-large', '1000.0 × 1230.1 mm'],
      ['panel-too-large', '2480.1 × 300.0 mm'],
    ]);
    expect(wide.findings[0]!.message).toContain('along and across the grain');
    expect(wide.findings[1]!.message).toContain('larger than every sheet');
    expect(codes(makeStockGroups([part('a', 1000, 1230.1, { grain: 'none' })], sheets, saw()))).toEqual([]);
    expect(
      codes(makeStockGroups([part('a', 1000, 1230.1)], [supply(2500, 1250, { grain: 'none' })], saw())),
    ).toEqual([]);
  });

  it('refuses what the saw cannot hold and cautions about what it hardly can', () => {
    const made = (length: number, width: number) =>
      makeStockGroups([part('a', length, width)], [supply(2500, 1250)], saw());
    expect(codes(made(600, 49.9))).toEqual(['panel-too-narrow']);
    expect(made(600, 49.9).groups).toEqual([]);
    expect(codes(made(600, 50))).toEqual([]);
    expect(made(299.9, 149.9).findings).toMatchObject([{ code: 'small-panels', severity: 'caution' }]);
    expect(made(299.9, 149.9).groups).toHaveLength(1);
    expect(codes(made(300, 149.9))).toEqual([]);
    expect(codes(made(299.9, 150))).toEqual([]);
  });
});
