import { errorFinding, listWords, shownText } from '../basics/findings.ts';
import { nearestWord } from '../basics/nearestWord.ts';
import type { Checked, Finding } from '../model/finding.ts';

/** One real piece of a panel, as people name it. */
export interface NamedPiece {
  /** Text of its label. */
  readonly code: string;
  /** Of its panel in the cutting list. */
  readonly number: number;
  /** Which one of those that are alike, from 1. */
  readonly piece: number;
  readonly id: string;
  readonly name: string;
  readonly unit: string;
}

/** Where a word was read, for a finding. */
export interface PieceWord {
  readonly text: string;
  readonly file?: string;
  readonly line?: number;
}

const MOST_NAMED = 8;

function inWords({ number, name, unit }: NamedPiece): string {
  return `${number} ${unit === '' ? name : `${name}, ${unit}`}`;
}

function placed({ file, line }: PieceWord) {
  return file === undefined ? undefined : { file, ...(line === undefined ? {} : { line }) };
}

/** A panel's words and which of its pieces; null for all words that name a panel only. */
function withPiece(text: string): { readonly panel: string; readonly which: number | 'all' } | null {
  const match = /^(.*\S)\s*\/\s*(\d{1,7}|all)$/i.exec(text);
  if (match === null) return null;
  const which = match[2]!.toLowerCase();
  return { panel: match[1]!, which: which === 'all' ? 'all' : Number(which) };
}

function panelsCalled<Piece extends NamedPiece>(pieces: readonly Piece[], text: string): Piece[] {
  const word = text.toLowerCase();
  const by = (fits: (piece: Piece) => boolean) => pieces.filter(fits);
  if (/^\d{1,7}$/.test(text)) return by(({ number }) => number === Number(text));
  const ways: ((piece: Piece) => boolean)[] = [
    ({ id }) => id.toLowerCase() === word,
    ({ unit, name }) =>
      [`${unit}/${name}`, `${name}, ${unit}`, `${unit} ${name}`].some((one) => one.toLowerCase() === word),
    ({ name }) => name.toLowerCase() === word,
  ];
  for (const way of ways) {
    const found = by(way);
    if (found.length > 0) return found;
  }
  return [];
}

function unknown(pieces: readonly NamedPiece[], word: PieceWord): Finding {
  const text = shownText(word.text);
  const isLabel = /^pw1\//i.test(word.text);
  const names = [
    ...new Set(pieces.flatMap(({ name, unit, code }) => (isLabel ? [code] : [name, `${unit}/${name}`]))),
  ];
  const nearest = nearestWord(isLabel ? word.text.toUpperCase() : word.text, names);
  return errorFinding(
    'panel-unknown',
    isLabel ? `\`${text}\` is the label of no panel of this plan.` : `\`${text}\` is no panel of this plan.`,
    placed(word),
    {
      found: text,
      expected: isLabel
        ? `a label that begins like ${pieces[0]?.code ?? 'PW1/…'}`
        : 'the number of a panel in the cutting list, its name, its unit and name, or the text of its label',
      nearest,
      advice: /\/(off|out)\//i.test(word.text)
        ? 'this is the label of an offcut; only panels are cut anew'
        : undefined,
    },
  );
}

function severalPanels(found: readonly NamedPiece[], word: PieceWord): Finding {
  const names = [...new Set(found.map(inWords))];
  return errorFinding(
    'panel-unclear',
    `${names.length} panels are called \`${shownText(word.text)}\`.`,
    placed(word),
    { found: names.slice(0, MOST_NAMED).map(shownText).join('; '), advice: 'name the number that is meant' },
  );
}

function severalPieces(found: readonly NamedPiece[], word: PieceWord): Finding {
  const { number } = found[0]!;
  const which = found.map(({ piece }) => `${number}/${piece}`);
  return errorFinding(
    'piece-unclear',
    `Panel ${inWords(found[0]!)} is made ${found.length === 1 ? 'once' : `${found.length} times`}.`,
    placed(word),
    {
      found: shownText(word.text),
      expected: `one of ${listWords(which.slice(0, MOST_NAMED))}, as its label has it, or ${number}/all`,
    },
  );
}

function piecesOf<Piece extends NamedPiece>(pieces: readonly Piece[], word: PieceWord): Piece[] | Finding {
  const text = word.text.trim();
  if (/^pw1\//i.test(text)) {
    const piece = pieces.find(({ code }) => code === text.toUpperCase());
    return piece === undefined ? unknown(pieces, word) : [piece];
  }
  const whole = panelsCalled(pieces, text);
  const some = whole.length > 0 ? null : withPiece(text);
  const found = some === null ? whole : panelsCalled(pieces, some.panel);
  if (found.length === 0) return unknown(pieces, word);
  if (new Set(found.map(({ id }) => id)).size > 1) return severalPanels(found, word);
  if (some === null) return found.length === 1 ? found : severalPieces(found, word);
  if (some.which === 'all') return found;
  const one = found.find(({ piece }) => piece === some.which);
  return one === undefined ? severalPieces(found, word) : [one];
}

/**
 * The pieces that people name: by the number of a panel in the cutting list, by its name, its unit and name, or the text of
 * a label; `/2` after a number or name is the second of those that are alike, `/all` all of them. Each piece once, in the
 * order of `pieces`. A word that names none or several is told.
 */
export function findPieces<Piece extends NamedPiece>(
  pieces: readonly Piece[],
  words: readonly PieceWord[],
): Checked<Piece[]> {
  const findings: Finding[] = [];
  const named = new Set<string>();
  for (const word of words) {
    const found = piecesOf(pieces, word);
    if ('code' in found) findings.push(found);
    else for (const { code } of found) named.add(code);
  }
  if (findings.length > 0) return { ok: false, findings };
  return { ok: true, value: pieces.filter(({ code }) => named.has(code)), findings };
}
