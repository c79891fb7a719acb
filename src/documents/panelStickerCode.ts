/**
 * What a label's QR code says: which piece of which job it is stuck on. Its parts are joined by strokes, in letters that
 * a code packs tightly, and read the same typed in small letters:
 *
 *     PW1/DEMO-LONG/POPLAR-15-PALE-GREY/12/2
 *     PW1/DEMO-LONG/POPLAR-15-PALE-GREY/OFF/3/A2B/1
 *     PW1/DEMO-LONG/POPLAR-15-PALE-GREY/OUT/12/2/1
 *
 * | part | holds |
 * |---|---|
 * | `PW1` | a label of this program, first version of this text |
 * | job | name of the order, or of the list |
 * | stock group | as in the plan file and the names of the cut plans |
 * | of a panel: number, piece | its number in the cutting list; which one it is where there are several, from 1, as they come off the saw |
 * | of what fell out of a panel and is kept: `OUT`, number, piece, opening | the panel as above, and which of its openings, from 1 |
 * | of an offcut: `OFF`, cut plan, piece, sheet | number of the cut plan in its group; name of the piece there; which of the sheets cut alike, from 1 |
 *
 * A name that is too long, or has other letters, stands there with its beginning, `+` and six figures or letters that
 * follow from all of it. So the text of a piece never changes while the order and its panels do not.
 */
export type PieceIdentity = {
  /** Name of the order or list. */
  readonly job: string;
  readonly group: string;
} & (
  | { readonly is: 'panel'; readonly number: number; readonly piece: number }
  | { readonly is: 'cut-out'; readonly number: number; readonly piece: number; readonly opening: number }
  | { readonly is: 'offcut'; readonly sheet: number; readonly piece: string; readonly copy: number }
);

const START = 'PW1';
/** A job's name and a group's id are as long as this before they are cut. */
const MOST_JOB = 20;
const MOST_GROUP = 24;
const MOST_PIECE = 12;
const MARK_LETTERS = 6;

/** Six figures or letters that follow from a text: FNV-1a of 32 bits over its UTF-16 units (Fowler, Noll and Vo, 1991). */
function markOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return hash.toString(36).toUpperCase().padStart(MARK_LETTERS, '0').slice(-MARK_LETTERS);
}

/** A name as a part of the text, at most `most` letters. */
function part(name: string, most: number): string {
  const upper = name.toUpperCase();
  const kept =
    /^[A-Z0-9.-]+$/.test(upper) && upper.length <= most && upper.toLowerCase() === name.toLowerCase();
  if (kept) return upper;
  const plain = upper
    .normalize('NFKD')
    .replace(/[^A-Z0-9]+/g, '-')
    .replace(/^-+/, '');
  return `${plain.slice(0, most - MARK_LETTERS - 1)}+${markOf(name)}`;
}

function ownParts(identity: PieceIdentity): (string | number)[] {
  switch (identity.is) {
    case 'panel':
      return [identity.number, identity.piece];
    case 'cut-out':
      return ['OUT', identity.number, identity.piece, identity.opening];
    case 'offcut':
      return ['OFF', identity.sheet, part(identity.piece, MOST_PIECE), identity.copy];
  }
}

/** The text of a piece, as described above. */
export function pieceCode(identity: PieceIdentity): string {
  const start = [START, part(identity.job, MOST_JOB), part(identity.group, MOST_GROUP)];
  return [...start, ...ownParts(identity)].join('/');
}

/**
 * What a label's text says, job, group and piece in the letters of the text; null when it is none. Spaces around and the
 * case of letters do not count. A piece of a plan is the one meant when its own `pieceCode` is the same text.
 */
export function readPieceCode(text: string): PieceIdentity | null {
  const parts = text.trim().toUpperCase().split('/');
  const [start, job, group] = parts;
  if (start !== START || !job || !group) return null;
  const counts = (text: string | undefined) => (/^[1-9][0-9]{0,6}$/.test(text ?? '') ? Number(text) : null);
  if (parts.length === 5) {
    const [number, piece] = [counts(parts[3]), counts(parts[4])];
    return number === null || piece === null ? null : { is: 'panel', job, group, number, piece };
  }
  const [kind, first, second, third] = [parts[3], counts(parts[4]), parts[5], counts(parts[6])];
  if (parts.length !== 7 || first === null || third === null) return null;
  if (kind === 'OFF' && second) return { is: 'offcut', job, group, sheet: first, piece: second, copy: third };
  const piece = counts(second);
  if (kind !== 'OUT' || piece === null) return null;
  return { is: 'cut-out', job, group, number: first, piece, opening: third };
}
