import { expect, it } from 'vitest';
import { formatSample } from '../../../src/core/wire/protocol/index.ts';
import { NO_PTY, ptyReader } from './pty-reader.ts';
import { recordFromPort, until } from './record-from-port.ts';

const SECONDS = 30;
const LINES_PER_S = 1000;

it.skipIf(NO_PTY !== null)(
  `${SECONDS} s of ${LINES_PER_S} lines/s over a pseudo-terminal: none lost, none altered`,
  async () => {
    const reader = ptyReader();
    await reader.plugIn();
    const recording = recordFromPort(reader.path);
    await recording.open();
    const lines = Array.from({ length: SECONDS * LINES_PER_S }, (_, i) =>
      formatSample({
        sequence: i % 65_536,
        deviceTimeUs: i * 1000,
        channels: [20.5, 24.1, 231.25, 229.75].map((c) => ({
          kind: 'temperature',
          temperatureC: c + (i % 100) / 100,
        })),
      }),
    );
    const startMs = performance.now();
    let sent = 0;
    const timer = setInterval(() => {
      const due = Math.min(lines.length, Math.floor(((performance.now() - startMs) / 1000) * LINES_PER_S));
      if (due > sent) reader.write(`${lines.slice(sent, due).join('\r\n')}\r\n`);
      sent = due;
    }, 5);
    await until('the last line', () => recording.entries.length >= lines.length, 45_000);
    clearInterval(timer);
    const tookS = (performance.now() - startMs) / 1000;
    await recording.close();
    await reader.remove();
    expect(recording.lines().map((line) => line.text)).toEqual(lines);
    expect(recording.assembler.counts).toMatchObject({
      readings: lines.length,
      lostSamples: 0,
      gaps: 0,
      garbage: 0,
      badChecksum: 0,
      unplugs: 0,
    });
    expect(recording.readings().at(-1)?.timeS).toBeCloseTo(SECONDS - 0.001, 9);
    // Sent by this computer's clock: the reader's clock and the host's are one.
    expect(Math.abs(recording.assembler.clock.driftPpm as number)).toBeLessThan(5000);
    expect(tookS).toBeGreaterThan(SECONDS - 1);
  },
  60_000,
);
