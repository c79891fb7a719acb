import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makePlan, readPlan, writePlan } from '../../src/cutPlans/index.ts';
import type { PlanFile } from '../../src/model/plan.ts';
import { measurePlan, replay } from '../../src/replay/index.ts';
import { makeRandomNest, type RandomNestOptions } from '../helpers/randomNest.ts';

const trim = fc.oneof(fc.constant(0), fc.constant(100), fc.integer({ min: 1, max: 150 }));

const options: fc.Arbitrary<RandomNestOptions> = fc.record({
  seed: fc.integer({ min: 0, max: 0x7fffffff }),
  kerfTenths: fc.oneof(fc.constant(0), fc.constant(32), fc.integer({ min: 1, max: 60 })),
  trimTenths: fc.tuple(trim, trim, trim, trim),
  grain: fc.constantFrom('length', 'width', 'none'),
  sheets: fc.integer({ min: 1, max: 4 }),
  mostCopies: fc.integer({ min: 1, max: 3 }),
  depth: fc.integer({ min: 0, max: 5 }),
  matched: fc.constantFrom(0, 0.3),
});

function planOf(given: RandomNestOptions): PlanFile | null {
  const made = makeRandomNest(given);
  return made && makePlan([made], { job: 'random', currency: 'EUR', seed: given.seed });
}

describe('plans of random nests', () => {
  it('replay, with areas that add up and every panel as often as wanted', () => {
    fc.assert(
      fc.property(options, (given) => {
        const plan = planOf(given);
        if (plan === null) return;
        const { ok, findings, reports } = replay(writePlan(plan));
        expect(findings).toEqual([]);
        expect(ok).toBe(true);
        const { areas, panels } = reports[0]!;
        expect(areas.panels + areas.offcuts + areas.kerf + areas.trim + areas.waste).toBe(areas.sheets);
        expect(panels).toBe(plan.groups[0]!.panels.reduce((sum, panel) => sum + panel.count, 0));
        const measure = measurePlan(plan)[0]!;
        expect(measure.panelAreaUm2).toBe(areas.panels);
        expect(measure.fenceSettings).toBeLessThanOrEqual(measure.cuts);
      }),
      { numRuns: 200 },
    );
  });

  it('are read back as they were written, byte for byte', () => {
    fc.assert(
      fc.property(options, (given) => {
        const plan = planOf(given);
        if (plan === null) return;
        const text = writePlan(plan);
        const read = readPlan(text);
        expect(read.ok && read.value).toEqual(plan);
        expect(read.ok && writePlan(read.value)).toBe(text);
      }),
      { numRuns: 30 },
    );
  });
});

/** Every length of the plan that sawing depends on, as a path. */
function lengthPaths(plan: PlanFile): (string | number)[][] {
  const paths: (string | number)[][] = [];
  const used = new Set(plan.groups[0]!.sheets.map((sheet) => sheet.stock));
  const visit = (value: unknown, path: (string | number)[]): void => {
    if (typeof value === 'number') {
      const field = String(path.at(-1));
      if (['take', 'fence', 'length', 'width', 'left', 'right', 'near', 'far', 'kerf'].includes(field)) {
        paths.push(path);
      }
      return;
    }
    if (typeof value !== 'object' || value === null) return;
    for (const [key, inner] of Object.entries(value)) {
      visit(inner, [...path, Array.isArray(value) ? Number(key) : key]);
    }
  };
  visit(plan, []);
  return paths.filter((path) => {
    // From which size on an offcut is kept binds no plan.
    if (path.includes('leastOffcut')) return false;
    if (path[2] !== 'stock') return true;
    return used.has(plan.groups[0]!.stock[Number(path[3])]!.id);
  });
}

function changed(plan: PlanFile, path: readonly (string | number)[], byMm: number): PlanFile | null {
  const copy = structuredClone(plan);
  let holder: Record<string | number, unknown> = copy as unknown as Record<string, unknown>;
  for (const step of path.slice(0, -1)) holder = holder[step] as Record<string | number, unknown>;
  const field = path.at(-1)!;
  const value = Math.round((Number(holder[field]) + byMm) * 1000) / 1000;
  if (value < 0) return null;
  holder[field] = value;
  return copy;
}

describe('a plan with one length changed by 0.1 mm', () => {
  it('never replays', () => {
    fc.assert(
      fc.property(options, fc.constantFrom(0.1, -0.1), fc.nat(), (given, by, pick) => {
        const plan = planOf(given);
        if (plan === null) return;
        expect(replay(writePlan(plan)).ok).toBe(true);
        const steps = plan.groups[0]!.sheets.flatMap((sheet) => sheet.steps);
        const { kerf } = plan.groups[0]!.saw;
        // Where the blade never goes in with its whole width, its width changes nothing.
        const fullCuts = steps.some((step) => step.cut !== 'trim' && step.take === kerf);
        const paths = lengthPaths(plan).filter((path) => path.at(-1) !== 'kerf' || fullCuts);
        for (let i = 0; i < 8; i++) {
          const path = paths[(pick + i * 7919) % paths.length]!;
          const wrong = changed(plan, path, by);
          if (wrong === null) continue;
          const { ok, findings } = replay(writePlan(wrong));
          expect({ path, ok, caught: findings.length > 0 }).toEqual({ path, ok: false, caught: true });
        }
      }),
      { numRuns: 50 },
    );
  });
});
