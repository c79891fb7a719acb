import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SeededRandom } from '../../src/basics/random.ts';
import type { PlanFile } from '../../src/model/plan.ts';
import { prepareOrder } from '../../src/pipeline/prepareOrder.ts';
import { replay } from '../../src/replay/index.ts';
import { demoOrders } from '../helpers/demoPlan.ts';
import { demoFiles, demoLibrary, demoRoot, must } from '../helpers/demoVan.ts';
import { drawList, jobOfList } from '../long/randomList.ts';
import { sawTwice } from '../long/sawnTwice.ts';
import { type ExactValue, readExactJson } from './exactJson.ts';
import { Fraction } from './fraction.ts';
import { secondReplay } from './secondReplay.ts';
import { spoilPlan } from './spoilPlan.ts';

/** What both replays say of a text: they must agree. */
function verdicts(text: string) {
  const first = replay(text);
  const second = secondReplay(text);
  return {
    // A bound that its certificate does not prove is for the first replay alone to see.
    agree:
      first.ok === (second === null) ||
      (second === null &&
        first.findings.every(({ message }) => message.includes('the certificate proves only'))),
    first: first.ok ? null : first.findings.map(({ code, message }) => `${code}: ${message}`),
    second,
  };
}

/** How many of `count` changed plans neither replay refuses; each on which they differ is named. */
function compareSpoilt(text: string, seed: number, count: number) {
  const disagreements: unknown[] = [];
  let accepted = 0;
  for (let round = 0; round < count; round++) {
    const spoilt = spoilPlan(text, new SeededRandom(seed + round));
    const { agree, ...said } = verdicts(spoilt.text);
    if (!agree) disagreements.push({ what: spoilt.what, ...said });
    if (said.second === null) accepted += 1;
  }
  return { disagreements, accepted };
}

describe('fractions', () => {
  it('keep what is written, where floats do not', () => {
    const read = (text: string) => Fraction.read(text)!;
    expect(read('0.1').plus(read('0.2')).equals(read('0.3'))).toBe(true);
    expect(read('1e-3').times(read('1000')).equals(Fraction.of(1))).toBe(true);
    expect(read('9007199254740993').isMoreThan(read('9007199254740992'))).toBe(true);
    expect(['01', '.5', '1.', '+1', 'NaN', '1e99999'].map((text) => Fraction.read(text))).toEqual(
      Array(6).fill(null),
    );
  });

  it('stand in JSON that is read as JSON.parse reads it', () => {
    const plain = (value: ExactValue): unknown => {
      if (value instanceof Fraction) return Number(value.toString());
      if (Array.isArray(value)) return value.map(plain);
      if (!(value instanceof Map)) return value;
      return Object.fromEntries([...value].map(([key, inside]) => [key, plain(inside)]));
    };
    const values = [fc.string(), fc.integer(), fc.boolean(), fc.constant(null)];
    fc.assert(
      fc.property(fc.object({ values }), fc.constantFrom(0, 2), (value, indent) => {
        const text = JSON.stringify(value, null, indent);
        expect(JSON.stringify(plain(readExactJson(text)), null, indent)).toBe(text);
      }),
      { numRuns: 100 },
    );
    for (const text of ['', '{', '[1,]', '{"a" 1}', '"a', '1 2', 'nul'])
      expect(() => readExactJson(text)).toThrow(SyntaxError);
  });
});

describe('both replays', () => {
  const library = demoLibrary();
  const files = demoFiles();
  const planned = (name: string) => {
    const path = `${demoRoot}/orders/${name}.yaml`;
    return sawTwice(must(prepareOrder(files.get(path)!, path, library)), 1, 0);
  };

  it.each(demoOrders)('saw the plan of %s', (name) => {
    const { text, against } = planned(name);
    expect(against).toEqual([]);
    expect(text).not.toBeNull();
  });

  it('say the same of a demonstration plan with one thing changed', () => {
    const { disagreements, accepted } = compareSpoilt(planned('demo-short').text!, 1, 40);
    expect(disagreements).toEqual([]);
    expect(accepted).toBeGreaterThan(2);
    expect(accepted).toBeLessThan(38);
  });

  it('say the same of a plan with labels, with one thing changed', () => {
    const plan = JSON.parse(planned('weekend-dog-short').text!) as PlanFile;
    for (const [index, panel] of plan.groups.flatMap(({ panels }) => panels).entries()) {
      const pieces = Array.from({ length: panel.count }, (_, piece) => piece + 1);
      panel.label = { number: index + 1, pieces, of: panel.count };
    }
    expect(compareSpoilt(JSON.stringify(plan), 500, 40).disagreements).toEqual([]);
  });

  it('say the same of plans of random lists, as they are and with one thing changed', () => {
    let plans = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const random = new SeededRandom(seed);
        const { job } = jobOfList(drawList(random), random);
        const panels = job?.groups.flatMap(({ demands }) => demands.map(({ count }) => count)) ?? [];
        // Lists of thousands are for the long run.
        if (job === null || panels.reduce((sum, count) => sum + count, 0) > 150) return;
        const { text, against } = sawTwice(job, seed, 20);
        expect(against).toEqual([]);
        if (text === null) return;
        plans += 1;
        expect(compareSpoilt(text, seed, 25).disagreements).toEqual([]);
      }),
      { seed: 8, numRuns: 25 },
    );
    expect(plans).toBeGreaterThan(5);
  });
});
