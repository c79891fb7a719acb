import Table from 'cli-table3';
import { publishedTotals, type Turning } from './instances.ts';
import type { RunResult } from './runInstance.ts';

const sum = (results: readonly RunResult[], of: (result: RunResult) => number | null): number | null =>
  results.reduce<number | null>((all, result) => {
    const value = of(result);
    return all === null || value === null ? null : all + value;
  }, 0);

const show = (value: number | null | undefined, digits = 0) => (value == null ? '–' : value.toFixed(digits));

/** A row for each group of instances and one for all; the published totals belong to whole sets only. */
export function printTable(
  title: string,
  results: readonly RunResult[],
  wanted: { readonly turning: Turning; readonly published: boolean },
): void {
  const published = wanted.published ? publishedTotals(wanted.turning) : new Map<string, number>();
  const table = new Table({
    head: [
      'row',
      'instances',
      'sheets',
      'own bound',
      'known bound',
      'known best',
      'published',
      'shelf packer',
      'used %',
      'proved',
      'first s',
      'last s',
      'all s',
    ],
    style: { head: [], border: [] },
    // No lines between the rows.
    chars: { mid: '', 'left-mid': '', 'mid-mid': '', 'right-mid': '' },
  });
  const line = (name: string, some: readonly RunResult[], best: number | undefined) => {
    const usedArea = sum(some, (r) => (r.cost > r.sheets ? r.itemArea / r.cost : null));
    const mean = (of: (result: RunResult) => number) => show((sum(some, of) ?? 0) / some.length, 3);
    return [
      name,
      some.length,
      show(sum(some, (r) => r.sheets)),
      show(sum(some, (r) => r.boundSheets)),
      show(sum(some, (r) => r.knownBound)),
      show(sum(some, (r) => r.knownBest)),
      show(best),
      show(sum(some, (r) => r.shelf)),
      usedArea === null ? '–' : show((100 * usedArea) / some.length, 2),
      `${show((100 * some.filter((r) => r.proved).length) / some.length, 1)} %`,
      mean((r) => r.firstSeconds),
      mean((r) => r.lastSeconds),
      mean((r) => r.seconds),
    ];
  };
  for (const row of new Set(results.map((r) => r.row))) {
    table.push(
      line(
        row,
        results.filter((r) => r.row === row),
        published.get(row),
      ),
    );
  }
  const total = published.size > 0 ? [...published.values()].reduce((a, b) => a + b, 0) : undefined;
  table.push(line('all', results, total));
  console.log(`\n${title}\n${table.toString()}`);
}

export function printInstances(results: readonly RunResult[]): void {
  for (const r of results) {
    const best = r.knownBest === null ? '' : ` known best ${r.knownBest}`;
    console.log(
      `${r.id.padEnd(16)} ${r.turning.padEnd(8)} sheets ${r.sheets} bound ${r.boundSheets} cost ${r.cost} bound ${r.boundCost}` +
        `${best} ${r.proved ? 'proved' : 'open'} ${r.moves} moves ${r.lastSeconds.toFixed(2)} of ${r.seconds.toFixed(2)} s`,
    );
  }
}
