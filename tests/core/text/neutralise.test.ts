import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { neutralise } from '../../../src/core/text/neutralise.ts';

const latin1 = (text: string): string => Buffer.from(text, 'utf8').toString('latin1');

describe('text from a reader or a file, made safe for a terminal', () => {
  test.each([
    ['plain text', 'T1: 231.25 C', 'T1: 231.25 C'],
    ['an escape sequence that clears the screen', '\x1b[2J', '\\x1B[2J'],
    ['a title sequence with bell', '\x1b]0;x\x07', '\\x1B]0;x\\x07'],
    ['the one-byte CSI of the C1 codes', '\x9b31m', '\\x9B31m'],
    ['C1 codes hidden in UTF-8', '\xc2\x9b31m', '\\x9B31m'],
    ['line ends and tab', 'a\r\n\tb', 'a\\x0D\\x0A\\x09b'],
    ['NUL and DEL', '\0\x7f', '\\x00\\x7F'],
    ['right-to-left override', 'a\u202eb', 'a\\u{202E}b'],
    ['isolates', '\u2066x\u2069', '\\u{2066}x\\u{2069}'],
    ['zero-width space, joiner and byte order mark', '\u200b\u200d\ufeff', '\\u{200B}\\u{200D}\\u{FEFF}'],
    ['soft hyphen and no-break space', '\xad\xa0', '\\xAD\\xA0'],
    ['line separator', '\u2028', '\\u{2028}'],
    ['Hangul filler, which shows as nothing', '\u3164', '\\u{3164}'],
    ['tag characters', '\u{e0041}', '\\u{E0041}'],
    ['lone surrogates', 'a\ud800b\udc00', 'a\\u{D800}b\\u{DC00}'],
    ['a private-use character', '\ue000', '\\u{E000}'],
    ['° as latin1', '231 \xb0C', '231 °C'],
    ['° as the two bytes of UTF-8', latin1('231 °C'), '231 °C'],
    ['µ, Ω and a pictograph as bytes of UTF-8', latin1('µΩ🔥'), 'µΩ🔥'],
    ['text that is no row of bytes: Â° stays', 'Â°→', 'Â°→'],
    ['a UTF-8 lead byte without its continuation', '\xe2\x80 x', 'â\\x80 x'],
    ['an overlong UTF-8 form of ESC', '\xc0\x9b', 'À\\x9B'],
    ['a surrogate coded in UTF-8', '\xed\xa0\x80', 'í\\xA0\\x80'],
    ['a letter with one accent put on it', 'e\u0301', 'e\u0301'],
    ['a pile of accents', `e${'\u0301'.repeat(4)}`, 'e\u0301\u0301\\u{301}\\u{301}'],
  ])('%s', (_, text, safe) => {
    expect(neutralise(text)).toBe(safe);
  });

  test('is at most as long as asked, marked by an ellipsis', () => {
    expect(neutralise('abcdef', { longest: 6 })).toBe('abcdef');
    expect(neutralise('abcdefg', { longest: 6 })).toBe('abcde…');
    expect([...neutralise('x'.repeat(10_000_000))]).toHaveLength(200);
  });

  test('any text: no control, format or direction character survives, never longer than asked (property)', () => {
    const any = fc.oneof(
      fc.string({ unit: fc.integer({ min: 0, max: 0xffff }).map((code) => String.fromCharCode(code)) }),
      fc.string({ unit: fc.integer({ min: 0, max: 0xff }).map((code) => String.fromCharCode(code)) }),
      fc.string({ unit: 'binary' }),
    );
    fc.assert(
      fc.property(any, fc.integer({ min: 1, max: 60 }), (text, longest) => {
        const safe = neutralise(text, { longest });
        expect(safe).not.toMatch(/[\x00-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]/);
        expect(safe).not.toMatch(/\p{Surrogate}/u);
        expect([...safe].length).toBeLessThanOrEqual(longest);
      }),
      { numRuns: 1000 },
    );
  });

  test('printable ASCII is left as it is (property)', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme-ascii', maxLength: 200 }), (text) => {
        expect(neutralise(text)).toBe(text);
      }),
    );
  });
});
