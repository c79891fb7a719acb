import { describe, expect, it } from 'vitest';
import { makePlan, writePlan } from '../../src/cutPlans/index.ts';
import { makeStockGroups } from '../../src/demands/index.ts';
import type { PlanSheet } from '../../src/model/plan.ts';
import { measurePlan, replay } from '../../src/replay/index.ts';
import { part, saw, supply } from '../helpers/parts.ts';
import { nestOf, spare, stack, wanted } from '../helpers/planText.ts';
import { type Change, codesAfter, findingsAfter, goodPlan, parting } from './goodPlan.ts';

describe('a plan as it should be', () => {
  it('replays, and is measured', () => {
    const plan = goodPlan();
    const { ok, findings, reports } = replay(writePlan(plan));
    expect(findings).toEqual([]);
    expect(ok).toBe(true);
    expect(reports[0]).toMatchObject({ group: 'ply-grey', sheets: 1, panels: 5, cuts: 12 });
    const measure = measurePlan(plan)[0]!;
    // Panels: 2 · 700 · 412 + 500 · 412 + 500 · 400 + 470 · 300 mm² on 2500 · 1250.
    expect(measure.panelAreaUm2).toBe(1_123_800_000_000n);
    expect(measure.yield).toBe(0.359616);
    // 703.2 and 412 | 700 and 500, both strips together | 400 | 470.
    expect(measure.fenceSettings).toBe(6);
    expect(measure.turns).toBe(1);
    // Trims 1250 + 1250 + 2480 + 2480, rips 2480 + 2480, crosscuts 703.2 + 3 · 412, parting 500, recut 300.
    expect(measure.sawnUm).toBe(15_159_200);
    expect(measure.offcuts).toEqual([
      { sheet: 1, piece: 'A2', lengthUm: 1_976_800, widthUm: 703_200, grain: 'length', count: 1 },
    ]);
  });
});

describe('a wrong plan is told by sheet and cut', () => {
  it('a fence 0.1 mm off', () => {
    const findings = findingsAfter((_, sheet) => {
      parting(sheet, 1).fence = 412.1;
    });
    expect(findings[0]!.message).toBe(
      'Group ply-grey, sheet 1, cut 6: the fence is at 412.1 but panel "door" ("door", piece "B1") must be 412.0 along the width of the sheet.',
    );
    expect(new Set(findings.map((finding) => finding.code))).toEqual(new Set(['size-wrong']));
  });

  it('a fence beyond the piece, or a blade that does not cut', () => {
    expect(codesAfter((_, s) => Object.assign(parting(s, 0), { fence: 1230 }))[0]).toBe('fence-outside');
    expect(codesAfter((_, s) => Object.assign(parting(s, 0), { fence: 0 }))[0]).toBe('fence-outside');
  });

  it('kerf and scrapes', () => {
    const first = findingsAfter((_, s) => Object.assign(parting(s, 0), { take: 3.1 }))[0]!;
    expect(first.code).toBe('take-wrong');
    expect(first.message).toContain('the blade takes 3.2, not 3.1');
    expect(codesAfter((group) => Object.assign(group.saw, { kerf: 3.3 }))[0]).toBe('take-wrong');
  });

  it('trims left out, too small, on a divided sheet, or twice', () => {
    const missing = findingsAfter((_, s) => {
      s.steps.splice(3, 1);
      parting(s, 0).piece = 'sheet 3';
    })[0]!;
    expect(missing.message).toBe(
      'Group ply-grey, sheet 1, cut 4: the far side of the sheet has not been trimmed.',
    );
    expect(codesAfter((_, s) => Object.assign(s.steps[0]!, { take: 9.9 }))[0]).toBe('trim-wrong');
    expect(codesAfter((_, s) => Object.assign(s.steps[1]!, { side: 'left' }))[0]).toBe('trim-twice');
    const late: Change = (_, s) =>
      void s.steps.push({ cut: 'trim', piece: 'C', side: 'near', take: 10, leaves: 'D' });
    expect(codesAfter(late)[0]).toBe('trim-late');
  });

  it('pieces that are not there, used again, or forgotten', () => {
    expect(codesAfter((_, s) => Object.assign(parting(s, 0), { piece: 'Z' }))[0]).toBe('no-such-piece');
    expect(codesAfter((_, s) => Object.assign(parting(s, 1), { piece: 'sheet 4' }))[0]).toBe('no-such-piece');
    expect(codesAfter((_, s) => parting(s, 1).gives.splice(0, 1, 'A'))[0]).toBe('name-used-twice');
    expect(codesAfter((_, s) => Object.assign(parting(s, 1), { gives: ['B', 'B'] }))[0]).toBe(
      'name-used-twice',
    );
    expect(codesAfter((_, s) => void parting(s, 0).gives.pop())[0]).toBe('pieces-wrong');
    expect(codesAfter((_, s) => void s.pieces.pop())).toContain('piece-left-over');
    expect(codesAfter((_, s) => void s.pieces.push(s.pieces[0]!))).toContain('no-such-piece');
    expect(
      codesAfter((_, s) => void s.pieces.push({ is: 'waste', piece: '__proto__', length: 1, width: 1 })),
    ).toEqual(['no-such-piece']);
  });

  it('panels of the wrong kind, number, size or grain', () => {
    const panelAt = (sheet: PlanSheet, id: string) => {
      const found = sheet.pieces.find((piece) => piece.is === 'panel' && piece.panel === id);
      if (found?.is !== 'panel') throw new Error(`no panel ${id}`);
      return found;
    };
    expect(codesAfter((_, s) => Object.assign(panelAt(s, 'door'), { panel: 'window' }))).toEqual([
      'panel-unknown',
      'count-wrong',
    ]);
    expect(codesAfter((group) => Object.assign(group.panels[0]!, { count: 3 }))).toEqual(['count-wrong']);
    expect(codesAfter((_, s) => Object.assign(s, { copies: 2 }))).toContain('count-wrong');
    expect(codesAfter((_, s) => Object.assign(panelAt(s, 'door'), { lengthAlong: 'width' }))).toContain(
      'grain-wrong',
    );
    expect(codesAfter((group) => Object.assign(group.stock[0]!, { grain: 'width' }))).toContain(
      'grain-wrong',
    );
    expect(codesAfter((group) => Object.assign(group.panels[1]!, { width: 412.1 }))).toEqual(['size-wrong']);
  });

  it('grain does not matter to a sheet or a panel without', () => {
    const turned: Change = (group, sheet) => {
      group.panels[0]!.grain = 'none';
      for (const piece of sheet.pieces) {
        if (piece.is === 'panel' && piece.panel === 'door') piece.lengthAlong = 'width';
      }
      const door = group.panels[0]!;
      [door.length, door.width] = [door.width, door.length];
    };
    expect(codesAfter(turned)).toEqual([]);
  });

  it('sheets that are not in stock, or not as many', () => {
    expect(codesAfter((_, s) => Object.assign(s, { stock: 'other' }))).toEqual(['stock-unknown']);
    expect(codesAfter((group) => Object.assign(group.stock[0]!, { count: 0 }))).toEqual(['stock-run-out']);
    expect(codesAfter((_, s) => Object.assign(s, { number: 2 }))).toContain('sheet-number-wrong');
  });

  it('matched fronts out of order, from the wrong place, or cut apart as if they were not', () => {
    const swap: Change = (group) => void group.runs[0]!.panels.reverse();
    expect(codesAfter(swap)).toEqual(['run-wrong']);
    expect(codesAfter((group) => Object.assign(group.runs[0]!, { follows: 'length' }))).toContain(
      'run-wrong',
    );
    expect(codesAfter((group) => Object.assign(group, { runs: [] }))).toEqual(['run-wrong']);
    const asRecut: Change = (_, s) => {
      for (const step of s.steps) if (step.cut === 'part') step.cut = 'recut';
    };
    expect(findingsAfter(asRecut, saw({ firstCut: 'rip' })).map((finding) => finding.code)).toEqual([
      'run-wrong',
      'run-wrong',
    ]);
    const asPart: Change = (_, s) => {
      for (const step of s.steps)
        if (step.piece.startsWith('B') && step.cut === 'crosscut') Object.assign(step, { cut: 'part' });
    };
    expect(codesAfter(asPart)).toEqual(['run-wrong']);
  });

  it('cuts that the saw does not allow, or called by a wrong name', () => {
    expect(codesAfter((group) => Object.assign(group.saw, { firstCut: 'crosscut' }))).toContain(
      'first-cut-wrong',
    );
    expect(codesAfter((group) => Object.assign(group.saw, { turns: 0 }))[0]).toBe('too-many-turns');
    expect(codesAfter((_, s) => Object.assign(parting(s, 0), { cut: 'crosscut' }))[0]).toBe('cut-name-wrong');
  });

  it('cuts longer than the saw makes, trims included', () => {
    const limited = (longestCut: number): Change => {
      return (group) => void Object.assign(group.saw, { longestCut });
    };
    expect(codesAfter(limited(2480))).toEqual([]);
    expect(findingsAfter(limited(2479.9))[0]).toEqual({
      code: 'cut-too-long',
      message:
        'Group ply-grey, sheet 1, cut 3: the cut is 2480.0 long, and the longest cut of this saw is 2479.9.',
    });
    // A sheet without trims near and far: the first cut along it is a rip.
    const rip: Change = (group, sheet) => {
      Object.assign(group.saw, { longestCut: 2000 });
      Object.assign(group.stock[0]!, { width: 1230, trim: { left: 10, right: 10, near: 0, far: 0 } });
      sheet.steps.splice(2, 2);
      parting(sheet, 0).piece = 'sheet 2';
    };
    expect(findingsAfter(rip)[0]!.message).toContain('sheet 1, cut 3: the cut is 2480.0 long');
    expect(codesAfter(limited(100))[0]).toBe('cut-too-long');
  });

  it('strips that the saw cannot hold', () => {
    const least = (smallestPart: number): Change => {
      return (group) => void Object.assign(group.saw, { smallestPart });
    };
    expect(codesAfter(least(300))).toEqual([]);
    const narrow = findingsAfter(least(300.1))[0]!;
    expect(narrow.code).toBe('strip-too-narrow');
    expect(narrow.message).toContain('is 300.0 wide, and this saw holds nothing narrower than 300.1');
    // The panel at the free side of the blade, where no fence measures it.
    const beyond: Change = (group, sheet) => {
      Object.assign(group.saw, { smallestPart: 401 });
      sheet.steps = sheet.steps.filter((step) => step.cut === 'trim');
      sheet.pieces = [{ is: 'panel', piece: 'sheet 4', panel: 'front 0', lengthAlong: 'length' }];
    };
    expect(codesAfter(beyond)).toContain('strip-too-narrow');
  });

  it('rules that an older plan does not state allow everything', () => {
    const older: Change = (group) => {
      delete group.saw.smallestPart;
      delete group.saw.longestCut;
      delete group.saw.cuttingHeight;
    };
    expect(codesAfter(older)).toEqual([]);
  });

  it('a kerf that is not the one of this saw', () => {
    const found = findingsAfter((group) => Object.assign(group.saw, { kerf: 3 }))[0]!;
    expect(found.message).toContain('the blade takes 3.0, not 3.2');
  });

  it('bounds that do not follow or do not fit', () => {
    expect(codesAfter((group) => Object.assign(group.bound, { sheets: 2 }))).toEqual([
      'bound-wrong',
      'bound-wrong',
    ]);
    // The area of the panels asks for one sheet at 100.00.
    expect(codesAfter((group) => void Object.assign(group.bound, { sheets: 1, cost: 10_000 }))).toEqual([]);
    expect(codesAfter((group) => void Object.assign(group.bound, { cost: 10_001 }))).toContain('bound-wrong');
    expect(codesAfter((group) => Object.assign(group, { proved: true }))).toEqual(['bound-wrong']);
    expect(
      codesAfter((group) => {
        Object.assign(group.bound, { sheets: 1, cost: 10_000 });
        group.proved = true;
        group.stock[0]!.price = 9_999;
      }),
    ).toContain('bound-wrong');
  });

  it('ids used twice', () => {
    expect(codesAfter((_, __, plan) => void plan.groups.push(structuredClone(plan.groups[0]!)))).toEqual([
      'id-used-twice',
    ]);
    expect(codesAfter((group) => void group.stock.push({ ...group.stock[0]! }))).toContain('id-used-twice');
    expect(codesAfter((group) => void group.panels.push({ ...group.panels[0]! }))).toContain('id-used-twice');
  });

  it('with at most 100 faults a group, and a word on there being more', () => {
    const findings = findingsAfter((_, s) => {
      for (let i = 0; i < 500; i++) s.pieces.push({ is: 'waste', piece: `no ${i}`, length: 1, width: 1 });
    });
    expect(findings).toHaveLength(101);
    expect(findings.at(-1)!.code).toBe('more-faults');
  });

  it('text that is no plan', () => {
    for (const text of ['', '{', 'null', '[1]', '{"constructor": 1}']) {
      const { ok, findings, reports } = replay(text);
      expect({ ok, reports, some: findings.length > 0 }).toEqual({ ok: false, reports: [], some: true });
    }
  });
});

describe('a saw that rips first', () => {
  it('may crosscut at once only where one strip is the whole sheet', () => {
    const by = saw({ firstCut: 'rip' });
    const replayed = (width: number) => {
      const parts = [part('a', 600, width), part('b', 500, 400, { count: 3 })];
      const group = makeStockGroups(parts, [supply(2500, 1250)], by).groups[0]!;
      const column = stack('y', 500, 1230, [...[0, 1, 2].map(() => wanted(1, 500, 400)), spare(500, 20.4)]);
      const first =
        width === 1230
          ? wanted(0, 600, 1230)
          : stack('y', 600, 1230, [wanted(0, 600, width), spare(600, 1226.8 - width)]);
      const root = stack('x', 2480, 1230, [first, column, spare(1373.6, 1230, 'offcut')]);
      const nest = nestOf(group, [{ sheet: 0, copies: 1, root }]);
      const plan = makePlan([{ group, nest }], { job: 'test', currency: 'EUR', seed: 1 });
      return replay(writePlan(plan)).findings.map((finding) => finding.code);
    };
    expect(replayed(1230)).toEqual([]);
    expect(replayed(800)).toEqual(['first-cut-wrong']);
  });
});

describe('what is cut by hand', () => {
  const shaped = (outline: [number, number][]) =>
    codesAfter((group) => {
      group.panels[0]!.byHand = { outline, openings: [] };
    });
  const opened = (opening: object) =>
    codesAfter((group) => {
      const whole = {
        name: 'sink',
        length: [100, 400] as [number, number],
        width: [50, 200] as [number, number],
      };
      group.panels[0]!.byHand = { openings: [{ ...whole, ...opening }] };
    });

  it('lies on the sawn panel', () => {
    const { length, width } = goodPlan().groups[0]!.panels[0]!;
    expect(
      shaped([
        [0, 0],
        [length, 0],
        [length, width - 50],
        [0, width],
      ]),
    ).toEqual([]);
    expect(
      shaped([
        [0, 0],
        [length + 0.1, 0],
        [length, width],
      ]),
    ).toEqual(['hand-work-wrong']);
    expect(
      shaped([
        [0, 0],
        [0, width],
        [length, 0],
      ]),
    ).toEqual(['hand-work-wrong']);
    expect(opened({})).toEqual([]);
    expect(opened({ kept: { length: 280, width: 130 } })).toEqual([]);
    expect(opened({ kept: { length: 300.1, width: 130 } })).toEqual(['hand-work-wrong']);
    expect(opened({ length: [400, 400] })).toEqual(['hand-work-wrong']);
    expect(opened({ width: [50, width + 1] })).toEqual(['hand-work-wrong']);
  });
});
