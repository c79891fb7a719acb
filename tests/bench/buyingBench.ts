import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Draw } from './workshopLists.ts';

/**
 * `npx tsx tests/bench/buyingBench.ts [ORDERS]`: the command `plywright buy` with so many orders (100), from its start to
 * all papers written: each one of the demonstration orders, with colours drawn anew. Prints the clock, and for each
 * board and finish what the plan costs above its bound. Needs `npm run build`.
 */
const count = Number(process.argv[2] ?? 100);
const root = fileURLToPath(new URL('../../', import.meta.url));
const library = join(root, 'parts-libraries/demo-van');
const COLOURS = {
  carcass: ['pale-grey', 'light-ash', 'warm-oak'],
  front: ['light-ash', 'deep-blue', 'warm-oak'],
  worktop: ['slate', 'chestnut', 'white-stone'],
  table: ['slate', 'chestnut'],
} as const;

/** The text of an order with other colours for its roles. */
function recoloured(text: string, draw: Draw): string {
  return Object.entries(COLOURS).reduce((changed, [role, colours]) => {
    const colour = colours[draw.whole(0, colours.length - 1)]!;
    return changed.replace(new RegExp(`(\\n {2}${role}: .*finish: )[a-z-]+`), `$1${colour}`);
  }, text);
}

function plywright(words: readonly string[]): Promise<string> {
  return new Promise((resolve, reject) => {
    const command = [join(root, 'cli/bin/plywright.js'), ...words];
    execFile(process.execPath, command, { maxBuffer: 2 ** 28, cwd: root }, (error, out, said) =>
      error ? reject(new Error(`${error.message}\n${out.slice(-2000)}\n${said}`)) : resolve(out),
    );
  });
}

/** What is read of the command's document. */
interface Bought {
  readonly purchase: {
    readonly ways: readonly {
      readonly cut: string;
      readonly total: number;
      readonly groups: readonly {
        readonly board: string;
        readonly finish: string;
        readonly panels: number;
        readonly sheets: number;
        readonly least: number;
        readonly withinPercent: number;
      }[];
    }[];
  };
}

const folder = mkdtempSync(join(tmpdir(), 'plywright-buying-'));
try {
  const orders = join(library, 'orders');
  const texts = readdirSync(orders)
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => readFileSync(join(orders, name), 'utf8'));
  const draw = new Draw(7);
  mkdirSync(join(folder, 'orders'));
  const files = Array.from({ length: count }, (_, index) => {
    const file = join(folder, 'orders', `order-${String(index + 1).padStart(3, '0')}.yaml`);
    writeFileSync(file, recoloured(texts[index % texts.length]!, draw));
    return file;
  });
  const options = [
    '--library',
    library,
    '--out',
    join(folder, 'out'),
    '--name',
    'pool',
    '--saw',
    'panel-saw',
    '--json',
  ];
  const started = performance.now();
  const text = await plywright(['buy', ...files, ...options]);
  const clock = (performance.now() - started) / 1000;
  const { ways } = (JSON.parse(text) as Bought).purchase;
  for (const { cut, total, groups } of ways) {
    console.log(`${cut}: ${(total / 100).toFixed(2)} to pay`);
    if (cut !== 'together') continue;
    for (const { board, finish, panels, sheets, least, withinPercent } of groups) {
      const found = `${panels} panels, ${sheets} sheets, least ${least}, within ${withinPercent} %`;
      console.log(`  ${board} ${finish}: ${found}`);
    }
  }
  console.log(`${count} orders: ${clock.toFixed(1)} s by the clock`);
} finally {
  rmSync(folder, { recursive: true });
}
