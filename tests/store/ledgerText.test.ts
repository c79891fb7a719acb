import { describe, expect, it } from 'vitest';
import type { Ledger } from '../../src/model/store.ts';
import { sameStock } from '../../src/store/applyLine.ts';
import { book, emptyLedger } from '../../src/store/book.ts';
import { checksum } from '../../src/store/checksum.ts';
import { lineOf } from '../../src/store/items.ts';
import { bookingText, newLedgerText, readLedgerText } from '../../src/store/ledgerText.ts';
import { draft, edging, offcut, sheet } from './histories.ts';

function textOf(ledger: Ledger): string {
  let text = newLedgerText();
  for (const booking of ledger.bookings) text += bookingText(booking, text.slice(-11, -3));
  return text;
}

const ledger = [
  draft('receive', [lineOf(sheet, 4, 'in'), lineOf(edging, 50_000, 'in')], {
    why: 'Lieferung “7” \n ä 板 😀',
  }),
  draft('put back', [lineOf(offcut('A1'), 1, 'in')]),
  draft('issue', [lineOf(sheet, 1, 'out')], { order: 'van-1' }),
].reduce((before, one) => {
  const after = book(before, one);
  if (!after.ok) throw new Error(after.findings[0]!.message);
  return after.value;
}, emptyLedger);
const text = textOf(ledger);

describe('the text of a ledger', () => {
  it('has a line for each booking and reads back as it was', () => {
    expect(text.split('\n')).toHaveLength(5);
    const read = readLedgerText(text, 'ledger.jsonl');
    if (!read.ok) throw new Error(read.findings[0]!.message);
    expect(read.value.ledger.bookings).toEqual(ledger.bookings);
    expect(sameStock(read.value.ledger.stock, ledger.stock)).toBe(true);
    expect(read.value).toMatchObject({ torn: '', open: false, check: text.slice(-11, -3) });
  });

  it('broken off anywhere in its last line holds all bookings but that one, or that one whole', () => {
    const start = text.lastIndexOf('\n', text.length - 2) + 1;
    for (let end = start; end <= text.length; end++) {
      const read = readLedgerText(text.slice(0, end), 'ledger.jsonl');
      const whole = end >= text.length - 1;
      expect(read.ok && read.value.ledger.bookings.length).toBe(whole ? 3 : 2);
      expect(read.ok && read.value.torn).toBe(whole ? '' : text.slice(start, end));
      expect(read.ok && read.value.open).toBe(end === text.length - 1);
    }
    const zeros = `${text.slice(0, start + 30)}\0\0\0\n`;
    expect(readLedgerText(zeros, 'x')).toMatchObject({
      ok: true,
      value: { ledger: { bookings: { length: 2 } } },
    });
  });

  it('read with the line ends of another system is the same', () => {
    expect(readLedgerText(text.replaceAll('\n', '\r\n'), 'x')).toMatchObject({
      ok: true,
      value: { torn: '' },
    });
  });

  it('is refused when a line was changed, taken out, moved or put in by hand, with the line', () => {
    const lines = text.split('\n');
    const wrong: [string, string, number][] = [
      ['changed', text.replace('"count":4', '"count":5'), 2],
      ['changed at the end', text.replace('"order":"van-1"', '"order":"van-2"'), 4],
      ['taken out', [lines[0], lines[2], lines[3], ''].join('\n'), 2],
      ['moved', [lines[0], lines[2], lines[1], lines[3], ''].join('\n'), 2],
      ['broken in the middle', [lines[0], lines[1]!.slice(0, 40), lines[2], ''].join('\n'), 2],
      ['first taken out', lines.slice(1).join('\n'), 1],
      ['empty', '', 1],
      ['broken off in the first', lines[0]!.slice(0, 20), 1],
    ];
    for (const [how, changed, line] of wrong) {
      const read = readLedgerText(changed, 'ledger.jsonl');
      expect(read.ok, how).toBe(false);
      expect(read.findings[0], how).toMatchObject({ code: 'ledger-changed', place: { line } });
    }
  });

  it('is refused when its checks are right and a rule is broken all the same', () => {
    const more = { ...ledger.bookings[2]!, number: 4, lines: [lineOf(sheet, 9, 'out')] };
    const read = readLedgerText(text + bookingText(more, text.slice(-11, -3)), 'ledger.jsonl');
    expect(read.findings[0]).toMatchObject({
      code: 'not-in-store',
      place: { file: 'ledger.jsonl', line: 5 },
    });
    const odd = { ...more, kind: 'given away' as 'issue' };
    const unknown = readLedgerText(text + bookingText(odd, text.slice(-11, -3)), 'ledger.jsonl');
    expect(unknown.findings[0]).toMatchObject({
      code: 'ledger-field-wrong',
      place: { line: 5, field: 'kind' },
    });
  });
});

describe('a line that is no line of a ledger', () => {
  /** The text of a ledger whose lines are these, each with a check that fits. */
  const checked = (...bodies: string[]) => {
    let check = '';
    return bodies
      .map((body) => {
        check = checksum(check + body);
        return `${body.slice(0, -1)},"check":"${check}"}\n`;
      })
      .join('');
  };
  const head = JSON.stringify({ format: 'plywright store', version: 1 });
  const found = (of: string) => {
    const read = readLedgerText(of, 'ledger.jsonl');
    expect(read.ok).toBe(false);
    return read.findings.map(({ code, message, place }) => ({ code, message, place }));
  };

  it('is made here as it is written', () => {
    expect(checked(head)).toBe(newLedgerText());
    expect(readLedgerText(newLedgerText(), 'x')).toMatchObject({ ok: true, findings: [] });
  });

  it('is told by its version, or as that of something else', () => {
    const no = { code: 'ledger-changed', message: 'This is not the ledger of a store.' };
    const place = { file: 'ledger.jsonl', line: 1 };
    expect(found(checked(JSON.stringify({ format: 'plywright store', version: 2 })))).toMatchObject([
      { place: { ...place, field: 'version' }, message: expect.stringContaining('2') },
    ]);
    expect(found(checked(JSON.stringify({ format: 'a diary', version: 2 })))).toEqual([{ ...no, place }]);
    expect(found(checked(JSON.stringify({ format: 'plywright store' })))).toEqual([{ ...no, place }]);
    expect(found(checked('{no JSON}'))).toEqual([{ ...no, place }]);
    expect(found('')).toEqual([{ ...no, place }]);
  });

  it('is told with the field that is wrong, counted from 1', () => {
    const { lines, ...rest } = { ...ledger.bookings[0]!, number: 1 };
    const spoilt = { ...rest, lines: [lines[0], { ...lines[1], metres: 'many' }] };
    expect(found(checked(head, JSON.stringify(spoilt)))).toEqual([
      {
        code: 'ledger-field-wrong',
        message: 'The booking is not as a ledger has it: metres above 0.',
        place: { file: 'ledger.jsonl', line: 2, field: 'lines › 2 › metres' },
      },
    ]);
    expect(found(checked(head, '{no JSON}'))).toEqual([
      {
        code: 'ledger-field-wrong',
        message: 'The booking is not as a ledger has it: it is not JSON.',
        place: { file: 'ledger.jsonl', line: 2 },
      },
    ]);
  });

  it('is told with its line where one is changed, and shows it', () => {
    const changed = text.replace('"count":4', '"count":5');
    const [finding] = readLedgerText(changed, 'ledger.jsonl').findings;
    expect(finding).toMatchObject({
      message: 'This line is not as it was booked, or one before it is missing.',
      found: expect.stringMatching(/^\{"number":1,/),
      advice: expect.stringContaining('bookings are never changed'),
    });
  });

  it('is told with its line where the tenth booking breaks a rule', () => {
    const { number: _first, ...again } = ledger.bookings[2]!;
    const issue = (number: number) => JSON.stringify({ ...again, number, lines: [lineOf(sheet, 1, 'out')] });
    const receive = JSON.stringify({ ...ledger.bookings[0]!, lines: [lineOf(sheet, 8, 'in')] });
    const issues = Array.from({ length: 9 }, (_, index) => issue(index + 2));
    expect(found(checked(head, receive, ...issues))).toMatchObject([
      { code: 'not-in-store', place: { file: 'ledger.jsonl', line: 11 } },
    ]);
  });
});

it('the check is CRC-32: its published check value, and bytes as UTF-8 has them', () => {
  // "Catalogue of parametrised CRC algorithms", CRC-32/ISO-HDLC: check = 0xcbf43926.
  expect(checksum('123456789')).toBe('cbf43926');
  expect(checksum('')).toBe('00000000');
  // crc32 of zlib over the same bytes.
  expect(checksum('ä 板 😀')).toBe('b47a0c73');
  // The same at the ends of each number of bytes.
  expect(checksum('\u007f\u0080\u07ff\u0800\uffff\u{10000}')).toBe('45429447');
  // Halves of a pair count as U+FFFD, as an encoder writes them.
  for (const half of ['\ud800', '\udbff', '\udc00', '\udfff'])
    expect(checksum(half)).toBe(checksum('\ufffd'));
  expect(checksum('\ud7ff\ue000')).toBe('7818a133');
});
