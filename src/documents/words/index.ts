import { de } from './de.ts';
import { en } from './en.ts';
import type { Language, Words } from './words.ts';

export type { Language, Words } from './words.ts';

/** Languages by their tags; another language is a file beside these and a line here. */
const languages: Readonly<Record<Language, Words>> = { en, de };

/** The words of a language. Throws when there is no such language. */
export function wordsOf(language: string): Words {
  const words = Object.hasOwn(languages, language) ? languages[language as Language] : undefined;
  if (words === undefined) throw new Error(`no words for language ${language}`);
  return words;
}
