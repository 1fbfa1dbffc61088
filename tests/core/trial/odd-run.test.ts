import { describe, expect, it } from 'vitest';
import { oddRunText, trialLines, trialRemarks } from '../../../src/core/text/trial-text.ts';
import { fewRuns } from '../../../src/core/trial/few-runs.ts';
import { oddRun } from '../../../src/core/trial/odd-run.ts';
import { onsetDelay } from '../../../src/core/trial/onset-delay.ts';
import type { TrialRun } from '../../../src/core/trial/TrialResult.ts';
import { trialStatistics } from '../../../src/core/trial/trial-statistics.ts';
import { trialRun } from './trial-run.ts';

const like = (soaks: readonly number[]) => soaks.map((soak) => trialRun(soak));

/** A run that began warm: everything else as in `trialRun`. */
function warmRun(soakS: number, startC: number): TrialRun {
  const run = trialRun(soakS);
  return { ...run, result: { ...run.result, startC } };
}

describe('odd run', () => {
  it('is not looked for under five runs, however far out one lies', () => {
    expect(oddRun(like([53, 53.1, 52.9, 70]))).toBeNull();
  });

  it('none among five ordinary runs', () => {
    expect(oddRun(like([53, 53.4, 52.8, 53.9, 53.2]))).toBeNull();
  });

  it('a run 5 s faster that started 24 °C warmer is flagged, with the start as its physical reason', () => {
    const warm = warmRun(48.3, 48);
    const odd = oddRun([...like([53, 53.4, 52.8, 53.9, 53.4]), warm]);
    expect(odd?.run).toBe(warm);
    expect(odd?.differenceS).toBeCloseTo(-5, 1);
    expect(odd?.causes).toEqual([{ kind: 'start', differenceC: 24, explainsS: -4.800000000000001 }]);
    expect(oddRunText(odd!)).toContain('5 s faster than the others');
    expect(oddRunText(odd!)).toContain('carrier started 43.2 °F (24 °C) hotter, about −4.8 s of soak time');
    expect(oddRunText(odd!)).toContain('It still counts');
  });

  it('without a physical reason the text says that nothing else was different', () => {
    const odd = oddRun(like([53, 53.4, 52.8, 53.9, 53.4, 60]));
    expect(odd?.causes).toEqual([]);
    expect(oddRunText(odd!)).toContain('Nothing else was different about it');
  });

  it('a flagged run stays in the statistics', () => {
    expect(trialStatistics(like([53, 53.4, 52.8, 53.9, 53.4, 60])).runs).toBe(6);
  });
});

describe('two or three runs in words', () => {
  // t table 1.3.6.7.2: 4.303 (2), 3.182 (3), 2.776 (4); one-sided 2.920, 2.353, 2.132. With s = 1:
  // n 3: 4.303/√3 = 2.484, 2.920·√(4/3) = 3.372; n 4: 1.591, 2.631; n 5: 1.241, 2.335.
  it('three runs with a deviation of 1 s: ±2.5 s now, ±1.6 s with a fourth, ±1.2 s with a fifth', () => {
    const tell = fewRuns(trialStatistics(like([52, 53, 54])));
    expect(tell?.now.meanHalfWidthS).toBeCloseTo(2.484, 3);
    expect(tell?.now.nextRunAboveMeanS).toBeCloseTo(3.372, 3);
    expect(tell?.later.map((one) => one.meanHalfWidthS)[0]).toBeCloseTo(1.591, 3);
    expect(tell?.later.map((one) => one.nextRunAboveMeanS)[1]).toBeCloseTo(2.335, 3);
    expect(trialRemarks(trialStatistics(like([52, 53, 54])))).toContain(
      'Three runs tell little: the mean may be off by 2.5 s, and the bound for the next run lies 3.4 s above it. ' +
        'If the spread stays as it is, a fourth run makes that about 1.6 s and 2.6 s, a fifth about 1.2 s and 2.3 s.',
    );
  });

  it('is not said of one run or of four', () => {
    expect(fewRuns(trialStatistics(like([53])))).toBeNull();
    expect(fewRuns(trialStatistics(like([53, 54, 53, 54])))).toBeNull();
  });

  it('one run is said to say nothing of the spread', () => {
    expect(trialLines(trialStatistics(like([53.472])))).toEqual([
      '1 run counts: soak time 53.47 s.',
      'One run says nothing about the spread: the recipe can only be provisional.',
    ]);
    expect(trialLines(trialStatistics([]))).toEqual(['No run counts yet: there is no soak time to state.']);
  });
});

describe('delay of the onset', () => {
  it('is the mean of onset less press closed over good marked runs that saw both', () => {
    const runs = [
      trialRun(53, { onsetAfterClosingS: 3 }),
      trialRun(53, { onsetAfterClosingS: 4 }),
      trialRun(49, { onsetAfterClosingS: 0, by: 'onset' }),
      trialRun(53, { onsetAfterClosingS: 9, verdict: 'suspect' }),
      trialRun(53),
    ];
    expect(onsetDelay(runs)).toEqual({ delayS: 3.5, sdS: Math.SQRT1_2, runs: 2 });
    expect(onsetDelay([trialRun(53)])).toBeNull();
  });
});
