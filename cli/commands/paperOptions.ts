import { InvalidArgumentError } from 'commander';
import { nearestWord } from '../../src/basics/nearestWord.ts';
import { paperKinds } from '../papers/kinds.ts';

function mistake(found: string, allowed: readonly string[], expected: string): InvalidArgumentError {
  const nearest = nearestWord(found, allowed);
  return new InvalidArgumentError(nearest === undefined ? expected : `${expected} Did you mean ${nearest}?`);
}

/** Reads one of the words of an option to what it stands for; a wrong one is told with the nearest. */
export function oneOf<Value>(values: ReadonlyMap<string, Value>): (text: string) => Value {
  return (text) => {
    const value = values.get(text.trim().toLowerCase());
    if (value !== undefined) return value;
    const words = [...values.keys()];
    throw mistake(text, words, `It must be one of ${words.join(', ')}.`);
  };
}

/** Reads `--papers`: words with commas between, in the order of the list of papers; `all` stands for all of them. */
export function kindsOfPapers(text: string): string[] {
  const kinds = Object.keys(paperKinds);
  const allowed = [...kinds, 'all'];
  const asked = text.split(',').map((kind) => kind.trim().toLowerCase());
  const unknown = asked.find((kind) => !allowed.includes(kind));
  if (unknown !== undefined) {
    throw mistake(unknown, allowed, `It must be of ${allowed.join(', ')}, with commas between.`);
  }
  return kinds.filter((kind) => asked.includes(kind) || asked.includes('all'));
}

/** What `--papers` knows, a line a word, for the help. */
export const papersInWords = [...Object.entries(paperKinds), ['all', 'all of these'] as const]
  .map(([kind, what]) => `  ${kind.padEnd(10)}  ${what}`)
  .join('\n');
