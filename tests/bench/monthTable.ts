import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

/**
 * The six vans of the demonstration month, pooled and apart: sheets, the least that is possible, and how far the plans might
 * be from the best. `npx tsx tests/bench/monthTable.ts [WORK]`, with the moves that the command allows a group by default.
 * It runs the built command, so build first.
 */
const project = resolve(import.meta.dirname, '../..');
const month = join(project, 'parts-libraries/demo-van/orders/month');

interface Group {
  readonly board: string;
  readonly finish: string;
  readonly panels: number;
  readonly sheets: number;
  readonly least: number;
  readonly proved: boolean;
  readonly withinPercent: number;
}

interface Way {
  readonly cut: 'together' | 'apart';
  readonly total: number;
  readonly groups: readonly Group[];
}

function waysOf(orders: readonly string[], out: string, work: readonly string[]): readonly Way[] {
  const args = ['buy', ...orders, '--out', out, '--name', 'month', '--date', '2026-03-02', '--json', ...work];
  const run = spawnSync(process.execPath, [join(project, 'cli/bin/plywright.js'), ...args], {
    encoding: 'utf8',
    maxBuffer: 1e9,
  });
  if (run.status !== 0) throw new Error(run.stderr);
  return (JSON.parse(run.stdout) as { purchase: { ways: readonly Way[] } }).purchase.ways;
}

function verdict({ proved, withinPercent }: Group): string {
  return proved ? 'proved best' : `within ${withinPercent} %`;
}

function main(): void {
  const [work] = process.argv.slice(2);
  const orders = readdirSync(month)
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => join(month, name));
  const out = mkdtempSync(join(tmpdir(), 'month-'));
  try {
    const ways = waysOf(orders, out, work === undefined ? [] : ['--work', work]);
    const [together, apart] = (['together', 'apart'] as const).map(
      (cut) => ways.find((way) => way.cut === cut)!,
    );
    const lines = together!.groups.map((group) => {
      const other = apart!.groups.find(
        ({ board, finish }) => board === group.board && finish === group.finish,
      )!;
      const cells = [group, other].flatMap((one) => [`${one.sheets}`, `${one.least}`, verdict(one)]);
      return `| ${group.board} ${group.finish} | ${group.panels} | ${cells.join(' | ')} |`;
    });
    const sum = (way: Way, of: (group: Group) => number) =>
      way.groups.reduce((all, group) => all + of(group), 0);
    const all = [together!, apart!].flatMap((way) => [
      `${sum(way, ({ sheets }) => sheets)}`,
      `${sum(way, ({ least }) => least)}`,
      `${(way.total / 100).toFixed(2)} EUR to order`,
    ]);
    const panels = sum(together!, (group) => group.panels);
    console.log(
      [
        '| board and finish | panels | together: sheets | least | result | apart: sheets | least | result |',
        '|---|---|---|---|---|---|---|---|',
        ...lines,
        `| all | ${panels} | ${all.join(' | ')} |`,
      ].join('\n'),
    );
  } finally {
    rmSync(out, { recursive: true, force: true });
  }
}

main();
