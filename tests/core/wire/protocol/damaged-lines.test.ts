import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createProtocolDecoder, formatSample } from '../../../../src/core/wire/protocol/index.ts';
import type { WireEvent } from '../../../../src/core/wire/WireEvent.ts';
import { arbitrarySample } from './arbitrary-sample.ts';
import { decodeBytes } from './decode-lines.ts';
import { pageBlocks } from './page-blocks.ts';

const bytesOf = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));
const readings = (events: readonly WireEvent[]) =>
  events.filter((event) => event.kind === 'sample' || event.kind === 'contact');

describe('a damaged line is no reading', () => {
  const examples = pageBlocks('reader').filter((line) => /^(sample|contact) /.test(line));

  test('every byte of every example changed to every other byte: 0 readings', () => {
    const decoder = createProtocolDecoder();
    let tried = 0;
    for (const line of examples) {
      const sound = bytesOf(`${line}\n`);
      for (let at = 0; at < line.length; at++) {
        for (let byte = 0; byte < 256; byte++) {
          if (byte === sound[at]) continue;
          const damaged = sound.slice();
          damaged[at] = byte;
          const found = readings(decodeBytes([damaged], decoder));
          if (found.length > 0)
            expect.fail(`byte ${at} of "${line}" as ${byte} gave ${JSON.stringify(found)}`);
          tried += 1;
        }
      }
    }
    expect(tried).toBe(255 * examples.reduce((sum, line) => sum + line.length, 0));
  });

  test('every example cut short at every place, with and without a line end behind: 0 readings', () => {
    for (const line of examples) {
      for (let length = 0; length < line.length; length++) {
        const cut = line.slice(0, length);
        expect(readings(decodeBytes([bytesOf(cut)]))).toEqual([]);
        expect(readings(decodeBytes([bytesOf(`${cut}\n`)]))).toEqual([]);
        expect(readings(decodeBytes([bytesOf(`${line.slice(length + 1)}\n`)]))).toEqual([]);
      }
    }
  });

  test('a line whole but for its line end is cut off and no reading', () => {
    for (const line of examples) {
      expect(decodeBytes([bytesOf(line)])).toEqual([{ kind: 'trouble', trouble: 'cut-off', text: line }]);
    }
  });

  test('two lines glued by a lost line end: no reading of either', () => {
    for (const line of examples) expect(readings(decodeBytes([bytesOf(`${line}${line}\n`)]))).toEqual([]);
  });

  test('a first line with unknown start is taken where its checksum vouches for it, else not', () => {
    const [line = ''] = examples;
    expect(readings(decodeBytes([bytesOf(`${line}\n`)], createProtocolDecoder(), false))).toHaveLength(1);
    const [half] = decodeBytes([bytesOf(`${line.slice(9)}\n`)], createProtocolDecoder(), false);
    expect(half).toMatchObject({ kind: 'trouble', trouble: 'start-unknown' });
  });

  test('any burst of up to two bytes in any sample: 0 readings (property)', () => {
    // CRC-16 with a polynomial of this kind finds every burst of up to 16 bits.
    fc.assert(
      fc.property(arbitrarySample, fc.nat(), fc.integer({ min: 1, max: 0xffff }), (sample, place, burst) => {
        const sound = bytesOf(formatSample(sample));
        const at = place % (sound.length - 1);
        sound[at] = (sound[at] as number) ^ (burst >> 8);
        sound[at + 1] = (sound[at + 1] as number) ^ (burst & 0xff);
        expect(readings(decodeBytes([Uint8Array.of(...sound, 10)]))).toEqual([]);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('any bytes', () => {
  const piece = fc.oneof(
    fc.constantFrom(...pageBlocks('reader')).map((line) => bytesOf(`${line}\n`)),
    arbitrarySample.map((sample) => bytesOf(`${formatSample(sample)}\r\n`)),
    fc
      .constantFrom(...pageBlocks('reader'))
      .chain((line) => fc.nat(line.length).map((at) => bytesOf(line.slice(at)))),
    fc.uint8Array({ maxLength: 40 }),
  );

  test('in any chunking never throw, and give only readings that a whole valid line held (property)', () => {
    fc.assert(
      fc.property(
        fc.array(piece, { maxLength: 12 }),
        fc.array(fc.nat(2000), { maxLength: 12 }),
        (pieces, cuts) => {
          const all = Uint8Array.from(pieces.flatMap((bytes) => [...bytes]));
          const edges = [0, ...cuts.filter((cut) => cut < all.length).sort((a, b) => a - b), all.length];
          const chunks = edges.slice(1).map((edge, index) => all.subarray(edges[index], edge));
          const events = decodeBytes(chunks);
          expect(events).toEqual(decodeBytes([all]));
          expect(events).toEqual(decodeBytes([...all].map((byte) => Uint8Array.of(byte))));
          // Second opinion without our splitter or checksum code: a bitwise CRC over each piece between line ends.
          const text = String.fromCharCode(...all);
          const whole = text.split(/\r\n|\r|\n/).slice(0, -1);
          const valid = whole.filter(
            (line) => /^(sample|contact) [ -~]*#[0-9A-F]{4}$/.test(line) && sealIsRight(line),
          );
          const found = readings(events);
          expect(found.length).toBeLessThanOrEqual(valid.length);
          for (const reading of found) {
            if (reading.kind !== 'sample') continue;
            expect(
              valid.some((line) => line.startsWith(`sample ${reading.sequence} ${reading.deviceTimeUs} `)),
            ).toBe(true);
          }
        },
      ),
      { numRuns: 500 },
    );
  });

  test('300 kB of noise are decoded in under 15 s without a reading', () => {
    let state = 12345;
    const noise = Uint8Array.from({ length: 300_000 }, () => {
      state = (state * 1103515245 + 12345) & 0x7fffffff;
      return state >> 16;
    });
    const before = performance.now();
    expect(readings(decodeBytes([noise]))).toEqual([]);
    expect(performance.now() - before).toBeLessThan(15_000);
  });
});

/** CRC-16/IBM-3740 bit by bit, as the catalogue defines it. */
function sealIsRight(line: string): boolean {
  let sum = 0xffff;
  for (const byte of bytesOf(line.slice(0, -5))) {
    sum ^= byte << 8;
    for (let bit = 0; bit < 8; bit++)
      sum = sum & 0x8000 ? ((sum << 1) ^ 0x1021) & 0xffff : (sum << 1) & 0xffff;
  }
  return sum === Number.parseInt(line.slice(-4), 16);
}
