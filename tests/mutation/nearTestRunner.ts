import { resolve } from 'node:path';
import { createVitest, type Vitest } from 'vitest/node';
import { type FromTests, Line, type Loaded, type ToTests } from './messages.ts';

interface Run {
  readonly testFilter?: string[];
  readonly hitLimit?: number;
  readonly activeMutant: { readonly id: string };
}

/** Hands the tester's changes to a thread that keeps the tests near them loaded. The tester ends a process that hangs. */
class NearTestRunner {
  readonly #line = new Line<ToTests, FromTests>('tester');
  #vitest: Vitest | null = null;
  #running: Promise<unknown> = Promise.resolve();
  #loaded: Loaded | null = null;

  capabilities() {
    return { reloadEnvironment: false };
  }

  async init(): Promise<void> {
    this.#vitest = await createVitest('test', {
      root: process.cwd(),
      config: resolve('tests/mutation/vitest.config.ts'),
      watch: false,
      reporters: [{}],
    });
    this.#running = this.#vitest.start();
    const first = await Promise.race([
      this.#line.next(),
      this.#running.then(() => ({ kind: 'broken', fault: 'the tests could not be loaded' }) as const),
    ]);
    if (first.kind !== 'loaded') {
      const faults = this.#vitest.state.getFiles().flatMap((file) => file.result?.errors ?? []);
      throw new Error([first, ...faults].map((fault) => JSON.stringify(fault)).join('\n'));
    }
    this.#loaded = first;
  }

  async dryRun() {
    const { tests, reached } = this.#loaded!;
    return {
      status: 'complete',
      mutantCoverage: reached,
      tests: tests.map(({ name, ms, fault }) => ({
        id: name,
        name,
        timeSpentMs: ms,
        ...(fault === null ? { status: 0 } : { status: 1, failureMessage: fault }),
      })),
    };
  }

  async mutantRun({ testFilter, hitLimit, activeMutant }: Run) {
    const all = this.#loaded!.tests.map(({ name }) => name);
    this.#line.send({
      kind: 'try',
      change: activeMutant.id,
      tests: testFilter ?? all,
      mostReached: hitLimit,
    });
    const tried = await this.#line.next();
    if (tried.kind !== 'tried') return { status: 'error', errorMessage: JSON.stringify(tried) };
    if (tried.endless) return { status: 'timeout' };
    if (tried.failed === null) return { status: 'survived', nrOfTests: tried.ran };
    return {
      status: 'killed',
      killedBy: [tried.failed.test],
      failureMessage: tried.failed.fault,
      nrOfTests: tried.ran,
    };
  }

  async dispose(): Promise<void> {
    this.#line.send({ kind: 'end' });
    await this.#running;
    this.#line.close();
    await this.#vitest?.close();
  }
}

export const strykerPlugins = [{ kind: 'TestRunner', name: 'near tests', injectableClass: NearTestRunner }];
