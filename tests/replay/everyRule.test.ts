import { describe, expect, it } from 'vitest';
import { makePlan, writePlan } from '../../src/cutPlans/index.ts';
import { makeStockGroups } from '../../src/demands/index.ts';
import type { NestPiece } from '../../src/model/nest.ts';
import type { PlanFile, PlanSheet } from '../../src/model/plan.ts';
import { measurePlan, replay } from '../../src/replay/index.ts';
import { part, saw, supply } from '../helpers/parts.ts';
import { nestOf, spare, stack, wanted } from '../helpers/planText.ts';
import { type Change, codesAfter, findingsAfter, goodPlan, parting, wholeFindingsAfter } from './goodPlan.ts';

const messagesAfter = (change: Change) => findingsAfter(change).map(({ message }) => message);

/** A sheet of 1000 by 600 without trims, one panel of 400 by 300 cut from it. */
function plainPlan(change: (plan: PlanFile) => void = () => {}): PlanFile {
  const parts = [part('door', 400, 300)];
  const untrimmed = { left: 0, right: 0, near: 0, far: 0 };
  const group = makeStockGroups(parts, [supply(1000, 600)], saw({ trimUm: untrimmed })).groups[0]!;
  const root = stack('y', 1000, 600, [
    stack('x', 1000, 300, [wanted(0, 400, 300), spare(596.8, 300)]),
    spare(1000, 296.8),
  ]);
  const plan = makePlan([{ group, nest: nestOf(group, [{ sheet: 0, copies: 1, root }]) }], {
    job: 'plain',
    currency: 'EUR',
    seed: 1,
  });
  change(plan);
  return plan;
}

const findingsOf = (plan: PlanFile) => replay(writePlan(plan)).findings;

describe('a size that is wrong is told by what gave it', () => {
  const panel = (sheet: PlanSheet, name: string, panel: string) => {
    sheet.pieces = sheet.pieces.map((piece) =>
      piece.piece === name ? { is: 'panel', piece: name, panel, lengthAlong: 'length' } : piece,
    );
  };

  it('the fence, with the cut, what was found and what is wanted', () => {
    const [finding] = wholeFindingsAfter((group) => Object.assign(group.panels[1]!, { width: 412.1 }));
    expect(finding).toEqual({
      code: 'size-wrong',
      severity: 'error',
      message:
        'Group ply-grey, sheet 1, cut 6: the fence is at 412.0 but panel "shelf" ("shelf", piece "B3") must be 412.1 along the width of the sheet.',
      place: { file: 'plan', field: 'group ply-grey › sheet 1 › cut 6' },
      found: '412.0 mm',
      expected: '412.1 mm',
    });
  });

  it('the rest of a cut, along both sides', () => {
    const messages = messagesAfter((_, sheet) => {
      const waste = sheet.pieces.find(({ piece }) => piece === 'B4')!;
      Object.assign(waste, { length: 570.3, width: 411.9 });
    });
    expect(messages).toEqual([
      'Group ply-grey, sheet 1, cut 10: what the cut leaves is 570.4 but waste "B4" must be 570.3 along the length of the sheet.',
      'Group ply-grey, sheet 1, cut 6: the fence is at 412.0 but waste "B4" must be 411.9 along the width of the sheet.',
    ]);
  });

  it('the trim, and of each side the last one', () => {
    const messages = messagesAfter((_, sheet) => {
      const waste = sheet.pieces.find(({ piece }) => piece === 'C')!;
      Object.assign(waste, { length: 2480.001 });
    });
    expect(messages).toEqual([
      'Group ply-grey, sheet 1, cut 2: what the trim leaves is 2480.0 but waste "C" must be 2480.001 along the length of the sheet.',
    ]);
    const uncut = messagesAfter((group, sheet) => {
      sheet.steps = sheet.steps.filter(({ cut }) => cut === 'trim');
      sheet.pieces = [{ is: 'waste', piece: 'sheet 4', length: 2480, width: 1231 }];
      group.panels = [];
      group.runs = [];
    });
    expect(uncut).toEqual([
      'Group ply-grey, sheet 1, cut 4: what the trim leaves is 1230.0 but waste "sheet 4" must be 1231.0 along the width of the sheet.',
    ]);
  });

  it('the raw sheet, where no cut is to blame', () => {
    const findings = findingsOf(
      plainPlan((plan) => {
        const sheet = plan.groups[0]!.sheets[0]!;
        sheet.steps = [];
        sheet.pieces = [{ is: 'waste', piece: sheet.start, length: 1000, width: 600 }];
        panel(sheet, sheet.start, 'door');
      }),
    );
    expect(findings.map(({ message, place }) => ({ message, field: place?.field }))).toEqual([
      {
        message: expect.stringMatching(
          /^Group ply-grey, sheet 1: the raw sheet is 1000.0 but panel "door" .* 400.0 along the length of the sheet\.$/,
        ),
        field: 'group ply-grey › sheet 1',
      },
      {
        message: expect.stringMatching(/the raw sheet is 600.0 but .* 300.0 along the width of the sheet\.$/),
        field: 'group ply-grey › sheet 1',
      },
    ]);
  });

  it('a panel laid the other way is held against the other sides', () => {
    expect(findingsOf(plainPlan())).toEqual([]);
    const turned = plainPlan((plan) => {
      const [group] = plan.groups;
      Object.assign(group!.panels[0]!, { length: 300, width: 400, grain: 'none' });
      for (const piece of group!.sheets[0]!.pieces) if (piece.is === 'panel') piece.lengthAlong = 'width';
    });
    expect(findingsOf(turned)).toEqual([]);
  });
});

describe('every step of the saw', () => {
  it('trims take what is due, off a piece that is larger', () => {
    const trims = (change: (sheet: PlanSheet) => void) => messagesAfter((_, sheet) => change(sheet))[0];
    expect(trims((sheet) => Object.assign(sheet.steps[3]!, { take: 10.1 }))).toBe(
      'Group ply-grey, sheet 1, cut 4: the trim takes 10.1 off the far side but must take 10.0.',
    );
    // Where none is due, none may be taken, not even one of nothing.
    const [none] = findingsOf(
      plainPlan((plan) => {
        const sheet = plan.groups[0]!.sheets[0]!;
        sheet.steps.unshift({ cut: 'trim', piece: sheet.start, side: 'near', take: 0, leaves: 'trimmed' });
      }),
    );
    expect(none?.code).not.toBeUndefined();
    const large = messagesAfter((group) => {
      Object.assign(group.stock[0]!, { length: 20, trim: { left: 10, right: 10, near: 10, far: 10 } });
    });
    expect(large[0]).toBe('Group ply-grey, sheet 1, cut 2: the trim takes 10.0 off a piece of only 10.0.');
    expect(trims((sheet) => Object.assign(sheet.steps[1]!, { leaves: 'sheet 1' }))).toBe(
      'Group ply-grey, sheet 1, cut 2: there already is or was a piece called "sheet 1".',
    );
    expect(trims((sheet) => Object.assign(sheet.steps[1]!, { piece: 'sheet' }))).toBe(
      'Group ply-grey, sheet 1, cut 2: the piece in hand, "sheet", has already been cut up.',
    );
    expect(trims((sheet) => Object.assign(sheet.steps[1]!, { piece: 'board' }))).toBe(
      'Group ply-grey, sheet 1, cut 2: the piece in hand, "board", does not exist.',
    );
    // All that are missing are named together, at the cut that they should have come before.
    const left = (sheet: PlanSheet) => {
      sheet.steps.splice(1, 1);
      sheet.steps.splice(2, 1);
      Object.assign(sheet.steps[1]!, { piece: 'sheet 1' });
      parting(sheet, 0).piece = 'sheet 3';
    };
    expect(trims(left)).toBe(
      'Group ply-grey, sheet 1, cut 3: the right and far side of the sheet has not been trimmed.',
    );
    const uncut = messagesAfter((_, sheet) => {
      sheet.steps = sheet.steps.slice(0, 3);
      sheet.pieces = [{ is: 'waste', piece: 'sheet 3', length: 2480, width: 1240 }];
    });
    expect(uncut[0]).toBe('Group ply-grey, sheet 1, cut 3: the far side of the sheet has not been trimmed.');
  });

  it('the fence stands within the piece, and the blade takes what is there', () => {
    const fenced = (fence: number, take: number) =>
      findingsAfter((_, sheet) => Object.assign(parting(sheet, 6), { fence, take }))[0];
    // A1 is 703.2 wide.
    expect(fenced(703.2, 3.2)?.code).toBe('fence-outside');
    expect(fenced(703.1, 0.1)?.message).toBe(
      'Group ply-grey, sheet 1, cut 11: nothing is left beyond the blade, so there is no piece "A1b".',
    );
    expect(fenced(700, 3.2)?.code).toBe('pieces-wrong');
    expect(fenced(701, 3.2)?.message).toBe(
      'Group ply-grey, sheet 1, cut 11: with the fence at 701.0 in piece "A1" of 703.2 the blade takes 2.2, not 3.2.',
    );
    const forgotten = findingsAfter((_, sheet) => void parting(sheet, 6).gives.pop())[0];
    expect(forgotten?.message).toBe(
      'Group ply-grey, sheet 1, cut 11: beyond the blade 300.0 is left, and the plan does not say what becomes of it.',
    );
  });

  it('the saw holds what is between fence and blade', () => {
    const least = (smallestPart: number) =>
      findingsAfter((group) => void Object.assign(group.saw, { smallestPart }))[0];
    // The narrowest panel is 300 wide and falls off beyond the blade; nothing narrower stands at the fence.
    expect(least(300)).toBeUndefined();
    expect(least(401)?.message).toBe(
      'Group ply-grey, sheet 1, cut 11: the strip between fence and blade of piece "A1" is 400.0 wide, and this saw holds nothing narrower than 401.0.',
    );
  });

  it('cuts are called by their stage', () => {
    const named = (index: number, cut: 'rip' | 'crosscut' | 'recut' | 'part') =>
      findingsAfter((_, sheet) => Object.assign(parting(sheet, index), { cut }))[0];
    expect(named(1, 'recut')?.message).toBe('Group ply-grey, sheet 1, cut 6: this is a rip, not a recut.');
    expect(named(4, 'recut')?.message).toBe(
      'Group ply-grey, sheet 1, cut 9: this is a crosscut, not a recut.',
    );
    expect(named(7, 'recut')?.message).toBe(
      'Group ply-grey, sheet 1, cut 12: a piece of a matched blank can only be parted further.',
    );
  });

  it('turns are counted by piece, the sheet as lying in its first stage', () => {
    const allowed = (turns: number, firstCut: 'rip' | 'crosscut' | 'either') =>
      findingsAfter((group) => void Object.assign(group.saw, { turns, firstCut }))[0];
    expect(allowed(1, 'rip')).toBeUndefined();
    expect(allowed(0, 'rip')?.message).toBe(
      'Group ply-grey, sheet 1, cut 7: piece "B" has to be turned 1 times, and this saw allows 0.',
    );
    expect(allowed(1, 'either')).toBeUndefined();
    expect(allowed(1, 'crosscut')?.message).toBe(
      'Group ply-grey, sheet 1, cut 7: piece "B" has to be turned 2 times, and this saw allows 1.',
    );
  });

  it('what is left at the end is listed once', () => {
    const [twice] = messagesAfter((_, sheet) => void sheet.pieces.push({ ...sheet.pieces[0]! }));
    expect(twice).toBe(
      'Group ply-grey, sheet 1: piece "A2" is listed as offcut but has been cut up or is listed twice.',
    );
    const [never] = messagesAfter(
      (_, sheet) => void sheet.pieces.push({ is: 'waste', piece: 'Z', length: 1, width: 1 }),
    );
    expect(never).toBe('Group ply-grey, sheet 1: piece "Z" is listed as waste but never comes about.');
    const [left] = messagesAfter((_, sheet) => void sheet.pieces.shift());
    expect(left).toBe('Group ply-grey, sheet 1: piece "A2" is left, and the plan does not say what it is.');
  });

  it('faults are on one line whatever names hold, and say in which file', () => {
    const plan = goodPlan();
    Object.assign(plan.groups[0]!.sheets[0]!, { stock: 'a\n\u0007b' });
    const [finding] = replay(writePlan(plan), 'job/plan.json').findings;
    expect(finding?.message).toBe('Group ply-grey, sheet 1: sheet "a b" is not in the stock.');
    expect(finding?.place).toEqual({ file: 'job/plan.json', field: 'group ply-grey › sheet 1' });
  });

  it('a hundred faults are told, and that there are more only where there are', () => {
    const wastes = (count: number) =>
      codesAfter((_, sheet) => {
        for (let i = 0; i < count; i++)
          sheet.pieces.push({ is: 'waste', piece: `no ${i}`, length: 1, width: 1 });
      });
    expect(wastes(100)).toHaveLength(100);
    expect(wastes(100)).not.toContain('more-faults');
    expect(wastes(101).slice(-2)).toEqual(['no-such-piece', 'more-faults']);
    expect(wastes(150)).toHaveLength(101);
  });
});

describe('what a saw must cut first', () => {
  /** A column of two panels beside a strip, cut across first; beyond the panels `waste` is left along the width. */
  const acrossFirst = (waste: number, firstCut: 'rip' | 'crosscut') => {
    const untrimmed = { left: 0, right: 0, near: 0, far: 0 };
    const high = 406.4 + waste + (waste > 0 ? 3.2 : 0);
    const by = saw({ firstCut: 'either', trimUm: untrimmed });
    const group = makeStockGroups([part('a', 300, 203.2, { count: 2 })], [supply(603.2, high)], by)
      .groups[0]!;
    const column: NestPiece[] = [wanted(0, 300, 203.2), ...(waste > 0 ? [spare(300, high - 206.4)] : [])];
    const root =
      column.length === 1
        ? stack('x', 603.2, high, [wanted(0, 300, high), wanted(0, 300, high)])
        : stack('x', 603.2, high, [stack('y', 300, high, column), stack('y', 300, high, column)]);
    const plan = makePlan([{ group, nest: nestOf(group, [{ sheet: 0, copies: 1, root }]) }], {
      job: 'across',
      currency: 'EUR',
      seed: 1,
    });
    plan.groups[0]!.saw.firstCut = firstCut;
    return findingsOf(plan).map(({ code }) => code);
  };

  it('may be left out where the first cut would only have taken a kerf off', () => {
    expect(acrossFirst(3.2, 'crosscut')).toEqual([]);
    expect(acrossFirst(3.2, 'rip')).toEqual(['first-cut-wrong']);
  });
});

describe('rows of matched fronts', () => {
  it('lie side by side, a kerf apart, the same way round', () => {
    const run = (change: Change) => messagesAfter(change).filter((message) => message.includes('run'));
    expect(run((group) => void group.runs[0]!.panels.push('door'))[0]).toBe(
      'Group ply-grey, sheet 1, cut 11: run "fronts" must be front 0, front 1, door in this order, but the blank gives front 0, front 1.',
    );
    expect(messagesAfter((group) => void group.runs[0]!.panels.push('window'))).toContain(
      'Group ply-grey: run "fronts" names a panel "window" that is not listed.',
    );
    expect(messagesAfter((group) => void group.runs[0]!.panels.push('front 0'))).toContain(
      'Group ply-grey: panel "front 0" stands twice in a run.',
    );
    expect(
      messagesAfter((group) => void Object.assign(group.runs[0]!, { panels: ['door', 'shelf'] })),
    ).toEqual(
      expect.arrayContaining([
        'Group ply-grey, sheet 1, cut 11: a piece is parted that is no blank of matched panels.',
        'Group ply-grey, sheet 1: panel "door" (piece "B1") is not parted from a blank of run "fronts".',
      ]),
    );
  });

  it('are not one row where a strip was cut out between them, or one lies further in', () => {
    const between: Change = (_, sheet) => {
      const first = sheet.steps.findIndex(({ cut }) => cut === 'part');
      Object.assign(sheet.steps[first]!, { gives: ['A1a', 'A1r'] });
      sheet.steps.splice(first + 1, 0, {
        cut: 'part',
        piece: 'A1r',
        blade: 'length',
        fence: 100,
        take: 3.2,
        gives: ['A1w', 'A1b'],
      });
      sheet.pieces.push({ is: 'waste', piece: 'A1w', length: 500, width: 100 });
    };
    expect(messagesAfter(between)).toContain(
      'Group ply-grey, sheet 1, cut 11: "A1a" and "A1b1" do not lie side by side one kerf apart, but 106.4.',
    );
    const furtherIn: Change = (group, sheet) => {
      group.saw.smallestPart = 0;
      const last = sheet.steps.at(-1)!;
      Object.assign(last, { fence: 26.8, gives: ['A1b2', 'A1b1'] });
    };
    expect(messagesAfter(furtherIn)).toEqual([
      'Group ply-grey, sheet 1, cut 11: "A1a" and "A1b1" do not lie side by side one kerf apart, but 3.2.',
    ]);
  });
});

describe('sheets that are sawn on each other', () => {
  /** Two cut plans of one sheet each, cut alike. */
  const stacked = (change: (plan: PlanFile) => void) => {
    const plan = structuredClone(goodPlan());
    const [group] = plan.groups;
    group!.sheets.push({ ...structuredClone(group!.sheets[0]!), number: 2 });
    for (const panel of group!.panels) panel.count *= 2;
    Object.assign(group!.saw, { cuttingHeight: 30 });
    group!.stacks = [
      {
        times: 1,
        sheets: [
          { number: 1, copies: 1 },
          { number: 2, copies: 1 },
        ],
      },
    ];
    change(plan);
    return findingsOf(plan).map(({ message }) => message);
  };

  it('are alike, no higher than the saw cuts, and no more than there are', () => {
    expect(stacked(() => {})).toEqual([]);
    const wrong = (change: (plan: PlanFile) => void) => stacked(change)[0];
    expect(wrong(({ groups: [group] }) => Object.assign(group!.saw, { cuttingHeight: 29.9 }))).toBe(
      'Group ply-grey: stack 1 is 2 sheets of 15.0 high, and this saw cuts no higher than 29.9.',
    );
    const oneByOne = 'Group ply-grey: stack 1 is 2 sheets of 15.0 high, and this saw cuts sheets one by one.';
    expect(wrong(({ groups: [group] }) => Object.assign(group!.saw, { cuttingHeight: null }))).toBe(oneByOne);
    expect(wrong(({ groups: [group] }) => void delete group!.saw.cuttingHeight)).toBe(oneByOne);
    expect(wrong(({ groups: [group] }) => Object.assign(group!.stacks![0]!, { times: 2 }))).toBe(
      'Group ply-grey: 2 sheets of cut plan 1 lie in stacks, but it has only 1.',
    );
    expect(wrong(({ groups: [group] }) => Object.assign(group!.stacks![0]!.sheets[1]!, { number: 3 }))).toBe(
      'Group ply-grey: stack 1 holds sheets of cut plan 3, which does not exist.',
    );
    expect(
      wrong(({ groups: [group] }) => {
        for (const step of group!.sheets[1]!.steps) if (step.piece === 'sheet 4') step.piece = 'sheet 5';
        Object.assign(group!.sheets[1]!.steps[3]!, { leaves: 'sheet 5' });
      }),
    ).toBe(
      'Group ply-grey: the sheets of stack 1 are not cut alike: cut 4 of sheet 1 is not that of sheet 2.',
    );
    expect(
      wrong(({ groups: [group] }) => {
        group!.stock.push({ ...group!.stock[0]!, id: 'other' });
        group!.sheets[1]!.stock = 'other';
      }),
    ).toBe(
      'Group ply-grey: the sheets of stack 1 are not cut alike: sheet 1 is of stock "2500x1250", sheet 2 of "other".',
    );
    expect(
      wrong(({ groups: [group] }) => {
        const [first] = group!.sheets;
        const last = first!.steps.pop()!;
        first!.pieces = first!.pieces.filter(({ piece }) => !piece.startsWith('A1b'));
        first!.pieces.push({ is: 'waste', piece: last.piece, length: 500, width: 300 });
        group!.panels[3]!.count = 1;
        group!.runs = [];
      }),
    ).toContain('sheet');
  });
});

describe('labels of a later plan', () => {
  const labelled = (change: (plan: PlanFile) => void) => {
    const plan = structuredClone(goodPlan());
    plan.groups[0]!.panels.forEach((panel, index) => {
      panel.label = {
        number: index + 1,
        pieces: Array.from({ length: panel.count }, (_, piece) => piece + 1),
        of: panel.count,
      };
    });
    change(plan);
    return findingsOf(plan).map(({ message }) => message);
  };

  it('name each piece once, and as many as are sawn', () => {
    expect(labelled(() => {})).toEqual([]);
    expect(
      labelled(({ groups: [group] }) => Object.assign(group!.panels[0]!.label!, { pieces: [1] })),
    ).toEqual(['Panel "door" ("door") is sawn 2 times, but 1 of its pieces are named.']);
    expect(
      labelled(({ groups: [group] }) => Object.assign(group!.panels[0]!.label!, { pieces: [1, 1] })),
    ).toEqual(['Panel "door" ("door") and panel "door" both have piece 1/1.']);
    expect(labelled(({ groups: [group] }) => Object.assign(group!.panels[1]!.label!, { number: 1 }))).toEqual(
      ['Panel "shelf" ("shelf") and panel "door" both have piece 1/1.'],
    );
    expect(labelled(({ groups: [group] }) => void delete group!.panels[1]!.label)).toEqual([]);
  });
});

describe('bounds', () => {
  it('are worked out on whole tenths of a millimetre', () => {
    expect(messagesAfter((group) => void Object.assign(group.stock[0]!, { length: 2500.05 })).at(-1)).toBe(
      'Group ply-grey: a size of sheet "2500x1250" is 2500.05 mm, which is not in whole tenths of a millimetre.',
    );
    expect(messagesAfter((group) => void Object.assign(group.panels[1]!, { length: 500.05 })).at(-1)).toBe(
      'Group ply-grey: a size of a panel is 500.05 mm, which is not in whole tenths of a millimetre.',
    );
    expect(messagesAfter((group) => void Object.assign(group.saw, { kerf: 3.25 })).at(-1)).toBe(
      'Group ply-grey: a size of the kerf is 3.25 mm, which is not in whole tenths of a millimetre.',
    );
  });

  it('are held against what the plan takes', () => {
    const bounds = (bound: { sheets: number; cost: number }, proved = false) =>
      messagesAfter((group) => {
        Object.assign(group.bound, bound);
        group.proved = proved;
      });
    expect(bounds({ sheets: 1, cost: 10_000 }, true)).toEqual([]);
    expect(bounds({ sheets: 0, cost: 0 })).toEqual([]);
    expect(bounds({ sheets: 2, cost: 0 })[0]).toBe(
      'Group ply-grey: the plan uses 1 sheets although it says that at least 2 are needed.',
    );
    expect(bounds({ sheets: 1, cost: 10_001 })).toEqual([
      'Group ply-grey: the plan costs 10000 although it says that at least 10001 is needed.',
      'Group ply-grey: the certificate proves only 1 sheets and a cost of 10000, not 1 and 10001.',
    ]);
    expect(bounds({ sheets: 1, cost: 9_999 }, true)).toEqual([
      'Group ply-grey: the plan is called proved best, but it costs 10000 and the bound is 9999.',
    ]);
  });
});

describe('what is measured', () => {
  it('counts sheets with their copies, and stacks once', () => {
    const plan = structuredClone(goodPlan());
    const [group] = plan.groups;
    Object.assign(group!.sheets[0]!, { copies: 3 });
    for (const panel of group!.panels) panel.count *= 3;
    Object.assign(group!.saw, { cuttingHeight: 30 });
    group!.stacks = [{ times: 1, sheets: [{ number: 1, copies: 2 }] }];
    expect(replay(writePlan(plan)).findings).toEqual([]);
    const [measure] = measurePlan(plan);
    const one = { cuts: 12, sawnUm: 15_159_200, fenceSettings: 6 };
    expect(measure).toMatchObject({
      sheets: 3,
      panels: 15,
      cuts: 36,
      sawnUm: 3 * one.sawnUm,
      fenceSettings: 18,
      turns: 1,
      differentSheets: 1,
      panelAreaUm2: 3n * 1_123_800_000_000n,
      sheetAreaUm2: 3n * 3_125_000_000_000n,
      yield: 0.359616,
    });
    // Two of the three lie on each other: the saw goes through twice.
    expect(measure!.sawings).toMatchObject({
      count: 2,
      stacks: 1,
      cuts: 24,
      sawnUm: 2 * one.sawnUm,
      fenceSettings: 12,
    });
    // More than half a sheet goes over the saw four times for its trims, for the first rip, and as A, 2480 by 703.2.
    expect(measure!.heavy).toEqual({ cuts: 18, largestUm2: 2_480_000n * 703_200n });
    expect(measure!.offcuts.map(({ count }) => count)).toEqual([3]);
  });

  it('refuses a plan that cannot be sawn', () => {
    const plan = structuredClone(goodPlan());
    parting(plan.groups[0]!.sheets[0]!, 0).fence = 0;
    expect(() => measurePlan(plan)).toThrow(/ply-grey cannot be sawn: .*the blade would not cut it/);
    const other = structuredClone(goodPlan());
    other.groups[0]!.sheets[0]!.stock = 'other';
    expect(() => measurePlan(other)).toThrow('the plan of ply-grey cannot be sawn: other');
  });
});
