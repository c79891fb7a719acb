import { readdir, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { Finding } from '../../src/model/finding.ts';
import { checkLibraryFormulas } from '../../src/pipeline/libraryFormulas.ts';
import { prepareOrder } from '../../src/pipeline/prepareOrder.ts';
import type { CheckOptions } from '../commands/check.ts';
import { readOrderFile } from '../cutting/prepareJobs.ts';
import { libraryOfCommand, shortPath } from '../files/libraryFolder.ts';
import { loadLibrary } from '../files/loadLibrary.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { endWith, print } from '../terminal/output.ts';
import { exitCodeFor } from '../terminal/report.ts';
import { counted } from '../terminal/text.ts';

interface CheckedThing {
  readonly findings: readonly Finding[];
  /** What to say when nothing is wrong. */
  readonly fine: string;
}

/** A library with its formulas and, since only an order gives them values, the orders that lie in it. */
async function checkLibrary(path: string): Promise<CheckedThing> {
  const folder = shortPath(resolve(path));
  const library = await loadLibrary(folder);
  if (!library.ok) return { findings: library.findings, fine: '' };
  const findings = [...library.findings, ...checkLibraryFormulas(library.value)];
  const names = await readdir(join(folder, 'orders')).catch(() => [] as string[]);
  const orders = names.filter((name) => /\.ya?ml$/i.test(name)).sort();
  for (const name of orders) {
    const order = await checkOrder(join(folder, 'orders', name), folder);
    findings.push(...order.findings.filter((found) => !library.findings.includes(found)));
  }
  const held = `${counted(library.value.units.size, 'unit')}, ${counted(library.value.layouts.size, 'layout')}`;
  return {
    findings,
    fine: `${library.value.title}: nothing is wrong with ${held} and ${counted(orders.length, 'order')}`,
  };
}

async function checkOrder(file: string, named: string | undefined): Promise<CheckedThing> {
  const read = await readOrderFile(file, named, new Map());
  if (!read.ok) return { findings: read.findings, fine: '' };
  const job = prepareOrder(read.value.text, file, read.value.library);
  if (!job.ok) return { findings: [...read.findings, ...job.findings], fine: '' };
  const panels = job.value.groups.reduce(
    (sum, group) => sum + group.parts.reduce((count, part) => count + part.count, 0),
    0,
  );
  return {
    findings: [...read.findings, ...job.findings],
    fine: `${job.value.title}: nothing is wrong; ${panels} panels in ${job.value.groups.length} stock groups`,
  };
}

async function isFolder(path: string): Promise<boolean> {
  return stat(path).then(
    (about) => about.isDirectory(),
    () => false,
  );
}

async function checkPath(path: string, options: CheckOptions): Promise<CheckedThing> {
  if (await isFolder(path)) return checkLibrary(path);
  // A bare word may be the name of a library.
  if (/^[a-z0-9-]+$/.test(path) && !(await stat(path).catch(() => null))) {
    const folder = await libraryOfCommand(path);
    if (folder.ok) return checkLibrary(folder.value);
  }
  return checkOrder(path, options.library);
}

/** Runs `plywright check`: prints all findings and sets the exit code. */
export async function check(path: string, options: CheckOptions): Promise<void> {
  const { findings, fine } = await checkPath(path, options);
  const code = exitCodeFor(findings);
  if (options.json) {
    await print(`${JSON.stringify({ ok: code === 0, exitCode: code, findings }, null, 2)}\n`);
  } else {
    const colours = coloursFor(process.stdout);
    const errors = findings.some((finding) => finding.severity === 'error');
    await print(describeFindings(findings, colours) + (errors ? '' : `${fine}\n`));
  }
  endWith(code);
}
