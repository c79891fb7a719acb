import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PieceIdentity, pieceCode, readPieceCode } from '../../../src/documents/panelStickerCode.ts';

const panel = { is: 'panel', job: 'demo-long', group: 'poplar-15-pale-grey', number: 12, piece: 2 } as const;
const offcut = { is: 'offcut', job: 'demo-long', group: 'ply', sheet: 3, piece: 'A2b', copy: 1 } as const;

const anyText = fc.oneof(
  fc.string({ unit: 'grapheme', minLength: 1, maxLength: 300 }),
  fc.string({ minLength: 1 }),
);
const count = fc.integer({ min: 1, max: 99_999 });
const identities: fc.Arbitrary<PieceIdentity> = fc.oneof(
  fc.record({ is: fc.constant('panel' as const), job: anyText, group: anyText, number: count, piece: count }),
  fc.record({
    is: fc.constant('cut-out' as const),
    job: anyText,
    group: anyText,
    number: count,
    piece: count,
    opening: count,
  }),
  fc.record({
    is: fc.constant('offcut' as const),
    job: anyText,
    group: anyText,
    sheet: count,
    piece: fc.stringMatching(/^[A-Z]{1,2}([1-9][a-z]?){0,2}$/),
    copy: count,
  }),
);

describe("the text of a label's code", () => {
  it('is what the doc comment says', () => {
    expect(pieceCode(panel)).toBe('PW1/DEMO-LONG/POPLAR-15-PALE-GREY/12/2');
    expect(pieceCode(offcut)).toBe('PW1/DEMO-LONG/PLY/OFF/3/A2B/1');
    expect(pieceCode({ ...panel, is: 'cut-out', opening: 1 })).toBe(
      'PW1/DEMO-LONG/POPLAR-15-PALE-GREY/OUT/12/2/1',
    );
  });

  it('cuts a name that is too long, and marks it by all of its letters', () => {
    const long = 'a-very-long-name-of-an-order-for-the-left';
    const [left, right] = [`${long}-door`, `${long}-wall`].map(
      (job) => pieceCode({ ...panel, job }).split('/')[1]!,
    );
    expect(left).toMatch(/^A-VERY-LONG-N\+[0-9A-Z]{6}$/);
    expect(left).toHaveLength(20);
    expect(right).not.toBe(left);
    expect(pieceCode({ ...panel, job: 'küche' })).not.toBe(pieceCode({ ...panel, job: 'kuche' }));
  });

  it('keeps to the letters of a compact code and to a length that fits the smallest label', () => {
    fc.assert(
      fc.property(identities, (identity) => {
        const code = pieceCode(identity);
        expect(code).toMatch(/^[0-9A-Z.+/-]+$/);
        expect(code.length).toBeLessThanOrEqual(4 + 21 + 25 + 4 + 6 + 13 + 6);
      }),
    );
  });

  it('is read back, typed in small letters too', () => {
    fc.assert(
      fc.property(identities, (identity) => {
        const code = pieceCode(identity);
        const read = readPieceCode(` ${code.toLowerCase()}\n`);
        expect(read).not.toBeNull();
        // What was read names the same piece: its own text is the same text.
        const [, job, group] = code.split('/');
        expect(read).toEqual({
          ...identity,
          job,
          group,
          ...(identity.is === 'offcut' ? { piece: identity.piece.toUpperCase() } : {}),
        });
      }),
    );
  });

  it.each([
    '',
    'PW1',
    'PW2/A/B/1/1',
    'PW1/A/B/0/1',
    'PW1/A/B/1',
    'PW1//B/1/1',
    'PW1/A/B/OFF/1/A',
    'PW1/A/B/1/1/1/1',
  ])('is not taken for one: %s', (text) => {
    expect(readPieceCode(text)).toBeNull();
  });
});
