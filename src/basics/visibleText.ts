/**
 * Characters that nobody sees, or that make others look otherwise than they stand in the file: controls, halves of
 * surrogate pairs, separators of lines and paragraphs, marks of the reading direction, zero-width and filling characters,
 * tags, non-characters (Unicode Standard 17, section 23; its properties Bidi_Control and Default_Ignorable_Code_Point). The
 * two signs that say whether a picture is coloured (U+FE0E, U+FE0F) change nothing of a word and may stay.
 */
const UNSEEN =
  /(?![\ufe0e\ufe0f])[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\p{Bidi_Control}\p{Default_Ignorable_Code_Point}\p{Noncharacter_Code_Point}\u2800\ufff9-\ufffb]/gu;

/**
 * More marks on one letter than any script writes (pointed Hebrew has up to four); heaped up they cover the lines above
 * and below.
 */
const HEAPED_MARKS = /\p{M}{5,}/gu;

const LEFTWARDS =
  '\\p{Script=Hebrew}\\p{Script=Arabic}\\p{Script=Syriac}\\p{Script=Thaana}\\p{Script=Nko}\\p{Script=Samaritan}\\p{Script=Mandaic}\\p{Script=Adlam}\\p{Script=Hanifi_Rohingya}';
const LEFTWARDS_RUN = new RegExp(`[${LEFTWARDS}](?:[${LEFTWARDS}\\p{M}\\s]*[${LEFTWARDS}\\p{M}])?`, 'gu');

/** `U+202E`, as Unicode names it. */
function codePoint(character: string): string {
  return `U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`;
}

/**
 * What in a text a person could not see or not read, in words that follow on “holds”; undefined where there is nothing.
 * Line feeds and tabs, which a note may have, are none of it.
 */
export function unreadablePart(text: string): string | undefined {
  for (const [character] of text.matchAll(UNSEEN)) {
    if (character === '\n' || character === '\t') continue;
    return `${codePoint(character)}, a character that cannot be seen or changes how others are read`;
  }
  return text.search(HEAPED_MARKS) >= 0 ? 'more than four marks on one letter' : undefined;
}

/** What is said of a text with such a part in it. */
export function unreadableWords(part: string): { readonly message: string; readonly advice: string } {
  return {
    message: `This text holds ${part}.`,
    advice: 'Type the text anew: such characters often come along when it is copied from elsewhere.',
  };
}

/** The text with `instead` for each character that cannot be seen or changes how others are read. */
export function withoutUnseen(text: string, instead: string, kept = ''): string {
  return text.replace(UNSEEN, (character) => (kept.includes(character) ? character : instead));
}

/** The text without marks that are heaped up on one letter. */
export function withoutHeapedMarks(text: string): string {
  return text.replace(HEAPED_MARKS, '');
}

/**
 * A text as it is compared and kept: letters and their marks composed (Unicode Normalization Form C, UAX #15), so that
 * `ü` is one letter whichever way it was typed, and every kind of space a plain one.
 */
export function composed(text: string): string {
  return text.normalize('NFC').replace(/\p{Zs}/gu, ' ');
}

/**
 * The text with each run of letters that are read from right to left kept apart (U+2068, U+2069; Unicode Bidirectional
 * Algorithm, UAX #9), so that figures beside a name in such letters do not change places with each other.
 */
export function leftwardsApart(text: string): string {
  return text.replace(LEFTWARDS_RUN, '\u2068$&\u2069');
}

/**
 * The first letter that is easily taken for a Latin one, of a word that has Latin letters too, in words; undefined where
 * there is none. Only Greek and Cyrillic letters look so much alike.
 */
export function lookalikeLetter(text: string): string | undefined {
  for (const [word] of text.matchAll(/[\p{L}\p{M}]+/gu)) {
    const other = /[\p{Script=Greek}\p{Script=Cyrillic}]/u.exec(word)?.[0];
    if (other !== undefined && /\p{Script=Latin}/u.test(word)) {
      const script = /\p{Script=Greek}/u.test(other) ? 'Greek' : 'Cyrillic';
      return `the ${other} in it is a ${script} letter (${codePoint(other)}), not a Latin one`;
    }
  }
  return undefined;
}
