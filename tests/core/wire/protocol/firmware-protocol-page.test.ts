import { describe, expect, test } from 'vitest';
import {
  createProtocolDecoder,
  identifyCommand,
  isProtocolLine,
  rateCommand,
  readCommand,
  startCommand,
  stopCommand,
  thermocoupleTypeCommand,
} from '../../../../src/core/wire/protocol/index.ts';
import type { WireEvent } from '../../../../src/core/wire/WireEvent.ts';
import { decodeLine } from './decode-lines.ts';
import { pageBlocks } from './page-blocks.ts';

// The lines are read from firmware-protocol.md; their checksums there were computed with another program
// (Python's binascii.crc_hqx, start 0xFFFF). What they say is written out here by hand.

const celsius = (temperatureC: number) => ({ kind: 'temperature', temperatureC });
const fault = (name: string) => ({ kind: 'fault', fault: name });
const missing = { kind: 'missing' };
const sample = (sequence: number, deviceTimeUs: number, ...channels: object[]) => ({
  kind: 'sample',
  sequence,
  deviceTimeUs,
  channels,
});
const channel = (
  number: number,
  thermocoupleType: string | null,
  sends: string,
  resolutionC: number | null,
) => ({
  number,
  name: null,
  thermocoupleType,
  sends,
  resolutionC,
});

const EXPECTED: readonly object[] = [
  {
    kind: 'identity',
    identity: {
      name: 'Bench-4',
      firmwareVersion: '1.0.3',
      serialNumber: '000417',
      channels: [1, 2, 3, 4].map((number) => channel(number, 'K', 'temperature', 0.25)),
      ratesHz: [1, 2, 5, 10],
      rateHz: 10,
      hasContact: true,
    },
  },
  sample(0, 1520344, celsius(23.25), celsius(23.5), celsius(231.75), celsius(230.5)),
  sample(1, 1620341, celsius(23.25), celsius(23.5), celsius(231.75), celsius(230.5)),
  { kind: 'contact', closed: true, deviceTimeUs: 1688120 },
  sample(2, 1720345, celsius(23.25), fault('open-circuit'), celsius(231.5), celsius(230.5)),
  { kind: 'remark', text: '123456789' },
  sample(65535, 4294961034, celsius(176.25), celsius(171), celsius(231.75), celsius(230.5)),
  sample(0, 93735, celsius(176.5), celsius(171.25), celsius(231.5), celsius(230.5)),
  sample(1, 193741, celsius(176.75), celsius(171.25), missing, fault('cold-junction')),
  sample(2, 293738, celsius(-0.25), fault('over-range'), fault('short-to-ground'), fault('short-to-supply')),
  sample(
    3,
    393740,
    { kind: 'emf', emfUv: 7197.6, coldJunctionC: 24.31 },
    { kind: 'emf', emfUv: -12.4, coldJunctionC: 24.31 },
    fault('unspecified'),
    fault('open-circuit'),
  ),
  { kind: 'contact', closed: true, deviceTimeUs: 1688120 },
  { kind: 'contact', closed: false, deviceTimeUs: 175902344 },
  {
    kind: 'identity',
    identity: {
      name: 'Two-probe_board',
      firmwareVersion: '0.9',
      serialNumber: null,
      channels: [channel(1, 'K', 'emf', null), channel(2, null, 'emf', null)],
      ratesHz: [0.5, 1, 10, 100],
      rateHz: 10,
      hasContact: false,
    },
  },
  { kind: 'started' },
  sample(118, 13320341, celsius(23.25), celsius(23.5), celsius(231.75), celsius(230.5)),
  { kind: 'overflow', lostSamples: 3 },
  sample(122, 13720339, celsius(23.5), celsius(23.5), celsius(231.75), celsius(230.5)),
  { kind: 'remark', text: 'supply 4.97 V, board 31 C' },
  { kind: 'remark', text: 'x-fan 1240 rpm' },
  sample(4, 493740, celsius(23.25), fault('unspecified'), celsius(231.5), celsius(230.5)),
];

describe('worked examples of firmware-protocol.md', () => {
  const lines = pageBlocks('reader');

  test('the page has exactly the 21 reader lines checked here', () => {
    expect(lines).toHaveLength(EXPECTED.length);
  });

  test.each(EXPECTED.map((expected, index) => [lines[index] ?? '', expected] as const))(
    '%s',
    (line, expected) => {
      expect(decodeLine(line)).toEqual([expected]);
      expect(isProtocolLine(line)).toBe(!line.startsWith('x-'));
    },
  );

  test('the six host lines are what the command formatters write, byte for byte', () => {
    expect(pageBlocks('host')).toEqual([
      identifyCommand(),
      startCommand(),
      stopCommand(),
      rateCommand(5),
      rateCommand(0.5),
      thermocoupleTypeCommand(2, 'N'),
    ]);
  });

  const refused = pageBlocks('refused');
  const pairs = refused.flatMap((line, index) =>
    index % 2 === 0 ? [[line, refused[index + 1]?.trim()]] : [],
  );
  test.each(pairs)('refuses %s as %s', (line, reason) => {
    expect(decodeLine(line ?? '')).toEqual([{ kind: 'trouble', trouble: reason, text: line }]);
    expect(isProtocolLine(line ?? '')).toBe(false);
  });

  test('the page has 18 refused lines', () => {
    expect(pairs).toHaveLength(18);
  });
});

describe('conversation of firmware-protocol.md', () => {
  const spoken = pageBlocks('conversation').map((line) => ({ by: line[0], text: line.slice(2) }));

  test('each command is understood as the reader’s reply says', () => {
    const commands = spoken.filter(({ by }) => by === '>').map(({ text }) => readCommand(text));
    expect(commands).toEqual([
      { kind: 'identify' },
      { kind: 'start' },
      { kind: 'rate', hz: 5 },
      { kind: 'type', channel: 2, type: 'N' },
      { kind: 'rate', hz: 7 },
      { kind: 'type', channel: 9, type: 'K' },
      { kind: 'refused', problem: 'arguments', word: 'rate' },
      { kind: 'refused', problem: 'unknown', word: null },
      { kind: 'refused', problem: 'checksum', word: 'start' },
      { kind: 'stop' },
    ]);
  });

  test('each reply is decoded: four ok with the command, five errors with problem and word', () => {
    const decoder = createProtocolDecoder();
    const events: WireEvent[] = spoken
      .filter(({ by }) => by === '<')
      .flatMap(({ text }) => [...decoder.decode({ arrivedUs: 0, text, wholeness: 'whole' })]);
    expect(events.some((event) => event.kind === 'trouble')).toBe(false);
    expect(
      events.flatMap((event) => (event.kind === 'reply' ? [`${event.accepted} ${event.text}`] : [])),
    ).toEqual([
      'true start',
      'true rate 5',
      'true type 2 N',
      'false range rate',
      'false range type',
      'false arguments rate',
      'false unknown -',
      'false checksum start',
      'true stop',
    ]);
    const identities = events.flatMap((event) => (event.kind === 'identity' ? [event.identity] : []));
    expect(identities.map(({ rateHz }) => rateHz)).toEqual([10, 5, 5]);
    expect(identities[2]?.channels.map(({ thermocoupleType }) => thermocoupleType)).toEqual([
      'K',
      'N',
      'K',
      'K',
    ]);
  });
});
