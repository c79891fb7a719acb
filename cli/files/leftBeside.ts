import { readdir } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/** What a run lays beside a folder while it exchanges it: the new one, then the one of before. */
export interface LeftBeside {
  readonly kind: 'new' | 'old';
  /** Number of the process that laid it there. */
  readonly processNumber: number;
}

/** What the name of a folder beside another says; null where it is none of such. */
export function leftBeside(folder: string, name: string): LeftBeside | null {
  const start = `.${basename(folder)}.`;
  const match = name.startsWith(start) ? /^(new|old)-(\d+)$/.exec(name.slice(start.length)) : null;
  return match === null ? null : { kind: match[1] as 'new' | 'old', processNumber: Number(match[2]) };
}

/**
 * Where the papers of a folder lie that is missing because a run ended between moving it away and putting the new one in
 * its place: the folder on the way to `path`, and the one beside it. Null where there is none of such.
 */
export async function movedAway(path: string): Promise<{ folder: string; now: string } | null> {
  for (let folder = path; dirname(folder) !== folder; folder = dirname(folder)) {
    const parent = dirname(folder);
    const names = await readdir(parent).catch(() => null);
    if (names === null) continue;
    const old = names.includes(basename(folder))
      ? undefined
      : names.find((name) => leftBeside(folder, name)?.kind === 'old');
    return old === undefined ? null : { folder, now: join(parent, old) };
  }
  return null;
}
