import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { formatRecording } from '../../../src/core/recording/format-recording.ts';
import { parseRecording } from '../../../src/core/recording/parse-recording.ts';
import type { RecordingHead } from '../../../src/core/recording/RecordingEntry.ts';
import type { RunRules } from '../../../src/core/run/RunResult.ts';
import { analyseEntries } from '../../../src/core/session/analyse-entries.ts';
import { SHIPPED_SCENARIOS } from '../../../src/core/simulator/shipped-scenarios.ts';
import { simulateRecording } from '../../../src/core/simulator/simulate-recording.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';

const FOLDER = new URL('../../../recordings/', import.meta.url);

/** The defaults of the trade (common practice, no source), with what the recording's head says. */
function rulesOf(head: RecordingHead): RunRules {
  return {
    targetC: head.targetC!,
    holdS: head.holdS!,
    longestDipS: 2,
    dip: 'restarts',
    platenSetPointC: head.platenSetPointC ?? null,
    ambientC: Number(head.further['ambient-c']),
    warmCarrierLimitC: 15,
    closingDisagreementLimitS: 1,
    closedAtS: null,
  };
}

describe('recordings/', () => {
  it('holds exactly the shipped scenarios', () => {
    // Warm-ups and surveys have no closing of a run; their own test is in tests/core/warm-up.
    const files = readdirSync(FOLDER).filter(
      (name) => name.endsWith('.dwell.txt') && !/^(warm-up|survey)-/.test(name),
    );
    expect(files.sort()).toEqual(SHIPPED_SCENARIOS.map(({ fileName }) => fileName).sort());
  });

  for (const { fileName, scenario, expected } of SHIPPED_SCENARIOS) {
    const reasons = expected.reasonCodes.join(', ') || 'no reason asked for';
    it(`${fileName}: made anew is the same to the last byte; ${expected.verdict}, ${reasons}`, () => {
      const text = readFileSync(new URL(fileName, FOLDER), 'utf8');
      const made = simulateRecording(scenario);
      expect([...formatRecording(made.head, made.entries)].join('') === text, 'same bytes').toBe(true);

      const { head, entries, soundness } = parseRecording(text);
      expect(soundness).toEqual({ kind: 'sound' });
      const { results } = analyseEntries(entries, {
        decoder: createReaderDecoder({}),
        roles: head.roles,
        rules: rulesOf(head),
      });
      expect(results).toHaveLength(1);
      const [result] = results;
      expect(result!.verdict).toBe(expected.verdict);
      const codes = result!.reasons.map(({ code }) => code);
      expect(codes).toEqual(expect.arrayContaining([...expected.reasonCodes]));
      if (expected.verdict === 'good') {
        const { truth } = head;
        // The plain layout is learnt from the first three lines, which are then no readings: zero is 0.2 s later.
        const zeroLaterS = scenario.reader.layout === 'plain' ? 0.2 : 0;
        const crossingErrorS = result!.crossing!.timeS + zeroLaterS - truth!.probeCrossingS!;
        const closedErrorS = result!.pressClosed!.timeS + zeroLaterS - truth!.pressClosedS!;
        expect(Math.abs(crossingErrorS)).toBeLessThan(0.1);
        // A key may come late by up to 0.2 s, the onset by 1 s; the soak time is wrong by that and the crossing's error.
        expect(closedErrorS).toBeGreaterThan(-0.02);
        expect(closedErrorS).toBeLessThan(result!.pressClosed!.by === 'onset' ? 1 : 0.22);
        const trueSoakS = truth!.probeCrossingS! - truth!.pressClosedS!;
        expect(result!.soakTimeS! - trueSoakS).toBeCloseTo(crossingErrorS - closedErrorS, 6);
      }
    });
  }
});
