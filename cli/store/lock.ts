import { randomBytes } from 'node:crypto';
import { link, readFile, rm, unlink, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { setTimeout as pause } from 'node:timers/promises';
import { z } from 'zod';
import type { Checked, Finding } from '../../src/model/finding.ts';
import { systemReason } from '../files/systemReason.ts';

/** Who holds a lock, as its file says. */
const holder = z.object({
  process: z.number().int(),
  computer: z.string(),
  since: z.string(),
  token: z.string(),
});
type Holder = z.infer<typeof holder>;

/** A lock that is held; `tookOver` says so where one was left by a run that had ended. */
export interface HeldLock {
  readonly tookOver: Finding | null;
  /** Gives it back. */
  readonly release: () => Promise<void>;
}

const MILLISECONDS_BETWEEN = 40;
/** A lock that is left behind is taken over under a lock of its own, which may be left behind as well. */
const MOST_DEPTH = 3;

function codeOf(error: unknown): string | undefined {
  return (error as NodeJS.ErrnoException).code;
}

/** Puts a file with its whole text in place, if there is none: another program never sees it empty. */
async function putInPlace(path: string, text: string, token: string): Promise<boolean> {
  const ready = `${path}.${token}`;
  await writeFile(ready, text, { flag: 'wx' });
  try {
    await link(ready, path);
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    if (!['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS'].includes(codeOf(error) ?? '')) throw error;
  } finally {
    await rm(ready, { force: true });
  }
  // A disk without links: the file is empty for a moment, which counts as held by somebody unknown.
  try {
    await writeFile(path, text, { flag: 'wx' });
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    throw error;
  }
}

async function holderOf(path: string): Promise<Holder | 'nobody' | 'unknown'> {
  try {
    const read = holder.safeParse(JSON.parse(await readFile(path, 'utf8')));
    return read.success ? read.data : 'unknown';
  } catch (error) {
    return codeOf(error) === 'ENOENT' ? 'nobody' : 'unknown';
  }
}

/** Locks of this very run, which may book twice at once. */
const ownTokens = new Set<string>();

/** Whether the run that holds a lock has ended for certain: it ran on this computer, and no process has its number. */
function hasEnded(held: Holder): boolean {
  if (held.computer !== hostname()) return false;
  // Our own number on another's lock can only be that of an earlier run.
  if (held.process === process.pid) return !ownTokens.has(held.token);
  try {
    process.kill(held.process, 0);
    return false;
  } catch (error) {
    return codeOf(error) === 'ESRCH';
  }
}

/**
 * Takes away the lock of a run that has ended. Only who holds the lock for doing so looks again and takes it away, so that
 * never the lock of another that came in between is taken.
 */
async function clearAway(path: string, left: Holder, depth: number): Promise<boolean> {
  if (depth >= MOST_DEPTH) return false;
  const guard = await tryOnce(`${path}.taking`, depth + 1);
  if (guard === null) return false;
  try {
    const now = await holderOf(path);
    if (typeof now === 'string' || now.token !== left.token) return false;
    await unlink(path);
    return true;
  } finally {
    await guard.release();
  }
}

function tookOverFrom(path: string, left: Holder): Finding {
  return {
    code: 'lock-left-behind',
    severity: 'warning',
    message: `A run that began to book on ${left.since} ended before it was done; its lock was taken away.`,
    place: { file: path },
    advice: 'look with `plywright stock history` whether its booking is there',
  };
}

/** Takes the lock if nobody holds it, or who held it has ended; null otherwise. */
async function tryOnce(path: string, depth = 0): Promise<HeldLock | null> {
  const token = `${process.pid}-${randomBytes(6).toString('hex')}`;
  ownTokens.add(token);
  const own: Holder = {
    process: process.pid,
    computer: hostname(),
    since: new Date().toISOString(),
    token,
  };
  let tookOver: Finding | null = null;
  const held = await holderOf(path);
  if (typeof held !== 'string' && hasEnded(held)) {
    if (!(await clearAway(path, held, depth))) return null;
    tookOver = tookOverFrom(path, held);
  }
  if (!(await putInPlace(path, `${JSON.stringify(own)}\n`, token))) return null;
  const release = async () => {
    // Somebody may have taken it away by hand; another's is never taken away.
    const now = await holderOf(path);
    if (typeof now !== 'string' && now.token === token) await rm(path, { force: true });
  };
  return { tookOver, release };
}

async function heldByAnother(path: string): Promise<Finding> {
  const held = await holderOf(path);
  const by =
    typeof held === 'string'
      ? 'by a run that cannot be told'
      : `since ${held.since} by process ${held.process} on ${held.computer}`;
  return {
    code: 'store-locked',
    severity: 'error',
    message: 'Somebody else is booking in this store, so nothing was booked.',
    place: { file: path },
    found: `held ${by}`,
    advice: 'try again; if nobody is booking any more, delete this file',
  };
}

/**
 * Takes the lock of a store, so that only one writes at a time; waits up to `waitSeconds` for another to be done. A lock of
 * a run on this computer that has ended is taken over, and told; of another computer's nobody can know, so a person decides.
 */
export async function takeLock(path: string, waitSeconds: number): Promise<Checked<HeldLock>> {
  const until = performance.now() + waitSeconds * 1000;
  try {
    for (;;) {
      const held = await tryOnce(path);
      if (held !== null) return { ok: true, value: held, findings: [] };
      if (performance.now() >= until) return { ok: false, findings: [await heldByAnother(path)] };
      await pause(MILLISECONDS_BETWEEN);
    }
  } catch (error) {
    const message = `The store cannot be written: ${systemReason(error)}.`;
    return {
      ok: false,
      findings: [{ code: 'cannot-write', severity: 'error', message, place: { file: path } }],
    };
  }
}
