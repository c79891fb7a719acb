const SPACE = /[ \t\n\r]*/y;
// Written so that a long string without its end is not tried in more than one way.
const STRING = /"[ !#-[\]-\uffff]*(?:\\(?:["\\/bfnrt]|u[\dA-Fa-f]{4})[ !#-[\]-\uffff]*)*"/y;
const PLAIN = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;

/**
 * Where a text stops being JSON (RFC 8259), counted in characters from 0; null where it is JSON throughout. What an
 * engine says of it differs by version and may hold any character of the text.
 */
export function jsonFault(text: string): number | null {
  const open: ('{' | '[')[] = [];
  let at = 0;
  const take = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    if (!pattern.test(text)) return false;
    at = pattern.lastIndex;
    return true;
  };
  const eat = (mark: string): boolean => {
    take(SPACE);
    if (text[at] !== mark) return false;
    at += 1;
    return true;
  };
  const key = (): boolean => {
    take(SPACE);
    return take(STRING) && eat(':');
  };
  /** A value, or the beginning of one that holds others. Null: it is closed already or plain, undefined: it is none. */
  const value = (): '{' | '[' | null | undefined => {
    if (eat('[')) return eat(']') ? null : '[';
    if (eat('{')) return eat('}') ? null : '{';
    return take(STRING) || take(PLAIN) ? null : undefined;
  };
  for (;;) {
    const begun = value();
    if (begun === undefined) return at;
    if (begun !== null) open.push(begun);
    else {
      while (open.length > 0 && eat(open.at(-1) === '{' ? '}' : ']')) open.pop();
      if (open.length === 0) {
        take(SPACE);
        return at === text.length ? null : at;
      }
      if (!eat(',')) return at;
    }
    if (open.at(-1) === '{' && !key()) return at;
  }
}
