import { withoutUnseen } from '../../src/basics/visibleText.ts';

/** Width of everything printed. */
export const TERMINAL_WIDTH = 80;

/**
 * Text from a file made safe for a terminal: line breaks become spaces, and characters with which a file could move the
 * cursor, change colours, hide a part of a word or turn its direction become `?`.
 */
export function printable(text: string): string {
  return withoutUnseen(text.replace(/\s+/g, ' '), '?');
}

/** Breaks a text at spaces into lines of at most `width`, each after the first indented. Long words stay whole. */
export function wrap(text: string, width: number, indent = ''): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const room = lines.length === 0 ? width : width - indent.length;
    if (line !== '' && line.length + 1 + word.length > room) {
      lines.push(line);
      line = word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  lines.push(line);
  return lines.join(`\n${indent}`);
}

/** `1 sheet`, `3 sheets`; other plurals are given. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
