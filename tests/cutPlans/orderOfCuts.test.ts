import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Arranged, arrange } from '../../src/cutPlans/arrange.ts';
import { cutTree, lightestWay, type Stack } from '../../src/cutPlans/cutTree.ts';
import { makePlan, writePlan } from '../../src/cutPlans/index.ts';
import { earlyPartings, fenceSettingsOf } from '../../src/cutPlans/partEarly.ts';
import { makeStockGroups } from '../../src/demands/index.ts';
import type { PlanStep } from '../../src/model/plan.ts';
import { measurePlan, replay } from '../../src/replay/index.ts';
import { part, saw, supply } from '../helpers/parts.ts';
import { nestOf, spare, stack, stepLine, wanted } from '../helpers/planText.ts';
import { type MadeNest, makeRandomNest } from '../helpers/randomNest.ts';

/** Strips across a sheet of 1230: each width a demand of its own, spare at the end. */
function strips(...widths: number[]): readonly PlanStep[] {
  const kinds = [...new Set(widths)];
  const parts = kinds.map((width) =>
    part(`p${width}`, width, 1230, { count: widths.filter((other) => other === width).length }),
  );
  const group = makeStockGroups(parts, [supply(2500, 1250)], saw()).groups[0]!;
  const used = widths.reduce((sum, width) => sum + width + 3.2, 0);
  const children = widths.map((width) => wanted(kinds.indexOf(width), width, 1230));
  if (used < 2480) children.push(spare(2480 - used, 1230) as (typeof children)[number]);
  const nest = nestOf(group, [{ sheet: 0, copies: 1, root: stack('x', 2480, 1230, children) }]);
  const plan = makePlan([{ group, nest }], { job: 'test', currency: 'EUR', seed: 1 });
  expect(replay(writePlan(plan)).findings).toEqual([]);
  return plan.groups[0]!.sheets[0]!.steps;
}

const lines = (steps: readonly PlanStep[]) => steps.filter((step) => step.cut !== 'trim').map(stepLine);

describe('a heavy sheet', () => {
  it('is parted near its middle first where that takes no more settings', () => {
    // 600 + 3.2 + 560 | 500 + 3.2 + 400 and the spare: four cuts and four settings, as one after the other.
    expect(lines(strips(600, 560, 500, 400))).toEqual([
      'crosscut sheet 4 at 1163.2 → A-B + C+',
      'crosscut A-B at 600 → A + B',
      'crosscut C+ at 500 → C + D+',
      'crosscut D+ at 400 → D + E',
    ]);
  });

  it('is not where equal strips need one setting only, or the largest strip is half of it', () => {
    expect(lines(strips(500, 500, 500, 500))[0]).toBe('crosscut sheet 4 at 500 → A + B+');
    expect(lines(strips(1300, 400, 300, 200))[0]).toBe('crosscut sheet 4 at 1300 → A + B+');
  });

  it('keeps one name for one piece where the first half holds three', () => {
    expect(lines(strips(450, 430, 410, 390, 370, 350))).toEqual([
      'crosscut sheet 4 at 1296.4 → A-C + D+',
      'crosscut A-C at 450 → A + B-C',
      'crosscut B-C at 430 → B + C',
      'crosscut D+ at 390 → D + E+',
      'crosscut E+ at 370 → E + F+',
      'crosscut F+ at 350 → F + G',
    ]);
  });
});

function randomNests(count: number, take: (made: MadeNest, seed: number) => void): void {
  for (let seed = 0; seed < count; seed++) {
    const made = makeRandomNest({
      seed,
      kerfTenths: [0, 32, 44][seed % 3]!,
      trimTenths: [100, 100, 0, 150],
      grain: (['length', 'width', 'none'] as const)[seed % 3]!,
      sheets: 1 + (seed % 3),
      mostCopies: 2,
      depth: 1 + (seed % 5),
      matched: seed % 2 === 0 ? 0.3 : 0,
    });
    if (made !== null) take(made, seed);
  }
}

describe('parting early', () => {
  it('never takes more cuts, settings or metres, and spares cuts through heavy pieces', () => {
    let early = 0;
    randomNests(150, ({ group, nest }) => {
      for (const { sheet, root } of nest.sheets) {
        const arranged: Arranged = arrange(root, group.saw);
        if (arranged.kind !== 'stack') continue;
        const { lengthUm, widthUm } = group.sheets[sheet]!;
        const plain = cutTree(arranged, 'sheet', null, group.saw.kerfUm);
        const light = lightestWay(arranged, 'sheet', group.saw.kerfUm, lengthUm * widthUm);
        expect(light.length).toBe(plain.length);
        expect(fenceSettingsOf(light)).toBeLessThanOrEqual(fenceSettingsOf(plain));
        if (JSON.stringify(light) !== JSON.stringify(plain)) early += 1;
      }
    });
    expect(early).toBeGreaterThan(20);
  });

  it('replays at every place where it could be done', () => {
    const sizes = fc.array(fc.integer({ min: 60, max: 900 }), { minLength: 3, maxLength: 8 });
    fc.assert(
      fc.property(sizes, fc.constantFrom(0, 3.2), (widths, kerf) => {
        const total = widths.reduce((sum, width) => sum + width + kerf, -kerf);
        const root = stack(
          'x',
          total,
          1000,
          widths.map((width) => wanted(0, width, 1000)),
        ) as Stack;
        const plain = cutTree(root, 'sheet', null, kerf * 1000);
        for (const at of earlyPartings(root, kerf * 1000, total * 1e9)) {
          const steps = cutTree(root, 'sheet', at, kerf * 1000);
          expect(steps.length).toBe(plain.length);
          // The same pieces in the end: whatever is given and not taken in hand again.
          const left = (of: readonly PlanStep[]) => {
            const given = of.flatMap((step) => (step.cut === 'trim' ? [] : step.gives));
            const hands = new Set(of.map((step) => step.piece));
            return given.filter((name) => !hands.has(name)).sort();
          };
          expect(left(steps)).toEqual(left(plain));
        }
      }),
      { numRuns: 100 },
    );
  });
});

/** Stage of a step by how it is called after the trims: 0 rip or crosscut of the sheet, 1 the other, 2 recuts, 3 partings. */
const ORDER = { trim: 0, rip: 1, crosscut: 1, recut: 2, part: 3 } as const;

describe('the order of cuts of any sheet', () => {
  it('is trims, then stage by stage, recuts after rips and crosscuts, matched blanks parted last', () => {
    let partings = 0;
    let recuts = 0;
    randomNests(120, (made) => {
      const plan = makePlan([made], { job: 'test', currency: 'EUR', seed: 1 });
      expect(replay(writePlan(plan)).ok).toBe(true);
      for (const { steps } of plan.groups[0]!.sheets) {
        const order = steps.map((step) => ORDER[step.cut]);
        expect(order).toEqual([...order].sort((a, b) => a - b));
        // Rips and crosscuts are two stages, in this order or the other, each without a break.
        const firstTwo = steps.map((step) => step.cut).filter((cut) => cut === 'rip' || cut === 'crosscut');
        const changes = firstTwo.filter((cut, index) => index > 0 && cut !== firstTwo[index - 1]).length;
        expect(changes).toBeLessThanOrEqual(1);
        partings += steps.filter((step) => step.cut === 'part').length;
        recuts += steps.filter((step) => step.cut === 'recut').length;
      }
    });
    expect(partings).toBeGreaterThan(50);
    expect(recuts).toBeGreaterThan(50);
  });

  it('never sets the fence more often than there are different settings in a stage of alike strips', () => {
    // Ten strips of 100, each crosscut to 700, 500 and 300: one rip setting and three crosscut settings.
    const strip = stack('x', 2480, 100, [
      wanted(0, 700, 100),
      wanted(1, 500, 100),
      wanted(2, 300, 100),
      spare(970.4, 100),
    ]);
    const parts = [
      part('a', 700, 100, { count: 10 }),
      part('b', 500, 100, { count: 10 }),
      part('c', 300, 100, { count: 10 }),
    ];
    const group = makeStockGroups(parts, [supply(2500, 1250)], saw()).groups[0]!;
    const root = stack('y', 2480, 1230, [...Array.from({ length: 10 }, () => strip), spare(2480, 198)]);
    const nest = nestOf(group, [{ sheet: 0, copies: 1, root }]);
    const plan = makePlan([{ group, nest }], { job: 'test', currency: 'EUR', seed: 1 });
    expect(measurePlan(plan)[0]!.fenceSettings).toBe(4);
  });
});
