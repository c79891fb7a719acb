import type { Demand, StockGroup } from '../../src/model/stock.ts';
import { nestGroup } from '../../src/pipeline/nestGroup.ts';
import { assertNest } from '../helpers/assertNest.ts';
import { loadSolver } from '../helpers/loadSolver.ts';
import { Draw, workshopList } from './workshopLists.ts';

const KINDS = 300;
const PANELS = [500, 1000, 2000, 5000] as const;

/**
 * A stock group of so many panels of 300 sizes, 150–1200 × 100–600 mm in steps of 5, half of the sizes by chance with
 * grain; each size once, the rest by chance. One size of sheet, 2800 × 2070 mm, kerf 3.2, trim 10. All invented.
 */
export function growingGroup(panels: number): StockGroup {
  const draw = new Draw(panels);
  const count = new Array<number>(KINDS).fill(1);
  for (let n = KINDS; n < panels; n++) count[draw.whole(0, KINDS - 1)]! += 1;
  const demands = count.map(
    (copies): Demand => ({
      lengthUm: draw.size(150, 1200) * 1000,
      widthUm: draw.size(100, 600) * 1000,
      count: copies,
      grain: draw.whole(0, 1) === 0 ? 'length' : 'none',
      parts: [],
    }),
  );
  return { ...workshopList(0, 0, 'one size a list'), id: `${panels} panels`, demands };
}

function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** Prints how the time to a plan within 2 % of the bound grows with the number of panels; `only` 0 for all sizes. */
export async function benchGrowth(limit: number, only: number): Promise<void> {
  const solver = await loadSolver();
  for (const panels of PANELS.filter((n) => only === 0 || n === only)) {
    const group = growingGroup(panels);
    const steps: { readonly seconds: number; readonly costMinor: number }[] = [];
    const start = processorSeconds();
    const since = () => processorSeconds() - start;
    const outcome = nestGroup(group, solver, {
      seed: 1,
      workLimit: Number.MAX_SAFE_INTEGER,
      stop: () => since() >= limit,
      progress: ({ costMinor }) => steps.push({ seconds: since(), costMinor }),
    });
    const seconds = since();
    if (!outcome.ok) throw new Error(`${panels} panels: ${JSON.stringify(outcome.failure)}`);
    assertNest(group, outcome.nest);
    const { nest } = outcome;
    const sheets = nest.sheets.reduce((sum, sheet) => sum + sheet.copies, 0);
    const near = steps.find(({ costMinor }) => costMinor <= 1.02 * nest.bound.costMinor);
    const memory = Math.round(process.resourceUsage().maxRSS / 1024);
    console.log(
      `${panels} panels: ${sheets} sheets, bound ${nest.bound.sheets}, within 2 % after ` +
        `${near ? `${near.seconds.toFixed(1)} s` : '–'}, ${seconds.toFixed(1)} s in all, ${memory} MiB at most so far`,
    );
  }
}
