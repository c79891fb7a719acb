import { availableParallelism } from 'node:os';
import { makeStockGroups } from '../../src/demands/index.ts';
import type { Nest } from '../../src/model/nest.ts';
import type { Part } from '../../src/model/part.ts';
import type { SheetSupply, StockGroup } from '../../src/model/stock.ts';
import { provePlan } from '../../src/pipeline/makePapers.ts';
import { saw } from '../helpers/parts.ts';
import { Draw, rowsOf } from './workshopLists.ts';

/**
 * Orders of 80 panels each, pooled by board and finish, nested, written and replayed.
 * `npx tsx tests/bench/poolingBench.ts [ORDERS [VANS [MOVES]]]`: 100 orders, 8 vans and 700 moves a panel by default, at
 * most 1,200,000 a finish, in the threads of the command, as `plywright buy` does it. Needs `npm run build`.
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

/** The threads of the built command: what runs in one is loaded from there. */
const { searchGroups } = (await import(
  new URL('../../dist/cli/threads/searchGroups.js', import.meta.url).href
)) as typeof import('../../cli/threads/searchGroups.ts');
const [orders, vans, moves] = [100, 8, 700].map((usual, index) => Number(process.argv[2 + index] ?? usual));
const parts = Array.from({ length: orders! }, (_, order) => partsOf(order, vans!)).flat();
const started = performance.now();
const { groups } = makeStockGroups(
  parts,
  sheets(),
  saw({ leastOffcut: { lengthUm: 600_000, widthUm: 250_000 } }),
);
const panelsOf = ({ demands }: StockGroup) => demands.reduce((sum, { count }) => sum + count, 0);
const nested = await searchGroups(groups, {
  seed: 1,
  movesFor: (group) => Math.min(1_200_000, Math.max(30_000, moves! * panelsOf(group))),
  progress: () => undefined,
  stoppable: () => undefined,
});
const nests: Nest[] = nested.map(({ outcome, seconds }, index) => {
  const group = groups[index]!;
  if (!outcome.ok) throw new Error(group.id);
  const { nest } = outcome;
  const count = nest.sheets.reduce((sum, { copies }) => sum + copies, 0);
  const within = (100 * (nest.costMinor / nest.bound.costMinor - 1)).toFixed(2);
  console.log(
    `${group.id}: ${panelsOf(group)} panels of ${group.demands.length} sizes, ${count} sheets, ` +
      `least ${nest.bound.sheets}, within ${within} %, ${seconds.toFixed(1)} s in its thread`,
  );
  return nest;
});
const proving = performance.now();
const proof = provePlan({ name: 'pool', title: 'pool', currency: 'EUR', groups }, nests, 1);
if (!proof.ok) throw new Error(proof.findings[0]?.message);
const ended = performance.now();
const { user, system } = process.cpuUsage();
console.log(
  `${parts.reduce((sum, { count }) => sum + count, 0)} panels of ${orders} orders of ${vans} vans: ` +
    `${((ended - started) / 1000).toFixed(1)} s by the clock in ${availableParallelism()} threads, ` +
    `of it ${((ended - proving) / 1000).toFixed(1)} s to write and replay the plan; ` +
    `${((user + system) / 1e6).toFixed(1)} s of processor; ${Math.round(process.resourceUsage().maxRSS / 1024)} MiB`,
);
