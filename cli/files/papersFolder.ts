import { createHash } from 'node:crypto';
import {
  access,
  constants,
  cp,
  lstat,
  mkdir,
  readdir,
  readFile,
  rename,
  rm,
  stat,
  writeFile,
} from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { z } from 'zod';
import type { ExistingFiles, FolderOfPapers, Papers, Writer } from '../../src/edge/index.ts';
import type { Finding } from '../../src/model/finding.ts';
import { exchangeAll, type ReadyFolder } from './exchangeFolders.ts';
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

async function readPaperList(folder: string): Promise<ReadonlyMap<string, string> | null> {
  try {
    const read = paperList.safeParse(JSON.parse(await readFile(join(folder, LIST_NAME), 'utf8')));
    return read.success ? new Map(Object.entries(read.data.files)) : null;
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
  const listed = await readPaperList(folder);
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
  return { own, inTheWay, ours: listed !== null || present.every(inListedFolder(present)) };
}

function refusal(folder: string, standing: Standing, existing: ExistingFiles): Finding | null {
  if (existing === 'replace edited') return null;
  if (!standing.ours) {
    return {
      code: 'folder-not-ours',
      severity: 'error',
      message: 'This folder holds files that are not papers of a job.',
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

/** Brings back or clears away what a run that was killed between two renames has left beside the folder. */
async function tidyAfterKilledRuns(folder: string): Promise<void> {
  const parent = dirname(folder);
  const left = new RegExp(
    `^\\.${basename(folder).replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}\\.(new|old)-(\\d+)$`,
  );
  for (const name of (await readdir(parent).catch(() => [] as string[])).sort()) {
    const match = left.exec(name);
    if (match === null || isRunning(Number(match[2]))) continue;
    if (match[1] === 'old' && !(await exists(folder))) await rename(join(parent, name), folder);
    else await rm(join(parent, name), { recursive: true, force: true });
  }
}

async function writeBeside(fresh: string, papers: Papers): Promise<void> {
  await mkdir(fresh);
  for (const [path, text] of papers) {
    const inside = dirname(path);
    if (inside !== '.') await mkdir(join(fresh, inside), { recursive: true });
    await writeFile(join(fresh, path), text, { flag: 'wx' });
  }
  await writeFile(join(fresh, LIST_NAME), listOf(papers), { flag: 'wx' });
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
    for (const path of own) {
      await cp(join(folder, path), join(fresh, path), {
        recursive: true,
        preserveTimestamps: true,
        verbatimSymlinks: true,
      });
    }
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
