import type { Furniture } from '../model/furniture.ts';
import type { Library } from '../model/library.ts';
import type { Order } from '../model/order.ts';
import type { CutGuide } from '../model/stock.ts';
import { payloadLines, payloadOf, unevenText } from './payloadLines.ts';
import { type ToldCaution, toldCautions } from './toldCautions.ts';
import type { CautionWords } from './words/cautionWords.ts';
import type { MassWords } from './words/massWords.ts';

/** Letters on a line, so that a plain printer or a narrow window shows it whole. */
const LINE = 80;
const ROOM_FOR_KG = 10;

/** Breaks a text into lines of at most `width` letters where it can; the first is led in, the others are indented. */
function wrapped(text: string, lead: string, width = LINE): string[] {
  const indent = ' '.repeat(lead.length);
  const lines: string[] = [];
  let line = lead;
  let empty = true;
  for (const word of text.split(' ')) {
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line];
}

/** A line of the sum: what it is at the left, as many lines as it needs, the mass at the right of the last. */
function sumLines(what: string, kg: string): string[] {
  const lines = wrapped(what, '    ', LINE - ROOM_FOR_KG);
  const last = lines.pop()!;
  return [...lines, last + kg.padStart(Math.max(ROOM_FOR_KG, LINE - last.length))];
}

function cautionLines(told: ToldCaution, words: CautionWords): string[] {
  const units = told.units.length === 0 ? [] : wrapped(words.broughtBy(told.units), '  ');
  return ['', told.title, ...units, ...told.points.flatMap((point) => wrapped(point, '  - '))];
}

/** What cautions of an order are told of. */
export interface CautionsSubject {
  readonly order: Order;
  readonly library: Library;
  readonly furniture: Furniture;
}

/** The payload's sum under its caution; nothing for a room. */
function payloadText(subject: CautionsSubject, words: MassWords): string[] {
  const account = payloadOf(subject);
  if (account === null) return [];
  return [
    '',
    ...payloadLines(account, words).flatMap(({ what, kg }) => sumLines(what, kg)),
    '',
    ...wrapped(words.persons(account.persons, account.personsFrom), '  - '),
    ...(account.restKg < 0 ? wrapped(words.tooLittle, '  - ') : []),
    ...unevenText(subject, words).flatMap((text) => wrapped(text, '  - ')),
    ...wrapped(words.source, '  - '),
  ];
}

/**
 * The cautions of an order on a sheet of plain text: only those that apply, each with the units that bring it, and the
 * sum of the payload; of the saw what goes for the guides of the cuts, or for all where they are not known. Lines have at
 * most 80 letters where words allow it, and end in LF.
 */
export function cautionsSheet(
  subject: CautionsSubject,
  words: CautionWords,
  mass: MassWords,
  guides?: readonly CutGuide[],
): string {
  const { title } = subject.order;
  const told = toldCautions(subject, words, guides);
  const lines = [
    ...wrapped(`${words.heading}: ${title}`, ''),
    '',
    ...wrapped(words.intro, ''),
    ...told.flatMap((one) => [
      ...cautionLines(one, words),
      ...(one.caution === 'overloading' ? payloadText(subject, mass) : []),
    ]),
  ];
  return `${lines.join('\n')}\n`;
}
