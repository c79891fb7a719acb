import type { NestProgress } from '../../src/edge/index.ts';

/** A line on the terminal that is rewritten in place while the search runs. */
export interface ProgressLine {
  readonly update: (index: number, state: NestProgress) => void;
  /** Takes the line away. */
  readonly clear: () => void;
}

const silent: ProgressLine = { update: () => undefined, clear: () => undefined };
const MILLISECONDS_BETWEEN = 100;
const LINE_LENGTH = 79;

/** Sheets, bound, gap to the least cost (in percent, rounded up so that 0 is never said too early) and time. */
export function progressText(groups: number, states: Iterable<NestProgress>, seconds: number): string {
  let [sheets, boundSheets, cost, boundCost] = [0, 0, 0, 0];
  for (const state of states) {
    sheets += state.sheets;
    boundSheets += state.boundSheets;
    cost += state.costMinor;
    boundCost += state.boundCostMinor;
  }
  const percent = boundCost > 0 ? Math.ceil((1000 * (cost - boundCost)) / boundCost) / 10 : 0;
  const gap = cost === boundCost ? 'best' : boundCost > 0 ? `within ${percent} %` : 'no bound yet';
  const text = `${groups} stock groups: ${sheets} sheets, least ${boundSheets}, ${gap}; ${seconds.toFixed(1)} s`;
  return `${text} (Ctrl-C keeps this)`.slice(0, LINE_LENGTH);
}

/** How far all searches together are, time running on between better plans. Silent when the stream is no terminal. */
export function progressLine(stream: NodeJS.WriteStream, groups: number): ProgressLine {
  if (stream.isTTY !== true || groups === 0) return silent;
  const states = new Map<number, NestProgress>();
  const started = performance.now();
  let drawn = 0;
  const draw = () => {
    if (states.size === 0) return;
    drawn = performance.now();
    stream.write(`\r\u001b[2K${progressText(groups, states.values(), (drawn - started) / 1000)}`);
  };
  const clock = setInterval(draw, 5 * MILLISECONDS_BETWEEN);
  clock.unref();
  return {
    update(index, state) {
      states.set(index, state);
      if (performance.now() - drawn >= MILLISECONDS_BETWEEN) draw();
    },
    clear() {
      clearInterval(clock);
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

/** A count on the terminal that is rewritten in place, for work without threads. Silent when the stream is no terminal. */
export function counterLine(
  stream: NodeJS.WriteStream,
  what: string,
): { readonly update: (count: number) => void; readonly clear: () => void } {
  if (stream.isTTY !== true) return { update: () => undefined, clear: () => undefined };
  return {
    update: (count) => void stream.write(`\r\u001b[2K${count} ${what} (Ctrl-C ends this)`),
    clear: () => void stream.write('\r\u001b[2K'),
  };
}
