import { basename, dirname, extname, join, resolve } from 'node:path';
import type { Checked, Finding } from '../../src/model/finding.ts';
import type { Library } from '../../src/model/library.ts';
import type { PlanFile } from '../../src/model/plan.ts';
import type { Job } from '../../src/pipeline/job.ts';
import {
  type FileText,
  fileBelow,
  libraryNamedBy,
  prepareOrder,
  type WhatIf,
} from '../../src/pipeline/prepareOrder.ts';
import type { CutOptions } from '../commands/cut.ts';
import { safeFileName } from '../files/fileName.ts';
import { librariesOfCommand, libraryOfCommand, libraryOfOrder, shortPath } from '../files/libraryFolder.ts';
import { loadLibrary } from '../files/loadLibrary.ts';
import { diskReader } from '../files/reader.ts';
import { offersOfStore } from './offcutsOnHand.ts';

/** What of a command's options says where jobs come from, and the folder that holds their folders. */
export type JobOptions = Pick<
  CutOptions,
  'out' | 'library' | 'panels' | 'sheets' | 'saw' | 'kerf' | 'trim' | 'store' | 'sheetsOnHand' | 'set'
>;

/** A job with the file it came from and the folder its papers go to. */
export interface PreparedJob {
  readonly job: Job;
  readonly file: string;
  readonly folder: string;
  /** What is said of it beside its sheets, a sentence each. */
  readonly told?: (plan: PlanFile) => readonly string[];
  /** The same for other programs, beside its name and papers. */
  readonly data?: (plan: PlanFile) => Readonly<Record<string, unknown>>;
}

/** Libraries read so far, by folder, so that several orders of one library read it once. */
export type LibraryShelf = Map<string, Promise<Checked<Library>>>;

/** An order's text with the library it is made from, and what it stands on or is to be otherwise. */
export interface ReadOrder {
  readonly text: string;
  readonly library: Library;
  readonly whatIf: WhatIf;
}

/** What of a command's options says how an order is read. */
export interface OrderOptions {
  readonly library?: string;
  readonly set?: readonly string[];
}

/** Reads an order, or a variant and the files it stands on, and its library. */
export async function readOrderFile(
  file: string,
  { library: named, set = [] }: OrderOptions,
  shelf: LibraryShelf,
): Promise<Checked<ReadOrder>> {
  const text = await diskReader.text(file, 'order');
  if (!text.ok) return text;
  const below = await filesBelow({ text: text.value, file });
  if (!below.ok) return below;
  const lowest = below.value.at(-1) ?? { text: text.value, file };
  const folder = await libraryFor(lowest.text, lowest.file, named);
  if (!folder.ok) return folder;
  let library = shelf.get(folder.value);
  if (library === undefined) {
    library = loadLibrary(folder.value);
    shelf.set(folder.value, library);
  }
  const read = await library;
  if (!read.ok) return read;
  const whatIf = { below: below.value, set };
  return {
    ok: true,
    value: { text: text.value, library: read.value, whatIf },
    findings: read.findings,
  };
}

/** Variants may stand on variants, but nobody piles up more. */
const MOST_BELOW = 20;

/** The files that a variant stands on, the nearest first; none for an order. */
async function filesBelow(top: FileText): Promise<Checked<readonly FileText[]>> {
  const below: FileText[] = [];
  const seen = new Set([resolve(top.file)]);
  for (let { text, file } = top; ; ) {
    const named = fileBelow(text, file);
    if (!named.ok) return named;
    if (named.value === null) return { ok: true, value: below, findings: [] };
    const path = shortPath(resolve(dirname(file), named.value));
    if (seen.has(resolve(path)) || below.length === MOST_BELOW)
      return { ok: false, findings: [circle(file, path)] };
    seen.add(resolve(path));
    const read = await diskReader.text(path, 'order');
    if (!read.ok) {
      const said = read.findings.map((found) => ({ ...found, advice: `${file} is a variant of it` }));
      return { ok: false, findings: said };
    }
    ({ text, file } = { text: read.value, file: path });
    below.push({ text, file });
  }
}

function circle(file: string, path: string): Finding {
  return {
    code: 'variant-circle',
    severity: 'error',
    message: 'The variants stand on each other and on no order.',
    place: { file, field: 'variant of' },
    found: path,
    expected: 'the path of an order',
  };
}

async function libraryFor(text: string, file: string, named: string | undefined): Promise<Checked<string>> {
  if (named !== undefined) return libraryOfCommand(named);
  const name = libraryNamedBy(text, file);
  if (name !== undefined) return libraryOfOrder(name, file, { file, field: 'library' });
  // Whatever library there is lets the order be read, so that all that is wrong with it can be said.
  const [any] = await librariesOfCommand(undefined);
  if (any?.ok) return any;
  const finding: Finding = {
    code: 'missing-field',
    severity: 'error',
    message: 'The order does not say which library it is made from.',
    place: { file, field: 'library' },
    expected: 'library: followed by the name or the path of a library',
  };
  return { ok: false, findings: [finding] };
}

async function prepareOne(
  file: string,
  options: JobOptions,
  shelf: LibraryShelf,
): Promise<Checked<PreparedJob>> {
  const read = await readOrderFile(file, options, shelf);
  if (!read.ok) return read;
  const { text, library, whatIf } = read.value;
  const offers = await offersOfStore(options.store, options.sheetsOnHand ? 'on hand' : 'as can be bought');
  if (!offers.ok) return { ok: false, findings: [...read.findings, ...offers.findings] };
  const { offcuts, sheets } = offers.value;
  const job = prepareOrder(text, file, library, whatIf, offcuts, sheets);
  const findings = [...read.findings, ...offers.findings, ...job.findings];
  if (!job.ok) return { ok: false, findings };
  const folder = join(options.out, safeFileName(job.value.name));
  return { ok: true, value: { job: job.value, file, folder }, findings };
}

/** Two jobs whose papers would go to one folder. */
function sameFolders(jobs: readonly PreparedJob[]): Finding[] {
  const first = new Map<string, string>();
  return jobs.flatMap(({ folder, file }) => {
    const key = resolve(folder).toLowerCase();
    const other = first.get(key);
    if (other === undefined) {
      first.set(key, file);
      return [];
    }
    const finding: Finding = {
      code: 'folder-used-twice',
      severity: 'error',
      message: `The papers of this job would go to the same folder as those of ${other}.`,
      place: { file },
      found: folder,
      advice: 'rename one of the files, or cut them one after the other with different --out',
    };
    return [finding];
  });
}

/** Reads every order, or the plain list, up to stock groups. All findings of all files come back at once. */
export async function prepareJobs(
  orders: readonly string[],
  options: JobOptions,
): Promise<Checked<readonly PreparedJob[]>> {
  const shelf: LibraryShelf = new Map();
  const results: Checked<PreparedJob>[] = [];
  if (options.panels !== undefined && options.sheets !== undefined) {
    const { prepareListJob } = await import('./prepareListJob.ts');
    results.push(await prepareListJob(options.panels, options.sheets, options));
  }
  for (const file of orders) results.push(await prepareOne(file, options, shelf));
  const jobs = results.flatMap((result) => (result.ok ? [result.value] : []));
  const findings = [...withoutRepeats(results.flatMap((result) => result.findings)), ...sameFolders(jobs)];
  if (findings.some((finding) => finding.severity === 'error')) return { ok: false, findings };
  return { ok: true, value: jobs, findings };
}

/** A library that several orders use is wrong once. */
export function withoutRepeats(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return findings.filter((finding) => {
    const key = JSON.stringify(finding);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** The name of a job that is made from a plain list. */
export function nameOfList(file: string): string {
  return safeFileName(basename(file, extname(file)));
}
