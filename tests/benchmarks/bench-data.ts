import type { RecordingHead } from '../../src/core/recording/RecordingEntry.ts';
import type { RunRules } from '../../src/core/run/RunResult.ts';
import { formatSample } from '../../src/core/wire/protocol/format-sample.ts';

export const benchRules: RunRules = {
  targetC: 176.667,
  holdS: 120,
  longestDipS: 2,
  dip: 'restarts',
  platenSetPointC: null,
  ambientC: null,
  warmCarrierLimitC: 15,
  closingDisagreementLimitS: 1,
  closedAtS: null,
};

export const benchHead = (recordingId: string): RecordingHead => ({
  recordingId,
  madeAt: '2026-01-05T08:00:00Z',
  program: 'bench',
  roles: ['bond-line', 'bond-line-outer', 'upper-platen', 'lower-platen'],
  simulated: true,
  further: {},
});

/** Sample lines of a reader at 1,000 Hz, four channels, cut into 4 KiB chunks as a port would give them. */
export function sampleChunks(lines: number): readonly Uint8Array[] {
  const parts: string[] = [];
  for (let i = 0; i < lines; i += 1) {
    const wobbleC = ((i * 7) % 13) * 0.02;
    parts.push(
      formatSample({
        sequence: i % 65_536,
        deviceTimeUs: (i * 1000) % 2 ** 32,
        channels: [24 + wobbleC, 24.5 + wobbleC, 232.2 - wobbleC, 231.9].map((temperatureC) => ({
          kind: 'temperature',
          temperatureC,
        })),
      } as never),
    );
  }
  const bytes = new TextEncoder().encode(`${parts.join('\n')}\n`);
  const chunks: Uint8Array[] = [];
  for (let at = 0; at < bytes.length; at += 4096) chunks.push(bytes.subarray(at, at + 4096));
  return chunks;
}
