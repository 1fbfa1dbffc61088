import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dwellLine, dwellSentences, timerSentence } from '../../../src/core/text/dwell-text.ts';
import { dwell } from '../../../src/core/trial/dwell.ts';
import { roundUpToStep } from '../../../src/core/trial/round-up-to-step.ts';
import { trialStatistics } from '../../../src/core/trial/trial-statistics.ts';
import { suspectFor, trialRun } from './trial-run.ts';

const statistics = trialStatistics([53, 53.5, 54].map((soak) => trialRun(soak)));

describe('dwell', () => {
  // Trade check value: common practice, no source.
  it.each([53, 53.5, 54])(
    'a bond line that takes %s s to 350 °F with 120 s hold: about 174 s by the mean rule',
    (soak) => {
      const result = dwell({ statistics: trialStatistics([trialRun(soak)]), rule: 'mean', holdS: 120 }).dwell;
      expect(Math.abs((result?.totalS ?? 0) - 174)).toBeLessThanOrEqual(1);
    },
  );

  // 53.5 + 1.686 (t table 1.3.6.7.2, see trial-statistics) = 55.186; 53.5 + 7.656·0.5 = 57.328 (Natrella, k at n = 3).
  it.each([
    ['mean', 53.5, 174],
    ['slowest', 54, 174],
    ['next-run', 55.186, 176],
    ['tolerance', 57.328, 178],
  ] as const)('rule %s: soak %s s, dwell %s s', (rule, soakS, totalS) => {
    const result = dwell({ statistics, rule, holdS: 120 }).dwell;
    expect(result?.soakS).toBeCloseTo(soakS, 3);
    expect(result?.totalS).toBe(totalS);
    expect(result?.provisional).toBe(false);
  });

  it('a margin is added before rounding up to the step of the press timer', () => {
    expect(dwell({ statistics, rule: 'mean', holdS: 120, marginS: 2, timerStepS: 5 }).dwell?.totalS).toBe(
      180,
    );
    expect(dwell({ statistics, rule: 'mean', holdS: 120, timerStepS: 0.1 }).dwell?.totalS).toBe(173.5);
  });

  it('a timer that starts 2.2 s before press closed is set 2.2 s longer, one that starts later shorter', () => {
    expect(dwell({ statistics, rule: 'mean', holdS: 120, timerOffsetS: 2.2 }).dwell).toMatchObject({
      totalS: 174,
      timerSetS: 176,
    });
    expect(dwell({ statistics, rule: 'mean', holdS: 120, timerOffsetS: -1.5 }).dwell).toMatchObject({
      totalS: 174,
      timerSetS: 172,
    });
  });

  it('one run: the mean is provisional, the bounds are refused by reason', () => {
    const one = trialStatistics([trialRun(53.5)]);
    expect(dwell({ statistics: one, rule: 'mean', holdS: 120 }).dwell?.provisional).toBe(true);
    for (const rule of ['next-run', 'tolerance'] as const) {
      expect(dwell({ statistics: one, rule, holdS: 120 })).toEqual({
        dwell: null,
        reason: 'two-runs-needed',
      });
    }
    expect(dwell({ statistics: trialStatistics([]), rule: 'mean', holdS: 120 }).reason).toBe(
      'no-counting-run',
    );
  });

  it.each([
    { holdS: -1 },
    { holdS: Number.NaN },
    { holdS: 120, timerStepS: 0 },
    { holdS: 120, marginS: -1 },
    { holdS: 120, timerOffsetS: Number.NaN },
  ])('refuses %o', (times) => {
    expect(() => dwell({ statistics, rule: 'mean', ...times })).toThrow(
      expect.objectContaining({ code: 'option-out-of-range' }),
    );
  });
});

describe('rounding up to the timer step', () => {
  it.each([
    [173.5, 1, 174],
    [174, 1, 174],
    [174.00000000000003, 1, 174],
    [0.1 + 0.2, 0.1, 0.3],
    [174.001, 1, 175],
    [171, 5, 175],
    [-1.5, 1, -1],
  ])('%s s at a step of %s s is %s s', (seconds, stepS, rounded) => {
    expect(roundUpToStep(seconds, stepS)).toBe(rounded);
  });

  it('never shortens by more than half a millisecond and never adds a whole step', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 5000, noNaN: true }),
        fc.constantFrom(0.001, 0.1, 0.5, 1, 5, 60),
        (seconds, stepS) => {
          const rounded = roundUpToStep(seconds, stepS);
          expect(rounded).toBeGreaterThanOrEqual(seconds - 0.00051);
          expect(rounded).toBeLessThan(seconds + stepS + 0.00051);
        },
      ),
    );
  });
});

describe('dwell in words', () => {
  it('two lines of equal weight: the mean rule with its worth, and a full hold in the next run', () => {
    expect(dwellSentences({ statistics, holdS: 120 })).toEqual([
      'common mean rule: 174 s; about half of all cycles hold for less than 120 s',
      'full hold in the next run (95 %): 176 s; spread from part to part, as far as stated, is not in it',
    ]);
  });

  it('with a second carrier among the runs the bound stands without that warning', () => {
    const runs = [
      trialRun(53),
      trialRun(53.5, { conditions: { carrierId: 'A' } }),
      trialRun(54, { conditions: { carrierId: 'B' } }),
    ];
    expect(dwellSentences({ statistics: trialStatistics(runs), holdS: 120 })[1]).toBe(
      'full hold in the next run (95 %): 176 s',
    );
  });

  it('soak times from the onset say in both lines that they are short', () => {
    const runs = [49, 50].map((soak) => trialRun(soak, { by: 'onset', ...suspectFor('from-onset') }));
    for (const line of dwellSentences({ statistics: trialStatistics(runs), holdS: 120 })) {
      expect(line).toContain('from the onset of the rise, so this is short');
    }
  });

  it('one run: provisional, and the second line says what is missing', () => {
    expect(dwellSentences({ statistics: trialStatistics([trialRun(53.5)]), holdS: 120 })).toEqual([
      'common mean rule: 174 s; about half of all cycles hold for less than 120 s; provisional, one run only: nothing is known of the spread',
      'full hold in the next run (95 %): not known from one run; make a second one',
    ]);
  });

  it('no run: both lines say so', () => {
    expect(dwellSentences({ statistics: trialStatistics([]), holdS: 120 })).toEqual([
      'common mean rule: no run counts yet',
      'full hold in the next run (95 %): no run counts yet',
    ]);
  });

  // P(T₂ > 1/(0.5·√(4/3))) with T₂ = 1.7321: closed form ½ − t/(2√(2 + t²)) = 0.113, about 1 in 9.
  it('a margin of 1 s on a deviation of 0.5 s leaves about 1 in 9 short', () => {
    expect(dwellLine({ statistics, holdS: 120, marginS: 1 }, 'mean')).toBe(
      'common mean rule: 175 s; about 1 in 9 of all cycles hold for less than 120 s',
    );
  });

  // 173.5 s rounded up to 177 s leaves 3.5 s: t = 3.5/(0.5·√(4/3)) = 6.062, ½ − t/(2√(2 + t²)) = 0.01307, 1 in 76.
  it('a coarse timer step of 3 s is spoken of as the rule, one of 59 s leaves 1 in 76 short', () => {
    expect(dwellLine({ statistics, holdS: 120, timerStepS: 3 }, 'mean')).toBe(
      'common mean rule: 174 s; about half of all cycles hold for less than 120 s',
    );
    expect(dwellLine({ statistics, holdS: 120, timerStepS: 59 }, 'mean')).toBe(
      'common mean rule: 177 s; about 1 in 76 of all cycles hold for less than 120 s',
    );
  });

  it('the tolerance rule says how much it promises', () => {
    expect(
      dwellLine({ statistics, holdS: 120, tolerance: { content: 0.99, confidence: 0.9 } }, 'tolerance'),
    ).toContain('full hold in 99 % of all cycles (90 % sure): ');
  });

  it('the setting of the press timer is shown beside the dwell, with what starts it', () => {
    const result = dwell({ statistics, rule: 'mean', holdS: 120, timerOffsetS: 2.2 }).dwell!;
    expect(timerSentence(result, { startsAt: 'button', offsetS: 2.2 })).toBe(
      'dwell from press closed: 174 s; set on the press timer: 176 s (it starts at the button, 2.2 s before press closed)',
    );
    expect(timerSentence(result, { startsAt: 'closing', offsetS: 0 })).toBeNull();
  });
});
