import type { Checked, Finding, Place } from '../model/finding.ts';
import { nearestWord } from './nearestWord.ts';

/** What a finding may say beside its sentence. Absent and undefined mean the same. */
export interface FindingDetails {
  readonly found?: string | undefined;
  readonly expected?: string | undefined;
  readonly nearest?: string | undefined;
  readonly advice?: string | undefined;
}

function makeFinding(
  severity: Finding['severity'],
  code: string,
  message: string,
  place: Place | undefined,
  details: FindingDetails,
): Finding {
  return {
    code,
    severity,
    message,
    ...(place !== undefined && { place }),
    ...(details.found !== undefined && { found: details.found }),
    ...(details.expected !== undefined && { expected: details.expected }),
    ...(details.nearest !== undefined && { nearest: details.nearest }),
    ...(details.advice !== undefined && { advice: details.advice }),
  };
}

/** An error: nothing is written while one stands. */
export function errorFinding(
  code: string,
  message: string,
  place?: Place,
  details: FindingDetails = {},
): Finding {
  return makeFinding('error', code, message, place, details);
}

/** A warning: worth a look, stops nothing. */
export function warningFinding(
  code: string,
  message: string,
  place?: Place,
  details: FindingDetails = {},
): Finding {
  return makeFinding('warning', code, message, place, details);
}

/** Whether any of the findings stops the line. */
export function hasErrors(findings: readonly Finding[]): boolean {
  return findings.some((finding) => finding.severity === 'error');
}

/** The value with its findings, or only the findings when one of them is an error or there is no value. */
export function checkedValue<T>(value: T | undefined, findings: readonly Finding[]): Checked<T> {
  const sorted = sortFindings(findings);
  if (hasErrors(sorted)) return { ok: false, findings: sorted };
  if (value === undefined) throw new Error('a value is missing although nothing wrong was found');
  return { ok: true, value, findings: sorted };
}

/** In the order in which a person mends them: by file, then from top to bottom. Equal places keep their order. */
export function sortFindings(findings: readonly Finding[]): Finding[] {
  const fileOf = (finding: Finding) => finding.place?.file ?? '';
  return [...findings].sort((a, b) => {
    if (fileOf(a) !== fileOf(b)) return fileOf(a) < fileOf(b) ? -1 : 1;
    const lines = (a.place?.line ?? 0) - (b.place?.line ?? 0);
    return lines !== 0 ? lines : (a.place?.column ?? 0) - (b.place?.column ?? 0);
  });
}

/** The first `most` characters of a text, one less where the last would be half of a pair, which is no letter. */
export function firstOf(text: string, most: number): string {
  const first = text.slice(0, most);
  return /[\ud800-\udbff]$/.test(first) ? first.slice(0, -1) : first;
}

/** A text that is no longer than `most` characters, with an ellipsis for the rest of a longer one. */
export function shortened(text: string, most: number): string {
  return text.length > most ? `${firstOf(text, most - 1)}…` : text;
}

/** As shown in a sentence: on one line, without control characters, at most 60 characters. */
export function shownText(text: string): string {
  const oneLine = text
    .slice(0, 400)
    .replace(/[\s\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]+/gu, ' ')
    .trim();
  return shortened(oneLine, 60);
}

/** Some words as a person lists them: `a, b or c`; a long list is cut short. */
export function listWords(words: Iterable<string>, last: 'or' | 'and' = 'or'): string {
  const all = [...words].map(shownText);
  if (all.length === 0) return 'nothing';
  if (all.length === 1) return all[0]!;
  if (all.length > 16) return `${all.slice(0, 16).join(', ')} … (${all.length} in all)`;
  return `${all.slice(0, -1).join(', ')} ${last} ${all.at(-1)}`;
}

/**
 * A word that names nothing: says what it should name, the words there are, and the nearest of them.
 * `what` with its article, for example `a board of this library`.
 */
export function unknownWord(
  word: string,
  what: string,
  words: Iterable<string>,
  place?: Place,
  advice?: string,
): Finding {
  const known = [...words];
  const nearest = nearestWord(word, known);
  return errorFinding('unknown-word', `\`${shownText(word)}\` is not ${what}.`, place, {
    found: shownText(word),
    expected: known.length === 0 ? 'none is defined' : listWords(known),
    nearest: nearest === undefined ? undefined : shownText(nearest),
    advice,
  });
}

/** `1st`, `2nd`, `3rd`, `4th`, … `11th`. */
export function ordinal(number: number): string {
  const teen = number % 100 >= 11 && number % 100 <= 13;
  const ending = teen ? 'th' : (['th', 'st', 'nd', 'rd'][number % 10] ?? 'th');
  return `${number}${ending}`;
}
