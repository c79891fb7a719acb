import { describe, expect, it } from 'vitest';
import { makePlan, writePlan } from '../../src/cutPlans/index.ts';
import { makeStockGroups, type SawWithTrim } from '../../src/demands/index.ts';
import type { NestedSheet } from '../../src/model/nest.ts';
import type { Part } from '../../src/model/part.ts';
import type { PlanGroup } from '../../src/model/plan.ts';
import type { SheetSupply } from '../../src/model/stock.ts';
import { replay } from '../../src/replay/index.ts';
import { part, saw, supply, trimAllRound } from '../helpers/parts.ts';
import { nestOf, spare, stack, stepLine, wanted } from '../helpers/planText.ts';

const job = { job: 'test', currency: 'EUR', seed: 1 };

/** Plans a nest of one group and makes sure that it replays. */
function planned(
  parts: readonly Part[],
  sheets: readonly NestedSheet[],
  on: SheetSupply = supply(2500, 1250),
  by: SawWithTrim = saw(),
): PlanGroup {
  const group = makeStockGroups(parts, [on], by).groups[0]!;
  const plan = makePlan([{ group, nest: nestOf(group, sheets) }], job);
  expect(replay(writePlan(plan)).findings).toEqual([]);
  return plan.groups[0]!;
}

const lines = (group: PlanGroup, sheet = 0) => group.sheets[sheet]!.steps.map(stepLine);

describe('the order of cuts', () => {
  it('is trims, rips, crosscuts, equal fence settings together', () => {
    // Usable 2480 × 1230; strips of 600 and 400, each crosscut to 700 and 500.
    const strip = (
      demandLong: number,
      demandShort: number,
      y: number,
      children: 'long first' | 'short first',
    ) =>
      stack('x', 2480, y, [
        ...(children === 'long first'
          ? [wanted(demandLong, 700, y), wanted(demandShort, 500, y)]
          : [wanted(demandShort, 500, y), wanted(demandLong, 700, y)]),
        spare(1273.6, y),
      ]);
    const group = planned(
      [part('a', 700, 600), part('b', 500, 600), part('c', 700, 400), part('d', 500, 400)],
      [
        {
          sheet: 0,
          copies: 1,
          root: stack('y', 2480, 1230, [
            strip(2, 3, 400, 'short first'),
            spare(2480, 223.6, 'offcut'),
            strip(0, 1, 600, 'long first'),
          ]),
        },
      ],
      supply(2500, 1250),
      saw({ firstCut: 'rip' }),
    );
    expect(lines(group)).toEqual([
      'trim sheet left 10 → sheet 1',
      'trim sheet 1 right 10 → sheet 2',
      'trim sheet 2 near 10 → sheet 3',
      'trim sheet 3 far 10 → sheet 4',
      'rip sheet 4 at 600 → A + B+',
      'rip B+ at 400 → B + C',
      'crosscut A at 700 → A1 + A2+',
      'crosscut B at 700 → B1 + B2+',
      'crosscut A2+ at 500 → A2 + A3',
      'crosscut B2+ at 500 → B2 + B3',
    ]);
    expect(group.sheets[0]!.pieces).toContainEqual({
      is: 'offcut',
      piece: 'C',
      length: 2480,
      width: 223.6,
    });
  });

  it('saves the last cut when the last piece fits, and scrapes when less than the kerf is left', () => {
    // 3 · 600 + 2 · 3.2 = 1806.4: nothing over, two cuts. 2 mm more: a third cut that scrapes.
    const row = (x: number) =>
      stack('x', x, 1000, [wanted(0, 600, 1000), wanted(0, 600, 1000), wanted(0, 600, 1000)]);
    const exact = planned(
      [part('a', 600, 1000, { count: 3 })],
      [{ sheet: 0, copies: 1, root: row(1806.4) }],
      supply(1806.4, 1000),
      saw({ trimUm: trimAllRound(0) }),
    );
    expect(lines(exact)).toEqual(['crosscut sheet at 600 → A + B+', 'crosscut B+ at 600 → B + C']);
    const over = planned(
      [part('a', 600, 1000, { count: 3 })],
      [{ sheet: 0, copies: 1, root: row(1808.4) }],
      supply(1808.4, 1000),
      saw({ trimUm: trimAllRound(0) }),
    );
    expect(lines(over)).toEqual([
      'crosscut sheet at 600 → A + B+',
      'crosscut B+ at 600 → B + C+',
      'crosscut C+ at 600 → C (scrapes 2)',
    ]);
  });

  it('calls cuts of the third stage recuts, and counts turns as the saw does', () => {
    const root = stack('y', 2480, 1230, [
      stack('x', 2480, 600, [
        stack('y', 700, 600, [wanted(0, 700, 298.4), wanted(0, 700, 298.4)]),
        spare(1776.8, 600, 'offcut'),
      ]),
      spare(2480, 626.8, 'offcut'),
    ]);
    const sheets = [{ sheet: 0, copies: 1, root }];
    const parts = [part('a', 700, 298.4, { count: 2 })];
    const group = planned(parts, sheets, supply(2500, 1250), saw({ firstCut: 'rip', turns: 2 }));
    expect(lines(group).slice(4)).toEqual([
      'rip sheet 4 at 600 → A + B',
      'crosscut A at 700 → A1 + A2',
      'recut A1 at 298.4 → A1a + A1b',
    ]);
    const strict = makeStockGroups(parts, [supply(2500, 1250)], saw({ firstCut: 'rip', turns: 1 }))
      .groups[0]!;
    const plan = makePlan([{ group: strict, nest: nestOf(strict, sheets) }], job);
    expect(replay(writePlan(plan)).findings.map((f) => f.code)).toEqual(['too-many-turns']);
  });

  it('parts matched blanks last, first front at the left or near edge, and recuts narrower fronts', () => {
    const drawers = [200, 250].map((length, position) =>
      part(`drawer ${position}`, length, 500 - position * 20, {
        match: { run: 'drawers', position, follows: 'length' },
        count: 2,
      }),
    );
    const blank = () => wanted(0, 453.2, 500);
    const group = planned(drawers, [
      {
        sheet: 0,
        copies: 1,
        root: stack('y', 2480, 1230, [
          stack('x', 2480, 500, [blank(), blank(), spare(1567.2, 500, 'offcut')]),
          spare(2480, 726.8, 'offcut'),
        ]),
      },
    ]);
    expect(lines(group).slice(4)).toEqual([
      'rip sheet 4 at 500 → A + B',
      'crosscut A at 453.2 → A1 + A2+',
      'crosscut A2+ at 453.2 → A2 + A3',
      'part A1 at 200 → A1a + A1b',
      'part A2 at 200 → A2a + A2b',
      'part A1b at 480 → A1b1 + A1b2',
      'part A2b at 480 → A2b1 + A2b2',
    ]);
    expect(group.runs).toEqual([{ name: 'drawers', follows: 'length', panels: ['drawer 0', 'drawer 1'] }]);
  });

  it('needs no cuts for a panel that is the whole sheet', () => {
    const group = planned([part('a', 2480, 1230)], [{ sheet: 0, copies: 1, root: wanted(0, 2480, 1230) }]);
    expect(group.sheets[0]!.steps.every((step) => step.cut === 'trim')).toBe(true);
    expect(group.sheets[0]!.pieces).toEqual([
      { is: 'panel', piece: 'sheet 4', panel: 'a', lengthAlong: 'length' },
    ]);
  });
});

describe('names', () => {
  it('too long for the plan file are shortened', () => {
    const long = 'x'.repeat(1000);
    const parts = [part('a', 2480, 1230, { name: long, unit: long, order: long })];
    const group = planned(parts, [{ sheet: 0, copies: 1, root: wanted(0, 2480, 1230) }]);
    expect(group.panels[0]!.name).toBe(`${'x'.repeat(299)}…`);
  });
});

describe('grain', () => {
  it('keeps the length of a turnable part whose width is the longer side', () => {
    const group = planned(
      [part('a', 400, 700, { grain: 'none' })],
      [
        {
          sheet: 0,
          copies: 1,
          root: stack('x', 2480, 1230, [
            stack('y', 700, 1230, [wanted(0, 700, 400), spare(700, 826.8, 'offcut')]),
            spare(1776.8, 1230, 'offcut'),
          ]),
        },
      ],
    );
    expect(group.sheets[0]!.pieces[0]).toEqual({
      is: 'panel',
      piece: 'A1',
      panel: 'a',
      lengthAlong: 'width',
    });
  });
});

describe('copies', () => {
  const half = stack('x', 2480, 1230, [wanted(0, 1238.4, 1230), wanted(0, 1238.4, 1230)]);
  const sheetsOf = (group: PlanGroup) =>
    group.sheets.map((sheet) => [
      sheet.copies,
      sheet.pieces.map((piece) => piece.is === 'panel' && piece.panel),
    ]);

  it('stay together as long as the same parts come from each', () => {
    const parts = [part('a', 1238.4, 1230, { count: 3 }), part('b', 1238.4, 1230, { count: 3 })];
    const group = planned(parts, [{ sheet: 0, copies: 3, root: half }]);
    expect(sheetsOf(group)).toEqual([[3, ['a', 'b']]]);
  });

  it('are divided where they cannot', () => {
    const parts = [part('a', 1238.4, 1230, { count: 5 }), part('b', 1238.4, 1230, { count: 1 })];
    const group = planned(parts, [{ sheet: 0, copies: 3, root: half }]);
    expect(sheetsOf(group)).toEqual([
      [2, ['a', 'a']],
      [1, ['a', 'b']],
    ]);
  });

  it('are found where a nest lists alike sheets one by one, in whatever order of strips', () => {
    const strips = (first: number, second: number) =>
      stack('y', 2480, 1230, [
        wanted(first, 2480, first === 0 ? 500 : 726.8),
        wanted(second, 2480, second === 0 ? 500 : 726.8),
      ]);
    const parts = [part('a', 2480, 500, { count: 2 }), part('b', 2480, 726.8, { count: 2 })];
    const group = planned(parts, [
      { sheet: 0, copies: 1, root: strips(0, 1) },
      { sheet: 0, copies: 1, root: strips(1, 0) },
    ]);
    expect(group.sheets.map((sheet) => sheet.copies)).toEqual([2]);
  });
});

describe('a nest that is wrong', () => {
  const group = makeStockGroups([part('a', 600, 400)], [supply(2500, 1250)], saw()).groups[0]!;
  const plan = (sheets: NestedSheet[]) => () => makePlan([{ group, nest: nestOf(group, sheets) }], job);

  it('throws when it cuts too much, too little, or does not add up', () => {
    const two = stack('x', 2480, 400, [wanted(0, 600, 400), wanted(0, 600, 400), spare(1273.6, 400)]);
    expect(plan([{ sheet: 0, copies: 1, root: two }])).toThrow('more pieces than are wanted');
    expect(plan([{ sheet: 0, copies: 1, root: spare(2480, 1230) }])).toThrow('not cut demand 0');
    const loose = stack('x', 2480, 400, [wanted(0, 600, 400)]);
    expect(plan([{ sheet: 0, copies: 1, root: loose }])).toThrow('cannot be sawn');
  });
});
