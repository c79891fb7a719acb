/**
 * Packs the project twice, each time from its files alone in another folder, and holds the two packages against each
 * other; then installs the package in an empty folder, without any script of any package, and does the main job there. Needs
 * the registry of npm for what the package depends on. Ends with 1 and says why where something is not as it should be.
 */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '../..');
const work = mkdtempSync(join(tmpdir(), 'plywright-pack-'));
const began = performance.now();

function run(folder: string, program: string, ...args: string[]): string {
  return execFileSync(program, args, {
    cwd: folder,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
    maxBuffer: 2 ** 28,
  });
}

function sha256(bytes: Uint8Array | string): string {
  return createHash('sha256').update(bytes).digest('hex');
}

function wrong(message: string): never {
  throw new Error(message);
}

/** A package made of the files that belong to the project, in a folder where nothing else lies. */
function pack(name: string): string {
  const folder = join(work, name);
  for (const file of run(root, 'git', 'ls-files', '-z')
    .split('\0')
    .filter((each) => each !== '')) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    cpSync(join(root, file), join(folder, file));
  }
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'), 'dir');
  run(folder, 'npm', 'pack', '--silent');
  const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as { version: string };
  return join(folder, `plywright-${version}.tgz`);
}

function say(text: string): void {
  console.log(`${((performance.now() - began) / 1000).toFixed(0).padStart(4)} s  ${text}`);
}

try {
  const [first, second] = [pack('first'), pack('second')];
  const sums = [first, second].map((file) => sha256(readFileSync(file)));
  if (sums[0] !== sums[1]) wrong(`packed twice, the packages differ: ${sums.join(', ')}`);
  const files = run(work, 'tar', '-tzf', first).trim().split('\n');
  say(
    `packed twice, the same bytes: ${files.length} files, ${statSync(first).size} bytes, SHA-256 ${sums[0]}`,
  );

  const place = join(work, 'elsewhere');
  mkdirSync(place);
  writeFileSync(join(place, 'package.json'), '{ "private": true }\n');
  run(place, 'npm', 'install', '--ignore-scripts', '--no-audit', '--no-fund', '--silent', first);
  const installed = run(place, 'npm', 'ls', '--all', '--parseable').trim().split('\n').length - 1;
  say(`installed in an empty folder without running a script: ${installed} packages`);

  const order = join(place, 'node_modules/plywright/parts-libraries/demo-van/orders/demo-short.yaml');
  cpSync(order, join(place, 'my-van.yaml'));
  const cut = ['cut', 'my-van.yaml', '--papers', 'all', '--work', '2000'];
  run(place, join(place, 'node_modules/.bin/plywright'), ...cut);
  const replayed = run(place, join(place, 'node_modules/.bin/plywright'), 'replay', 'out/my-van/plan.json');
  const papers = run(place, 'find', 'out', '-type', 'f').trim().split('\n');
  for (const paper of [
    'book.pdf',
    'book.html',
    'labels.pdf',
    'lists.xlsx',
    'plan.json',
    'cutting-list.csv',
  ]) {
    if (!papers.includes(`out/my-van/${paper}`)) wrong(`the installed command wrote no ${paper}`);
  }
  say(`did the main job there: ${papers.length} papers; its replay says: ${replayed.trim().split('\n')[0]}`);

  // What is installed is what was tried here: the same order gives the same plan.
  const own = join(work, 'own');
  mkdirSync(own);
  cpSync(order, join(own, 'my-van.yaml'));
  run(own, process.execPath, join(work, 'first/cli/bin/plywright.js'), ...cut.slice(0, 2), ...cut.slice(4));
  const plans = [place, own].map((folder) => sha256(readFileSync(join(folder, 'out/my-van/plan.json'))));
  if (plans[0] !== plans[1]) wrong('the installed command makes another plan than that of the project');
  say('its plan is that of the project, byte for byte');
} catch (problem) {
  const { stderr, stdout, message } = problem as { stderr?: string; stdout?: string; message: string };
  console.error(message, stdout ?? '', stderr ?? '');
  process.exitCode = 1;
} finally {
  rmSync(work, { recursive: true, force: true });
}
