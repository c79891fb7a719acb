import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { disarmedCell } from '../../src/basics/csvCells.ts';
import { writeCsv } from '../../src/documents/csv.ts';

/**
 * Rules of RFC 4180, Common Format and MIME Type for Comma-Separated Values (CSV) Files, Y. Shafranovich, October 2005,
 * section 2, held against a reader written from its grammar alone:
 *
 *     file        = [header CRLF] record *(CRLF record) [CRLF]
 *     record      = field *(COMMA field)
 *     field       = (escaped / non-escaped)
 *     escaped     = DQUOTE *(TEXTDATA / COMMA / CR / LF / 2DQUOTE) DQUOTE
 *     non-escaped = *TEXTDATA
 */
function readByGrammar(text: string): string[][] {
  const records: string[][] = [[]];
  let at = 0;
  for (;;) {
    let field = '';
    if (text[at] === '"') {
      at++;
      for (; ; at++) {
        if (at >= text.length) throw new Error('a quoted field does not end');
        if (text[at] === '"' && text[at + 1] !== '"') break;
        if (text[at] === '"') at++;
        field += text[at];
      }
      at++;
    } else {
      while (at < text.length && text[at] !== ',' && text[at] !== '\r') {
        if (text[at] === '"' || text[at] === '\n') throw new Error('TEXTDATA holds a quote or a line feed');
        field += text[at++];
      }
    }
    records.at(-1)!.push(field);
    if (text[at] === ',') at++;
    else if (text.startsWith('\r\n', at)) {
      at += 2;
      if (at === text.length) return records;
      records.push([]);
    } else if (at === text.length) return records;
    else throw new Error(`no comma or line end at ${at}`);
  }
}

// What a spreadsheet takes for a formula is changed on purpose and is no matter of the RFC.
const harmless = (text: string) => disarmedCell(text) === text;
const character = fc.constantFrom('a', 'Z', '0', ' ', ',', '"', '\r', '\n', ';', "'", 'ä', '漢', '=', '<');
const field = fc.string({ unit: character, maxLength: 8 }).filter(harmless);

describe('RFC 4180', () => {
  it('example of section 2, rules 5 to 7: quotes around commas, line breaks and doubled quotes', () => {
    expect(writeCsv(['a', 'b', 'c'], [['aaa', 'b\r\nbb', 'c"c,c']])).toBe(
      'a,b,c\r\naaa,"b\r\nbb","c""c,c"\r\n',
    );
  });

  it('any fields come back through the grammar, header first, as many in each line', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(field, field, field), { maxLength: 6 }), (rows) => {
        const text = writeCsv(['one', 'two', 'three'], rows);
        expect(text.endsWith('\r\n')).toBe(true);
        expect(readByGrammar(text)).toEqual([['one', 'two', 'three'], ...rows]);
      }),
      { numRuns: 500 },
    );
  });
});
