import type { Library } from '../../src/model/library.ts';
import type { NestOutcome } from '../../src/model/nest.ts';
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

/** What stock groups were nested to, by their content. */
export type NestedGroups = readonly (readonly [content: string, outcome: NestOutcome])[];

/** A request as it goes to a thread, with what others have nested since its last one. */
export interface DesignTask extends DesignRequest {
  readonly nested: NestedGroups;
}

export type DesignReply =
  | { readonly kind: 'ready' }
  | {
      readonly kind: 'done';
      readonly index: number;
      readonly result: WorkedOut;
      /** What the thread has nested for it. */
      readonly nested: NestedGroups;
    }
  | { readonly kind: 'fault'; readonly index: number; readonly message: string };
