/** What a plain text stands for that is no text, by its first character. */
const MAY_BE_OTHER = /^[-+.~\dnNtTfF]/;
const NULL = /^(?:~|null|Null|NULL)$/;
const BOOLEAN = /^(?:true|True|TRUE|false|False|FALSE)$/;
const NUMBER = /^[-+]?(?:\.\d+|\d+(?:\.\d*)?)(?:[eE][-+]?\d+)?$|^0o[0-7]+$|^0x[\da-fA-F]+$/;
const INFINITE = /^[-+]?\.(?:inf|Inf|INF)$/;
const NOT_A_NUMBER = /^\.(?:nan|NaN|NAN)$/;

/** The value of a plain scalar in the core schema of YAML 1.2.2, section 10.3.2: null, a boolean, a number, or its text. */
export function coreScalar(text: string): null | boolean | number | string {
  if (text === '') return null;
  if (!MAY_BE_OTHER.test(text)) return text;
  if (NUMBER.test(text)) return Number(text);
  if (NULL.test(text)) return null;
  if (BOOLEAN.test(text)) return text[0] === 't' || text[0] === 'T';
  if (INFINITE.test(text)) return text.startsWith('-') ? -Infinity : Infinity;
  return NOT_A_NUMBER.test(text) ? Number.NaN : text;
}
