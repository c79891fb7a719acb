import type { ExitCode } from '../exitCodes.ts';
import { exitCodes } from '../exitCodes.ts';

/** Writes to standard output; resolves when the text is on its way, so that a pipe is never cut short. */
export function print(text: string): Promise<void> {
  return send(process.stdout, text);
}

/** Writes to standard error. */
export function printError(text: string): Promise<void> {
  return send(process.stderr, text);
}

function send(stream: NodeJS.WriteStream, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    stream.write(text, (error) => {
      if (error === null || error === undefined) return resolve();
      // A reader such as `head` may have seen enough.
      if ((error as NodeJS.ErrnoException).code === 'EPIPE') process.exit(process.exitCode ?? exitCodes.done);
      reject(error);
    });
  });
}

/** Sets how the process will end once everything is written. */
export function endWith(code: ExitCode): void {
  process.exitCode = code;
}
