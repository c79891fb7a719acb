import { lstat, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import { syncFolder } from './syncFolder.ts';
import { systemReason } from './systemReason.ts';

/** A folder with what is to take its place; all three lie side by side, so that renaming is enough. */
export interface ReadyFolder {
  readonly folder: string;
  /** The new folder, whole. */
  readonly fresh: string;
  /** Where the folder of today goes meanwhile. */
  readonly old: string;
}

/** Where an exchange failed, and why in words. */
export interface FailedExchange {
  readonly folder: string;
  readonly reason: string;
}

/** What the exchange needs of the file system. */
export interface FolderMoves {
  readonly rename: (from: string, to: string) => Promise<void>;
}

async function exists(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false,
  );
}

/** Puts a folder back as it was; null when that was done, else where it is now. */
async function putBack(
  ready: ReadyFolder,
  step: 'moved away' | 'exchanged',
  moves: FolderMoves,
): Promise<string | null> {
  try {
    if (step === 'exchanged') await moves.rename(ready.folder, ready.fresh);
    if (await exists(ready.old)) await moves.rename(ready.old, ready.folder);
    return null;
  } catch {
    return ready.old;
  }
}

/**
 * Puts every fresh folder in the place of its old one. When one cannot be exchanged, those that were are put back, so
 * that all folders are as they were; what cannot be put back is told in the reason. Null when all were exchanged; the
 * old folders are gone then.
 */
export async function exchangeAll(
  folders: readonly ReadyFolder[],
  moves: FolderMoves = { rename },
): Promise<FailedExchange | null> {
  const done: ReadyFolder[] = [];
  for (const ready of folders) {
    let step: 'moved away' | null = null;
    try {
      if (await exists(ready.folder)) {
        await moves.rename(ready.folder, ready.old);
        step = 'moved away';
      }
      await moves.rename(ready.fresh, ready.folder);
      done.push(ready);
    } catch (error) {
      const lost: string[] = [];
      if (step !== null) lost.push(...(await asList(putBack(ready, step, moves))));
      for (const before of done.reverse()) lost.push(...(await asList(putBack(before, 'exchanged', moves))));
      const left = lost.length === 0 ? '' : `; what was there before is now in ${lost.join(', ')}`;
      return { folder: ready.folder, reason: `${systemReason(error)}${left}` };
    }
  }
  // The old folders may go only when the new ones are there for good, whatever the power does.
  for (const parent of new Set(done.map(({ folder }) => dirname(folder)))) await syncFolder(parent);
  // What cannot be cleared away now is cleared away by the next run.
  for (const { old } of done) await rm(old, { recursive: true, force: true }).catch(() => undefined);
  return null;
}

async function asList(lost: Promise<string | null>): Promise<readonly string[]> {
  const path = await lost;
  return path === null ? [] : [path];
}
