import { randomBytes } from 'node:crypto';
import { link, mkdir, open, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { Checked, Finding } from '../../src/model/finding.ts';
import type { Booking, Draft, Ledger } from '../../src/model/store.ts';
import {
  bookDraft,
  bookingText,
  type LedgerText,
  newLedgerText,
  readLedgerText,
} from '../../src/pipeline/keepStore.ts';
import { syncFolder } from '../files/syncFolder.ts';
import { systemReason } from '../files/systemReason.ts';
import { takeLock } from './lock.ts';

/**
 * A store is a folder with `ledger.jsonl`, to which every booking adds a line, and `lock` while somebody books. A line is
 * added and synced rather than the file written anew: what is booked is never written again, so that no fault in writing
 * can lose it, and a booking takes as long in the tenth year as on the first day. What a kill or a power cut leaves of a
 * line is recognised by its check, counts for nothing, and is taken off before the next line is added.
 */
const LEDGER_NAME = 'ledger.jsonl';
const LOCK_NAME = 'lock';
/** How long to wait for another to be done. */
export const USUAL_WAIT_SECONDS = 10;

/** A ledger as it lies in its file. */
export interface StoredLedger extends LedgerText {
  /** Length in bytes of its good lines. */
  readonly bytes: number;
}

/** A booking that is in the file, with the ledger after it. */
export interface Booked {
  readonly booking: Booking;
  readonly before: Ledger;
  readonly ledger: Ledger;
}

function failed(code: string, file: string, message: string, advice?: string): Checked<never> {
  const finding: Finding = {
    code,
    severity: 'error',
    message,
    place: { file },
    ...(advice ? { advice } : {}),
  };
  return { ok: false, findings: [finding] };
}

function isThere(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}

/** Makes a store in which nothing is booked, in a folder that is new or has no ledger. */
export async function beginStore(folder: string): Promise<Checked<null>> {
  const path = join(folder, LEDGER_NAME);
  const ready = join(folder, `.${LEDGER_NAME}.new-${process.pid}-${randomBytes(6).toString('hex')}`);
  try {
    await mkdir(folder, { recursive: true });
    await writeFile(ready, newLedgerText(), { flag: 'wx', flush: true });
    try {
      // A link, unlike a new name, never takes the place of a ledger that is there. Some disks know no links.
      await link(ready, path).catch((error: NodeJS.ErrnoException) => {
        if (error.code === 'EEXIST') throw error;
        return writeFile(path, newLedgerText(), { flag: 'wx', flush: true });
      });
    } finally {
      await rm(ready, { force: true });
    }
    // The folder itself may be new, and the folders around it.
    for (let made = resolve(folder); dirname(made) !== made; made = dirname(made)) await syncFolder(made);
    return { ok: true, value: null, findings: [] };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') {
      return failed('store-there', path, 'There is a store in this folder already; it was left as it is.');
    }
    return failed('cannot-write', folder, `The store cannot be made: ${systemReason(error)}.`);
  }
}

async function readOnce(path: string): Promise<Checked<StoredLedger>> {
  const bytes = await readFile(path);
  const end = bytes.lastIndexOf(0x0a) + 1;
  let whole: string;
  try {
    whole = new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(0, end));
  } catch {
    return failed('file-not-text', path, 'The ledger is not a text in UTF-8.');
  }
  // What follows the last line break may end in the middle of a letter.
  const rest = new TextDecoder('utf-8').decode(bytes.subarray(end));
  const read = readLedgerText(whole + rest, path);
  if (!read.ok) return read;
  const { torn } = read.value;
  const tornBytes = rest !== '' ? bytes.length - end : Buffer.byteLength(torn) + 1;
  return {
    ok: true,
    value: { ...read.value, bytes: torn === '' ? bytes.length : bytes.length - tornBytes },
    findings: torn === '' ? [] : [tornLine(path, read.value)],
  };
}

function tornLine(path: string, { ledger, torn }: LedgerText): Finding {
  const line = ledger.bookings.length + 2;
  return {
    code: 'booking-torn',
    severity: 'warning',
    message:
      'The last line was written only in part, so it counts for nothing: that booking was never confirmed.',
    place: { file: path, line },
    found: torn.slice(0, 200),
    advice: 'book it again; the next booking takes the place of that line',
  };
}

/** Reads a store's ledger. A line that another is adding at this moment is waited for. */
export async function readStore(folder: string): Promise<Checked<StoredLedger>> {
  const path = join(folder, LEDGER_NAME);
  try {
    for (let again = 0; ; again++) {
      const read = await readOnce(path);
      const beingWritten = read.ok && read.value.torn !== '' && (await isThere(join(folder, LOCK_NAME)));
      if (!beingWritten || again >= 5) return read;
      await pause(30);
    }
  } catch (error) {
    if (['ENOENT', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? '')) {
      const advice = `name the folder of a store with --store, or make one: plywright stock begin --store ${folder}`;
      return failed('folder-missing', folder, 'There is no store in this folder.', advice);
    }
    return failed('file-unreadable', path, `The ledger cannot be read: ${systemReason(error)}.`);
  }
}

/** Adds a line at the end of what is good, and comes back when it is on the disk; of a failure nothing stays. */
async function addLine(path: string, stored: StoredLedger, text: string): Promise<void> {
  const handle = await open(path, 'r+');
  try {
    await handle.truncate(stored.bytes);
    const bytes = Buffer.from(stored.open ? `\n${text}` : text);
    try {
      let written = 0;
      while (written < bytes.length) {
        const { bytesWritten } = await handle.write(
          bytes,
          written,
          bytes.length - written,
          stored.bytes + written,
        );
        written += bytesWritten;
      }
      await handle.sync();
    } catch (error) {
      await handle.truncate(stored.bytes).catch(() => undefined);
      throw error;
    }
  } finally {
    await handle.close();
  }
}

/** Clears away files that runs killed while they took the lock or began the store have left. */
async function tidy(folder: string): Promise<void> {
  for (const name of await readdir(folder)) {
    const left = /^(?:lock(?:\.taking)*\.|\.ledger\.jsonl\.new-)(\d+)-[0-9a-f]{12}$/.exec(name);
    if (left === null || Number(left[1]) === process.pid) continue;
    try {
      process.kill(Number(left[1]), 0);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ESRCH') await rm(join(folder, name), { force: true });
    }
  }
}

async function bookLocked(
  folder: string,
  make: (ledger: Ledger) => Checked<Draft>,
): Promise<Checked<Booked>> {
  const stored = await readStore(folder);
  if (!stored.ok) return stored;
  const draft = make(stored.value.ledger);
  if (!draft.ok) return { ok: false, findings: [...stored.findings, ...draft.findings] };
  const after = bookDraft(stored.value.ledger, draft.value);
  const findings = [...stored.findings, ...draft.findings, ...after.findings];
  if (!after.ok) return { ok: false, findings };
  const booking = after.value.bookings.at(-1)!;
  const path = join(folder, LEDGER_NAME);
  try {
    await addLine(path, stored.value, bookingText(booking, stored.value.check));
  } catch (error) {
    return failed('cannot-write', path, `Nothing was booked: ${systemReason(error)}.`);
  }
  return { ok: true, value: { booking, before: stored.value.ledger, ledger: after.value }, findings };
}

/**
 * Books what `make` makes of the ledger as it is, under the store's lock. When it comes back with a booking, that is on the
 * disk; with an error the ledger is as it was.
 */
export async function bookInStore(
  folder: string,
  make: (ledger: Ledger) => Checked<Draft>,
  waitSeconds = USUAL_WAIT_SECONDS,
): Promise<Checked<Booked>> {
  // Without a ledger there is nothing to lock.
  if (!(await isThere(join(folder, LEDGER_NAME)))) {
    const none = await readStore(folder);
    if (!none.ok) return none;
  }
  const lock = await takeLock(join(folder, LOCK_NAME), waitSeconds);
  if (!lock.ok) return lock;
  const told = lock.value.tookOver === null ? [] : [lock.value.tookOver];
  let booked: Checked<Booked>;
  try {
    // What cannot be cleared away hinders nobody.
    await tidy(folder).catch(() => undefined);
    booked = await bookLocked(folder, make);
  } catch (fault) {
    await lock.value.release().catch(() => undefined);
    throw fault;
  }
  // Whatever becomes of the lock, what is booked is booked, and must be told so.
  const stays = await lock.value.release().then(
    () => [],
    (error: unknown) => [lockStays(join(folder, LOCK_NAME), error)],
  );
  return { ...booked, findings: [...told, ...booked.findings, ...stays] };
}

function lockStays(path: string, error: unknown): Finding {
  return {
    code: 'lock-stays',
    severity: 'warning',
    message: `The lock of the store could not be taken away: ${systemReason(error)}.`,
    place: { file: path },
    advice: 'the next run takes it away; nothing else is wrong',
  };
}
