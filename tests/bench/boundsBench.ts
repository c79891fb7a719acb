/**
 * Lower bounds on the open two-dimensional bin packing instances, without any search:
 * `npx tsx tests/bench/boundsBench.ts [effort] [step] [none] [set]`. `step` 5 takes every fifth instance, `none` leaves
 * the solver out. Prints the sums for fixed and turnable items beside those of the reference bounds, every instance
 * below its own reference, and the seconds; with BY_GROUP=1 the sum of every group of instances.
 */
import { readFileSync } from 'node:fs';
import highs from 'highs';
import { lowerBoundOfProblem } from '../../src/bounds/index.ts';
import type { LinearSolver } from '../../src/model/linearSolver.ts';
import type { RectangleProblem } from '../../src/model/rectangles.ts';

interface Instance {
  readonly id: string;
  readonly sheet: readonly [number, number];
  readonly items: readonly (readonly [number, number, number])[];
  readonly lbO: number;
  readonly lbR: number;
}

function problemOf(instance: Instance, turning: 'fixed' | 'turnable'): RectangleProblem {
  return {
    unitUm: 1000,
    kerf: 0,
    items: {
      kinds: instance.items.length,
      w: Int32Array.from(instance.items, (item) => item[0]),
      h: Int32Array.from(instance.items, (item) => item[1]),
      count: Int32Array.from(instance.items, (item) => item[2]),
      grained: new Uint8Array(instance.items.length).fill(turning === 'fixed' ? 1 : 0),
    },
    sheets: [
      {
        sheet: 0,
        w: instance.sheet[0],
        h: instance.sheet[1],
        costMinor: 1,
        count: -1,
        noGrain: false,
        transposed: false,
        firstBlade: 'either',
      },
    ],
  };
}

const load = highs as unknown as () => Promise<LinearSolver>;
const effort = Number(process.argv[2] ?? 300_000_000);
const step = Number(process.argv[3] ?? 1);
const solver = process.argv[4] === 'none' ? null : await load();
const set = process.argv[5] ?? 'bwmv';
const file = new URL(`../data/benchmarks/${set}.json`, import.meta.url);
const { instances } = JSON.parse(readFileSync(file, 'utf8')) as { instances: Instance[] };

for (const turning of ['fixed', 'turnable'] as const) {
  let sum = 0;
  let reference = 0;
  let below = 0;
  let slowest = 0;
  let slowestId = '';
  const groups = new Map<string, number>();
  const start = performance.now();
  for (const [index, instance] of instances.entries()) {
    if (index % step !== 0) continue;
    const before = performance.now();
    const { bound } = lowerBoundOfProblem(problemOf(instance, turning), { solver, effort });
    const seconds = (performance.now() - before) / 1000;
    if (seconds > slowest) [slowest, slowestId] = [seconds, instance.id];
    const known = turning === 'fixed' ? instance.lbO : instance.lbR;
    if (bound.sheets < known) {
      below++;
      console.log(`  ${instance.id}: ${bound.sheets} < ${known}`);
    }
    sum += bound.sheets;
    reference += known;
    const group = instance.id.slice(0, -3);
    groups.set(group, (groups.get(group) ?? 0) + bound.sheets);
  }
  const seconds = (performance.now() - start) / 1000;
  console.log(
    `${set} ${turning}: sum of bounds ${sum}, reference ${reference}, below it ${below}, ${seconds.toFixed(1)} s, slowest ${slowest.toFixed(2)} s (${slowestId})`,
  );
  if (process.env['BY_GROUP']) console.log([...groups].map(([g, n]) => `${g}:${n}`).join(' '));
}
