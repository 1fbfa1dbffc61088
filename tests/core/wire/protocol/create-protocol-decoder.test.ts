import { describe, expect, test } from 'vitest';
import {
  createProtocolDecoder,
  formatSample,
  formatStarted,
} from '../../../../src/core/wire/protocol/index.ts';
import { lineChecksum } from '../../../../src/core/wire/protocol/line-checksum.ts';
import { sealLine } from '../../../../src/core/wire/protocol/seal-line.ts';
import type { LineWholeness } from '../../../../src/core/wire/WireEvent.ts';
import { decodeLine } from './decode-lines.ts';

const line = (text: string, wholeness: LineWholeness = 'whole') => ({ arrivedUs: 0, text, wholeness });
const IDENTITY =
  'identity 1 name=B firmware=1 serial=7 types=K,K sends=celsius rates=1,10 rate=10 contact=no';
const sampleOf = (channels: number) =>
  formatSample({
    sequence: 0,
    deviceTimeUs: 0,
    channels: Array.from({ length: channels }, () => ({ kind: 'temperature', temperatureC: 20 }) as const),
  });

describe('protocol decoder', () => {
  test('the clock wraps at 2^32 µs, the sequence at 65536', () => {
    expect(createProtocolDecoder()).toMatchObject({ clockWrapUs: 4_294_967_296, sequenceWrap: 65_536 });
  });

  test('says nothing recognised until a line proves it, then names the reader', () => {
    const decoder = createProtocolDecoder();
    decoder.decode(line('boot v1.2'));
    expect(decoder.recognised).toBeNull();
    decoder.decode(line(sampleOf(2)));
    expect(decoder.recognised).toBe('reader protocol 1 (the reader has not named itself yet)');
    decoder.decode(line(sealLine(IDENTITY)));
    expect(decoder.recognised).toBe(
      'reader protocol 1: B (firmware 1), 2 channels, thermocouple type K, sends °C',
    );
  });

  test('a sample whose number of values is not the identity’s 2 is malformed, until the reader starts anew', () => {
    const decoder = createProtocolDecoder();
    decoder.decode(line(sealLine(IDENTITY)));
    expect(decoder.decode(line(sampleOf(2)))).toMatchObject([{ kind: 'sample' }]);
    expect(decoder.decode(line(sampleOf(3)))).toMatchObject([{ kind: 'trouble', trouble: 'malformed' }]);
    decoder.decode(line(formatStarted()));
    expect(decoder.decode(line(sampleOf(3)))).toMatchObject([{ kind: 'sample' }]);
  });

  test('a blank line is a remark, text without a checksum garbage, 501 characters over-long', () => {
    expect(decodeLine('')).toEqual([{ kind: 'remark', text: '' }]);
    expect(decodeLine('rst:0x1 (POWERON)')).toMatchObject([{ trouble: 'garbage' }]);
    expect(decodeLine('x'.repeat(501))).toMatchObject([{ trouble: 'over-long' }]);
  });

  test('500 characters with a right checksum are taken, 501 are over-long whatever their checksum', () => {
    const encoder = new TextEncoder();
    for (const length of [500, 501]) {
      const content = `note ${'x'.repeat(length - 10)}`;
      const sum = lineChecksum(encoder.encode(content)).toString(16).toUpperCase().padStart(4, '0');
      const [event] = decodeLine(`${content}#${sum}`);
      expect(event).toMatchObject(length === 500 ? { kind: 'remark' } : { trouble: 'over-long' });
    }
  });

  test('a valid sample that the splitter found over-long or cut off is no reading', () => {
    for (const wholeness of ['over-long', 'cut-off'] as const) {
      expect(createProtocolDecoder().decode(line(sampleOf(1), wholeness))).toMatchObject([
        { trouble: wholeness },
      ]);
    }
  });

  test('a character above one byte never passes for its lower byte', () => {
    const sound = sampleOf(1);
    const shifted = sound.replace('s', String.fromCharCode('s'.charCodeAt(0) + 0x100));
    expect(decodeLine(shifted)).toMatchObject([{ trouble: 'bad-checksum' }]);
  });

  test('16 values are the most, 17 are malformed', () => {
    expect(decodeLine(sampleOf(16))).toMatchObject([{ kind: 'sample' }]);
    expect(decodeLine(sealLine(`sample 0 0${' 20.00'.repeat(17)}`))).toMatchObject([
      { trouble: 'malformed' },
    ]);
  });

  test.each([
    ['23', 23],
    ['-273.15', -273.15],
    ['3000', 3000],
    ['0023.2500', 23.25],
    ['-0.00', 0],
    ['231.250000', 231.25],
  ])('temperature %s is taken as %d °C', (written, temperatureC) => {
    expect(decodeLine(sealLine(`sample 0 0 ${written}`))).toEqual([
      { kind: 'sample', sequence: 0, deviceTimeUs: 0, channels: [{ kind: 'temperature', temperatureC }] },
    ]);
  });

  const malformed = [
    ...[
      '23.',
      '.5',
      '-',
      '--5',
      '5-',
      '1.2.3',
      '23.1234567',
      '00023.5',
      '3000.1',
      '-273.16',
      '1e3',
      '0.1234567@24',
      '0x17',
      'NaN',
    ],
    ...[
      '8384.6@',
      '@24.31',
      '8384.6@24@24',
      '100001@24',
      '-20001@24',
      '0@125.1',
      '0@-56',
      '8384.6@open-circuit',
    ],
    ...['Open-circuit', 'open_circuit', '-nan', 'a'.repeat(25)],
  ];
  test.each(malformed)('value %s makes the sample malformed', (written) => {
    expect(decodeLine(sealLine(`sample 0 0 ${written}`))).toMatchObject([{ trouble: 'malformed' }]);
  });

  const RARE_MALFORMED = [
    ...[
      'sample',
      'sample 0',
      'sample 0 0',
      'sample -1 0 20',
      'sample 000000 0 20',
      'sample 0 00000000000 20',
    ],
    ...[
      'contact 5',
      'contact 4294967296 closed',
      'contact 5 closed 1',
      'contact 5 open',
      'contact -5 closed',
    ],
    ...[
      'started',
      'started Power',
      'overflow',
      'overflow 65536',
      'overflow 1 2',
      'note',
      'note ',
      'ok',
      'error x',
    ],
    ...['error unknown', 'error unknown hello there', ' sample 0 0 20', 'Sample 0 0 20', '0 0 20'],
  ];
  test.each(RARE_MALFORMED)('"%s" is malformed', (content) => {
    expect(decodeLine(sealLine(content))).toMatchObject([{ kind: 'trouble', trouble: 'malformed' }]);
  });
});

describe('identity line', () => {
  test.each([
    ['a key twice', `${IDENTITY} name=C`],
    ['a key without value', `${IDENTITY} step=`],
    ['an upper-case key', `${IDENTITY} Step=1`],
    ['a bare word', `${IDENTITY} hello`],
    ['a type that does not exist', IDENTITY.replace('K,K', 'K,X')],
    ['no type', IDENTITY.replace('K,K', ',')],
    ['17 channels', IDENTITY.replace('K,K', `K${',K'.repeat(16)}`)],
    ['a rate that is not offered', IDENTITY.replace('rate=10', 'rate=5')],
    ['a rate of 0', IDENTITY.replace('rates=1,10', 'rates=0,10')],
    ['a rate of 1001 Hz', IDENTITY.replace('rates=1,10', 'rates=1001,10')],
    ['contact=maybe', IDENTITY.replace('contact=no', 'contact=maybe')],
    ['sends=fahrenheit', IDENTITY.replace('celsius', 'fahrenheit')],
    ['version 0', IDENTITY.replace('identity 1', 'identity 0')],
    ['a step of 0', `${IDENTITY} step=0`],
    ...['name', 'firmware', 'serial', 'types', 'sends', 'rates', 'rate', 'contact'].map((key) => [
      `no ${key}`,
      IDENTITY.replace(new RegExp(` ${key}=\\S+`), ''),
    ]),
  ])('with %s is malformed', (_, content) => {
    expect(content).not.toBe(IDENTITY);
    expect(decodeLine(sealLine(content ?? ''))).toMatchObject([{ trouble: 'malformed' }]);
  });

  test('keys in another order, a later version and a key of later date are taken', () => {
    const shuffled =
      'identity 2 colour=red contact=no rate=10 rates=1,10 sends=celsius types=K,K serial=7 firmware=1 name=B';
    expect(decodeLine(sealLine(shuffled))).toEqual(decodeLine(sealLine(IDENTITY)));
    expect(decodeLine(sealLine(IDENTITY))).toMatchObject([{ kind: 'identity', identity: { name: 'B' } }]);
  });
});
