import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseRecording } from '../../src/core/recording/parse-recording.ts';
import { analyseEntries } from '../../src/core/session/analyse-entries.ts';
import { withSoundness } from '../../src/core/session/with-soundness.ts';
import { shippedRecordings } from '../../src/core/simulator/shipped-recordings.ts';
import { SHIPPED_SCENARIOS } from '../../src/core/simulator/shipped-scenarios.ts';
import { createReaderDecoder } from '../../src/core/wire/create-reader-decoder.ts';
import { runRules } from '../../src/program/options/run-rules.ts';

const folder = join(import.meta.dirname, '..', '..', 'recordings');

function replayShipped(fileName: string) {
  const { head, entries, soundness } = parseRecording(readFileSync(join(folder, fileName), 'utf8'));
  const decoder = createReaderDecoder(head.statedUnit === undefined ? {} : { statedUnit: head.statedUnit });
  const { results, state } = analyseEntries(entries, {
    decoder,
    roles: head.roles,
    rules: runRules({}, head),
  });
  expect(results).toHaveLength(1);
  // The truth counts from the reader's first line; a plain reader's layout is known a line or two later.
  const zeroUs = state.latestReading!.arrivedUs - state.latestReading!.timeS * 1e6;
  const firstLineUs = entries.find((entry) => entry.kind === 'line')!.arrivedUs;
  const laterS = fileName.startsWith('plain') ? (zeroUs - firstLineUs) / 1e6 : 0;
  return { head, soundness, laterS, result: withSoundness(results[0]!, soundness) };
}

describe('shipped recordings', () => {
  it('are those that the simulator makes, byte for byte', () => {
    for (const { fileName, text } of shippedRecordings()) {
      expect(existsSync(join(folder, fileName)), fileName).toBe(true);
      expect(readFileSync(join(folder, fileName), 'utf8') === text, fileName).toBe(true);
    }
  });

  it.each(SHIPPED_SCENARIOS.map(({ fileName, expected }) => [fileName, expected] as const))(
    '%s: verdict and reasons as expected',
    (fileName, expected) => {
      const { result, soundness, head } = replayShipped(fileName);
      expect(soundness.kind).toBe('sound');
      expect(head.simulated).toBe(true);
      const codes = result.reasons.map((reason) => reason.code);
      expect([result.verdict, ...codes]).toEqual(
        expect.arrayContaining([expected.verdict, ...expected.reasonCodes]),
      );
      if (expected.verdict === 'good')
        expect(result.reasons.filter((reason) => reason.severity !== 'note')).toEqual([]);
    },
  );

  // Truth comes from the simulator's own probe temperature before noise, by root finding; not from the run detection.
  const good = SHIPPED_SCENARIOS.filter(({ expected }) => expected.verdict === 'good');
  it.each(good.map(({ fileName }) => [fileName] as const))(
    '%s: crossing within 0.1 s of the probe’s true crossing',
    (fileName) => {
      const { result, head, laterS } = replayShipped(fileName);
      const { truth } = head;
      expect(truth?.probeCrossingS).toBeTypeOf('number');
      const crossing = result.crossings.find((one) => one.channel === 1)?.crossing;
      expect(Math.abs(crossing!.timeS + laterS - truth!.probeCrossingS!)).toBeLessThan(0.1);
      if (result.pressClosed?.by === 'contact')
        expect(Math.abs(result.pressClosed.timeS - truth!.pressClosedS!)).toBeLessThan(0.1);
    },
  );
});
