import type { YAMLException } from 'js-yaml';
import type { Finding } from '../model/finding.ts';
import { errorFinding, shownText } from './findings.ts';
import type { TextLines } from './textLines.ts';
import { unreadablePart, unreadableWords } from './visibleText.ts';
import { openedBefore, type Stop } from './yamlOpening.ts';

const INDENT = 'Begin lines that belong together in the same column, deeper than the field above them.';
const QUOTES = 'Put the whole value in quotes: "…".';
/** Longest part of a line that is looked at. */
const LONGEST_LINE = 400;

interface Explained {
  readonly code?: string;
  readonly message: string;
  readonly advice: string;
  /** Offset of what is told of, where it is not where the parser stopped. */
  readonly offset?: number;
}

const MARK_OF_YAML: Explained = {
  message: 'A value that begins with &, * or ! is read as a mark of YAML.',
  advice: QUOTES,
};
const WRONG_INDENTATION: Explained = {
  message: 'The indentation does not fit the lines above.',
  advice: INDENT,
};
const NEITHER = 'This is neither `field: value` nor an entry of a list.';

/** A quote or a bracket that is not closed; undefined where the parser stopped for another reason. */
function explainOpen(stop: Stop): Explained | undefined {
  if (!/deficient indentation|within a|missed comma|flow collection/.test(stop.reason)) return undefined;
  const opened = openedBefore(stop);
  if (opened?.what === 'bracket')
    return {
      message: 'A bracket is opened here but not closed, or a comma in it is missing.',
      advice: 'Close it with ] or }, and put commas between what is in it.',
      offset: opened.at,
    };
  if (opened !== null)
    return {
      message: 'A quote is opened here but not closed.',
      advice: 'Close it on the same line.',
      offset: opened.at,
    };
  if (stop.offset >= stop.text.length)
    return {
      message: 'A quote or a bracket is opened above but not closed.',
      advice: 'Close it on the same line.',
    };
  if (!/missed comma/.test(stop.reason)) return undefined;
  return {
    message: 'A comma or a closing bracket is missing here.',
    advice: 'Put commas between what is in brackets, and close them with ] or }.',
  };
}

/** What stands where neither a value, a field nor an entry can go on. */
function explainMisplaced({ offset, text, lines }: Stop): Explained {
  const { line } = lines.placeAt(offset);
  const start = lines.startOf(line);
  const before = text.slice(Math.max(start, offset - LONGEST_LINE), offset);
  const character = text[offset] ?? '';
  const tab = before.lastIndexOf('\t');
  if (tab >= 0)
    return {
      message: 'There is a tab in this line where only spaces can be.',
      advice: 'Put spaces in its place.',
      offset: offset - before.length + tab,
    };
  if (/[\]}]/.test(character))
    return { message: 'A bracket is closed here that was not opened.', advice: `Take it out. ${QUOTES}` };
  if (/[@`%,]/.test(character) && /[:\-[{,]\s+$/.test(before))
    return { message: 'A value cannot begin with this character.', advice: QUOTES };
  if (/["']\s*$/.test(before) || /^\s*["'].*["']/.test(before))
    return {
      message: 'The quotes end before the value does.',
      advice: 'Put the whole value in quotes: "…"; in \'…\' a quote is written twice.',
    };
  if (/(?:^|[\s[{,])[&*!]\S*\s*$/.test(before)) return MARK_OF_YAML;
  if (character === '-' && /\S/.test(before))
    return {
      message: 'A list cannot begin on the line of its field.',
      advice: 'Begin each entry on a line of its own with `- `, or write [a, b].',
    };
  if (character === ':' && /:\s/.test(before))
    return { message: 'There are two colons with a space in this line.', advice: QUOTES };
  return character === ':' ? explainColon(line, lines) : explainLine(character, before);
}

/** Offset of the first character of a line that is no space. */
function firstOn(line: number, lines: TextLines): number {
  return lines.startOf(line) + Math.max(0, lines.content(line).search(/\S/));
}

/** The line above that is neither empty nor a note; 0 for none. */
function lineAbove(line: number, lines: TextLines): number {
  let above = line - 1;
  while (above > 0 && /^\s*(?:#|$)/.test(lines.content(above))) above--;
  return above;
}

function neitherFieldNorEntry(line: number, lines: TextLines): Explained {
  return {
    message: NEITHER,
    advice: `Put a colon and a space after the field. ${INDENT}`,
    offset: firstOn(line, lines),
  };
}

/** A colon that ends no name, since the text before it began on a line above. */
function explainColon(line: number, lines: TextLines): Explained {
  const above = lineAbove(line, lines);
  if (above > 0 && !/:(?:\s|$)/.test(lines.content(above))) return neitherFieldNorEntry(above, lines);
  return { ...WRONG_INDENTATION, offset: firstOn(line, lines) };
}

/** A text with no colon behind it, on the line where the parser stopped or the last one above. */
function explainNoColon({ offset, lines }: Stop): Explained {
  const { line, column } = lines.placeAt(offset);
  const isAbove = /^\s*$/.test(lines.content(line).slice(0, column - 1));
  return neitherFieldNorEntry(isAbove ? Math.max(1, lineAbove(line, lines)) : line, lines);
}

/** What begins where it belongs to nothing above. */
function explainLine(character: string, before: string): Explained {
  if (character === '-') return { message: 'An entry of a list cannot stand here.', advice: INDENT };
  return /\S/.test(before) ? { message: NEITHER, advice: INDENT } : WRONG_INDENTATION;
}

/** The parser's reason in words for a person at a bench. */
function explain(stop: Stop): Explained {
  const { reason, offset, text } = stop;
  const open = explainOpen(stop);
  if (open !== undefined) return open;
  if (/non-printable|valid JSON character/.test(reason)) {
    const unreadable = unreadablePart(String.fromCodePoint(text.codePointAt(offset) ?? 0xfffe));
    return { code: 'unreadable-text', ...unreadableWords(unreadable ?? 'a character that is not text') };
  }
  if (reason.startsWith('tab characters'))
    return { message: 'This line is indented with a tab.', advice: 'Indent with spaces.' };
  if (/escape sequence|hexadecimal/.test(reason))
    return {
      message: 'A backslash in double quotes has a meaning, and this one has none.',
      advice: "Use single quotes '…' or write \\\\.",
      offset: Math.max(0, text.lastIndexOf('\\', offset - 1)),
    };
  if (/line break is expected|chomping|indentation width/.test(reason))
    return { message: 'Behind > or | the line ends, and its text begins on the next.', advice: QUOTES };
  if (/\b(?:tag|anchor|alias)\b/.test(reason)) return MARK_OF_YAML;
  if (reason.includes("found ','"))
    return { message: 'There is nothing before this comma.', advice: 'Take one of the commas out.' };
  if (/directive/i.test(reason))
    return {
      message: 'A line that begins with % has no place in these files.',
      advice: 'Take it out.',
      offset: Math.max(0, text.search(/^%/m)),
    };
  if (/after a mapping key|multiline key/.test(reason)) return explainNoColon(stop);
  if (/indentation|end of the stream|whitespace/.test(reason)) return explainMisplaced(stop);
  return { message: 'The file cannot be read as YAML from here on.', advice: `${shownText(reason)}.` };
}

/** What the parser stopped at, as a finding at its line and column, with the line as found. */
export function yamlSyntaxFinding(
  problem: YAMLException,
  text: string,
  file: string,
  lines: TextLines,
): Finding {
  const offset = problem.mark?.position ?? 0;
  const { code, message, advice, offset: told } = explain({ reason: problem.reason, offset, text, lines });
  const place = lines.placeAt(told ?? offset);
  const found = shownText(lines.content(place.line));
  return errorFinding(
    code ?? 'yaml-syntax',
    message,
    { file, ...place },
    { found: found === '' ? undefined : found, advice },
  );
}
