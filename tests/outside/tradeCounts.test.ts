import { describe, expect, it } from 'vitest';
import { makePlan, writePlan } from '../../src/cutPlans/index.ts';
import { makeStockGroups } from '../../src/demands/index.ts';
import { edgingNeeds } from '../../src/documents/index.ts';
import type { NestPiece } from '../../src/model/nest.ts';
import { replay } from '../../src/replay/index.ts';
import { part, saw, supply, trimAllRound } from '../helpers/parts.ts';
import { nestOf, spare, stack, wanted } from '../helpers/planText.ts';

/**
 * Counting check (arithmetic, no document): n equal pieces p in a usable length U with kerf k number
 * floor((U + k) / (p + k)); no kerf is needed after the last piece if it ends the sheet. With p = 600, k = 3.2:
 * U = 2480 gives 4, 67.2 left, and the fourth cut frees the rest; U = 2409.6 gives 4, nothing over, 3 cuts;
 * U = 2409.5 gives 3.
 */
describe('pieces of 600 with a kerf of 3.2', () => {
  function sawn(usableMm: number, pieces: number): { ok: boolean; cuts: number; last: unknown } {
    const untrimmed = saw({ trimUm: trimAllRound(0) });
    const group = makeStockGroups(
      [part('a', 600, 500, { count: pieces })],
      [supply(usableMm, 500)],
      untrimmed,
    ).groups[0]!;
    const left = Math.round((usableMm - pieces * 603.2) * 10) / 10;
    const children: NestPiece[] = Array.from({ length: pieces }, () => wanted(0, 600, 500));
    if (left > 0) children.push(spare(left, 500));
    const nest = nestOf(group, [{ sheet: 0, copies: 1, root: stack('x', usableMm, 500, children) }]);
    const plan = makePlan([{ group, nest }], { job: 'count', currency: '', seed: 0 });
    const sheet = plan.groups[0]!.sheets[0]!;
    return { ok: replay(writePlan(plan)).ok, cuts: sheet.steps.length, last: sheet.pieces.at(-1) };
  }

  it('2480: four, and 67.2 left over by the fourth cut', () => {
    expect(sawn(2480, 4)).toEqual({
      ok: true,
      cuts: 4,
      last: { is: 'waste', piece: 'E', length: 67.2, width: 500 },
    });
  });

  it('2409.6: four with three cuts', () => {
    expect(sawn(2409.6, 4)).toMatchObject({ ok: true, cuts: 3, last: { is: 'panel' } });
  });

  it('2409.5: three, and no fourth', () => {
    expect(sawn(2409.5, 3)).toMatchObject({ ok: true, cuts: 3, last: { is: 'waste', length: 599.9 } });
    expect(() => sawn(2409.5, 4)).toThrow('cannot be sawn');
  });
});

/**
 * Overlength: by hand +20, by machine +70 mm over the finished length of each edge (parts-list rules of a Swiss joiner's
 * qualifying project). Check (arithmetic): a panel of 600 × 400 finished, edged all round by machine, needs 2000 mm net
 * and 2000 + 4 · 70 = 2280 mm to buy.
 */
describe('edging of a panel of 600 × 400 all round', () => {
  it('is 2000 mm net and 2280 mm to buy', () => {
    const edged = part('a', 598, 398, {
      finishedLengthUm: 600_000,
      finishedWidthUm: 400_000,
      edging: { alongLength: ['e', 'e'], alongWidth: ['e', 'e'] },
    });
    const group = makeStockGroups([edged], [supply(598, 398)], saw({ trimUm: trimAllRound(0) })).groups[0]!;
    const nest = nestOf(group, [{ sheet: 0, copies: 1, root: wanted(0, 598, 398) }]);
    const plan = makePlan([{ group, nest }], { job: 'edging', currency: '', seed: 0 });
    const edgings = new Map([['e', { title: 'edging', overlengthUm: 70_000, rollM: 1 }]]);
    expect(edgingNeeds(plan, edgings)).toEqual([
      { edging: 'e', strips: 4, netUm: 2_000_000, toBuyUm: 2_280_000, overlengthUm: 70_000, rolls: 3 },
    ]);
  });
});
