import highs from 'highs';
import { describe, expect, it } from 'vitest';
import { SeededRandom } from '../../src/basics/random.ts';
import { lowerBound } from '../../src/bounds/index.ts';
import { makePlan, writePlan } from '../../src/cutPlans/index.ts';
import { makeStockGroups, type SawWithTrim } from '../../src/demands/index.ts';
import type { LinearSolver } from '../../src/model/linearSolver.ts';
import type { Part } from '../../src/model/part.ts';
import type { SheetSupply } from '../../src/model/stock.ts';
import { nest } from '../../src/nesting/index.ts';
import { measurePlan, replay } from '../../src/replay/index.ts';

const EDGES = { alongLength: [null, null], alongWidth: [null, null] } as const;

/** A list of panels such as a joiner has: few sizes, some full-width, half with grain, two rows of fronts. */
function drawParts(random: SeededRandom, kinds: number): Part[] {
  const parts: Part[] = [];
  const sizes = [1200, 600, 400, 298.5, 2480, 1210.4, 148];
  const size = () =>
    random.below(3) === 0 ? sizes[random.below(sizes.length)]! * 1000 : (1500 + random.below(8000)) * 100;
  for (let i = 0; i < kinds; i++) {
    let [length, width] = [size(), size()];
    if (Math.min(length, width) > 1_200_000) width = 300_000;
    if (length > 1_200_000 && width > length) [length, width] = [width, length];
    parts.push({
      id: `part ${i}`,
      name: `part ${i}`,
      unit: '',
      order: '',
      board: 'ply',
      finish: 'grey',
      thicknessUm: 15_000,
      finishedLengthUm: length,
      finishedWidthUm: width,
      cutLengthUm: length,
      cutWidthUm: width,
      grain: width <= 1_200_000 && random.below(2) === 0 ? 'length' : 'none',
      edging: EDGES,
      count: 1 + random.below(4),
    });
  }
  const template = parts[0]!;
  for (let position = 0; position < 3; position++) {
    parts.push({
      ...template,
      id: `front ${position}`,
      name: `front ${position}`,
      cutLengthUm: position === 1 ? 500_000 : 600_000,
      cutWidthUm: 300_000 + position * 1000,
      grain: 'length',
      count: 2,
      match: { run: 'fronts', position, follows: 'width' },
    });
  }
  return parts;
}

function saw(random: SeededRandom): SawWithTrim {
  const trims = [0, 10_000, 12_500];
  const trim = () => trims[random.below(trims.length)]!;
  return {
    name: 'test saw',
    kerfUm: [0, 3200, 4400][random.below(3)]!,
    firstCut: (['rip', 'crosscut', 'either'] as const)[random.below(3)]!,
    turns: [null, null, 2, 3, 1][random.below(5)]!,
    smallestPartUm: 50_000,
    leastOffcut: { lengthUm: 400_000, widthUm: 200_000 },
    longestCutUm: [null, null, 2_510_000, 1_500_000][random.below(4)]!,
    cuttingHeightUm: [null, 45_000][random.below(2)]!,
    trimUm: { left: trim(), right: trim(), near: trim(), far: trim() },
  };
}

function supplies(random: SeededRandom): SheetSupply[] {
  const of = (id: string, length: number, width: number, more: Partial<SheetSupply>): SheetSupply => ({
    id,
    board: 'ply',
    finish: 'grey',
    thicknessUm: 15_000,
    lengthUm: length * 1000,
    widthUm: width * 1000,
    grain: 'length',
    priceMinor: length * width,
    count: null,
    kind: 'sheet',
    ...more,
  });
  const grain = (['length', 'length', 'none'] as const)[random.below(3)]!;
  return [
    of('large', 2520, 1240, { grain }),
    of('small', 1525, 1525, { grain: random.below(2) === 0 ? grain : 'none' }),
    of('rest', 900, 700, { kind: 'offcut', count: 2, priceMinor: null, grain: 'width' }),
  ];
}

describe('lists that have been nested', () => {
  it('replay whatever the saw allows, with their bounds', async () => {
    const load = highs as unknown as typeof highs.default;
    const solver = (await load()) as unknown as LinearSolver;
    const methods = new Set<string>();
    const random = new SeededRandom(11);
    let nested = 0;
    for (let round = 0; round < 25; round++) {
      const made = makeStockGroups(drawParts(random, 2 + random.below(12)), supplies(random), saw(random));
      const group = made.groups[0];
      if (group === undefined) continue;
      const { bound } = lowerBound(group, { solver, effort: 3e6 });
      const outcome = nest(group, bound, { seed: round, workLimit: 300 });
      if (!outcome.ok) continue;
      nested += 1;
      methods.add(bound.certificate.method);
      const plan = makePlan([{ group, nest: outcome.nest }], { job: 'list', currency: 'EUR', seed: round });
      expect({ round, findings: replay(writePlan(plan)).findings }).toEqual({ round, findings: [] });
      const measure = measurePlan(plan)[0]!;
      if (group.saw.turns !== null) expect(measure.turns).toBeLessThanOrEqual(group.saw.turns);
    }
    expect(nested).toBeGreaterThan(10);
    expect(methods.size).toBeGreaterThan(1);
  });
});
