import { describe, expect, it } from 'vitest';
import { countingRuns } from '../../../src/core/trial/counting-runs.ts';
import { trialStatistics } from '../../../src/core/trial/trial-statistics.ts';
import { suspectFor, trialRun } from './trial-run.ts';

const takenIn = { kind: 'taken-in', reason: 'carrier checked with a second probe' } as const;
const setAside = { kind: 'set-aside', reason: 'wrong ring' } as const;

describe('which runs count', () => {
  it('good runs count, suspect ones do not, until taken in with a reason', () => {
    const runs = [
      trialRun(53),
      trialRun(60, suspectFor('carrier-warm')),
      trialRun(54, { ...suspectFor('slow-rise'), decision: takenIn }),
    ];
    const { counting, leftOut } = countingRuns(runs);
    expect(counting).toEqual([runs[0], runs[2]]);
    expect(leftOut).toEqual([{ run: runs[1], why: 'suspect' }]);
  });

  it('an unusable run never counts, not even taken in, and a run without a soak time neither', () => {
    const runs = [
      trialRun(53, { verdict: 'unusable', decision: takenIn }),
      trialRun(null),
      trialRun(Number.NaN),
    ];
    expect(countingRuns(runs).counting).toEqual([]);
    expect(countingRuns(runs).leftOut.map(({ why }) => why)).toEqual([
      'unusable',
      'no-soak-time',
      'no-soak-time',
    ]);
    expect(trialStatistics(runs).runs).toBe(0);
  });

  it('a good run set aside does not count', () => {
    expect(countingRuns([trialRun(53, { decision: setAside })]).leftOut[0]?.why).toBe('set-aside');
  });

  it('runs timed from the onset are never averaged with marked ones, not even taken in', () => {
    const runs = [
      trialRun(53),
      trialRun(49, { by: 'onset', ...suspectFor('from-onset') }),
      trialRun(49, { by: 'onset', ...suspectFor('from-onset'), decision: takenIn }),
    ];
    const { counting, leftOut, fromOnset } = countingRuns(runs);
    expect(counting).toEqual([runs[0]]);
    expect(leftOut.map(({ why }) => why)).toEqual(['from-onset', 'from-onset']);
    expect(fromOnset).toBe(false);
  });

  it('where every run is timed from the onset they are averaged among themselves, and flagged', () => {
    const runs = [49, 50].map((soak) => trialRun(soak, { by: 'onset', ...suspectFor('from-onset') }));
    const statistics = trialStatistics(runs);
    expect(statistics.meanSoakS).toBe(49.5);
    expect(statistics.fromOnset).toBe(true);
  });

  it('with the delay of 4 s known from marked runs it is added, and they count together', () => {
    const runs = [trialRun(53), trialRun(54), trialRun(49.5, { by: 'onset', ...suspectFor('from-onset') })];
    const statistics = trialStatistics(runs, { onsetDelayS: 4 });
    expect(statistics).toMatchObject({ runs: 3, meanSoakS: 53.5, maxSoakS: 54, fromOnset: false });
  });

  it('an onset run that is suspect for something else too stays out', () => {
    const reasons = [...suspectFor('from-onset').reasons, ...suspectFor('carrier-warm').reasons];
    expect(countingRuns([trialRun(49, { by: 'onset', verdict: 'suspect', reasons })]).leftOut[0]?.why).toBe(
      'suspect',
    );
  });
});

describe('figures of a trial', () => {
  it('53.0, 53.5, 54.0 s: mean 53.5, deviation 0.5, range 1, interval ±1.242, next run below 54.95 s', () => {
    const statistics = trialStatistics([trialRun(53), trialRun(53.5), trialRun(54)]);
    expect(statistics.runs).toBe(3);
    expect(statistics.meanSoakS).toBe(53.5);
    expect(statistics.sdSoakS).toBeCloseTo(0.5, 12);
    expect(statistics.rangeSoakS).toBe(1);
    expect([statistics.minSoakS, statistics.maxSoakS]).toEqual([53, 54]);
    // t table 1.3.6.7.2, 2 degrees of freedom: 4.303 and 2.920. 4.303·0.5/√3 = 1.242; 2.920·0.5·√(4/3) = 1.686.
    expect(statistics.meanCi95S?.[0]).toBeCloseTo(53.5 - 1.242, 3);
    expect(statistics.meanCi95S?.[1]).toBeCloseTo(53.5 + 1.242, 3);
    expect(statistics.nextRunUpper95S).toBeCloseTo(53.5 + 1.686, 3);
    expect(statistics.moreRunsForWidth).toBe(0);
  });

  it('one run claims no spread: everything that needs two is null', () => {
    expect(trialStatistics([trialRun(53.5)])).toEqual({
      runs: 1,
      meanSoakS: 53.5,
      minSoakS: 53.5,
      maxSoakS: 53.5,
      sdSoakS: null,
      rangeSoakS: null,
      meanCi95S: null,
      nextRunUpper95S: null,
      moreRunsForWidth: null,
      wantedHalfWidthS: 2,
      partSpreadMissing: true,
      fromOnset: false,
    });
  });

  it('no run at all gives no figure', () => {
    expect(trialStatistics([])).toMatchObject({
      runs: 0,
      meanSoakS: null,
      sdSoakS: null,
      partSpreadMissing: false,
    });
  });
});

describe('the readings of one run that came twice', () => {
  it('count once, and the second says why it is left out; runs that only share their soak time both count', () => {
    const run = () => trialRun(53.5, { peakC: 221 });
    const { counting, leftOut } = countingRuns([run(), run(), trialRun(53.5, { peakC: 222 })]);
    expect(counting).toHaveLength(2);
    expect(leftOut.map(({ why }) => why)).toEqual(['same-readings']);
  });

  it('a run set aside or unusable keeps its own reason', () => {
    const aside = trialRun(53.5, { peakC: 221, decision: { kind: 'set-aside', reason: 'why not' } });
    expect(countingRuns([trialRun(53.5, { peakC: 221 }), aside]).leftOut.map(({ why }) => why)).toEqual([
      'set-aside',
    ]);
  });
});

describe('spread from part to part', () => {
  const flag = (...conditions: Parameters<typeof trialRun>[1][]) =>
    trialStatistics(conditions.map((change) => trialRun(53, change))).partSpreadMissing;

  it('is missing when one carrier, one ring and one probe position serve all runs, or nothing is stated', () => {
    const same = { conditions: { carrierId: 'A', ring: 're-used', probe: 'left' } } as const;
    expect(flag(same, same)).toBe(true);
    expect(flag({}, {}, {})).toBe(true);
  });

  it('is there with a second carrier, a second fresh ring, or a probe laid anew after the first run', () => {
    expect(flag({ conditions: { carrierId: 'A' } }, { conditions: { carrierId: 'B' } })).toBe(false);
    expect(flag({ conditions: { ring: 'fresh' } }, { conditions: { ring: 'fresh' } })).toBe(false);
    expect(flag({}, { conditions: { probe: 're-laid' } })).toBe(false);
  });

  it('is not brought in by the first laying of the probe, nor by a run that does not count', () => {
    expect(flag({ conditions: { probe: 're-laid' } }, { conditions: { probe: 'left' } })).toBe(true);
    expect(
      flag({ conditions: { carrierId: 'A' } }, { conditions: { carrierId: 'B' }, verdict: 'unusable' }),
    ).toBe(true);
  });
});
