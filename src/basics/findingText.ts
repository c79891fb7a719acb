import type { Finding, Place } from '../model/finding.ts';

/** `file:line:column`, as editors and terminals open it; what is not known is left out. */
export function formatPlace(place: Place): string {
  let text = place.file;
  if (place.line !== undefined) {
    text += `:${place.line}`;
    if (place.column !== undefined) text += `:${place.column}`;
  }
  return text;
}

/**
 * A finding for people, without colours: first the place, the severity and the sentence, then one indented line each
 * for the field, what was found, what was expected, the nearest right word and the advice. No line break at the end.
 */
export function formatFinding(finding: Finding): string {
  const where = finding.place === undefined ? '' : `${formatPlace(finding.place)}: `;
  const lines = [`${where}${finding.severity}: ${finding.message}`];
  const add = (label: string, text: string | undefined) => {
    if (text !== undefined && text !== '') lines.push(`    ${label}: ${text}`);
  };
  add('in', finding.place?.field);
  add('found', finding.found);
  add('expected', finding.expected);
  add('did you mean', finding.nearest);
  add('advice', finding.advice);
  return lines.join('\n');
}
