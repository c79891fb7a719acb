import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Library } from '../../src/model/library.ts';
import type { WorkedOut } from '../../src/model/sweep.ts';
import type { WhatIf } from '../../src/model/whatIf.ts';

/** Results kept in a folder, each in a file of its own that is called after all it depends on. */
export interface ResultCache {
  readonly read: (key: string) => Promise<WorkedOut | null>;
  readonly keep: (key: string, result: WorkedOut) => Promise<void>;
}

/** Kind and version of a file of the cache; one of another version is worked out anew. */
const FORMAT = 'plywright result 2';

/** The folder with the program's own files. */
const programFolder = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

/** SHA-256 over the program itself: a later version may find other plans, so that it must not trust results of this one. */
async function programMark(): Promise<string> {
  const hash = createHash('sha256');
  const files = await readdir(programFolder, { recursive: true });
  for (const file of files.filter((each) => each.endsWith('.js')).sort()) {
    hash
      .update(file)
      .update('\0')
      .update(await readFile(join(programFolder, file)))
      .update('\0');
  }
  return hash.digest('hex');
}

/** SHA-256 of plain values, maps and sets among them. */
export function contentKey(...values: readonly unknown[]): string {
  const plain = (_: string, value: unknown) =>
    value instanceof Map || value instanceof Set ? [...value] : value;
  return createHash('sha256').update(JSON.stringify(values, plain)).digest('hex');
}

/** All that the figures of a design depend on, the program and its name aside. */
export interface DesignContent {
  /** Text of the order or variant. */
  readonly text: string;
  readonly whatIf: WhatIf;
  readonly library: Library;
  readonly seed: number;
  /** Moves for each stock group, searched from one seed. */
  readonly work: number;
}

/** Gives keys of designs, the same for every command. */
export async function designKeys(): Promise<(content: DesignContent) => string> {
  const mark = await programMark();
  const libraries = new WeakMap<Library, string>();
  return ({ text, whatIf: { below, set }, library, seed, work }) => {
    const known = libraries.get(library) ?? contentKey(mark, library);
    libraries.set(library, known);
    return contentKey(known, text, below, set, seed, work);
  };
}

/** A result as one of a design of this name: what is kept may have been worked out under another. */
export function underName(result: WorkedOut, name: string): WorkedOut {
  return result.ok ? { ok: true, design: { ...result.design, name } } : result;
}

/** The result in a text that was kept, if it is whole: it may be torn by a power cut, changed, or another program's. */
function resultIn(text: string): WorkedOut | null {
  try {
    const { format, check, result } = JSON.parse(text) as {
      format?: unknown;
      check?: unknown;
      result?: WorkedOut;
    };
    return format === FORMAT && check === contentKey(result) ? (result as WorkedOut) : null;
  } catch {
    return null;
  }
}

/** A cache in a folder, which is made when the first result is kept. Files that are no results are written anew. */
export function resultCache(folder: string): ResultCache {
  const fileOf = (key: string) => join(folder, key.slice(0, 2), `${key}.json`);
  return {
    read: async (key) => {
      const text = await readFile(fileOf(key), 'utf8').catch(() => null);
      return text === null ? null : resultIn(text);
    },
    keep: async (key, result) => {
      const file = fileOf(key);
      const fresh = `${file}.${process.pid}.new`;
      await mkdir(dirname(file), { recursive: true });
      try {
        await writeFile(fresh, `${JSON.stringify({ format: FORMAT, check: contentKey(result), result })}\n`);
        // Renaming puts the whole file in place at once, so that a killed run leaves none that is torn.
        await rename(fresh, file);
      } catch (error) {
        await rm(fresh, { force: true }).catch(() => undefined);
        throw error;
      }
    },
  };
}
