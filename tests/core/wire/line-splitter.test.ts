import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createLineSplitter } from '../../../src/core/wire/line-splitter.ts';
import type { ReceivedLine } from '../../../src/core/wire/WireEvent.ts';

const bytesOf = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

/** Every text cut into the given chunks, then ended; arrival is the chunk's number. */
function split(
  chunks: readonly Uint8Array[],
  options = { longestLine: 100, startKnown: true },
): ReceivedLine[] {
  const splitter = createLineSplitter(options);
  const lines = chunks.flatMap((chunk, number) => splitter.push(chunk, number));
  return [...lines, ...splitter.end(chunks.length)];
}

const shown = (lines: readonly ReceivedLine[]) => lines.map((line) => `${line.wholeness}:${line.text}`);

describe('line splitter', () => {
  test('ends a line at LF, CR LF and lone CR, and takes blank lines as lines', () => {
    expect(shown(split([bytesOf('a\nb\r\nc\rd\n\n\r\n')]))).toEqual([
      'whole:a',
      'whole:b',
      'whole:c',
      'whole:d',
      'whole:',
      'whole:',
    ]);
  });

  test('stamps a line with the arrival of its end, not of its beginning', () => {
    const lines = split([bytesOf('23'), bytesOf('1.25'), bytesOf('\n')]);
    expect(lines).toEqual([{ arrivedUs: 2, text: '231.25', wholeness: 'whole' }]);
  });

  test('a CR LF torn apart between chunks ends one line, at the CR', () => {
    const lines = split([bytesOf('a\r'), bytesOf('\nb\n')]);
    expect(lines.map(({ arrivedUs, text }) => [arrivedUs, text])).toEqual([
      [0, 'a'],
      [1, 'b'],
    ]);
  });

  test('the first line after a port was opened has an unknown start, the second is whole', () => {
    const lines = split([bytesOf('1.25\n231.50\n')], { longestLine: 100, startKnown: false });
    expect(shown(lines)).toEqual(['start-unknown:1.25', 'whole:231.50']);
  });

  test('the rest without a line end is cut off', () => {
    expect(shown(split([bytesOf('231.25\n23')]))).toEqual(['whole:231.25', 'cut-off:23']);
  });

  test('after the end it begins anew: nothing of the old rest is glued to the next line', () => {
    const splitter = createLineSplitter({ longestLine: 100, startKnown: false });
    splitter.push(bytesOf('a\n23'), 0);
    splitter.end(1);
    expect(shown(splitter.push(bytesOf('1.25\nb\n'), 2))).toEqual(['start-unknown:1.25', 'whole:b']);
  });

  test('an end amid an over-long line, or between CR and LF, leaves nothing behind', () => {
    const splitter = createLineSplitter({ longestLine: 5, startKnown: true });
    splitter.push(bytesOf('1234567'), 0);
    splitter.end(1);
    expect(shown(splitter.push(bytesOf('ab\r'), 2))).toEqual(['whole:ab']);
    splitter.end(3);
    expect(shown(splitter.push(bytesOf('\ncd\n'), 4))).toEqual(['whole:', 'whole:cd']);
  });

  test('a line of exactly 5 characters passes a limit of 5; one of 6 is reported once, by its first 5', () => {
    const options = { longestLine: 5, startKnown: true };
    expect(shown(split([bytesOf('12345\n123456\nab\n')], options))).toEqual([
      'whole:12345',
      'over-long:12345',
      'whole:ab',
    ]);
  });

  test('10 MB without a line end are reported once, at once, and hold no more than the limit', () => {
    const splitter = createLineSplitter({ longestLine: 500, startKnown: true });
    const flood = new Uint8Array(10_000).fill(0x41);
    const first = splitter.push(flood, 0);
    expect(first.map((line) => [line.wholeness, line.text.length])).toEqual([['over-long', 500]]);
    for (let chunk = 1; chunk < 1000; chunk++) expect(splitter.push(flood, chunk)).toEqual([]);
    expect(shown(splitter.push(bytesOf('tail\nnext\n'), 1000))).toEqual(['whole:next']);
  });

  test('keeps every byte from 0x80 to 0xFF as the character of that number', () => {
    const high = Uint8Array.from({ length: 128 }, (_, index) => 0x80 + index);
    const [line] = split([Uint8Array.of(...high, 10)], { longestLine: 200, startKnown: true });
    expect(Array.from(line?.text ?? '', (letter) => letter.charCodeAt(0))).toEqual([...high]);
  });

  test('any bytes cut in any way give the same lines (property)', () => {
    const byte = fc.oneof(fc.constantFrom(10, 13, 0x31), fc.integer({ min: 0, max: 255 }));
    fc.assert(
      fc.property(
        fc.array(byte, { maxLength: 200 }),
        fc.array(fc.nat(200), { maxLength: 20 }),
        fc.integer({ min: 1, max: 20 }),
        fc.boolean(),
        (bytes, cuts, longestLine, startKnown) => {
          const all = Uint8Array.from(bytes);
          const edges = [
            0,
            ...cuts.map((cut) => Math.min(cut, all.length)).sort((a, b) => a - b),
            all.length,
          ];
          const chunks = edges.slice(1).map((edge, index) => all.subarray(edges[index], edge));
          const options = { longestLine, startKnown };
          expect(shown(split(chunks, options))).toEqual(shown(split([all], options)));
          expect(
            shown(
              split(
                [...all].map((one) => Uint8Array.of(one)),
                options,
              ),
            ),
          ).toEqual(shown(split([all], options)));
        },
      ),
      { numRuns: 400 },
    );
  });

  test('lines are the pieces between line ends, by a plain expression as second opinion (property)', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom('a', '7', '\r', '\n'), maxLength: 60 }), (text) => {
        const expected = text.split(/\r\n|\r|\n/);
        const rest = expected.pop();
        expect(shown(split([bytesOf(text)]))).toEqual([
          ...expected.map((line) => `whole:${line}`),
          ...(rest === '' ? [] : [`cut-off:${rest}`]),
        ]);
      }),
      { numRuns: 500 },
    );
  });
});
