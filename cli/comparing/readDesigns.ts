import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { nearestWord } from '../../src/basics/nearestWord.ts';
import { waysOf } from '../../src/basics/variations.ts';
import type { Checked, Finding } from '../../src/model/finding.ts';
import type { Library } from '../../src/model/library.ts';
import { type MadeOrder, orderOfLayout } from '../../src/pipeline/orderOfLayout.ts';
import { furnishOrder, prepareOrder, type WhatIf } from '../../src/pipeline/prepareOrder.ts';
import type { CompareOptions } from '../commands/compare.ts';
import { type LibraryShelf, type PreparedJob, readOrderFile } from '../cutting/prepareJobs.ts';
import { libraryOfCommand, shortPath } from '../files/libraryFolder.ts';
import { loadLibrary } from '../files/loadLibrary.ts';

/** A design that can be worked out, with the name that tells it from the others. */
export interface ReadyDesign {
  readonly name: string;
  readonly prepared: PreparedJob;
  /** Text of its order, and what is otherwise. */
  readonly text: string;
  readonly whatIf: WhatIf;
}

/** All designs that were asked for, and the orders that were made of layouts. */
export interface ReadyDesigns {
  readonly designs: readonly ReadyDesign[];
  readonly made: readonly MadeOrder[];
}

/** What of a command's options says which designs are meant. */
export type DesignOptions = Pick<
  CompareOptions,
  'library' | 'layouts' | 'vehicles' | 'like' | 'set' | 'vary'
>;

/** An order with its library, before anything is tried with it. */
interface Base {
  readonly name: string;
  readonly file: string;
  readonly text: string;
  readonly library: Library;
  readonly whatIf: WhatIf;
  /** Whether nobody asked for just this one, so that it may be left out when it cannot be built. */
  readonly mayFail: boolean;
}

function error(code: string, message: string, more: Partial<Finding> = {}): Checked<never> {
  return { ok: false, findings: [{ code, severity: 'error', message, ...more }] };
}

/** The ids that a list of words names; `all` for all there are. */
function idsNamed(
  named: readonly string[] | undefined,
  known: readonly string[],
  what: string,
): Checked<readonly string[]> {
  if (named === undefined || (named.length === 1 && named[0] === 'all')) {
    return { ok: true, value: known, findings: [] };
  }
  const findings = named
    .filter((word) => !known.includes(word))
    .map((word): Finding => {
      const nearest = nearestWord(word, known);
      return {
        code: 'unknown-word',
        severity: 'error',
        message: `The library has no ${what} “${word}”.`,
        found: word,
        expected: `${known.join(', ')} or all`,
        ...(nearest === undefined ? {} : { nearest }),
      };
    });
  return findings.length > 0 ? { ok: false, findings } : { ok: true, value: named, findings };
}

/** The order whose saw, boards and finishes layouts are drawn with: the one named, or the first of the library. */
async function likeOrder(folder: string, like: string | undefined): Promise<Checked<string>> {
  if (like !== undefined) return { ok: true, value: like, findings: [] };
  const orders = join(folder, 'orders');
  const names = await readdir(orders).catch(() => [] as string[]);
  const first = names.filter((name) => /\.ya?ml$/i.test(name)).sort()[0];
  if (first !== undefined) return { ok: true, value: shortPath(join(orders, first)), findings: [] };
  return error('file-missing', 'The library has no order that says which boards to take.', {
    place: { file: orders },
    advice: 'name an order of your own with --like',
  });
}

interface LayoutBases {
  readonly bases: readonly Base[];
  readonly made: readonly MadeOrder[];
}

/** Every layout named in every vehicle named that it is drawn for. */
async function basesOfLayouts(options: DesignOptions, shelf: LibraryShelf): Promise<Checked<LayoutBases>> {
  if (options.layouts === undefined) return { ok: true, value: { bases: [], made: [] }, findings: [] };
  const folder = await libraryOfCommand(options.library);
  if (!folder.ok) return folder;
  const read = await (shelf.get(folder.value) ?? loadLibrary(folder.value));
  if (!read.ok) return read;
  const library = read.value;
  const layouts = idsNamed(options.layouts, [...library.layouts.keys()], 'layout');
  const vehicles = idsNamed(options.vehicles, [...library.vehicles.keys()], 'vehicle or room');
  const like = await likeOrder(folder.value, options.like);
  if (!layouts.ok || !vehicles.ok || !like.ok) {
    return { ok: false, findings: [...layouts.findings, ...vehicles.findings, ...like.findings] };
  }
  const boards = await readOrderFile(like.value, { library: folder.value }, shelf);
  if (!boards.ok) return boards;
  const furnished = furnishOrder(boards.value.text, like.value, library, boards.value.whatIf);
  if (!furnished.ok) return furnished;
  const made = layouts.value.flatMap((layout) =>
    vehicles.value
      .filter((vehicle) => library.layouts.get(layout)!.vehicles.includes(vehicle))
      .map((vehicle) => orderOfLayout(furnished.value.order, library, layout, vehicle, library.id)),
  );
  const none: WhatIf = { below: [], set: [] };
  const bases = made.map(({ file, text }): Base => {
    return { name: file.replace(/\.yaml$/, ''), file, text, library, whatIf: none, mayFail: true };
  });
  if (bases.length === 0) {
    return error('vehicle-not-fitting', 'None of these layouts is drawn for any of these vehicles or rooms.');
  }
  return { ok: true, value: { bases, made }, findings: read.findings };
}

async function basesOfOrders(
  files: readonly string[],
  options: DesignOptions,
  shelf: LibraryShelf,
): Promise<Checked<readonly Base[]>> {
  const findings: Finding[] = [];
  const bases: Base[] = [];
  for (const file of files) {
    const read = await readOrderFile(
      file,
      options.library === undefined ? {} : { library: options.library },
      shelf,
    );
    findings.push(...read.findings);
    if (!read.ok) continue;
    const name = file.replace(/^.*[/\\]/, '').replace(/\.ya?ml$/i, '');
    bases.push({ name, file, ...read.value, mayFail: false });
  }
  const failed = findings.some(({ severity }) => severity === 'error');
  return failed ? { ok: false, findings } : { ok: true, value: bases, findings };
}

/** Why something is not compared, as a warning. */
function leftOut(name: string, findings: readonly Finding[]): Finding[] {
  const first = findings.find(({ severity }) => severity === 'error');
  if (first === undefined) return [];
  return [
    {
      ...first,
      code: 'left-out',
      severity: 'warning',
      message: `${name} cannot be built and is left out: ${first.message}`,
    },
  ];
}

/** Names that are used twice get the path of their file in front. */
function toldApart<T extends { readonly name: string; readonly file: string }>(bases: readonly T[]): T[] {
  return bases.map((base) =>
    bases.filter(({ name }) => name === base.name).length > 1 ? { ...base, name: base.file } : base,
  );
}

/** Reads every design that was asked for up to its stock groups; what cannot be built stops all, or is left out and told. */
export async function readDesigns(
  files: readonly string[],
  options: DesignOptions,
): Promise<Checked<ReadyDesigns>> {
  const shelf: LibraryShelf = new Map();
  const orders = await basesOfOrders(files, options, shelf);
  const layouts = await basesOfLayouts(options, shelf);
  if (!orders.ok || !layouts.ok) return { ok: false, findings: [...orders.findings, ...layouts.findings] };
  const findings = [...orders.findings, ...layouts.findings];
  const ways = waysOf(options.vary ?? []);
  const designs: ReadyDesign[] = [];
  for (const base of toldApart([...orders.value, ...layouts.value.bases])) {
    for (const way of ways) {
      const name = way.length === 0 ? base.name : `${base.name}, ${way.join(', ')}`;
      const whatIf = { below: base.whatIf.below, set: [...(options.set ?? []), ...way] };
      const job = prepareOrder(base.text, base.file, base.library, whatIf);
      const mayFail = base.mayFail || way.length > 0;
      if (job.ok) {
        // What is to be minded of each of many ways would bury what differs.
        if (way.length === 0) findings.push(...job.findings);
        const prepared = { job: job.value, file: base.file, folder: '' };
        designs.push({ name, prepared, text: base.text, whatIf });
      } else findings.push(...(mayFail ? leftOut(name, job.findings) : job.findings));
    }
  }
  if (findings.some(({ severity }) => severity === 'error')) return { ok: false, findings };
  if (designs.length === 0) {
    const reasons = findings.map((found) => ({ ...found, severity: 'error' as const }));
    return { ok: false, findings: reasons };
  }
  return { ok: true, value: { designs, made: layouts.value.made }, findings };
}
