import { createHash } from 'node:crypto';
import {
  access,
  constants,
  cp,
  lstat,
  mkdir,
  open,
  readdir,
  readFile,
  rename,
  rm,
  stat,
} from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { z } from 'zod';
import type { ExistingFiles, FolderOfPapers, Papers, Writer } from '../../src/edge/index.ts';
import type { Finding } from '../../src/model/finding.ts';
import { exchangeAll, type ReadyFolder } from './exchangeFolders.ts';
import { leftBeside } from './leftBeside.ts';
import { syncFolder } from './syncFolder.ts';
import { systemReason } from './systemReason.ts';

/**
 * A job's folder is exchanged as a whole: its papers are written into a new folder beside it, which is then renamed.
 * A list of the papers with their fingerprints, kept in the folder, tells papers that are as they were written
 * from those that a person has changed since, and from files that a person has put there.
 */
const LIST_NAME = '.plywright.json';

const paperList = z.strictObject({
  format: z.literal('plywright papers'),
  version: z.literal(1),
  files: z.record(z.string(), z.string().regex(/^[0-9a-f]{64}$/)),
});

function fingerprint(bytes: string | Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

function listOf(papers: Papers): string {
  const files = Object.fromEntries(
    [...papers]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([path, text]) => [path, fingerprint(text)] as const),
  );
  return `${JSON.stringify({ format: 'plywright papers', version: 1, files }, null, 2)}\n`;
}

async function exists(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false,
  );
}

/** Paths of all files under a folder, sorted, `/` between folders. Links are taken as files. */
async function filesUnder(folder: string, inside = ''): Promise<string[]> {
  const paths: string[] = [];
  for (const entry of await readdir(join(folder, inside), { withFileTypes: true })) {
    const path = inside === '' ? entry.name : `${inside}/${entry.name}`;
    if (entry.isDirectory()) paths.push(...(await filesUnder(folder, path)));
    else paths.push(path);
  }
  return paths.sort();
}

/** The papers that a folder's list has; null without such a list, the version of it where that is another. */
async function readPaperList(folder: string): Promise<ReadonlyMap<string, string> | null | 'other version'> {
  try {
    const list: unknown = JSON.parse(await readFile(join(folder, LIST_NAME), 'utf8'));
    const read = paperList.safeParse(list);
    if (read.success) return new Map(Object.entries(read.data.files));
    const { format, version } = (list ?? {}) as { format?: unknown; version?: unknown };
    return format === 'plywright papers' && version !== 1 ? 'other version' : null;
  } catch {
    return null;
  }
}

interface Standing {
  /** A person's own files, which stay. */
  readonly own: readonly string[];
  /** Files that the new papers would change although a person has made or changed them. */
  readonly inTheWay: readonly string[];
  readonly ours: boolean;
  /** Its papers were written by a plywright whose list of them is of another version. */
  readonly otherVersion: boolean;
}

/** Whether a file lies in a folder within that has a list of its own, as the drawings beside the papers have. */
function inListedFolder(present: readonly string[]): (path: string) => boolean {
  const listed = present
    .filter((path) => path.endsWith(`/${LIST_NAME}`))
    .map((path) => path.slice(0, -LIST_NAME.length));
  return (path) => listed.some((folder) => path.startsWith(folder));
}

/** Sorts the files of an existing folder into a person's own and those in the way of the new papers. */
async function look(folder: string, papers: Papers): Promise<Standing> {
  const list = await readPaperList(folder);
  const listed = list === 'other version' ? null : list;
  const own: string[] = [];
  const inTheWay: string[] = [];
  const present = (await filesUnder(folder)).filter((path) => path !== LIST_NAME);
  for (const path of present) {
    const written = listed?.get(path);
    if (written !== undefined) {
      const about = await lstat(join(folder, path));
      const same = about.isFile() && fingerprint(await readFile(join(folder, path))) === written;
      if (!same) inTheWay.push(path);
      continue;
    }
    const blocks = [...papers.keys()].some(
      (paper) => paper === path || paper.startsWith(`${path}/`) || path.startsWith(`${paper}/`),
    );
    if (blocks) inTheWay.push(path);
    else own.push(path);
  }
  const ours = listed !== null || (list === null && present.every(inListedFolder(present)));
  return { own, inTheWay, ours, otherVersion: list === 'other version' };
}

function refusal(folder: string, standing: Standing, existing: ExistingFiles): Finding | null {
  if (existing === 'replace edited') return null;
  if (!standing.ours) {
    return {
      code: 'folder-not-ours',
      severity: 'error',
      message: standing.otherVersion
        ? 'The papers in this folder were listed by another version of plywright, so nobody here can tell which were changed by hand.'
        : 'This folder holds files that are not papers of a job.',
      place: { file: folder },
      found: [...standing.inTheWay, ...standing.own].slice(0, 5).join(', '),
      advice: 'choose another place with --out, or give --replace to write the papers beside them',
    };
  }
  if (standing.inTheWay.length === 0) return null;
  return {
    code: 'papers-edited',
    severity: 'error',
    message: 'Papers in this folder were changed by hand since they were written.',
    place: { file: folder },
    found: standing.inTheWay.slice(0, 5).join(', '),
    advice: 'keep them by choosing another place with --out, or give --replace to write over them',
  };
}

/** Whether another process of this number runs; our own number can only be that of an earlier run. */
function isRunning(processNumber: number): boolean {
  if (processNumber === process.pid) return false;
  try {
    process.kill(processNumber, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Milliseconds after which a folder that a run has moved away and not put back is taken for left behind. */
const MOST_BETWEEN_RENAMES = 1000;

/**
 * Whether what a run has left beside the folder is of a run that has ended. After a power cut another process may have its
 * number; but no run leaves a folder moved away for longer than a moment.
 */
async function isLeftBehind(kind: 'new' | 'old', processNumber: number, folder: string): Promise<boolean> {
  if (!isRunning(processNumber)) return true;
  if (kind === 'new') return false;
  const until = performance.now() + MOST_BETWEEN_RENAMES;
  while (performance.now() < until) {
    if (await exists(folder)) return false;
    await pause(MOST_BETWEEN_RENAMES / 20);
  }
  return !(await exists(folder));
}

/** Brings back or clears away what a run that was killed between two renames has left beside the folder. */
async function tidyAfterKilledRuns(folder: string): Promise<void> {
  const parent = dirname(folder);
  for (const name of (await readdir(parent).catch(() => [] as string[])).sort()) {
    const left = leftBeside(folder, name);
    if (left === null || !(await isLeftBehind(left.kind, left.processNumber, folder))) continue;
    if (left.kind === 'old' && !(await exists(folder))) await rename(join(parent, name), folder);
    else await rm(join(parent, name), { recursive: true, force: true });
  }
}

/** Files that are written at once: syncing one takes a disk as long as syncing several. */
const AT_ONCE = 16;

/** Writes one file, on the disk when it comes back: a full disk may tell so only then, and a power cut may come next. */
async function writeForGood(path: string, text: string | Uint8Array): Promise<void> {
  const handle = await open(path, 'wx');
  try {
    await handle.writeFile(text);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

async function writeBeside(fresh: string, papers: Papers): Promise<void> {
  await mkdir(fresh);
  const folders = new Set([...papers.keys()].map((path) => dirname(path)).filter((path) => path !== '.'));
  for (const inside of folders) await mkdir(join(fresh, inside), { recursive: true });
  const files = [...papers, [LIST_NAME, listOf(papers)] as const];
  for (let at = 0; at < files.length; at += AT_ONCE) {
    await Promise.all(
      files.slice(at, at + AT_ONCE).map(([path, text]) => writeForGood(join(fresh, path), text)),
    );
  }
}

/** Copies a person's own file or link, which then is on the disk as well. */
async function copyForGood(from: string, to: string): Promise<void> {
  await cp(from, to, { recursive: true, preserveTimestamps: true, verbatimSymlinks: true });
  if (!(await lstat(to)).isFile()) return;
  // A file that may not be opened could not have been copied; some systems sync only what was opened to be written.
  const handle = await open(to, 'r');
  try {
    await handle.sync().catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPERM' && error.code !== 'EINVAL') throw error;
    });
  } finally {
    await handle.close();
  }
}

/** Makes the lists of files of a folder and of all within it last. */
async function syncFoldersUnder(folder: string): Promise<void> {
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    if (entry.isDirectory()) await syncFoldersUnder(join(folder, entry.name));
  }
  await syncFolder(folder);
}

function checkPaths(papers: Papers): void {
  for (const path of papers.keys()) {
    const parts = path.split('/');
    if (parts.some((part) => !/^[\p{L}\p{N}][\p{L}\p{N}._-]*$/u.test(part))) {
      throw new Error(`a paper has an unsafe path: ${JSON.stringify(path)}`);
    }
  }
}

/** What is wrong with the folder, and what of its files stays, before anything is written. */
async function checkFolder(
  folder: string,
  papers: Papers,
  existing: ExistingFiles,
): Promise<{ readonly finding: Finding | null; readonly own: readonly string[] }> {
  if (!(await exists(folder))) return { finding: null, own: [] };
  const about = await lstat(folder);
  if (about.isSymbolicLink()) {
    return { finding: cannotWrite(folder, 'a link with this name is in the way'), own: [] };
  }
  if (!about.isDirectory()) {
    return { finding: cannotWrite(folder, 'a file with this name is in the way'), own: [] };
  }
  const standing = await look(folder, papers);
  return { finding: refusal(folder, standing, existing), own: standing.own };
}

async function lookFirst(folder: string, existing: ExistingFiles): Promise<readonly Finding[]> {
  try {
    // The nearest folder that exists must let us in.
    let parent = dirname(folder);
    while (!(await exists(parent)) && dirname(parent) !== parent) parent = dirname(parent);
    if (!(await stat(parent)).isDirectory())
      return [cannotWrite(parent, 'a file with this name is in the way')];
    await access(parent, constants.W_OK);
    const { finding } = await checkFolder(folder, new Map(), existing);
    return finding === null ? [] : [finding];
  } catch (error) {
    return [cannotWrite(folder, systemReason(error))];
  }
}

/** Writes the papers into a new folder beside the one they are for, with what a person keeps there. */
async function makeReady(
  { folder, papers }: FolderOfPapers,
  existing: ExistingFiles,
): Promise<{ readonly ready: ReadyFolder } | { readonly finding: Finding }> {
  const fresh = join(dirname(folder), `.${basename(folder)}.new-${process.pid}`);
  try {
    await mkdir(dirname(folder), { recursive: true });
    await tidyAfterKilledRuns(folder);
    const { finding, own } = await checkFolder(folder, papers, existing);
    if (finding !== null) return { finding };
    await writeBeside(fresh, papers);
    for (const path of own) await copyForGood(join(folder, path), join(fresh, path));
    await syncFoldersUnder(fresh);
    const old = join(dirname(folder), `.${basename(folder)}.old-${process.pid}`);
    return { ready: { folder, fresh, old } };
  } catch (error) {
    await clearAway([fresh]);
    return { finding: cannotWrite(folder, systemReason(error)) };
  }
}

async function clearAway(folders: readonly string[]): Promise<void> {
  for (const folder of folders) await rm(folder, { recursive: true, force: true }).catch(() => undefined);
}

/** All papers of all folders are made ready first; only then are the folders exchanged, all or none. */
async function writeAllPapers(
  folders: readonly FolderOfPapers[],
  existing: ExistingFiles,
): Promise<readonly Finding[]> {
  for (const { papers } of folders) checkPaths(papers);
  const ready: ReadyFolder[] = [];
  const findings: Finding[] = [];
  for (const one of folders) {
    const made = await makeReady(one, existing);
    if ('ready' in made) ready.push(made.ready);
    else findings.push(made.finding);
  }
  if (findings.length === 0) {
    const failure = await exchangeAll(ready);
    if (failure === null) return [];
    findings.push(cannotWrite(failure.folder, failure.reason));
  }
  await clearAway(ready.map(({ fresh }) => fresh));
  return findings;
}

function cannotWrite(folder: string, reason: string): Finding {
  return {
    code: 'cannot-write',
    severity: 'error',
    message: `The papers cannot be written here: ${reason}.`,
    place: { file: folder },
    advice: 'choose another place with --out',
  };
}

/** Writes into the file system. */
export const diskWriter: Writer = {
  look: lookFirst,
  papers: (folder, papers, existing) => writeAllPapers([{ folder, papers }], existing),
  allPapers: writeAllPapers,
};
