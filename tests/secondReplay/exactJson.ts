import { Fraction } from './fraction.ts';

export type ExactValue = null | boolean | string | Fraction | ExactValue[] | ExactObject;
export type ExactObject = Map<string, ExactValue>;

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const SPACE = /[ \t\n\r]*/y;
const STRING = /"(?:[^"\\]|\\.)*"/y;

/**
 * A JSON text (RFC 8259) whose numbers stay as they were written. Throws a SyntaxError where it is none. What a
 * string may hold is left to `JSON.parse`, for there is nothing to be rounded in it.
 */
export function readExactJson(text: string): ExactValue {
  let at = 0;

  const fail = (): never => {
    throw new SyntaxError(`not JSON at character ${at}`);
  };
  const take = (pattern: RegExp): string | null => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found === null) return null;
    at += found[0].length;
    return found[0];
  };
  const eat = (mark: string): boolean => {
    take(SPACE);
    if (!text.startsWith(mark, at)) return false;
    at += mark.length;
    return true;
  };
  const string = (): string => {
    take(SPACE);
    const quoted = take(STRING);
    return quoted === null ? fail() : (JSON.parse(quoted) as string);
  };

  function array(): ExactValue[] {
    const values: ExactValue[] = [];
    if (eat(']')) return values;
    do values.push(value());
    while (eat(','));
    return eat(']') ? values : fail();
  }

  function object(): ExactObject {
    const members: ExactObject = new Map();
    if (eat('}')) return members;
    do {
      const key = string();
      if (!eat(':')) fail();
      members.set(key, value());
    } while (eat(','));
    return eat('}') ? members : fail();
  }

  function value(): ExactValue {
    if (eat('{')) return object();
    if (eat('[')) return array();
    if (eat('true')) return true;
    if (eat('false')) return false;
    if (eat('null')) return null;
    if (text[at] === '"') return string();
    const number = take(NUMBER);
    return (number === null ? null : Fraction.read(number)) ?? fail();
  }

  const whole = value();
  take(SPACE);
  return at === text.length ? whole : fail();
}
