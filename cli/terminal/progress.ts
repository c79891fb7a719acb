import type { NestProgress } from '../../src/edge/index.ts';

/** A line on the terminal that is rewritten in place while the search runs. */
export interface ProgressLine {
  readonly update: (index: number, state: NestProgress) => void;
  /** Takes the line away. */
  readonly clear: () => void;
}

const silent: ProgressLine = { update: () => undefined, clear: () => undefined };
const MILLISECONDS_BETWEEN = 100;

/** How far all searches together are. Silent when the stream is not a terminal. */
export function progressLine(stream: NodeJS.WriteStream, groups: number): ProgressLine {
  if (stream.isTTY !== true || groups === 0) return silent;
  const states = new Map<number, NestProgress>();
  const started = performance.now();
  let drawn = 0;
  return {
    update(index, state) {
      states.set(index, state);
      const now = performance.now();
      if (now - drawn < MILLISECONDS_BETWEEN) return;
      drawn = now;
      let sheets = 0;
      let bound = 0;
      for (const s of states.values()) {
        sheets += s.sheets;
        bound += s.boundSheets;
      }
      const seconds = ((now - started) / 1000).toFixed(1);
      const text = `nesting ${groups} stock groups: ${sheets} sheets, at least ${bound}; ${seconds} s (Ctrl-C keeps this)`;
      stream.write(`\r\u001b[2K${text.slice(0, 79)}`);
    },
    clear() {
      if (drawn > 0) stream.write('\r\u001b[2K');
    },
  };
}

/** Says on a terminal what is being done, until the function that comes back is called. */
export function sayMeanwhile(stream: NodeJS.WriteStream, text: string): () => void {
  if (stream.isTTY !== true) return () => undefined;
  stream.write(text);
  return () => void stream.write('\r\u001b[2K');
}
