import { lstat, open, readdir, realpath, stat } from 'node:fs/promises';
import { basename, dirname, join, sep } from 'node:path';
import { nearestWord } from '../../src/basics/nearestWord.ts';
import type { Reader, ReadKind } from '../../src/edge/index.ts';
import type { Checked, Finding } from '../../src/model/finding.ts';
import { movedAway } from './leftBeside.ts';
import { isSystemError, systemReason } from './systemReason.ts';

const MEGABYTE = 1_000_000;
/** Greatest sizes in bytes. A full order is some kilobytes, a plan of 5,000 panels some megabytes. */
const greatestBytes: Readonly<Record<ReadKind | 'library', number>> = {
  order: MEGABYTE,
  library: MEGABYTE,
  list: 20 * MEGABYTE,
  plan: 64 * MEGABYTE,
};
const GREATEST_LIBRARY_FILES = 2000;
const GREATEST_LIBRARY_DEPTH = 4;

/** Codes of findings that say that a file or folder itself could not be read or written. */
export const fileCodes: ReadonlySet<string> = new Set([
  'file-missing',
  'folder-missing',
  'not-a-file',
  'not-a-folder',
  'file-unreadable',
  'file-too-large',
  'file-not-text',
  'link-out-of-library',
  'library-too-large',
  'cannot-write',
  'papers-edited',
  'folder-not-ours',
  'store-there',
  'store-locked',
]);

function finding(code: string, file: string, message: string, more: Partial<Finding> = {}): Finding {
  return { code, severity: 'error', message, place: { file }, ...more };
}

async function missing(path: string, what: 'file' | 'folder'): Promise<Finding> {
  const code = what === 'file' ? 'file-missing' : 'folder-missing';
  const moved = await movedAway(path);
  if (moved !== null) {
    return finding(code, path, `There is no such ${what}, since a run ended while it exchanged its folder.`, {
      found: moved.now,
      advice: `that is how the folder was before: the next run that writes it brings it back, or rename it to ${moved.folder}`,
    });
  }
  const siblings = await readdir(dirname(path)).catch(() => [] as string[]);
  const nearest = nearestWord(basename(path), siblings.sort());
  return finding(code, path, `There is no such ${what}.`, {
    ...(nearest === undefined ? {} : { nearest: join(dirname(path), nearest) }),
    advice: `give the path of an existing ${what}, from the folder you are in`,
  });
}

/** Decodes UTF-8 strictly; a text editor's byte order mark is dropped. Null when it is not UTF-8 text. */
function decode(bytes: Uint8Array): string | null {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return text.includes('\0') ? null : text;
  } catch {
    return null;
  }
}

function megabytes(bytes: number): string {
  return `${(bytes / MEGABYTE).toFixed(bytes < 10 * MEGABYTE ? 1 : 0)} MB`;
}

async function readWhole(path: string, kind: ReadKind | 'library'): Promise<Checked<string>> {
  const fail = (found: Finding): Checked<string> => ({ ok: false, findings: [found] });
  try {
    const about = await stat(path);
    if (about.isDirectory()) {
      return fail(
        finding('not-a-file', path, 'This is a folder, not a file.', { advice: 'name a file in it' }),
      );
    }
    if (!about.isFile()) return fail(finding('not-a-file', path, 'This is not an ordinary file.'));
    const limit = greatestBytes[kind];
    const tooLarge = (size: string) =>
      fail(
        finding('file-too-large', path, `The file is too large for ${kindWord(kind)}.`, {
          found: size,
          expected: `at most ${megabytes(limit)}`,
          advice: 'check that it is the right file',
        }),
      );
    if (about.size > limit) return tooLarge(megabytes(about.size));
    const handle = await open(path, 'r');
    try {
      // The size may have changed since: never read more than the limit.
      const bytes = Buffer.alloc(Math.min(limit, Math.max(about.size, 65_536)) + 1);
      let length = 0;
      while (length < bytes.length) {
        const { bytesRead } = await handle.read(bytes, length, bytes.length - length, null);
        if (bytesRead === 0) break;
        length += bytesRead;
      }
      if (length === bytes.length) return tooLarge(`more than ${megabytes(length - 1)}`);
      const text = decode(bytes.subarray(0, length));
      if (text === null) {
        return fail(
          finding('file-not-text', path, 'The file is not plain text in UTF-8.', {
            advice: 'save it as plain text with the encoding UTF-8',
          }),
        );
      }
      return { ok: true, value: text, findings: [] };
    } finally {
      await handle.close();
    }
  } catch (error) {
    if (isSystemError(error) && (error.code === 'ENOENT' || error.code === 'ENOTDIR')) {
      return fail(await missing(path, 'file'));
    }
    return fail(finding('file-unreadable', path, `The file cannot be read: ${systemReason(error)}.`));
  }
}

function kindWord(kind: ReadKind | 'library'): string {
  switch (kind) {
    case 'order':
      return 'an order';
    case 'list':
      return 'a list';
    case 'plan':
      return 'a plan';
    case 'library':
      return 'a file of a library';
  }
}

/** Paths of the YAML files under a library folder, sorted; its orders are not part of it. */
async function libraryPaths(folder: string, findings: Finding[]): Promise<string[]> {
  const root = await realpath(folder);
  const paths: string[] = [];
  const walk = async (inside: string, depth: number): Promise<void> => {
    const entries = (await readdir(join(folder, inside))).sort();
    for (const name of entries) {
      if (name.startsWith('.')) continue;
      const path = inside === '' ? name : `${inside}/${name}`;
      const full = join(folder, path);
      if ((await lstat(full)).isSymbolicLink()) {
        const target = await realpath(full).catch(() => '');
        if (!target.startsWith(root + sep)) {
          findings.push(
            finding('link-out-of-library', full, 'This link leads out of the library.', {
              advice: 'put a copy of the file in its place',
            }),
          );
          continue;
        }
      }
      const about = await stat(full);
      if (about.isDirectory()) {
        if (path !== 'orders' && depth < GREATEST_LIBRARY_DEPTH) await walk(path, depth + 1);
      } else if (/\.ya?ml$/i.test(name)) {
        paths.push(path);
      }
      if (paths.length > GREATEST_LIBRARY_FILES) return;
    }
  };
  await walk('', 0);
  return paths;
}

async function readLibraryFolder(folder: string): Promise<Checked<ReadonlyMap<string, string>>> {
  const findings: Finding[] = [];
  const files = new Map<string, string>();
  try {
    if (!(await stat(folder)).isDirectory()) {
      return {
        ok: false,
        findings: [finding('not-a-folder', folder, 'A library is a folder, and this is a file.')],
      };
    }
    const paths = await libraryPaths(folder, findings);
    if (paths.length > GREATEST_LIBRARY_FILES) {
      findings.push(
        finding('library-too-large', folder, 'The folder holds too many files for a library.', {
          expected: `at most ${GREATEST_LIBRARY_FILES}`,
        }),
      );
      return { ok: false, findings };
    }
    for (const path of paths) {
      const read = await readWhole(join(folder, path), 'library');
      findings.push(...read.findings);
      if (read.ok) files.set(`${folder}/${path}`, read.value);
    }
  } catch (error) {
    if (isSystemError(error) && (error.code === 'ENOENT' || error.code === 'ENOTDIR')) {
      return { ok: false, findings: [await missing(folder, 'folder')] };
    }
    return {
      ok: false,
      findings: [finding('file-unreadable', folder, `The library cannot be read: ${systemReason(error)}.`)],
    };
  }
  return findings.length > 0 ? { ok: false, findings } : { ok: true, value: files, findings };
}

/** Reads from the disk, with a greatest size for every kind of file. */
export const diskReader: Reader = { text: readWhole, library: readLibraryFolder };
