/** Where something stands in a file that a person edits. Lines and columns count from 1. */
export interface Place {
  readonly file: string;
  readonly line?: number;
  readonly column?: number;
  /** The field as a person would say it, for example `panels › left side › x`. */
  readonly field?: string;
}

export type Severity = 'error' | 'warning' | 'caution';

/**
 * What is wrong with something a person wrote, or what they should know about it. Findings are data: no stage
 * prints. An `error` stops the line before anything is written; a `warning` does not; a `caution` is safety advice.
 */
export interface Finding {
  /** Stable short name for programs, in words joined by hyphens: `unknown-word`, `panels-clash`. */
  readonly code: string;
  readonly severity: Severity;
  /** One plain sentence for a person at a bench, without the place. */
  readonly message: string;
  readonly place?: Place;
  readonly found?: string;
  readonly expected?: string;
  /** The nearest right word, where a word was wrong. */
  readonly nearest?: string;
  /** What to do about it. */
  readonly advice?: string;
}

/** A result that may be missing because of what was found. `value` is there exactly when no finding is an error. */
export type Checked<T> =
  | { readonly ok: true; readonly value: T; readonly findings: readonly Finding[] }
  | { readonly ok: false; readonly findings: readonly Finding[] };
