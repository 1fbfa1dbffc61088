import { describe, expect, it } from 'vitest';
import { createChannelStatistics } from '../../../src/core/sniff/create-channel-statistics.ts';
import { createSniffer } from '../../../src/core/sniff/create-sniffer.ts';
import { sniffReportLines } from '../../../src/core/text/sniff-report.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';
import { formatIdentity, formatSample } from '../../../src/core/wire/protocol/index.ts';
import { seededNormal } from '../reading/seeded-normal.ts';

const line = (arrivedUs: number, text: string) =>
  ({ kind: 'line', arrivedUs, text, wholeness: 'whole' }) as const;
const identity = {
  name: 'Bench-reader',
  firmwareVersion: '1.0',
  serialNumber: 'A17',
  channels: [
    { number: 1, name: 'bond-line', thermocoupleType: 'K', sends: 'temperature', resolutionC: 0.01 },
    { number: 2, name: 'upper-platen', thermocoupleType: 'K', sends: 'temperature', resolutionC: 0.01 },
  ],
  ratesHz: [10],
  rateHz: 10,
  hasContact: false,
} as const;

describe('createSniffer', () => {
  it('tells protocol, rate 10 Hz, noise 0.2 °C, step 0.01 °C, faults, lost lines and a drift of 100 ppm', () => {
    const normal = seededNormal(7);
    const sniffer = createSniffer({ decoder: createReaderDecoder() });
    sniffer.accept(line(0, formatIdentity(identity)));
    const count = 600;
    for (let i = 0; i < count; i += 1) {
      if (i === 100 || i === 101) continue;
      const text = formatSample({
        sequence: i,
        deviceTimeUs: Math.round(i * 100_000 * 1.0001),
        channels: [
          // A steady rise of 1 °C/s must not count as noise.
          { kind: 'temperature', temperatureC: 25 + i * 0.1 + 0.2 * normal() },
          i % 100 === 50
            ? { kind: 'fault', fault: 'open-circuit' }
            : { kind: 'temperature', temperatureC: 230 },
        ],
      });
      sniffer.accept(
        line(i * 100_000 + 1000 + Math.round(500 * Math.abs(normal())), i === 300 ? `${text}x` : text),
      );
    }
    const { report } = sniffer;
    expect(report.recognised).toContain('reader protocol 1');
    expect(report.rateHz).toBeCloseTo(10, 2);
    // Spread of the estimate itself at 600 differences: about 5 %.
    expect(report.channels[0]?.noiseC).toBeGreaterThan(0.17);
    expect(report.channels[0]?.noiseC).toBeLessThan(0.23);
    expect(report.channels[0]?.stepC).toBeCloseTo(0.01, 6);
    expect(report.channels[1]).toMatchObject({ faults: { 'open-circuit': 6 }, noiseC: 0, stepC: null });
    expect(report.counts).toMatchObject({ lostSamples: 3, gaps: 2, readings: count - 3 });
    expect(Math.abs((report.clock.driftPpm as number) - 100)).toBeLessThan(
      4 * (report.clock.standardUncertaintyPpm as number),
    );
    expect(report.clock.standardUncertaintyPpm).toBeLessThan(5);
    const text = sniffReportLines(report).join('\n');
    expect(text).toMatch(/100 ± .* ppm fast|(9\d|10\d) ± .* ppm fast/);
    expect(text).toContain('6 × open-circuit');
  });

  it('tells noise of 0.1 °C through steps of 0.25 °C, spikes left out', () => {
    const normal = seededNormal(21);
    const statistics = createChannelStatistics();
    for (let i = 0; i < 1000; i += 1) {
      // Rising 0.03 °C a reading; a spike of 50 °C at every 200th.
      const trueC = 25 + 0.03 * i + 0.1 * normal() + (i % 200 === 100 ? 50 : 0);
      statistics.add({ kind: 'temperature', temperatureC: Math.round(trueC * 4) / 4 }, i > 0);
    }
    // Rounding to a step q adds q²/12 of variance (GUM, F.2.2.1).
    const expectedC = Math.sqrt(0.1 ** 2 + 0.25 ** 2 / 12);
    expect(Math.abs((statistics.report.noiseC as number) / expectedC - 1)).toBeLessThan(0.1);
    expect(statistics.report.stepC).toBe(0.25);
  });

  it('says so when nothing comes, and when what comes says nothing', () => {
    const silent = createSniffer({ decoder: createReaderDecoder() });
    expect(sniffReportLines(silent.report)[0]).toContain('nothing came');
    const noise = createSniffer({ decoder: createReaderDecoder() });
    for (let i = 0; i < 20; i += 1) noise.accept(line(i * 1e5, '~~\u001b]0;x\u0007~'));
    const lines = sniffReportLines(noise.report);
    expect(lines[0]).toContain('nothing recognised');
    expect(lines.join('')).not.toMatch(/[\u0000-\u001f]/);
  });
});
