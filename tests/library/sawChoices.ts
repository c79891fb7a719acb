import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Tried } from '../helpers/allChoices.ts';

/** What sawing one combination of choices in simulation came to. */
export interface SawnChoice {
  readonly words: readonly string[];
  /** What the replay of its plan had to say; empty where every panel came out as planned. */
  readonly messages: readonly string[];
  /** That the plan holds. */
  readonly panels: number;
}

/**
 * Nests and replays each combination in one of `processes` processes, with the first search only. What comes out does not
 * depend on how many there are. `tell` is called after each.
 */
export async function sawChoices(
  tried: readonly Tried[],
  processes: number,
  tell: (done: number) => void = () => {},
): Promise<SawnChoice[]> {
  const sawn: SawnChoice[] = [];
  let next = 0;
  let done = 0;
  await Promise.all(
    Array.from({ length: Math.min(processes, tried.length) }, async () => {
      const worker = fork(fileURLToPath(new URL('./sawChoicesWorker.ts', import.meta.url)), {
        serialization: 'advanced',
      });
      try {
        for (let index = next++; index < tried.length; index = next++) {
          const { words, order } = tried[index]!;
          const answer = new Promise<Omit<SawnChoice, 'words'>>((resolve, reject) => {
            worker.removeAllListeners();
            worker.once('message', resolve);
            worker.once('error', reject);
            worker.once('exit', () => reject(new Error(`a process ended at ${words.join(', ')}`)));
          });
          worker.send(order as object);
          sawn[index] = { words, ...(await answer) };
          tell(++done);
        }
      } finally {
        worker.removeAllListeners();
        worker.disconnect();
      }
    }),
  );
  return sawn;
}
