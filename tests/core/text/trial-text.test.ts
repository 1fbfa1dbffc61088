import { describe, expect, it } from 'vitest';
import { trialLines, trialRemarks } from '../../../src/core/text/trial-text.ts';
import { trialStatistics } from '../../../src/core/trial/trial-statistics.ts';
import { suspectFor, trialRun } from '../trial/trial-run.ts';

const like = (soaks: readonly number[]) => soaks.map((soak) => trialRun(soak));

describe('a trial in words', () => {
  // t table 1.3.6.7.2 with 4 degrees of freedom: 2.776 and 2.132. Deviation of 52, 53, 53, 54, 53 is √0.5 = 0.7071:
  // 53 ± 2.776·0.7071/√5 = ±0.878; 53 + 2.132·0.7071·√1.2 = 54.651.
  it('five runs: mean 53.00, deviation 0.71, mean within 52.12 to 53.88, next run below 54.65', () => {
    expect(trialLines(trialStatistics(like([52, 53, 53, 54, 53])))).toEqual([
      '5 runs count: mean soak time 53.00 s, standard deviation 0.71 s, 52.00 to 54.00 s (range 2.00 s).',
      'Mean lies within 52.12 to 53.88 s (95 %); the next run stays below 54.65 s (95 %, one-sided).',
      'As far as stated, all runs share one part and one probe position: the spread from part to part is in none of these bounds.',
    ]);
  });

  it('says about how many more runs, and when that is no way out', () => {
    // s = 2, half-width 2 wanted: 3 runs need 4 more (see bounds).
    expect(trialRemarks(trialStatistics(like([51, 53, 55]))).at(-1)).toBe(
      'About 4 more runs would bring the mean inside ±2 s (95 %), if the spread stays as it is.',
    );
    expect(trialRemarks(trialStatistics(like([51, 53, 55]), { wantedHalfWidthS: 0.01 })).at(-1)).toContain(
      'find what varies',
    );
  });

  it('soak times from the onset are called short, the unsafe side', () => {
    const runs = [49, 50].map((soak) => trialRun(soak, { by: 'onset', ...suspectFor('from-onset') }));
    expect(trialRemarks(trialStatistics(runs))[0]).toContain('short, the unsafe side');
  });
});
