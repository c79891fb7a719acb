import { BroadcastChannel } from 'node:worker_threads';

/** How often each change was reached, by its number. */
export type Reached = Record<string, number>;

/** What the thread with the tests is asked to do: to run tests with one change in force. */
export interface TryChange {
  readonly kind: 'try';
  readonly change: string;
  readonly tests: readonly string[];
  /** A change that is reached more often than this has made an endless loop; undefined where nothing is known. */
  readonly mostReached: number | undefined;
}

/** The tests once they are loaded and have run without any change. */
export interface Loaded {
  readonly kind: 'loaded';
  readonly tests: readonly { readonly name: string; readonly ms: number; readonly fault: string | null }[];
  readonly reached: { readonly static: Reached; readonly perTest: Record<string, Reached> };
}

/** What came of one change: the first test that failed, or null. */
export interface Tried {
  readonly kind: 'tried';
  readonly ran: number;
  readonly failed: { readonly test: string; readonly fault: string } | null;
  readonly endless: boolean;
}

export type ToTests = TryChange | { readonly kind: 'end' };
export type FromTests = Loaded | Tried | { readonly kind: 'broken'; readonly fault: string };

/** One end of the line between the tester and the thread that holds the tests; both live in one process. */
export class Line<Sent, Received> {
  readonly #out: BroadcastChannel;
  readonly #in: BroadcastChannel;
  readonly #arrived: Received[] = [];
  #waiting: ((message: Received) => void) | null = null;

  constructor(end: 'tester' | 'tests') {
    const [out, into] = end === 'tester' ? ['to-tests', 'from-tests'] : ['from-tests', 'to-tests'];
    this.#out = new BroadcastChannel(`${process.pid}-${out}`);
    this.#in = new BroadcastChannel(`${process.pid}-${into}`);
    this.#in.onmessage = (event) => {
      const message = (event as { data: Received }).data;
      if (this.#waiting === null) this.#arrived.push(message);
      else {
        const waiting = this.#waiting;
        this.#waiting = null;
        waiting(message);
      }
    };
  }

  send(message: Sent): void {
    this.#out.postMessage(message);
  }

  next(): Promise<Received> {
    const arrived = this.#arrived.shift();
    if (arrived !== undefined) return Promise.resolve(arrived);
    return new Promise((resolve) => {
      this.#waiting = resolve;
    });
  }

  close(): void {
    this.#out.close();
    this.#in.close();
  }
}
