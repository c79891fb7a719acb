import { existsSync, lstatSync, truncateSync } from 'node:fs';
import type { FileHandle } from 'node:fs/promises';
import { resolve, sep } from 'node:path';

/**
 * A layer over `node:fs/promises` that can end at any operation, as a power cut does, or answer one with an error. It is put
 * in by `vi.mock('node:fs/promises', async (original) => faultyDisk.over(await original()))`.
 *
 * What is taken to last without being synced is what disks with a journal keep: names of files and folders last in the
 * order in which they were made; what is in a file lasts only once it was synced.
 */
export class PowerCut extends Error {
  override readonly name = 'PowerCut';
}

type Operations = Record<string, unknown>;

/** Operations that change something on the disk; each counts once. */
const CHANGES = ['cp', 'link', 'mkdir', 'rename', 'rm', 'unlink', 'writeFile'];

/** Operations that look at what is there. */
const LOOKS = ['lstat', 'open', 'readdir', 'readFile', 'realpath', 'stat'];

class FaultyDisk {
  /** Operations that are still done; afterwards all fail. Null: no power cut. */
  private left: number | null = null;
  private failing: { at: number; code: string } | null = null;
  private vanishing: number | null = null;
  private looks = 0;
  private unsynced = new Set<string>();
  /** Names of the operations since `begin`. */
  readonly done: string[] = [];

  /** Counts from now on; the power is cut after `operations`, or never. */
  begin(operations: number | null = null): void {
    this.left = operations;
    this.failing = null;
    this.vanishing = null;
    this.looks = 0;
    this.unsynced.clear();
    this.done.length = 0;
  }

  /** Counts from now on, and answers the operation of number `at` (from 0) with an error; later ones go well. */
  failAt(at: number, code: string): void {
    this.begin();
    this.failing = { at, code };
  }

  /** Counts from now on what is read, and lets the file or folder that is asked for at `at` (from 0) be gone. */
  vanishAt(at: number): void {
    this.begin();
    this.vanishing = at;
  }

  private look(operation: string): void {
    if (this.left === -1) throw new PowerCut(operation);
    if (this.vanishing === null || !LOOKS.includes(operation)) return;
    if (this.looks++ === this.vanishing) throw Object.assign(new Error('gone'), { code: 'ENOENT' });
  }

  /** Whether the fault that was asked for came. */
  get struck(): boolean {
    if (this.vanishing !== null) return this.looks > this.vanishing;
    return this.left === -1 || (this.failing !== null && this.done.length > this.failing.at);
  }

  /** The power comes back. With `forget` the disk has lost what was written to files and never synced. */
  restart({ forget }: { readonly forget: boolean }): void {
    this.left = null;
    this.failing = null;
    this.vanishing = null;
    if (forget) {
      for (const path of this.unsynced)
        if (existsSync(path) && lstatSync(path).isFile()) truncateSync(path, 0);
    }
    this.unsynced.clear();
  }

  private change(operation: string): void {
    if (this.left === 0 || this.left === -1) {
      this.left = -1;
      throw new PowerCut(operation);
    }
    if (this.left !== null) this.left--;
    this.done.push(operation);
    if (this.failing?.at === this.done.length - 1) {
      throw Object.assign(new Error(this.failing.code), { code: this.failing.code });
    }
  }

  private moved(from: string, to: string): void {
    const [old, now] = [resolve(from), resolve(to)];
    for (const path of [...this.unsynced]) {
      if (path !== old && !path.startsWith(old + sep)) continue;
      this.unsynced.delete(path);
      this.unsynced.add(now + path.slice(old.length));
    }
  }

  private handle(handle: FileHandle, path: string): FileHandle {
    const before: Record<string, (() => void) | undefined> = {
      write: () => this.unsynced.add(resolve(path)),
      writeFile: () => this.unsynced.add(resolve(path)),
      truncate: () => this.unsynced.add(resolve(path)),
      sync: () => undefined,
    };
    return new Proxy(handle, {
      get: (target, key) => {
        const value = Reflect.get(target, key) as unknown;
        if (typeof value !== 'function') return value;
        return async (...args: unknown[]) => {
          const note = before[String(key)];
          if (note !== undefined) {
            this.change(String(key));
            note();
          } else if (this.left === -1 && key !== 'close') throw new PowerCut(String(key));
          const result = await (value as (...all: unknown[]) => Promise<unknown>).apply(target, args);
          if (key === 'sync') this.unsynced.delete(resolve(path));
          return result;
        };
      },
    });
  }

  /** The layer over the real operations. */
  over(real: Operations): Operations {
    const layer: Operations = { ...real };
    for (const name of Object.keys(real)) {
      const operation = real[name];
      if (typeof operation !== 'function') continue;
      layer[name] = async (...args: unknown[]) => {
        const makes = name === 'open' && args[1] !== 'r' && args[1] !== 'r+';
        if (CHANGES.includes(name) || makes) this.change(name);
        else this.look(name);
        const flushed = (args[2] as { flush?: boolean } | undefined)?.flush === true;
        if (name === 'writeFile' && !flushed) this.unsynced.add(resolve(String(args[0])));
        const result = await (operation as (...all: unknown[]) => Promise<unknown>)(...args);
        if (name === 'cp') this.unsynced.add(resolve(String(args[1])));
        if (name === 'rename') this.moved(String(args[0]), String(args[1]));
        if (name !== 'open') return result;
        return this.handle(result as FileHandle, String(args[0]));
      };
    }
    return layer;
  }
}

// One disk, also for modules that are loaded anew as those of another run.
const everywhere = globalThis as { faultyDisk?: FaultyDisk };
everywhere.faultyDisk ??= new FaultyDisk();
export const faultyDisk = everywhere.faultyDisk;
