import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fitsAsSawn,
  type MatchablePanel,
  matchPanels,
  panelDifferences,
} from '../../src/changes/matchPanels.ts';
import { part } from '../helpers/parts.ts';

const hole = {
  name: 'pin',
  alongLengthUm: 50_000,
  alongWidthUm: 37_000,
  diameterUm: 5000,
  depthUm: 12_000,
  face: 'left' as const,
};

function told(before: readonly MatchablePanel[], after: readonly MatchablePanel[]): string[] {
  return matchPanels(before, after).map(
    ({ kind, before: b, after: a, count, differs }) =>
      `${count} ${kind} ${(a ?? b)?.id}${differs.length === 0 ? '' : `: ${differs.join(', ')}`}`,
  );
}

describe('panels of two orders', () => {
  it('are the same, changed, new or no longer needed, piece by piece', () => {
    const side = part('side', 700, 500, { count: 3 });
    const door = part('door', 690, 390);
    const wider = { ...door, finishedWidthUm: 400_000, cutWidthUm: 400_000 };
    expect(
      told([side, door, part('back', 600, 400)], [part('shelf', 500, 300), { ...side, count: 4 }, wider]),
    ).toEqual([
      '1 new shelf',
      '3 same side',
      '1 new side',
      '1 changed door: size, cut size',
      '1 no longer needed back',
    ]);
  });

  it('differ in what is done after sawing as well', () => {
    const plain = part('side', 700, 500);
    const edged = { ...plain, edging: { alongLength: ['grey', null], alongWidth: [null, null] } } as const;
    const opening = { name: 'sink', alongLength: [1, 2], alongWidth: [3, 4] } as const;
    expect(panelDifferences(plain, edged)).toEqual(['edging']);
    expect(panelDifferences(plain, { ...plain, byHand: { openings: [opening] } })).toEqual(['openings']);
    expect(panelDifferences(plain, { ...plain, byHand: { openings: [] } })).toEqual([]);
    expect(panelDifferences({ ...plain, holes: [] }, { ...plain, holes: [hole] })).toEqual(['holes']);
    const inEdge = {
      name: 'screw',
      face: 'top',
      alongUm: 1,
      acrossUm: 2,
      diameterUm: 3,
      depthUm: 4,
    } as const;
    const drilled = { ...plain, holes: [hole], edgeHoles: [inEdge] };
    expect(panelDifferences({ ...plain, holes: [hole] }, drilled)).toEqual(['holes']);
    // A plan says nothing of holes.
    expect(panelDifferences(plain, { ...plain, holes: [hole] })).toEqual([]);
  });

  it('of one name are paired with the one they are alike with', () => {
    const small = part('a', 300, 200, { name: 'shelf' });
    const large = part('b', 500, 200, { name: 'shelf' });
    expect(told([small, large], [large, small])).toEqual(['1 same b', '1 same a']);
  });

  it('are told apart by their order only where there are several', () => {
    const one = part('side', 700, 500, { order: 'mon' });
    expect(told([one], [{ ...one, order: 'tue' }])).toEqual(['1 same side']);
    const two = [one, { ...one, order: 'tue', cutLengthUm: 600_000, finishedLengthUm: 600_000 }];
    expect(told(two, [two[1]!])).toEqual(['1 same side', '1 no longer needed side']);
  });

  it('can be used as sawn when size, board and grain allow it', () => {
    const sawn = part('side', 700, 500);
    const edged = { ...sawn, edging: { alongLength: ['grey', null], alongWidth: [null, null] } } as const;
    const turned = { ...sawn, cutLengthUm: 500_000, cutWidthUm: 700_000 };
    expect(fitsAsSawn(sawn, edged)).toBe(true);
    expect(fitsAsSawn(sawn, { ...sawn, finish: 'white' })).toBe(false);
    expect(fitsAsSawn(sawn, { ...sawn, cutWidthUm: 400_000 })).toBe(false);
    expect(fitsAsSawn(sawn, turned)).toBe(false);
    expect(fitsAsSawn(sawn, { ...turned, grain: 'none' })).toBe(true);
    expect(fitsAsSawn({ ...sawn, grain: 'none' }, sawn)).toBe(false);
  });

  const panels = fc.array(
    fc.record({
      name: fc.constantFrom('side', 'door', 'back'),
      unit: fc.constantFrom('sink', 'bed'),
      size: fc.constantFrom(300, 400),
      count: fc.integer({ min: 1, max: 4 }),
    }),
    { maxLength: 8 },
  );
  const made = (list: { name: string; unit: string; size: number; count: number }[]) =>
    list.map(({ name, unit, size, count }, index) => part(`${index}`, size, 200, { name, unit, count }));

  it('are each in exactly one match, and none is changed where nothing was', () => {
    fc.assert(
      fc.property(panels, panels, (old, wanted) => {
        const [before, after] = [made(old), made(wanted)];
        const matches = matchPanels(before, after);
        const sum = (side: 'before' | 'after', panel: MatchablePanel) =>
          matches.reduce((all, match) => (match[side] === panel ? all + match.count : all), 0);
        for (const panel of before) expect(sum('before', panel)).toBe(panel.count);
        for (const panel of after) expect(sum('after', panel)).toBe(panel.count);
        for (const { kind, before: b, after: a, differs } of matches) {
          expect(kind === 'new').toBe(b === null);
          expect(kind === 'no longer needed').toBe(a === null);
          expect(kind === 'changed').toBe(differs.length > 0);
          if (b !== null && a !== null) expect([b.unit, b.name]).toEqual([a.unit, a.name]);
        }
        expect(matchPanels(before, before).every(({ kind }) => kind === 'same')).toBe(true);
      }),
    );
  });
});
