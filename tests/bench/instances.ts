import { readFileSync } from 'node:fs';
import type { StockGroup } from '../../src/model/stock.ts';

export const BENCHMARK_SETS = [
  'bwmv',
  'furniture-a',
  'csp-classic',
  'orlib-bpp',
  'csp-large',
  'variable-sheets',
] as const;

export type Turning = 'fixed' | 'turnable';

/** One published instance with figures known from elsewhere. */
export interface BenchmarkInstance {
  readonly id: string;
  /** The row of the table it belongs to: a class, a set, a collection. */
  readonly row: string;
  readonly sheets: readonly { readonly w: number; readonly h: number; readonly count: number | null }[];
  readonly items: readonly (readonly [w: number, h: number, count: number])[];
  /** Bound and best plan in sheets that came with the data; null where they did not. */
  readonly known: Readonly<Record<Turning, { readonly bound: number | null; readonly best: number | null }>>;
}

interface InstanceInFile {
  id: string;
  cls?: number;
  grp?: string;
  sheet?: [number, number];
  sheets?: [number, number, number | null, number][];
  items: [number, number, number][];
  lbO?: number;
  lbR?: number;
  ubO?: number;
  ubR?: number;
}

function rowOf(set: string, instance: InstanceInFile): string {
  if (instance.cls !== undefined) return `class ${instance.cls}`;
  const id = instance.id;
  if (set !== 'variable-sheets') return instance.grp ?? set;
  const pisingerSigurd = /^PS_C(\d+)_/.exec(id);
  if (pisingerSigurd) return `PS ${pisingerSigurd[1]}`;
  return /^(Nice|Path)\d+i/.exec(id)?.[0] ?? id.slice(0, 2);
}

/** Reads a set from `tests/data/benchmarks/`. */
export function readInstances(set: string): BenchmarkInstance[] {
  const file = new URL(`../data/benchmarks/${set}.json`, import.meta.url);
  const { instances } = JSON.parse(readFileSync(file, 'utf8')) as { instances: InstanceInFile[] };
  return instances.map((instance) => ({
    id: instance.id,
    row: rowOf(set, instance),
    sheets: instance.sheets
      ? instance.sheets.map(([w, h, count]) => ({ w, h, count }))
      : [{ w: instance.sheet![0], h: instance.sheet![1], count: null }],
    items: instance.items,
    known: {
      fixed: { bound: instance.lbO ?? null, best: instance.ubO ?? null },
      turnable: { bound: instance.lbR ?? null, best: instance.ubR ?? null },
    },
  }));
}

/**
 * The instance as a stock group without kerf and trim, one unit a millimetre. Where there are several sizes of sheet a
 * sheet costs its area, as in the published comparisons; else it costs 1.
 */
export function groupOf(instance: BenchmarkInstance, turning: Turning): StockGroup {
  const several = instance.sheets.length > 1;
  return {
    id: instance.id,
    board: instance.id,
    finish: 'plain',
    thicknessUm: 1000,
    parts: [],
    demands: instance.items.map(([w, h, count]) => ({
      lengthUm: w * 1000,
      widthUm: h * 1000,
      count,
      grain: turning === 'fixed' ? 'length' : 'none',
      parts: [],
    })),
    sheets: instance.sheets.map(({ w, h, count }, index) => ({
      id: `sheet ${index + 1}`,
      lengthUm: w * 1000,
      widthUm: h * 1000,
      grain: 'length',
      priceMinor: several ? w * h : 1,
      count,
      kind: 'sheet',
      trim: { left: 0, right: 0, near: 0, far: 0 },
    })),
    saw: {
      name: 'none',
      kerfUm: 0,
      firstCut: 'either',
      turns: null,
      smallestPartUm: 0,
      leastOffcut: { lengthUm: 0, widthUm: 0 },
      longestCutUm: null,
      cuttingHeightUm: null,
    },
  };
}

/** Least and greatest total that is published for a row, or null. */
export function publishedTotals(turning: Turning): Map<string, number> {
  const file = new URL('../data/benchmarks/published-results.json', import.meta.url);
  const { bwmv } = JSON.parse(readFileSync(file, 'utf8')) as {
    bwmv: Record<'OG' | 'RG', { bestByClass: Record<string, number> }>;
  };
  const best = bwmv[turning === 'fixed' ? 'OG' : 'RG'].bestByClass;
  return new Map(Object.entries(best).map(([cls, total]) => [`class ${cls}`, total]));
}
