import { makeStockGroups } from '../../src/demands/index.ts';
import type { Nest } from '../../src/model/nest.ts';
import type { Part } from '../../src/model/part.ts';
import type { SheetSupply, StockGroup } from '../../src/model/stock.ts';
import { provePlan } from '../../src/pipeline/makePapers.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { loadSolver } from '../helpers/loadSolver.ts';
import { saw } from '../helpers/parts.ts';
import { Draw, rowsOf } from './workshopLists.ts';

/**
 * Orders of 80 panels each, pooled by board and finish, nested, written and replayed.
 * `npx tsx tests/bench/poolingBench.ts [ORDERS [VANS [MOVES]]]`: 100 orders, 8 vans and 1000 moves a panel by default, at
 * most 1,200,000 a finish, as `plywright buy` allows.
 *
 * Cupboards as in the workshop lists, whose sizes are drawn in steps of 5 mm, so that few panels of different vans agree.
 * So many VANS are drawn, and each order is for one of them, as in a workshop that builds four layouts in two sizes; with
 * as many vans as orders no order is like another, which is much harder. Carcasses of each order are of one of two
 * finishes, fronts of one of two, one of them with grain; backs are of thin board. Two sizes of sheet; all is invented.
 */
const PANELS = 80;
const FINISHES = { carcass: ['grey', 'white'], front: ['blue', 'ash'], back: ['raw'] } as const;
const GRAIN = 'ash';

function partsOf(order: number, vans: number): Part[] {
  const taste = new Draw(10_000 + order);
  const chosen = {
    carcass: FINISHES.carcass[taste.whole(0, 1)]!,
    front: FINISHES.front[taste.whole(0, 1)]!,
    back: FINISHES.back[0],
  };
  return rowsOf(new Draw((order % vans) + 1), PANELS).map(({ board, length, width, count }, index) => {
    const finish = chosen[board];
    const [lengthUm, widthUm] = [length * 1000, width * 1000];
    return {
      id: `order-${order + 1}/${index + 1}`,
      name: board,
      unit: '',
      order: `order-${order + 1}`,
      board: board === 'back' ? 'thin' : 'ply',
      finish,
      thicknessUm: board === 'back' ? 4000 : 16_000,
      finishedLengthUm: lengthUm,
      finishedWidthUm: widthUm,
      cutLengthUm: lengthUm,
      cutWidthUm: widthUm,
      grain: finish === GRAIN ? 'length' : 'none',
      edging: { alongLength: [null, null], alongWidth: [null, null] },
      count,
    };
  });
}

function sheets(): SheetSupply[] {
  return Object.values(FINISHES)
    .flat()
    .flatMap((finish) =>
      (
        [
          [2500, 1220, 11_150],
          [3100, 1530, 16_800],
        ] as const
      ).map(
        ([length, width, priceMinor]): SheetSupply => ({
          id: `${finish} ${length}`,
          board: finish === 'raw' ? 'thin' : 'ply',
          finish,
          thicknessUm: finish === 'raw' ? 4000 : 16_000,
          lengthUm: length * 1000,
          widthUm: width * 1000,
          grain: finish === GRAIN ? 'length' : 'none',
          priceMinor,
          count: null,
          kind: 'sheet',
        }),
      ),
    );
}

function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

function timed<T>(run: () => T): { readonly value: T; readonly processor: number; readonly clock: number } {
  const [before, started] = [processorSeconds(), performance.now()];
  const value = run();
  return { value, processor: processorSeconds() - before, clock: (performance.now() - started) / 1000 };
}

const orders = Number(process.argv[2] ?? 100);
const vans = Number(process.argv[3] ?? 8);
const moves = Number(process.argv[4] ?? 1000);
const solver = await loadSolver();
const parts = Array.from({ length: orders }, (_, order) => partsOf(order, vans)).flat();
const made = timed(() =>
  makeStockGroups(parts, sheets(), saw({ leastOffcut: { lengthUm: 600_000, widthUm: 250_000 } })),
);
const { groups } = made.value;
let [processor, clock] = [made.processor, made.clock];
const nests: Nest[] = groups.map((group: StockGroup) => {
  const panels = group.demands.reduce((sum, demand) => sum + demand.count, 0);
  const workLimit = Math.min(1_200_000, Math.max(30_000, moves * panels));
  const run = timed(() => nestGroup(group, solver, { seed: 1, workLimit }));
  if (!run.value.ok) throw new Error(group.id);
  const { nest } = run.value;
  processor += run.processor;
  clock += run.clock;
  const count = nest.sheets.reduce((sum, { copies }) => sum + copies, 0);
  const within = (100 * (nest.costMinor / nest.bound.costMinor - 1)).toFixed(2);
  console.log(
    `${group.id}: ${panels} panels of ${group.demands.length} sizes, ${count} sheets, least ${nest.bound.sheets}, ` +
      `within ${within} %, ${run.processor.toFixed(1)} s of processor, ${run.clock.toFixed(1)} s by the clock`,
  );
  return nest;
});
const proof = timed(() => provePlan({ name: 'pool', title: 'pool', currency: 'EUR', groups }, nests, 1));
if (!proof.value.ok) throw new Error(proof.value.findings[0]?.message);
console.log(
  `${parts.reduce((sum, { count }) => sum + count, 0)} panels of ${orders} orders of ${vans} vans in one thread: ` +
    `${(processor + proof.processor).toFixed(1)} s of processor, ${(clock + proof.clock).toFixed(1)} s by the clock, ` +
    `of it ${proof.processor.toFixed(1)} s to write and replay the plan; ` +
    `${Math.round(process.resourceUsage().maxRSS / 1024)} MiB`,
);
