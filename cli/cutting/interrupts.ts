import { exitCodes } from '../exitCodes.ts';

/** Listens for Ctrl-C while a search runs. */
export interface Interrupts {
  /** Whether it was pressed. */
  readonly pressed: () => boolean;
  /** From now on it is put off until the papers are in place. */
  readonly putOff: () => void;
  /** Back to what the system does by itself. */
  readonly end: () => void;
}

/** The first Ctrl-C ends the search and keeps the best plan so far; the second ends the program. */
export function listenForInterrupts(stopSearch: () => void): Interrupts {
  let times = 0;
  let writing = false;
  const onInterrupt = () => {
    times++;
    if (writing) return;
    if (times === 1) {
      stopSearch();
      process.stderr.write('\nending the search; Ctrl-C again ends the program without papers\n');
      return;
    }
    process.stderr.write('\nended; nothing was written\n');
    process.exit(exitCodes.interrupted);
  };
  process.on('SIGINT', onInterrupt);
  return {
    pressed: () => times > 0,
    putOff: () => {
      writing = true;
    },
    end: () => void process.off('SIGINT', onInterrupt),
  };
}
