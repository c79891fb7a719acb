import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  composed,
  leftwardsApart,
  lookalikeLetter,
  unreadablePart,
  withoutUnseen,
} from '../../src/basics/visibleText.ts';

describe('what nobody sees in a text', () => {
  it.each([
    ['a mark that turns the direction', 'left\u202eedis', 'U+202E'],
    ['an isolate', 'a\u2066b', 'U+2066'],
    ['an Arabic letter mark', 'a\u061cb', 'U+061C'],
    ['a zero-width space', 'si\u200bde', 'U+200B'],
    ['a zero-width joiner', 'si\u200dde', 'U+200D'],
    ['a byte order mark', 'si\ufeffde', 'U+FEFF'],
    ['a soft hyphen', 'si\u00adde', 'U+00AD'],
    ['a tag', 'side\u{e0041}', 'U+E0041'],
    ['a filler that looks like a space', 'si\u3164de', 'U+3164'],
    ['an empty pattern', 'si\u2800de', 'U+2800'],
    ['an escape', 'a\u001b[31mred', 'U+001B'],
    ['a bell', 'a\u0007', 'U+0007'],
    ['a control of the second row', 'a\u009b31m', 'U+009B'],
    ['a separator of lines', 'a\u2028b', 'U+2028'],
    ['half a character', 'a\ud800', 'U+D800'],
    ['marks heaped on a letter', `a${'\u0301'.repeat(12)}`, 'more than four marks'],
  ])('is named: %s', (_, text, said) => {
    expect(unreadablePart(text)).toContain(said);
  });

  it.each([
    'left side',
    'Küche',
    'ku\u0308che',
    'two\nlines\tand a tab',
    'Türe ½ – 3′',
    'ванна',
    '引き出し',
    'שולחן',
    '🚐',
    '❤️',
  ])('is not found in %j', (text) => expect(unreadablePart(text)).toBeUndefined());

  it('is taken out or marked, and nothing else', () => {
    expect(withoutUnseen('a\u202eb\u200bc', '?')).toBe('a?b?c');
    expect(withoutUnseen('a\nb\u0007', '', '\n')).toBe('a\nb');
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(unreadablePart(withoutUnseen(text, '')) ?? 'more than four marks').toContain(
          'more than four marks',
        );
      }),
      { numRuns: 2000 },
    );
  });
});

describe('a text as it is compared', () => {
  it('is the same whichever way its letters were typed', () => {
    expect(composed('Ku\u0308che\u00a0links')).toBe('Küche links');
    expect(composed('Küche links')).toBe('Küche links');
  });
});

describe('letters that are read from right to left', () => {
  it('are kept apart from the figures beside them', () => {
    expect(leftwardsApart('שולחן גדול 600 × 400')).toBe('\u2068שולחן גדול\u2069 600 × 400');
    expect(leftwardsApart('12 خزانة, left')).toBe('12 \u2068خزانة\u2069, left');
    expect(leftwardsApart('left side 600')).toBe('left side 600');
  });
});

describe('letters that look like others', () => {
  it('are named where both are in one word', () => {
    expect(lookalikeLetter('sl\u0430te')).toBe('the а in it is a Cyrillic letter (U+0430), not a Latin one');
    expect(lookalikeLetter('\u03bfak')).toContain('Greek');
    expect(lookalikeLetter('ванна left')).toBeUndefined();
    expect(lookalikeLetter('slate')).toBeUndefined();
  });
});
