import { readFileSync } from 'node:fs';

/** Where the build writes the program's help (`writeHelp.ts`). */
export const WRITTEN_HELP = new URL('help.txt', import.meta.url);

const ASKS_FOR_HELP = new Set(['--help', '-h', 'help']);

/**
 * Prints the program's help if `words`, what it was called with, ask for nothing else, and says whether it did. The text
 * is read as the build wrote it: all that takes apart a command line takes half as long to load as Node itself.
 */
export function printWrittenHelp(words: readonly string[]): boolean {
  if (words.length !== 1 || !ASKS_FOR_HELP.has(words[0] ?? '')) return false;
  let text: string;
  try {
    text = readFileSync(WRITTEN_HELP, 'utf8');
  } catch {
    // Compiled by other means than the build: the program makes it anew.
    return false;
  }
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    void import('./main.ts').then(({ answerLostOutput }) => answerLostOutput(error));
  });
  process.stdout.write(text);
  return true;
}
