import { withoutUnseen } from '../../src/basics/visibleText.ts';
import type { ExitCode } from '../exitCodes.ts';
import { exitCodes } from '../exitCodes.ts';
import { systemReason } from '../files/systemReason.ts';

/** What colours of a terminal are written with; all else that begins with an escape is none of ours. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: escapes are what is looked for
const ESCAPES = /\u001b(?!\[[0-9;]{1,20}m)/g;

/** Whatever names a plan or list brings along: only line ends, tabs and colours of what is printed act on a terminal. */
function guarded(text: string): string {
  return withoutUnseen(text.replace(ESCAPES, '?'), '?', '\n\r\t\u001b');
}

/** A value as a JSON document on lines of its own. Characters that cannot be seen are escaped, so that it means the same. */
export function jsonText(value: unknown, replacer?: (key: string, value: unknown) => unknown): string {
  const text = JSON.stringify(value, replacer, 2);
  const unit = (character: string) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
  const escaped = text.replace(/[^\n\u0020-\u007e]+/g, (run) =>
    [...run]
      .map((each) => (withoutUnseen(each, '') === '' ? each.split('').map(unit).join('') : each))
      .join(''),
  );
  return `${escaped}\n`;
}

/** Writes to standard output; resolves when the text is on its way, so that a pipe is never cut short. */
export function print(text: string): Promise<void> {
  return send(process.stdout, text);
}

/** Writes to standard error; where that cannot be written there is nobody to tell. */
export function printError(text: string): Promise<void> {
  return send(process.stderr, text).catch(() => undefined);
}

/** What was to be printed cannot be: the file or disk that the output goes to. */
export class OutputFault extends Error {
  override readonly name = 'OutputFault';

  constructor(cause: unknown) {
    super(`What is to be printed cannot be written where the output goes: ${systemReason(cause)}.`, {
      cause,
    });
  }
}

function send(stream: NodeJS.WriteStream, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    stream.write(guarded(text), (error) => {
      if (error === null || error === undefined) return resolve();
      // A reader such as `head` may have seen enough.
      if ((error as NodeJS.ErrnoException).code === 'EPIPE') process.exit(process.exitCode ?? exitCodes.done);
      reject(new OutputFault(error));
    });
  });
}

/** Sets how the process will end once everything is written. */
export function endWith(code: ExitCode): void {
  process.exitCode = code;
}
