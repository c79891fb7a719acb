import picocolors from 'picocolors';
import { lookalikeLetter } from '../../src/basics/visibleText.ts';
import type { Finding, Place, Severity } from '../../src/model/finding.ts';
import { counted, printable, TERMINAL_WIDTH, wrap } from './text.ts';

type Colours = ReturnType<typeof picocolors.createColors>;

/** Colours for a stream: none when NO_COLOR is set, when it is not a terminal, or when it says so itself. */
export function coloursFor(stream: { readonly isTTY?: boolean }): Colours {
  const wanted = stream.isTTY === true && !process.env['NO_COLOR'] && process.env['TERM'] !== 'dumb';
  return picocolors.createColors(wanted);
}

function placeLine(place: Place): string {
  const position = [place.file, place.line, place.line === undefined ? undefined : place.column]
    .filter((part) => part !== undefined)
    .join(':');
  return place.field === undefined
    ? printable(position)
    : `${printable(position)}  ${printable(place.field)}`;
}

function paint(colours: Colours, severity: Severity): string {
  switch (severity) {
    case 'error':
      return colours.red(severity);
    case 'warning':
      return colours.yellow(severity);
    case 'caution':
      return colours.cyan(severity);
  }
}

/** One finding as lines of at most 80 characters: the place, then the sentence, then what may help. */
export function describeFinding(finding: Finding, colours: Colours): string {
  const indent = '  ';
  const width = TERMINAL_WIDTH - indent.length;
  const lines: string[] = [];
  if (finding.place !== undefined) lines.push(colours.bold(placeLine(finding.place)));
  const head = wrap(`${finding.severity}: ${printable(finding.message)}`, width, `${indent}  `);
  lines.push(indent + paint(colours, finding.severity) + head.slice(finding.severity.length));
  const detail = (word: string, text: string | undefined) => {
    if (text !== undefined && text !== '') {
      lines.push(indent + wrap(`${word} ${printable(text)}`, width, `${indent}  `));
    }
  };
  detail('found:', finding.found);
  detail('note:', finding.found === undefined ? undefined : lookalikeLetter(finding.found));
  detail('expected:', finding.expected);
  detail('nearest:', finding.nearest);
  detail('→', finding.advice);
  return lines.join('\n');
}

const order: readonly Severity[] = ['error', 'warning', 'caution'];

/** All findings, errors first and in the order found, with a last line that counts them. Empty for none. */
export function describeFindings(findings: readonly Finding[], colours: Colours): string {
  if (findings.length === 0) return '';
  const sorted = order.flatMap((severity) => findings.filter((f) => f.severity === severity));
  const counts = order
    .map((severity) => [severity, findings.filter((f) => f.severity === severity).length] as const)
    .filter(([, count]) => count > 0)
    .map(([severity, count]) => counted(count, severity));
  return `${sorted.map((f) => describeFinding(f, colours)).join('\n\n')}\n\n${counts.join(', ')}\n`;
}
