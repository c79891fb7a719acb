import type { LineCounter, YAMLError } from 'yaml';
import type { Finding } from '../model/finding.ts';
import { errorFinding, shownText } from './findings.ts';

const INDENT = 'Begin lines that belong together in the same column, deeper than the field above them.';
const QUOTES = 'Put the whole value in quotes: "…".';

/** The parser's error in words for a person at a bench. Codes are those of the `yaml` package. */
function sentence(error: YAMLError): { message: string; advice?: string } {
  switch (error.code) {
    case 'TAB_AS_INDENT':
      return { message: 'This line is indented with a tab.', advice: 'Indent with spaces.' };
    case 'MULTIPLE_DOCS':
      return {
        message: 'A second document begins here.',
        advice: 'Keep one per file; take out the line `---`.',
      };
    case 'BAD_INDENT':
      return /\]|\}/.test(error.message)
        ? { message: 'A bracket is not closed here.', advice: 'Close it with ] or }.' }
        : { message: 'The indentation does not fit the lines above.', advice: INDENT };
    case 'MISSING_CHAR':
      return /quote/.test(error.message)
        ? { message: 'A quote is opened but not closed.', advice: 'Close it on the same line.' }
        : {
            message: 'A mark is missing here.',
            advice: 'Look for a missing comma, colon, quote or bracket.',
          };
    case 'BLOCK_AS_IMPLICIT_KEY':
      return { message: 'There are two colons with a space in this line.', advice: QUOTES };
    case 'MULTILINE_IMPLICIT_KEY':
    case 'UNEXPECTED_TOKEN':
    case 'IMPOSSIBLE':
      return {
        message: 'This is neither `field: value` nor an entry of a list.',
        advice: `Put a space after the colon. ${INDENT}`,
      };
    case 'BAD_SCALAR_START':
      return { message: 'A value cannot begin with this character.', advice: QUOTES };
    case 'BAD_DQ_ESCAPE':
      return {
        message: 'A backslash in double quotes has a meaning, and this one has none.',
        advice: "Use single quotes '…' or write \\\\.",
      };
    case 'BAD_ALIAS':
      return { message: 'A value that begins with & or * is read as an anchor or alias.', advice: QUOTES };
    case 'TAG_RESOLVE_FAILED':
      return { message: 'A value that begins with ! is read as a tag.', advice: QUOTES };
    case 'BLOCK_IN_FLOW':
      return {
        message: 'Lines of a block cannot stand within brackets.',
        advice: 'Separate with commas, or close the bracket.',
      };
    default:
      return {
        message: 'The file cannot be read as YAML from here on.',
        advice: `${shownText(error.message)}.`,
      };
  }
}

/** One syntax error of the parser as a finding at its line and column, with the line as found. */
export function yamlSyntaxFinding(error: YAMLError, text: string, file: string, lines: LineCounter): Finding {
  const { line, col } = lines.linePos(Math.min(error.pos[0], text.length));
  const start = lines.lineStarts[line - 1] ?? 0;
  const content = shownText(text.slice(start, start + 400).split(/[\r\n]/, 1)[0] ?? '');
  const { message, advice } = sentence(error);
  return errorFinding(
    'yaml-syntax',
    message,
    { file, line: Math.max(1, line), column: Math.max(1, col) },
    {
      found: content === '' ? undefined : content,
      advice,
    },
  );
}
