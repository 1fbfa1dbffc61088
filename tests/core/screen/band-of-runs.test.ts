import { describe, expect, it } from 'vitest';
import { bandOfRuns } from '../../../src/core/screen/band-of-runs.ts';
import { bondLineC, scripted, trialRun } from './scripted-trial.ts';

const run = (runNumber: number, of: (timeS: number) => number, fromS: number, toS: number) => ({
  recordingId: 'r',
  runNumber,
  points: Array.from({ length: Math.round((toS - fromS) / 0.7) + 1 }, (_, i) => {
    const timeS = fromS + i * 0.7;
    return { timeS, temperatureC: of(timeS) };
  }),
});

describe('bandOfRuns', () => {
  it('lies between two straight rises, to 1e-9 °C, whatever the times of their readings', () => {
    const band = bandOfRuns(
      Object.freeze([run(1, (t) => 24 + t, -5, 60), run(2, (t) => 26 + 1.1 * t, -4.8, 60.2)]),
    );
    const at = band.find((point) => point.timeS === 30);
    expect(at?.lowC).toBeCloseTo(54, 9);
    expect(at?.highC).toBeCloseTo(59, 9);
  });

  it('goes on with the longer run alone, and bridges no silence over 5 s', () => {
    const long = run(1, (t) => 24 + t, 0, 60);
    const points = long.points.filter((p) => p.timeS < 20 || p.timeS > 30);
    const band = bandOfRuns([{ ...long, points }, run(2, (t) => 24 + t, 0, 10)]);
    expect(band.some((point) => point.timeS === 25)).toBe(false);
    expect(band.some((point) => point.timeS === 45)).toBe(true);
  });

  it('is empty without runs', () => expect(bandOfRuns([])).toEqual([]));
});

describe('band behind the chart', () => {
  it('is the finished run itself, counted from its press closed: the coldest probe (0.8 s behind) within 0.5 °C', () => {
    const { band } = scripted('run good').state;
    for (const timeS of [5, 20, 50, 120]) {
      const at = band.find((point) => point.timeS === timeS);
      expect(Math.abs((at?.lowC ?? Number.NaN) - bondLineC(timeS - 0.8))).toBeLessThan(0.5);
    }
  });

  it('loses a run that is set aside and gets it back', () => {
    const trial = scripted('run good');
    const standing = (decision: 'set-aside' | 'automatic') =>
      trial.standing(
        [
          {
            ...trialRun({}, decision === 'automatic' ? { kind: decision } : { kind: decision, reason: 'x' }),
            source: '',
          },
        ],
        240,
      ).state.band.length;
    expect(standing('set-aside')).toBe(0);
    expect(standing('automatic')).toBeGreaterThan(100);
  });

  it('never holds a suspect run, until it is taken in', () => {
    const trial = scripted('run good');
    const band = (decision: 'automatic' | 'taken-in') =>
      trial.standing(
        [
          {
            ...trialRun(
              { verdict: 'suspect' },
              decision === 'automatic' ? { kind: decision } : { kind: decision, reason: 'x' },
            ),
            source: '',
          },
        ],
        240,
      ).state.band.length;
    expect(band('automatic')).toBe(0);
    expect(band('taken-in')).toBeGreaterThan(100);
  });
});
