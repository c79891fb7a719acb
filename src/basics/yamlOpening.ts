import { parseEvents, YAMLException } from 'js-yaml';
import type { TextLines } from './textLines.ts';

/** What opens a quote or bracket is looked for in texts of no more characters, as a person writes them. */
const LONGEST_SEARCHED = 200_000;
/** Longest part of a line that is looked at. */
const LONGEST_LINE = 400;

/** Where the parser stopped, and why. */
export interface Stop {
  readonly reason: string;
  readonly offset: number;
  readonly text: string;
  readonly lines: TextLines;
}

type Opened = 'single quote' | 'double quote' | 'bracket';

/** What a text that ends early is in the middle of. */
function openAtEnd(text: string): Opened | null {
  try {
    parseEvents(text, {});
    return null;
  } catch (problem) {
    if (!(problem instanceof YAMLException)) throw problem;
    if (problem.reason.includes('within a double quoted scalar')) return 'double quote';
    if (problem.reason.includes('within a single quoted scalar')) return 'single quote';
    return problem.reason.includes('within a flow collection') ? 'bracket' : null;
  }
}

/**
 * The quote or bracket that was open when the parser stopped, if one was opened on a line before or at the end of the text,
 * and the offset of what opens it. The line is found by halves: the text up to the end of the line before is not in the
 * middle of anything, that up to its own end is.
 */
export function openedBefore({
  reason,
  offset,
  text,
  lines,
}: Stop): { readonly what: Opened; readonly at: number } | null {
  if (text.length > LONGEST_SEARCHED) return null;
  const upToEndOf = (line: number) => text.slice(0, lines.startOf(line) + lines.content(line).length);
  const stopped = lines.placeAt(offset).line;
  let open = reason.startsWith('unexpected end of the stream') ? stopped : stopped - 1;
  let what = openAtEnd(upToEndOf(open));
  if (what === null) return null;
  let closed = 0;
  while (open - closed > 1) {
    const middle = (open + closed) >> 1;
    const inside = openAtEnd(upToEndOf(middle));
    if (inside === null) closed = middle;
    else [open, what] = [middle, inside];
  }
  return { what, at: lines.startOf(open) + lastOpening(what, lines.content(open).slice(0, LONGEST_LINE)) };
}

/** Column, from 0, of what is opened last on a line and not closed there. */
function lastOpening(what: Opened, line: string): number {
  // What is written twice in single quotes, or behind a backslash in double ones, neither opens nor closes.
  if (what === 'single quote') return Math.max(0, line.replace(/(?<=\S)''/g, '  ').lastIndexOf("'"));
  if (what === 'double quote') return Math.max(0, line.replace(/\\./g, '  ').lastIndexOf('"'));
  const open: number[] = [];
  for (const { index, 0: bracket } of line.matchAll(/[[\]{}]/g)) {
    if (bracket === '[' || bracket === '{') open.push(index);
    else open.pop();
  }
  return open.at(-1) ?? Math.max(0, line.search(/[[{]/));
}
