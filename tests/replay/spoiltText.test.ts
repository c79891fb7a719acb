import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makePlan, writePlan } from '../../src/cutPlans/index.ts';
import { replay } from '../../src/replay/index.ts';
import { makeRandomNest } from '../helpers/randomNest.ts';

const made = makeRandomNest({
  seed: 4,
  kerfTenths: 32,
  trimTenths: [100, 100, 0, 100],
  grain: 'length',
  sheets: 2,
  mostCopies: 2,
  depth: 3,
  matched: 0.3,
})!;
const text = writePlan(makePlan([made], { job: 'spoilt', currency: 'EUR', seed: 4 }));

type Holder = Record<string, unknown>;

interface Place {
  readonly holder: Holder;
  readonly key: string;
  readonly path: string;
}

/** Every place in a document: what holds it, and its key. */
function places(value: unknown, path = '', found: Place[] = []): Place[] {
  if (typeof value !== 'object' || value === null) return found;
  for (const key of Object.keys(value)) {
    const holder = value as Holder;
    found.push({ holder, key, path: `${path}/${key}` });
    places(holder[key], `${path}/${key}`, found);
  }
  return found;
}

const anything = fc.oneof(
  fc.constantFrom(0, -1, 1, 0.1, 1e6, 100_000, 9_007_199_254_740_991, 1e300),
  fc.constantFrom(null, true, '', 'A', 'sheet', '__proto__', 'toString', [], {}, ['A'], ['A', 'B']),
  fc.constantFrom('rip', 'part', 'length', 'width', 'none', 'near', 'panel', 'waste', 'p1', 'p2'),
);

describe('a plan spoilt anywhere', () => {
  it('never trips the replay, and never passes when a step was touched', () => {
    expect(replay(text).ok).toBe(true);
    const count = places(JSON.parse(text)).length;
    fc.assert(
      fc.property(fc.nat(count - 1), anything, fc.boolean(), (index, value, remove) => {
        const plan = JSON.parse(text);
        const { holder, key, path } = places(plan)[index]!;
        const before = JSON.stringify(holder[key]);
        if (remove) delete holder[key];
        else holder[key] = value;
        if (JSON.stringify(holder[key]) === before) return;
        const { ok, findings } = replay(JSON.stringify(plan));
        expect(ok).toBe(findings.length === 0);
        if (path.includes('/steps/')) expect({ path, value, ok }).toEqual({ path, value, ok: false });
      }),
      { numRuns: 1000 },
    );
  });

  it('is refused when it is cut off anywhere', () => {
    fc.assert(
      fc.property(fc.nat(text.length - 3), (end) => {
        expect(replay(text.slice(0, end)).ok).toBe(false);
      }),
      { numRuns: 100 },
    );
  });
});

it('a field that is not known is told by its beginning, however long its name', () => {
  const plan = JSON.parse(text) as { groups: { stock: Record<string, unknown>[] }[] };
  plan.groups[0]!.stock[0]![`${'x'.repeat(20_000)}\u0007`] = 1;
  const { ok, findings } = replay(JSON.stringify(plan));
  expect(ok).toBe(false);
  expect(findings[0]!.message).toMatch(
    /^Field groups › 1 › stock › 1 is not as a plan file has it: .*xxx….$/u,
  );
  expect(findings[0]!.message.length).toBeLessThan(300);
});
