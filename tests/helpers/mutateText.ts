import fc from 'fast-check';

/** Pieces that files break on. */
const TOKENS = [
  '"',
  "'",
  ':',
  ': ',
  '\n',
  '\t',
  '  ',
  '- ',
  '[',
  ']',
  '{',
  '}',
  ',',
  '&a ',
  '*a',
  '!t ',
  '#',
  '---\n',
  '<<: ',
  '?',
  '|\n',
  '>\n',
  '\r\n',
  '\ufeff',
  '\u0000',
  '\ufffd',
  '\u202e',
  '𝄞',
  '\ud800',
  '__proto__',
  'constructor',
  'null',
  '~',
  'true',
  'yes',
  '.nan',
  '.inf',
  '-.inf',
  '1e400',
  '-1',
  '0',
  '0x10',
  '1,5',
  '3/4 in',
  '1/0 in',
  '99999999999999999999',
  ';',
  '=1+1',
  'none',
  'left',
  'width',
  '"a\nb"',
];

const edit = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constant('insert' as const),
      at: fc.nat(),
      text: fc.constantFrom(...TOKENS),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('replace' as const),
      at: fc.nat(),
      length: fc.integer({ min: 1, max: 12 }),
      text: fc.constantFrom('', ...TOKENS),
    }),
  },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('drop line' as const), at: fc.nat() }) },
  {
    weight: 2,
    arbitrary: fc.record({ kind: fc.constant('double line' as const), at: fc.nat(), to: fc.nat() }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('cut off' as const), at: fc.nat() }) },
);

type Edit = typeof edit extends fc.Arbitrary<infer E> ? E : never;

function applyEdit(text: string, change: Edit): string {
  const lines = text.split('\n');
  const at = change.at % (text.length + 1);
  switch (change.kind) {
    case 'insert':
      return text.slice(0, at) + change.text + text.slice(at);
    case 'replace':
      return text.slice(0, at) + change.text + text.slice(at + change.length);
    case 'drop line':
      return lines.filter((_, index) => index !== change.at % lines.length).join('\n');
    case 'double line':
      lines.splice(change.to % (lines.length + 1), 0, lines[change.at % lines.length]!);
      return lines.join('\n');
    case 'cut off':
      return text.slice(0, at);
  }
}

/** One to five random changes, to be made to a text that was right. */
export const mutations: fc.Arbitrary<(text: string) => string> = fc
  .array(edit, { minLength: 1, maxLength: 5 })
  .map((edits) => (text: string) => edits.reduce(applyEdit, text));
