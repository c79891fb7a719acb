import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { carryOver, type NumberedPart, type SawnPiece } from '../../src/changes/carryOver.ts';
import type { Part } from '../../src/model/part.ts';
import { part } from '../helpers/parts.ts';

function numbered(parts: readonly Part[]): NumberedPart[] {
  return parts.map((one, index) => ({ part: one, number: index + 1 }));
}

function sawn(of: NumberedPart, ...pieces: number[]): SawnPiece[] {
  return pieces.map((piece) => ({ of, piece, code: `${of.number}/${piece}`, grain: 'length' }));
}

function told({ panels, left }: ReturnType<typeof carryOver<Part>>) {
  const words = panels.map(({ panel, sawn: own, sawnLabel, label, differs }) =>
    [
      panel.name,
      own.map(({ code }) => code).join(' '),
      sawnLabel && `${sawnLabel.number}: ${sawnLabel.pieces.join(' ')}`,
      label && `${label.number}: ${label.pieces.join(' ')}`,
      differs.join(' '),
    ].join(' | '),
  );
  return [...words, ...left.map(({ code }) => `left ${code}`)];
}

describe('what is sawn of an order that has changed', () => {
  const side = part('side', 700, 500, { count: 3 });
  const door = part('door', 690, 390);
  const back = part('back', 600, 400);

  it('is used where it still fits, numbers stay, and the rest is to be sawn', () => {
    const before = numbered([side, door, back]);
    const pieces = [...sawn(before[0]!, 2), ...sawn(before[1]!, 1), ...sawn(before[2]!, 1)];
    const edged = { ...door, edging: { alongLength: ['grey', null], alongWidth: [null, null] } } as const;
    const longer = { ...back, cutLengthUm: 650_000, finishedLengthUm: 650_000 };
    const wanted = [part('shelf', 300, 200), side, edged, longer];
    expect(told(carryOver({ before, pieces, wanted, rows: 'as sawn' }))).toEqual([
      'shelf |  |  | 4: 1 | ',
      'side | 1/2 | 1: 2 | 1: 1 3 | ',
      'door | 2/1 | 2: 1 |  | edging',
      // Of another size, so that it is another piece of wood with another number.
      'back |  |  | 5: 1 | ',
      'left 3/1',
    ]);
  });

  it('serves another panel of the same size where its own is gone', () => {
    const before = numbered([side]);
    const other = { ...side, id: 'wall', name: 'wall', count: 1 };
    const pieces = sawn(before[0]!, 1, 3);
    expect(told(carryOver({ before, pieces, wanted: [other], rows: 'as sawn' }))).toEqual([
      'wall | 1/1 | 2: 1 |  | ',
      'left 1/3',
    ]);
  });

  it('never gives a new piece the label of one that was sawn, also where that is left over', () => {
    const before = numbered([{ ...side, count: 2 }]);
    const pieces = sawn(before[0]!, 1, 2);
    const wanted = [
      { ...side, count: 1, board: 'oak' },
      { ...side, id: 'x', name: 'x', count: 3 },
    ];
    const carried = carryOver({ before, pieces, wanted, rows: 'as sawn' });
    expect(told(carried)).toEqual(['side |  |  | 2: 1 | ', 'x | 1/1 1/2 | 3: 1 2 | 3: 3 | ']);
  });

  it('keeps rows of fronts whole where that is asked for, and tells broken ones otherwise', () => {
    const match = (position: number) => ({ run: 'row', position, follows: 'width' as const });
    const left = part('left', 700, 300, { match: match(0) });
    const right = part('right', 700, 300, { match: match(1) });
    const before = numbered([left, right]);
    const pieces = [...sawn(before[0]!, 1), ...sawn(before[1]!, 1)];
    const narrow = { ...right, cutWidthUm: 200_000, finishedWidthUm: 200_000 };
    const broken = carryOver({ before, pieces, wanted: [left, narrow], rows: 'as sawn' });
    expect(broken.brokenRows).toMatchObject([{ sawn: [{ name: 'left' }], others: [{ name: 'right' }] }]);
    const whole = carryOver({ before, pieces, wanted: [left, narrow], rows: 'whole' });
    expect(whole.brokenRows).toEqual([]);
    expect(told(whole)).toEqual(['left |  |  | 1: 2 | ', 'right |  |  | 3: 1 | ', 'left 2/1', 'left 1/1']);
    expect(carryOver({ before, pieces, wanted: [left, right], rows: 'whole' }).left).toEqual([]);
  });

  const panels = fc.uniqueArray(
    fc.record({
      name: fc.constantFrom('a', 'b', 'c', 'd', 'e'),
      size: fc.constantFrom(300, 400),
      count: fc.integer({ min: 1, max: 3 }),
    }),
    { selector: ({ name }) => name, maxLength: 5 },
  );
  const made = (list: { name: string; size: number; count: number }[]) =>
    list.map(({ name, size, count }) => part(name, size, 200, { count }));

  it('is used or left, each piece once; every panel is whole, and no label is there twice', () => {
    fc.assert(
      fc.property(panels, panels, fc.infiniteStream(fc.boolean()), (old, now, coin) => {
        const before = numbered(made(old));
        const pieces = before.flatMap((of) =>
          sawn(of, ...Array.from({ length: of.part.count }, (_, i) => i + 1).filter(() => coin.next().value)),
        );
        const wanted = made(now);
        const carried = carryOver({ before, pieces, wanted, rows: 'as sawn' });
        const used = carried.panels.flatMap((one) => one.sawn);
        expect([...used, ...carried.left].map(({ code }) => code).sort()).toEqual(
          pieces.map(({ code }) => code).sort(),
        );
        const labels = new Set<string>();
        for (const { panel, sawn: own, sawnLabel, label } of carried.panels) {
          expect(own.length + (label?.pieces.length ?? 0)).toBe(panel.count);
          expect(sawnLabel?.pieces.length ?? 0).toBe(own.length);
          for (const one of [sawnLabel, label]) {
            for (const piece of one?.pieces ?? []) {
              expect(labels.has(`${one!.number}/${piece}`)).toBe(false);
              labels.add(`${one!.number}/${piece}`);
            }
          }
          // A piece that is still to be sawn gets a label that no wood bears yet.
          for (const piece of label?.pieces ?? []) {
            expect(pieces.some(({ code }) => code === `${label!.number}/${piece}`)).toBe(false);
          }
        }
        // Nothing is left over that a panel still to be sawn could be.
        for (const { of } of carried.left) {
          const fits = carried.panels.filter(({ label, panel }) => {
            return label !== null && panel.cutLengthUm === of.part.cutLengthUm;
          });
          expect(fits).toEqual([]);
        }
      }),
    );
  });
});
