import type { Library } from '../../src/model/library.ts';
import type { WorkedOut } from '../../src/model/sweep.ts';

/** What a thread that works designs out is started with. Plain data, so that it can be copied into any thread. */
export interface DesignWorkerData {
  readonly library: Library;
  readonly text: string;
  readonly file: string;
  readonly below: readonly { readonly text: string; readonly file: string }[];
  readonly seed: number;
  readonly workLimit: number;
}

/** One way to build the order. */
export interface DesignRequest {
  readonly index: number;
  readonly name: string;
  readonly set: readonly string[];
}

export type DesignReply =
  | { readonly kind: 'ready' }
  | { readonly kind: 'done'; readonly index: number; readonly result: WorkedOut }
  | { readonly kind: 'fault'; readonly index: number; readonly message: string };
