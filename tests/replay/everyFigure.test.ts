import { describe, expect, it } from 'vitest';
import { makePlan, writePlan } from '../../src/cutPlans/index.ts';
import { makeStockGroups } from '../../src/demands/index.ts';
import type { NestPiece } from '../../src/model/nest.ts';
import type { PlanEnding, PlanFile, PlanSheet, PlanStep } from '../../src/model/plan.ts';
import { measurePlan, replay } from '../../src/replay/index.ts';
import { part, saw, supply } from '../helpers/parts.ts';
import { nestOf, spare, stack, wanted } from '../helpers/planText.ts';
import { type Change, findingsAfter, goodPlan, parting, wholeFindingsAfter } from './goodPlan.ts';

const messagesAfter = (change: Change) => findingsAfter(change).map(({ message }) => message);
const messagesOf = (plan: PlanFile) => replay(writePlan(plan)).findings.map(({ message }) => message);
const untrimmed = { left: 0, right: 0, near: 0, far: 0 };

/** A sheet without trims with these steps and pieces, panels `door` of 300 by 300 without grain among them. */
function steppedPlan(
  [length, width]: readonly [number, number],
  firstCut: 'rip' | 'crosscut' | 'either',
  steps: readonly PlanStep[],
  pieces: readonly PlanEnding[],
): PlanFile {
  const by = saw({ firstCut: 'either', trimUm: untrimmed });
  const group = makeStockGroups([part('door', 300, 300, { grain: 'none' })], [supply(300, 300)], by)
    .groups[0]!;
  const root = wanted(0, 300, 300);
  const about = { job: 'stepped', currency: 'EUR', seed: 1 };
  const plan = makePlan([{ group, nest: nestOf(group, [{ sheet: 0, copies: 1, root }]) }], about);
  const [made] = plan.groups;
  Object.assign(made!.sheets[0]!, { start: 'sheet', steps: [...steps], pieces: [...pieces] });
  Object.assign(made!.stock[0]!, { length, width });
  made!.panels[0]!.count = pieces.filter(({ is }) => is === 'panel').length;
  Object.assign(made!.saw, { firstCut, smallestPart: 0 });
  return plan;
}

const cutStep = (
  cut: 'rip' | 'crosscut' | 'recut',
  piece: string,
  fence: number,
  gives: string[],
  take = 3.2,
): PlanStep => ({ cut, piece, blade: cut === 'crosscut' ? 'width' : 'length', fence, take, gives });
const door = (piece: string): PlanEnding => ({ is: 'panel', piece, panel: 'door', lengthAlong: 'length' });
const waste = (piece: string, length: number, width: number): PlanEnding => ({
  is: 'waste',
  piece,
  length,
  width,
});

describe('what the replay reports', () => {
  it('counts what comes of every sheet, worked by hand', () => {
    const plan = goodPlan();
    plan.groups[0]!.sheets[0]!.copies = 3;
    for (const panel of plan.groups[0]!.panels) panel.count *= 3;
    const { findings, reports } = replay(writePlan(plan));
    expect(findings).toEqual([]);
    const um2 = (mm2: number) => BigInt(Math.round(mm2 * 3 * 100)) * 10_000n;
    expect(reports).toEqual([
      {
        group: 'ply-grey',
        sheets: 3,
        panels: 15,
        cuts: 36,
        sawnUm: 3 * 15_159_200,
        areas: {
          sheets: um2(2500 * 1250),
          panels: um2(1_123_800),
          offcuts: um2(1976.8 * 703.2),
          // Two rips, the crosscuts of both strips, the parting and the recut of a front.
          kerf: um2(3.2 * (2480 + 2480 + 703.2 + 3 * 412 + 500 + 300)),
          trim: um2(2500 * 1250 - 2480 * 1230),
          waste: um2(570.4 * 412 + 2480 * 108.4 + 26.8 * 300),
        },
      },
    ]);
  });

  it('is not all right where one thing is wrong', () => {
    const plan = goodPlan();
    plan.groups[0]!.panels[0]!.count = 3;
    expect(replay(writePlan(plan)).ok).toBe(false);
  });
});

describe('the first cut that cannot be made ends the sheet', () => {
  const trimless: Change = (group, sheet) => {
    Object.assign(group.saw, { longestCut: 2000 });
    Object.assign(group.stock[0]!, { width: 1230, trim: { left: 10, right: 10, near: 0, far: 0 } });
    sheet.steps.splice(2, 2);
    parting(sheet, 0).piece = 'sheet 2';
  };
  it.each<[string, Change]>([
    ['a trim of no piece', (_, s) => Object.assign(s.steps[1]!, { piece: 'board' })],
    ['a trim by a name that was', (_, s) => Object.assign(s.steps[1]!, { leaves: 'sheet 1' })],
    ['a trim that is too much', (_, s) => Object.assign(s.steps[0]!, { take: 10.1 })],
    ['a trim on a side trimmed before', (_, s) => Object.assign(s.steps[1]!, { side: 'left' })],
    ['a trim longer than the saw', (group) => Object.assign(group.saw, { longestCut: 2479.9 })],
    [
      'a trim left out',
      (_, s) => {
        s.steps.splice(3, 1);
        parting(s, 0).piece = 'sheet 3';
      },
    ],
    ['a cut of no piece', (_, s) => Object.assign(parting(s, 0), { piece: 'Z' })],
    ['a fence outside', (_, s) => Object.assign(parting(s, 0), { fence: 0 })],
    // The rest of the second strip is 1073.6 long.
    ['a fence at the very end of a later piece', (_, s) => Object.assign(parting(s, 5), { fence: 1073.6 })],
    ['another kerf', (_, s) => Object.assign(parting(s, 0), { take: 3.1 })],
    ['a cut longer than the saw', trimless],
    ['a strip too narrow', (group) => Object.assign(group.saw, { smallestPart: 401 })],
    ['a name that was, for the first piece', (_, s) => parting(s, 1).gives.splice(0, 1, 'A')],
    ['a name that was, for the second piece', (_, s) => parting(s, 1).gives.splice(1, 1, 'A')],
    ['one name for both pieces', (_, s) => Object.assign(parting(s, 1), { gives: ['B', 'B'] })],
    ['a wrong name of a cut', (_, s) => Object.assign(parting(s, 1), { cut: 'recut' })],
    ['too many turns', (group) => Object.assign(group.saw, { turns: 0 })],
  ])('%s', (_what, change) => {
    expect(messagesAfter(change)).toEqual([expect.stringMatching(/^Group ply-grey, sheet 1, cut \d+: /)]);
  });

  it('also among sheets that can be sawn', () => {
    const plan = goodPlan();
    const [group] = plan.groups;
    group!.sheets.push({ ...structuredClone(group!.sheets[0]!), number: 2 });
    for (const panel of group!.panels) panel.count *= 2;
    expect(messagesOf(plan)).toEqual([]);
    parting(group!.sheets[0]!, 0).fence = 0;
    // Missing panels are no news then.
    expect(messagesOf(plan)).toEqual([expect.stringContaining('the blade would not cut it')]);
  });

  it('a far trim off a piece that the near one left too narrow', () => {
    const messages = messagesAfter((group) => {
      const trim = { left: 10, right: 10, near: 10, far: 10 };
      Object.assign(group.stock[0]!, { width: 20, trim });
    });
    expect(messages[0]).toBe('Group ply-grey, sheet 1, cut 4: the trim takes 10.0 off a piece of only 10.0.');
  });

  it('a trim of nothing where none is due', () => {
    const steps: PlanStep[] = [{ cut: 'trim', piece: 'sheet', side: 'near', take: 0, leaves: 'trimmed' }];
    expect(messagesOf(steppedPlan([300, 300], 'either', steps, [door('trimmed')]))).toEqual([
      'Group ply-grey, sheet 1, cut 1: the trim takes 0.0 off the near side but must take 0.0.',
    ]);
  });
});

describe('what is told of a sheet', () => {
  it('names the sheet of a panel that is wrong', () => {
    const panelAt = (sheet: PlanSheet, id: string) =>
      sheet.pieces.find((piece) => piece.is === 'panel' && piece.panel === id)!;
    expect(messagesAfter((_, s) => Object.assign(panelAt(s, 'shelf'), { panel: 'board' }))).toEqual([
      'Group ply-grey, sheet 1: piece "B3" is to be panel "board", which is not listed.',
      'Group ply-grey: panel "shelf" ("shelf") comes out 0 times but is wanted 1 times.',
    ]);
    expect(messagesAfter((group) => Object.assign(group.saw, { smallestPart: 300.1 }))).toEqual([
      'Group ply-grey, sheet 1: panel "front 1" ("front 1", piece "A1b1") is 300.0 wide, and this saw holds nothing narrower than 300.1.',
    ]);
    expect(messagesAfter((group) => Object.assign(group.stock[0]!, { grain: 'width' }))).toContain(
      'Group ply-grey, sheet 1: panel "door" ("door", piece "B1") lies across the grain: the grain of sheet "2500x1250" runs along its width.',
    );
    expect(messagesAfter((_, s) => Object.assign(s, { number: 2 }))).toEqual([
      'Group ply-grey: cut plan 1 of the group has the number 2.',
    ]);
  });

  it('says how often a panel was found and is wanted', () => {
    const [finding] = wholeFindingsAfter((group) => Object.assign(group.panels[0]!, { count: 3 }));
    expect(finding).toMatchObject({ code: 'count-wrong', found: '2', expected: '3' });
  });

  it('adds up pieces and dust', () => {
    // The offcut of 1976.8 by 703.2 is missing.
    expect(messagesAfter((_, s) => void s.pieces.shift())).toEqual([
      'Group ply-grey, sheet 1: piece "A2" is left, and the plan does not say what it is.',
      'Group ply-grey, sheet 1: pieces and saw dust add up to 1734914240000 µm², but the sheet has 3125000000000 µm².',
    ]);
  });

  it('lets panels with grain lie anyhow on a sheet without', () => {
    expect(messagesAfter((group) => Object.assign(group.stock[0]!, { grain: 'none' }))).toEqual([]);
  });

  it('counts sheets of each stock for itself', () => {
    const other: Change = (group) => void group.stock.push({ ...group.stock[0]!, id: 'other', count: 0 });
    expect(messagesAfter(other)).toEqual([]);
  });

  it('a piece scraped to its size leaves nothing beyond the blade', () => {
    const scraped = steppedPlan([300, 302], 'either', [cutStep('rip', 'sheet', 300, ['A'], 2)], [door('A')]);
    expect(messagesOf(scraped)).toEqual([]);
  });

  it('a strip just as wide as the saw holds', () => {
    const plan = steppedPlan([300, 302], 'either', [cutStep('rip', 'sheet', 300, ['A'], 2)], [door('A')]);
    plan.groups[0]!.saw.smallestPart = 300;
    expect(messagesOf(plan)).toEqual([]);
  });

  it('says of which plan there are more faults', () => {
    const findings = wholeFindingsAfter((_, s) => {
      for (let i = 0; i < 101; i++) s.pieces.push(waste(`no ${i}`, 1, 1));
    });
    expect(findings.at(-1)).toEqual({
      code: 'more-faults',
      severity: 'error',
      message: 'Group ply-grey: there are more faults than are listed here.',
      place: { file: 'plan' },
    });
  });
});

describe('a saw that has to start one way', () => {
  /** Two doors side by side, each in a strip that is `over` longer than it; the first cut divides the strips. */
  const across = (wants: 'rip' | 'crosscut', over: number, lastStep = true) => {
    const wrong = wants === 'rip';
    const first = wrong ? 'crosscut' : 'rip';
    const then = wrong ? 'rip' : 'crosscut';
    const size = wrong ? ([603.2, 300 + over] as const) : ([300 + over, 603.2] as const);
    const rest = Math.round((over - 3.2) * 10) / 10;
    const give = (name: string) => (rest > 0 ? [`${name}1`, `${name}2`] : [`${name}1`]);
    const left = (name: string) =>
      rest <= 0 ? [] : [wrong ? waste(`${name}2`, 300, rest) : waste(`${name}2`, rest, 300)];
    const steps = [
      cutStep(first, 'sheet', 300, ['A', 'B']),
      cutStep(then, 'A', 300, give('A'), Math.min(3.2, over)),
      cutStep(then, 'B', 300, give('B'), Math.min(3.2, over)),
    ];
    const pieces = [door('A1'), ...left('A'), door('B1'), ...left('B')];
    return messagesOf(steppedPlan(size, wants, steps, lastStep ? pieces : pieces.slice(0, -1)));
  };

  it.each(['rip', 'crosscut'] as const)(
    'to %s, may leave out what would take off no more than a kerf',
    (wants) => {
      expect(across(wants, 2)).toEqual([]);
      expect(across(wants, 3.2)).toEqual([]);
      expect(across(wants, 6.4)).toEqual([]);
      const other = wants === 'rip' ? 'crosscut' : 'rip';
      const told = `Group ply-grey, sheet 1, cut 1: this saw has to ${wants} first, and the first cut is a ${other}.`;
      expect(across(wants, 6.5)).toEqual([told]);
    },
  );

  it('is told so also where a piece is not listed', () => {
    expect(across('rip', 6.5, false)).toEqual([
      expect.stringContaining('piece "B2" is left'),
      expect.stringContaining('this saw has to rip first'),
      expect.stringContaining('add up to'),
    ]);
  });

  it('counts what is scraped off', () => {
    // Beyond each door 5 mm are left, scraped to 3: a rip would have taken 5 mm off both at once.
    const strip = (name: string) => [
      cutStep('rip', name, 300, [`${name}1`, `${name}2`]),
      cutStep('rip', `${name}2`, 3, [`${name}3`], 2),
    ];
    const steps = [cutStep('crosscut', 'sheet', 300, ['A', 'B']), ...strip('A'), ...strip('B')];
    const pieces = [door('A1'), waste('A3', 300, 3), door('B1'), waste('B3', 300, 3)];
    expect(messagesOf(steppedPlan([603.2, 308.2], 'rip', steps, pieces))).toEqual([
      'Group ply-grey, sheet 1, cut 1: this saw has to rip first, and the first cut is a crosscut.',
    ]);
  });
});

describe('a row of three fronts', () => {
  const WIDTHS = [400, 300, 200];
  /** The row on a sheet whose grain runs one way or the other; along the sheet where it runs across. */
  const row = (grain: 'length' | 'width', change: (plan: PlanFile) => void = () => {}) => {
    const along = grain === 'width';
    const parts = WIDTHS.map((width, position) =>
      part(`front ${position}`, 500, width, { match: { run: 'fronts', position, follows: 'width' } }),
    );
    const [length, width] = along ? [1000, 600] : [600, 1000];
    const by = saw({ trimUm: untrimmed, smallestPartUm: 0 });
    const group = makeStockGroups(parts, [supply(length, width, { grain })], by).groups[0]!;
    const root: NestPiece = along
      ? stack('y', 1000, 600, [
          stack('x', 1000, 500, [wanted(0, 906.4, 500, 'y'), spare(90.4, 500)]),
          spare(1000, 96.8),
        ])
      : stack('x', 600, 1000, [
          stack('y', 500, 1000, [wanted(0, 500, 906.4), spare(500, 90.4)]),
          spare(96.8, 1000),
        ]);
    const about = { job: 'row', currency: 'EUR', seed: 1 };
    const plan = makePlan([{ group, nest: nestOf(group, [{ sheet: 0, copies: 1, root }]) }], about);
    change(plan);
    return messagesOf(plan);
  };

  describe.each(['length', 'width'] as const)('with the grain along the %s of the sheet', (grain) => {
    it('is all right in whichever order its pieces are listed', () => {
      expect(row(grain)).toEqual([]);
      expect(row(grain, ({ groups: [group] }) => void group!.sheets[0]!.pieces.reverse())).toEqual([]);
    });

    it('is wrong in another order', () => {
      const swapped = row(grain, ({ groups: [group] }) => {
        group!.runs[0]!.panels = ['front 0', 'front 2', 'front 1'];
      });
      expect(swapped).toEqual([
        expect.stringContaining(
          'must be front 0, front 2, front 1 in this order, but the blank gives front 0, front 1, front 2',
        ),
      ]);
    });

    it('is wrong where one of them is turned', () => {
      const turned = row(grain, ({ groups: [group] }) => {
        for (const piece of group!.sheets[0]!.pieces) {
          if (piece.is === 'panel' && piece.panel === 'front 1')
            piece.lengthAlong = grain === 'width' ? 'length' : 'width';
        }
      });
      expect(turned).toContainEqual(
        expect.stringContaining('the panels of run "fronts" do not all lie the same way'),
      );
    });

    it('is wrong where a strip is lost between two, or one lies further in', () => {
      const between = row(grain, ({ groups: [group] }) => {
        const [sheet] = group!.sheets;
        const first = sheet!.steps.findIndex(({ cut }) => cut === 'part');
        const step = sheet!.steps[first] as Exclude<PlanStep, { cut: 'trim' }>;
        const rest = step.gives[1]!;
        step.gives[1] = 'between';
        const { blade } = step;
        sheet!.steps.splice(first + 1, 0, {
          cut: 'part',
          piece: 'between',
          blade,
          fence: 50,
          take: 3.2,
          gives: ['lost', rest],
        });
        const lost = grain === 'width' ? waste('lost', 50, 500) : waste('lost', 500, 50);
        sheet!.pieces.push(lost);
      });
      expect(between).toContainEqual(
        expect.stringMatching(/do not lie side by side one kerf apart, but 56\.4\.$/),
      );
      const further = row(grain, ({ groups: [group] }) => {
        const [sheet] = group!.sheets;
        const ends = sheet!.pieces.find((piece) => piece.is === 'panel' && piece.panel === 'front 2')!;
        const blade = grain === 'width' ? 'length' : 'width';
        sheet!.steps.push({
          cut: 'part',
          piece: ends.piece,
          blade,
          fence: 10,
          take: 3.2,
          gives: ['strip', 'in'],
        });
        ends.piece = 'in';
        sheet!.pieces.push(grain === 'width' ? waste('strip', 200, 10) : waste('strip', 10, 200));
      });
      expect(further).toContainEqual(
        expect.stringMatching(/do not lie side by side one kerf apart, but 3\.2\.$/),
      );
    });
  });
});

describe('sheets that lie on each other', () => {
  const stacked = (change: (first: PlanSheet, second: PlanSheet) => void) => {
    const plan = goodPlan();
    const [group] = plan.groups;
    const [first] = group!.sheets;
    const second = { ...structuredClone(first!), number: 2 };
    group!.sheets.push(second);
    for (const panel of group!.panels) panel.count *= 2;
    group!.saw.cuttingHeight = 30;
    const sheets = [1, 2].map((number) => ({ number, copies: 1 }));
    group!.stacks = [{ times: 1, sheets }];
    change(first!, second);
    return messagesOf(plan).filter((message) => message.includes('cut alike'));
  };

  it('differ from the first cut on, by their number of cuts, or by name', () => {
    const told = (why: string) => [`Group ply-grey: the sheets of stack 1 are not cut alike: ${why}.`];
    expect(stacked((_, second) => Object.assign(second.steps[0]!, { take: 9 }))).toEqual(
      told('cut 1 of sheet 1 is not that of sheet 2'),
    );
    expect(stacked((first) => void first.steps.pop())).toEqual(told('sheet 2 has more cuts than sheet 1'));
    const uncut = (first: PlanSheet, second: PlanSheet) => {
      first.steps = [];
      second.steps = [];
    };
    expect(stacked(uncut)).toEqual([]);
    const named = (first: PlanSheet, second: PlanSheet) => {
      uncut(first, second);
      second.start = 'board';
    };
    expect(stacked(named)).toEqual(told('sheets 1 and 2 are called by different names'));
  });

  it('need not be: a plan may say nothing of stacks', () => {
    const plan = goodPlan();
    delete plan.groups[0]!.stacks;
    expect(messagesOf(plan)).toEqual([]);
    expect(measurePlan(plan)[0]!.sawings).toMatchObject({ count: 1, stacks: 0, cuts: 12 });
  });
});

describe('labels of a later plan', () => {
  const labelled = (change: (plan: PlanFile) => void) => {
    const plan = goodPlan();
    plan.groups[0]!.panels.forEach((panel, index) => {
      const pieces = Array.from({ length: panel.count }, (_, piece) => piece + 1);
      panel.label = { number: index + 1, pieces, of: panel.count };
    });
    change(plan);
    return replay(writePlan(plan), 'job/plan.json').findings;
  };

  it('are told on one line and with the file, at most fifty times', () => {
    const [finding] = labelled(({ groups: [group] }) => {
      Object.assign(group!.panels[1]!, { name: 'she\n\u0007lf' });
      Object.assign(group!.panels[1]!.label!, { number: 1 });
    });
    expect(finding).toMatchObject({
      code: 'label-wrong',
      message: 'Panel "she lf" ("shelf") and panel "door" both have piece 1/1.',
      place: { file: 'job/plan.json' },
    });
    const many = labelled(({ groups: [group] }) => {
      Object.assign(group!.panels[0]!.label!, { pieces: Array.from({ length: 80 }, () => 1) });
    });
    expect(many).toHaveLength(50);
  });

  it('are held against those that are sawn', () => {
    const messages = labelled((plan) => {
      const [group] = plan.groups;
      const { id, board, finish, thickness, panels } = group!;
      const sawn = { ...structuredClone(panels[0]!), id: 'earlier', count: 1, codes: ['x'], differs: [] };
      const label = { number: 2, pieces: [1], of: 1 };
      const groups = [{ id, board, finish, thickness, panels: [{ ...sawn, label }], left: [] }];
      plan.sawn = { part: 2, sheets: [], groups };
    }).map(({ message }) => message);
    expect(messages).toEqual(['Panel "door" ("earlier") and panel "shelf" both have piece 2/1.']);
  });

  it('are as many as the spoiled panels of a recut', () => {
    const recut = (count: number) =>
      labelled((plan) => {
        const spoiled = Array.from({ length: count }, (_, index) => `label ${index}`);
        plan.recut = { number: 1, why: '', spoiled };
      }).map(({ message }) => message);
    expect(recut(5)).toEqual([]);
    expect(recut(6)).toEqual(['6 panels are spoiled, but 5 are sawn anew.']);
    expect(recut(4)).toEqual(['4 panels are spoiled, but 5 are sawn anew.']);
  });
});

describe('what is cut by hand', () => {
  const byHand = (work: { outline?: [number, number][]; opening?: object }) =>
    messagesAfter((group) => {
      const opening = {
        name: 'sink',
        length: [100, 400] as [number, number],
        width: [50, 200] as [number, number],
        ...work.opening,
      };
      group.panels[0]!.byHand = {
        ...(work.outline && { outline: work.outline }),
        openings: [opening],
      };
    }).map((message) => message.replace(/^.* of panel "door" \("door"\)/, ''));

  it('has an area, and a kept piece is at most the opening', () => {
    const flat = ' does not run counter-clockwise round an area.';
    const line: [number, number][] = [
      [0, 0],
      [100, 100],
      [200, 200],
    ];
    expect(byHand({ outline: line })).toEqual([flat]);
    expect(byHand({ opening: { width: [200, 200] } })).toEqual([' has no size.']);
    expect(byHand({ opening: { width: [201, 200] } })).toEqual([' has no size.']);
    expect(byHand({ opening: { kept: { length: 300, width: 150 } } })).toEqual([]);
    expect(byHand({ opening: { kept: { length: 300, width: 150.1 } } })).toEqual([
      ' is larger than the opening.',
    ]);
  });
});

describe('what is measured', () => {
  it('turns pieces by a quarter before they are cut another way, a blank once', () => {
    const plan = goodPlan();
    // Both strips to their crosscuts, and the blank to its parting.
    expect(measurePlan(plan)[0]!.sawings.pieceTurns).toBe(3);
    plan.groups[0]!.sheets[0]!.copies = 2;
    for (const panel of plan.groups[0]!.panels) panel.count *= 2;
    expect(measurePlan(plan)[0]!.sawings.pieceTurns).toBe(6);
  });

  it('does not turn a blank again that lies ready for its parting', () => {
    const parts = [400, 300, 200].map((width, position) =>
      part(`front ${position}`, 500, width, { match: { run: 'fronts', position, follows: 'width' } }),
    );
    const by = saw({ trimUm: untrimmed });
    const group = makeStockGroups(parts, [supply(600, 906.4)], by).groups[0]!;
    const root = stack('x', 600, 906.4, [wanted(0, 500, 906.4), spare(96.8, 906.4)]);
    const about = { job: 'row', currency: 'EUR', seed: 1 };
    const plan = makePlan([{ group, nest: nestOf(group, [{ sheet: 0, copies: 1, root }]) }], about);
    expect(messagesOf(plan)).toEqual([]);
    expect(measurePlan(plan)[0]!.sawings).toMatchObject({ cuts: 3, pieceTurns: 1 });
  });

  it('half a sheet is not heavy, and more than half is', () => {
    const half = (width: number) => {
      const rest = Math.round((596.8 - width) * 10) / 10;
      const steps = [cutStep('rip', 'sheet', width, ['A', 'B']), cutStep('crosscut', 'A', 300, ['A1', 'A2'])];
      const pieces = [waste('A1', 300, width), waste('A2', 696.8, width), waste('B', 1000, rest)];
      return measurePlan(steppedPlan([1000, 600], 'either', steps, pieces))[0]!.heavy;
    };
    expect(half(300)).toEqual({ cuts: 1, largestUm2: 300_000n * 1_000_000n });
    expect(half(300.1)).toEqual({ cuts: 2, largestUm2: 300_100n * 1_000_000n });
    expect(half(100)).toEqual({ cuts: 1, largestUm2: 496_800n * 1_000_000n });
  });

  it('sheets that are cut differently, and the largest piece of any', () => {
    const plan = goodPlan();
    const [group] = plan.groups;
    const other = structuredClone(group!.sheets[0]!);
    other.number = 2;
    parting(other, 0).fence = 600;
    group!.sheets.push(other);
    const stocks = measurePlanOfEach(plan);
    expect(stocks.both.differentSheets).toBe(2);
    expect(stocks.both.heavy.largestUm2).toBe(stocks.first.heavy.largestUm2);
  });

  it('has no yield where nothing is sawn', () => {
    const plan = goodPlan();
    plan.groups[0]!.sheets = [];
    expect(measurePlan(plan)[0]).toMatchObject({ sheets: 0, yield: 0 });
  });
});

/** What is measured of a whole plan, and of its first sheet alone. */
function measurePlanOfEach(plan: PlanFile) {
  const [group] = plan.groups;
  const alone = { ...plan, groups: [{ ...group!, sheets: group!.sheets.slice(0, 1) }] };
  return { both: measurePlan(plan)[0]!, first: measurePlan(alone)[0]! };
}
