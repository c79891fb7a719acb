import { readdir, stat } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { Finding } from '../../src/model/finding.ts';
import type { Library } from '../../src/model/library.ts';
import { type AboutOrder, aboutOrder } from '../../src/pipeline/aboutOrder.ts';
import { checkUnitsAlone } from '../../src/pipeline/checkUnits.ts';
import type { OrderedFurniture } from '../../src/pipeline/job.ts';
import { checkLibraryFormulas } from '../../src/pipeline/libraryFormulas.ts';
import { prepareOrder } from '../../src/pipeline/prepareOrder.ts';
import type { CheckOptions } from '../commands/check.ts';
import { type OrderOptions, readOrderFile } from '../cutting/prepareJobs.ts';
import { libraryOfCommand, shortPath } from '../files/libraryFolder.ts';
import { loadLibrary } from '../files/loadLibrary.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { endWith, jsonText, print } from '../terminal/output.ts';
import { exitCodeFor } from '../terminal/report.ts';
import { counted, printable, TERMINAL_WIDTH, wrap } from '../terminal/text.ts';

interface CheckedThing {
  readonly findings: readonly Finding[];
  /** What to say when nothing is wrong. */
  readonly fine: string;
  /** What an order without errors came to. */
  readonly ordered?: OrderedFurniture | undefined;
}

/** A unit that no right order stands in is worked out by itself, with the boards of the first right order. */
function unusedUnits(
  library: Library,
  ordered: readonly OrderedFurniture[],
  told: readonly Finding[],
): Finding[] {
  const [first] = ordered;
  if (first === undefined) {
    if (told.some((finding) => finding.severity === 'error')) return [];
    const message =
      'No order lies in orders/, so no boards are known of which the units could be worked out.';
    const place = { file: `${library.id}/orders` };
    return [{ code: 'units-not-checked', severity: 'warning', message, place, advice: 'add one order' }];
  }
  const used = new Set(ordered.flatMap(({ furniture }) => furniture.units.map((placed) => placed.unit)));
  const unused = [...library.units.values()].filter(({ id }) => !used.has(id));
  return checkUnitsAlone(unused, first.order, library);
}

/** A library with its formulas, the orders that lie in it, which give the formulas values, and its other units. */
async function checkLibrary(path: string): Promise<CheckedThing> {
  const folder = shortPath(resolve(path));
  const library = await loadLibrary(folder);
  if (!library.ok) return { findings: library.findings, fine: '' };
  const findings = [...library.findings, ...checkLibraryFormulas(library.value)];
  const names = await readdir(join(folder, 'orders')).catch(() => [] as string[]);
  const ordered: OrderedFurniture[] = [];
  const orders = names.filter((name) => /\.ya?ml$/i.test(name)).sort();
  for (const name of orders) {
    const order = await checkOrder(join(folder, 'orders', name), { library: folder });
    findings.push(...order.findings.filter((found) => !library.findings.includes(found)));
    if (order.ordered !== undefined) ordered.push(order.ordered);
  }
  findings.push(...unusedUnits(library.value, ordered, findings));
  const held = `${counted(library.value.units.size, 'unit')}, ${counted(library.value.layouts.size, 'layout')}`;
  return {
    findings,
    fine: `${library.value.title}: nothing is wrong with ${held} and ${counted(orders.length, 'order')}`,
  };
}

function massInWords({ mass }: AboutOrder): string {
  const kg = (massKg: number) => `${massKg.toFixed(1)} kg`;
  const appliances = mass.appliancesKg === 0 ? '' : `, ${kg(mass.appliancesKg)} of it appliances`;
  const all = `mass: furniture ${kg(mass.furnitureKg)}${appliances}`;
  const { payload } = mass;
  if (payload === undefined) return all;
  const share = (part: number) =>
    mass.furnitureKg === 0 ? '0 %' : `${Math.round((100 * part) / mass.furnitureKg)} %`;
  const where = `${share(mass.leftKg)} left, ${share(mass.frontKg)} front`;
  const who = counted(payload.persons, 'person');
  return `${all} (${where}); with ${who} ${kg(payload.leftKg)} left of the payload of ${kg(payload.payloadKg)}, at least ${kg(payload.leastKg)} to be kept`;
}

/** What applies to an order, a line each for its cautions and its mass. */
function describeOrder(about: AboutOrder): string {
  const cautions = about.cautions.map(({ title, units }) => {
    const name = printable(title);
    return units.length === 0 ? name : `${name} (${units.map(printable).join(', ')})`;
  });
  const lines = [`cautions: ${cautions.join('; ')}`, massInWords(about)];
  return lines.map((line) => `${wrap(line, TERMINAL_WIDTH, '  ')}\n`).join('');
}

async function checkOrder(file: string, options: OrderOptions): Promise<CheckedThing> {
  const read = await readOrderFile(file, options, new Map());
  if (!read.ok) return { findings: read.findings, fine: '' };
  const { text, library, whatIf } = read.value;
  const job = prepareOrder(text, file, library, whatIf);
  if (!job.ok) return { findings: [...read.findings, ...job.findings], fine: '' };
  const panels = job.value.groups.reduce(
    (sum, group) => sum + group.parts.reduce((count, part) => count + part.count, 0),
    0,
  );
  return {
    findings: [...read.findings, ...job.findings],
    fine: `${job.value.title}: nothing is wrong; ${panels} panels in ${job.value.groups.length} stock groups`,
    ordered: job.value.ordered,
  };
}

async function isFolder(path: string): Promise<boolean> {
  return stat(path).then(
    (about) => about.isDirectory(),
    () => false,
  );
}

function settingOfLibrary(path: string): CheckedThing {
  const message = 'This is a library, and --set belongs to an order.';
  const advice = 'name an order file';
  return {
    findings: [{ code: 'set-without-order', severity: 'error', message, place: { file: path }, advice }],
    fine: '',
  };
}

async function checkPath(path: string, options: CheckOptions): Promise<CheckedThing> {
  if (await isFolder(path)) return options.set === undefined ? checkLibrary(path) : settingOfLibrary(path);
  // A bare word may be the name of a library.
  if (/^[a-z0-9-]+$/.test(path) && !(await stat(path).catch(() => null))) {
    const folder = await libraryOfCommand(path);
    if (folder.ok) return checkPath(folder.value, options);
  }
  return checkOrder(path, options);
}

/** Runs `plywright check`: prints all findings and sets the exit code. */
export async function check(path: string, options: CheckOptions): Promise<void> {
  const { findings, fine, ordered } = await checkPath(path, options);
  const code = exitCodeFor(findings);
  const about = ordered === undefined ? undefined : aboutOrder(ordered);
  if (options.json) {
    await print(jsonText({ ok: code === 0, exitCode: code, findings, ...about }));
  } else {
    const colours = coloursFor(process.stdout);
    const errors = findings.some((finding) => finding.severity === 'error');
    const applies = about === undefined ? '' : describeOrder(about);
    await print(describeFindings(findings, colours) + (errors ? '' : `${fine}\n${applies}`));
  }
  endWith(code);
}
