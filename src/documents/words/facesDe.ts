/** Faces of a panel before a noun, by what they are called alone: `die hintere Fläche`. */
const BEFORE_NOUN: Readonly<Record<string, string>> = {
  links: 'linke',
  rechts: 'rechte',
  vorn: 'vordere',
  hinten: 'hintere',
  unten: 'untere',
  oben: 'obere',
};

/** How a face is called before a noun, in the nominative with its article: `hintere`. */
export function faceBefore(face: string): string {
  return BEFORE_NOUN[face] ?? face;
}

/** The same in the dative: `der hinteren`. */
export function faceBeforeDative(face: string): string {
  return `${faceBefore(face)}n`;
}
