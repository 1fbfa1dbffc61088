import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  formatContact,
  formatIdentity,
  formatSample,
  formatStarted,
  identifyCommand,
} from '../../../src/core/wire/protocol/index.ts';
import { NO_PTY, type PtyReader, ptyReader } from './pty-reader.ts';
import { recordFromPort, until } from './record-from-port.ts';

const sampleLine = (sequence: number, deviceTimeUs: number, temperatureC = 25): string =>
  `${formatSample({ sequence, deviceTimeUs, channels: [{ kind: 'temperature', temperatureC }] })}\r\n`;
/** Ten a second by the reader's clock, sent at once. */
const samples = (from: number, count: number, startUs = 0): string =>
  Array.from({ length: count }, (_, i) =>
    sampleLine((from + i) % 65_536, (startUs + (from + i) * 100_000) % 2 ** 32, 25 + i / 10),
  ).join('');

describe.skipIf(NO_PTY !== null)('serial link over a pseudo-terminal', () => {
  let reader: PtyReader;
  beforeEach(async () => {
    reader = ptyReader();
    await reader.plugIn();
  });
  afterEach(() => reader.remove());

  async function record(pieces: readonly string[], readings: number) {
    const recording = recordFromPort(reader.path);
    await recording.open();
    for (const piece of pieces) {
      const before = recording.entries.length;
      reader.write(piece);
      if (piece.includes('\n')) await until('the lines sent', () => recording.entries.length > before);
    }
    await until(`${readings} readings`, () => recording.readings().length >= readings);
    await recording.close();
    return recording;
  }

  it('takes no reading from half a first line, and counts it', async () => {
    const { assembler, readings } = await record([sampleLine(0, 0).slice(6), samples(1, 5)], 5);
    expect(readings()).toHaveLength(5);
    expect(assembler.counts).toMatchObject({ startUnknown: 1, readings: 5, gaps: 0 });
  });

  it('passes over a boot banner and blank lines', async () => {
    const banner = '\r\n\r\nboot v2.1\r\nADC ok\r\n';
    const { readings, lines, assembler } = await record(
      [banner, `${formatStarted()}\r\n`, `${formatIdentity(identity)}\r\n`, samples(0, 5)],
      5,
    );
    expect(readings().map((reading) => reading.timeS)).toEqual([0, 0.1, 0.2, 0.3, 0.4]);
    expect(lines().map((line) => line.text)).toContain('boot v2.1');
    expect(assembler.identity?.serialNumber).toBe('A17');
    expect(assembler.counts.restarts).toBe(0);
  });

  it('takes no reading from a bad checksum; the sample is a gap of one', async () => {
    const bad = sampleLine(3, 300_000).replace('25.00', '95.00');
    const { readings, assembler, gaps } = await record([samples(0, 3), bad, samples(4, 3)], 6);
    expect(readings().map((reading) => reading.values[0])).not.toContainEqual({
      kind: 'temperature',
      temperatureC: 95,
    });
    expect(assembler.counts).toMatchObject({ badChecksum: 1, lostSamples: 1 });
    expect(gaps()).toEqual([{ kind: 'gap', fromS: 0.2, toS: 0.4, cause: 'lost-samples', lostSamples: 1 }]);
  });

  it('goes through the wrap of clock and sequence without a gap', async () => {
    const { readings, gaps } = await record(
      [
        Array.from({ length: 10 }, (_, i) =>
          sampleLine((65_531 + i) % 65_536, (2 ** 32 - 450_000 + i * 100_000) % 2 ** 32),
        ).join(''),
      ],
      10,
    );
    expect(readings().map((reading) => reading.timeS)).toEqual([
      0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9,
    ]);
    expect(gaps()).toEqual([]);
  });

  it('marks a reboot in the middle as a gap and goes on', async () => {
    const { readings, gaps, assembler } = await record(
      [
        samples(0, 5),
        'sample 5 50',
        '\r\nboot v2.1\r\n',
        `${formatStarted('watchdog')}\r\n`,
        samples(0, 5, 40_000),
      ],
      10,
    );
    expect(gaps()).toMatchObject([{ cause: 'reader-restarted', fromS: 0.4 }]);
    expect(assembler.counts.restarts).toBe(1);
    const times = readings().map((reading) => reading.timeS);
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });

  it('keeps a contact edge with its device time', async () => {
    const { events } = await record(
      [samples(0, 3), `${formatContact({ closed: true, deviceTimeUs: 231_000 })}\r\n`, samples(3, 2)],
      5,
    );
    expect(events).toContainEqual({ kind: 'contact', timeS: 0.231, closed: true });
  });

  it('an over-long line without an end is cut once, and what follows is read', async () => {
    const { assembler, lines } = await record(['x'.repeat(200_000), `\n${samples(0, 3)}`], 3);
    expect(lines().filter((line) => line.wholeness === 'over-long')).toHaveLength(1);
    expect(Math.max(...lines().map((line) => line.text.length))).toBeLessThanOrEqual(500);
    expect(assembler.counts.readings).toBe(3);
  });

  it('a line cut off by the end is no reading', async () => {
    const recording = recordFromPort(reader.path);
    await recording.open();
    reader.write(samples(0, 3));
    reader.write(sampleLine(3, 300_000).trimEnd());
    await until('three readings', () => recording.readings().length === 3);
    await new Promise((resolve) => setTimeout(resolve, 50));
    await recording.close();
    expect(recording.lines().at(-1)?.wholeness).toBe('cut-off');
    expect(recording.assembler.counts).toMatchObject({ readings: 3, cutOff: 1 });
  });

  it('sends identify after opening', async () => {
    const recording = recordFromPort(reader.path, { onOpenCommands: [identifyCommand()] });
    await recording.open();
    await until('the command', () => reader.received().includes(`${identifyCommand()}\n`));
    await recording.close();
  });
});

const identity = {
  name: 'Bench reader',
  firmwareVersion: '1.0',
  serialNumber: 'A17',
  channels: [{ number: 1, name: null, thermocoupleType: 'K', sends: 'temperature', resolutionC: null }],
  ratesHz: [10],
  rateHz: 10,
  hasContact: true,
} as const;
