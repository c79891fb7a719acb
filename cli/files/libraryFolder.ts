import { readdir, stat } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { nearestWord } from '../../src/basics/nearestWord.ts';
import type { Checked, Finding } from '../../src/model/finding.ts';

const LIBRARIES = 'parts-libraries';
/** What every library has; tells a library from any other folder. */
const MARK = 'library.yaml';
const packageLibraries = fileURLToPath(new URL(`../../../${LIBRARIES}`, import.meta.url));

async function isFolder(path: string): Promise<boolean> {
  return stat(path).then(
    (about) => about.isDirectory(),
    () => false,
  );
}

async function isLibrary(path: string): Promise<boolean> {
  return stat(join(path, MARK)).then(
    () => true,
    () => false,
  );
}

function foldersUpwards(from: string): string[] {
  const folders = [resolve(from)];
  for (let here = resolve(from); dirname(here) !== here; here = dirname(here)) folders.push(dirname(here));
  return folders;
}

/** A path as short as it can be said from the folder that the person is in. */
export function shortPath(path: string): string {
  const from = relative(process.cwd(), path);
  const short = from === '' || from.startsWith('..') || isAbsolute(from) ? path : from;
  return short.replaceAll(sep, '/');
}

function isPath(name: string): boolean {
  return /[/\\]/.test(name) || name.startsWith('.');
}

/** Folders that hold libraries, nearest first: `parts-libraries/` here, further up, and the one of the package. */
function librariesFolders(from: readonly string[]): string[] {
  const folders = from.flatMap(foldersUpwards).map((folder) => join(folder, LIBRARIES));
  return [...new Set([...folders, packageLibraries])];
}

async function namesOfLibraries(folders: readonly string[]): Promise<string[]> {
  const names = new Set<string>();
  for (const folder of folders) {
    for (const name of await readdir(folder).catch(() => [] as string[])) {
      if (await isLibrary(join(folder, name))) names.add(name);
    }
  }
  return [...names].sort();
}

function notFound(name: string, names: readonly string[], place: Finding['place']): Finding {
  const nearest = nearestWord(name, names);
  return {
    code: 'folder-missing',
    severity: 'error',
    message: `There is no library “${name}”.`,
    ...(place === undefined ? {} : { place }),
    found: name,
    ...(names.length === 0 ? {} : { expected: names.join(', ') }),
    ...(nearest === undefined ? {} : { nearest }),
    advice: `a library is a folder with a ${MARK}: under ${LIBRARIES}/ by its name, or anywhere by its path`,
  };
}

/**
 * The folder of the library that an order names: a name is looked up under `parts-libraries/` from the order's folder
 * upwards, then from the current folder upwards, then in the package; a path counts from the order's folder.
 */
export async function libraryOfOrder(
  name: string,
  orderFile: string,
  place: Finding['place'],
): Promise<Checked<string>> {
  const orderFolder = dirname(resolve(orderFile));
  if (isPath(name)) {
    const folder = resolve(orderFolder, name);
    if (await isFolder(folder)) return { ok: true, value: shortPath(folder), findings: [] };
    return { ok: false, findings: [notFound(name, [], place)] };
  }
  const around = foldersUpwards(orderFolder).find((folder) => basename(folder) === name);
  if (around !== undefined && (await isLibrary(around))) {
    return { ok: true, value: shortPath(around), findings: [] };
  }
  const folders = librariesFolders([orderFolder, process.cwd()]);
  for (const folder of folders) {
    if (await isLibrary(join(folder, name))) {
      return { ok: true, value: shortPath(join(folder, name)), findings: [] };
    }
  }
  return { ok: false, findings: [notFound(name, await namesOfLibraries(folders), place)] };
}

/** The folders of the library named on the command line, or without one of all that there are. */
export async function librariesOfCommand(named: string | undefined): Promise<Checked<string>[]> {
  const names = named === undefined ? await namesOfLibraries(librariesFolders([process.cwd()])) : [];
  if (names.length < 2) return [await libraryOfCommand(named)];
  return Promise.all(names.map((name) => libraryOfCommand(name)));
}

/**
 * The folder of the library named on the command line: a path from the current folder, or a name under
 * `parts-libraries/`. Without one, the only library there is.
 */
export async function libraryOfCommand(named: string | undefined): Promise<Checked<string>> {
  const folders = librariesFolders([process.cwd()]);
  if (named !== undefined) {
    if (await isFolder(named)) return { ok: true, value: shortPath(resolve(named)), findings: [] };
    for (const folder of isPath(named) ? [] : folders) {
      if (await isLibrary(join(folder, named))) {
        return { ok: true, value: shortPath(join(folder, named)), findings: [] };
      }
    }
    return { ok: false, findings: [notFound(named, await namesOfLibraries(folders), undefined)] };
  }
  const names = await namesOfLibraries(folders);
  const [only] = names;
  if (names.length === 1 && only !== undefined) return libraryOfCommand(only);
  return {
    ok: false,
    findings: [
      {
        code: 'folder-missing',
        severity: 'error',
        message: names.length === 0 ? 'There is no library here.' : 'There are several libraries.',
        ...(names.length === 0 ? {} : { found: names.join(', ') }),
        advice: 'name one with --library',
      },
    ],
  };
}
