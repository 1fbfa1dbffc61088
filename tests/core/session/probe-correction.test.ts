import { describe, expect, it } from 'vitest';
import { headProbes, probeHeadLines } from '../../../src/core/probe/head-probes.ts';
import type { Probe } from '../../../src/core/probe/Probe.ts';
import { probeCorrection } from '../../../src/core/probe/probe-correction.ts';
import type { RecordingEntry } from '../../../src/core/recording/RecordingEntry.ts';
import { analyseEntries } from '../../../src/core/session/analyse-entries.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';
import { runRules } from '../../../src/program/options/run-rules.ts';

/** The trade's example, printed by a plain reader that reads 0.6 °C low: closed form in, closed form out. */
const TARGET_C = (350 - 32) / 1.8;
const ERROR_C = -0.6;

function entries(): readonly RecordingEntry[] {
  const line = (timeS: number, temperatureC: number): RecordingEntry => ({
    kind: 'line',
    arrivedUs: Math.round(timeS * 1e6),
    text: temperatureC.toFixed(3),
    wholeness: 'whole',
  });
  const all: RecordingEntry[] = [];
  for (let step = 0; step <= 3000; step += 1) {
    const timeS = step * 0.1;
    const heated = timeS - 20;
    const trueC = heated <= 0 ? 24 : 232.2 - 208.2 * Math.exp(-heated / 40.5);
    if (step === 200)
      all.push({ kind: 'mark', arrivedUs: 20_000_000, by: 'key', mark: { kind: 'press-closed' } });
    all.push(line(timeS, trueC + ERROR_C));
  }
  return all;
}

const probe: Probe = {
  name: 'K-07 "long"',
  thermocoupleType: 'K',
  toleranceClass: 'iec-class-2',
  points: [{ temperatureC: 177, errorC: ERROR_C, standardUncertaintyC: 0.25, calibratedOn: '2026-03-01' }],
  readerIncluded: false,
  headC: null,
  readerC: 23,
};

const soakS = (corrections?: readonly [ReturnType<typeof probeCorrection>]) => {
  const { results } = analyseEntries(entries(), {
    decoder: createReaderDecoder({ statedUnit: 'C' }),
    roles: ['bond-line'],
    rules: runRules({}),
    ...(corrections === undefined ? {} : { probeCorrections: corrections }),
  });
  return results[0]!.soakTimeS!;
};

/** τ·ln((Tp − T0)/(Tp − Tc)) = 53.47 s. */
const closedFormS = (targetC: number) => 40.5 * Math.log(208.2 / (232.2 - targetC));

describe('a calibrated probe in the pipeline', () => {
  it('raw: a probe that reads 0.6 °C low crosses 0.44 s late', () => {
    expect(Math.abs(soakS() - closedFormS(TARGET_C - ERROR_C))).toBeLessThan(0.03);
  });

  it('corrected: the soak time is the true one, 53.47 s, within 0.03 s', () => {
    expect(Math.abs(soakS([probeCorrection(probe)]) - closedFormS(TARGET_C))).toBeLessThan(0.03);
  });

  it('without a correction gives the same to the last digit as before', () => {
    expect(soakS([null])).toBe(soakS());
  });

  it('comes back whole from the head of a recording, quotes in its name and all', () => {
    const further = probeHeadLines([null, probe]);
    expect(further['probe-2']).toBe(probe.name);
    expect(headProbes({ further, roles: ['bond-line', 'bond-line-outer'] })).toEqual([null, probe]);
  });

  it('refuses a head whose record was cut', () => {
    const further = { 'probe-1-record': '{"name":"K' };
    expect(() => headProbes({ further, roles: ['bond-line'] })).toThrow(
      expect.objectContaining({ code: 'probe-record-unreadable' }),
    );
  });
});
