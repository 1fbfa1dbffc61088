import { describe, expect, test } from 'vitest';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';
import type { WireEvent } from '../../../src/core/wire/WireEvent.ts';
import { decodeBytes } from './protocol/decode-lines.ts';
import { pageBlocks } from './protocol/page-blocks.ts';

const encoder = new TextEncoder();
const protocolLines = pageBlocks('reader').slice(0, 5);
const kinds = (events: readonly WireEvent[]) => events.map((event) => event.kind);
const samples = (events: readonly WireEvent[]) => events.filter((event) => event.kind === 'sample');

function decode(text: string, options = {}, startKnown = true) {
  const decoder = createReaderDecoder(options);
  return { decoder, events: decodeBytes([encoder.encode(text)], decoder, startKnown) };
}

describe('reader of unknown kind', () => {
  test('the first valid protocol line settles it: wraps and name are the protocol’s', () => {
    const { decoder, events } = decode(`${protocolLines.join('\n')}\n`);
    expect(kinds(events)).toEqual(['identity', 'sample', 'sample', 'contact', 'sample']);
    expect(decoder.recognised).toMatch(/^reader protocol 1: Bench-4/);
    expect(decoder.clockWrapUs).toBe(2 ** 32);
    expect(decoder.sequenceWrap).toBe(65_536);
  });

  const noise = [
    ['a boot banner', 'ROM v3.1\r\nclk 160 MHz\r\n\r\nheap 231.25\r\n'],
    ['half a sample line', '0344 23.25 23.50 231.75 230.50#3E18\n'],
    ['a sample line with a changed digit', 'sample 0 1520344 23.25 23.50 281.75 230.50#3E18\n'.repeat(20)],
    ['two sample lines torn at the end', 'sample 0 1520344 23.25 23.50\nsample 1 1620344 23.25 23.50\n'],
    ['bytes of a wrong baud rate', '\xf8\x80\xfe\x00\x1b[2J\r\xff\n'],
    ['a number', '231.25\n'],
  ];
  test.each(noise)('%s before it gives no reading and does not hide the protocol', (_, text) => {
    for (const startKnown of [true, false]) {
      const { decoder, events } = decode(
        `${text}${protocolLines.join('\n')}\n`,
        { statedUnit: 'C' },
        startKnown,
      );
      expect(samples(events)).toHaveLength(3);
      expect(decoder.recognised).toMatch(/^reader protocol 1/);
    }
  });

  test('damaged protocol lines are counted as such before anything is recognised', () => {
    const { events } = decode('sample 0 1520344 23.25 23.50 281.75 230.50#3E18\nsample 1 #3e18\n');
    expect(events).toMatchObject([{ trouble: 'bad-checksum' }, { trouble: 'garbage' }]);
  });

  test('a plain reader that begins its lines with "sample" is a plain reader', () => {
    const text = Array.from(
      { length: 20 },
      (_, index) => `sample ${index} ${(20 + index / 4).toFixed(2)} C\n`,
    );
    const { decoder, events } = decode(text.join(''));
    expect(decoder.recognised).not.toBeNull();
    expect(samples(events).length).toBeGreaterThanOrEqual(15);
  });

  test('a protocol line cut off at the end of the stream settles nothing', () => {
    const { decoder, events } = decode(protocolLines[1] ?? '');
    expect(events).toMatchObject([{ trouble: 'cut-off' }]);
    expect(decoder.clockWrapUs).toBeNull();
  });

  test('the protocol wins even after a plain layout was recognised', () => {
    const plain = Array.from({ length: 20 }, (_, index) => `${(20 + index / 4).toFixed(2)}\n`).join('');
    const { decoder } = decode(plain, { statedUnit: 'C' });
    expect(decoder.recognised).not.toMatch(/protocol/);
    const more = decodeBytes([encoder.encode(`${protocolLines.join('\n')}\n`)], decoder);
    expect(kinds(more)).toEqual(['identity', 'sample', 'sample', 'contact', 'sample']);
  });

  test('after the protocol a plain line is garbage, never a reading', () => {
    const { events } = decode(`${protocolLines.join('\n')}\n${'231.25 C\n'.repeat(30)}`);
    expect(kinds(events.slice(5))).toEqual(Array.from({ length: 30 }, () => 'trouble'));
  });

  test('a plain reader goes to the plain decoder, with the stated unit: 68 °F are 20 °C', () => {
    const { decoder, events } = decode('68.0\n68.5\n69.0\n69.5\n70.0\n68.0\n', { statedUnit: 'F' });
    const [channel] = samples(events).at(-1)?.channels ?? [];
    expect(channel?.kind).toBe('temperature');
    expect(channel?.kind === 'temperature' && channel.temperatureC).toBeCloseTo(20, 9);
    expect(decoder.recognised).not.toBeNull();
  });

  test('a plain line cut off at the end of the stream is no reading', () => {
    const { events } = decode('20.00\n20.25\n20.50\n20.75\n21.00\n21.25\n2', { statedUnit: 'C' });
    expect(events.at(-1)).toMatchObject({ kind: 'trouble', trouble: 'cut-off' });
  });
});
