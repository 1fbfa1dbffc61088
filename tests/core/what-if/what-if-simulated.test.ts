import { describe, expect, it } from 'vitest';
import type { WhatIfWish } from '../../../src/core/what-if/WhatIf.ts';
import { whatIf } from '../../../src/core/what-if/what-if.ts';
import { PLATEN_MEAN_C, simulatedRun, TARGET_C } from './simulated-run.ts';

const SEEDS = [1, 2, 3, 4, 5];
const base = SEEDS.map((seed) => simulatedRun(seed));

describe('what-if against simulated runs made at the other conditions', () => {
  const wishes: readonly [string, WhatIfWish][] = [
    ['target 340 °F', { targetC: (340 - 32) / 1.8 }],
    ['target 365 °F', { targetC: (365 - 32) / 1.8 }],
    ['platens 8 °C colder', { platenC: PLATEN_MEAN_C - 8 }],
    ['platens 8 °C hotter', { platenC: PLATEN_MEAN_C + 8 }],
    ['start at 40 °C', { startC: 40 }],
    [
      'target 360 °F, platens 5 °C colder, start 32 °C',
      { targetC: (360 - 32) / 1.8, platenC: PLATEN_MEAN_C - 5, startC: 32 },
    ],
  ];

  it.each(wishes)(
    '%s: at least four of five new runs lie in the 95 % interval, their mean within 1 s of the estimate',
    (_, wish) => {
      const answer = whatIf({
        runs: base,
        targetC: TARGET_C,
        holdS: 120,
        probeExpandedC: 0.95 * 2.2,
        setPointC: null,
        wish,
      });
      if (answer.kind !== 'estimate') throw new Error(answer.refusal.code);
      const { soakS, intervalS } = answer.estimate;
      const made = SEEDS.map((seed) => simulatedRun(seed + 100, wish).soakTimeS!);
      const inside = made.filter((soak) => soak >= intervalS[0] && soak <= intervalS[1]).length;
      const mean = made.reduce((sum, soak) => sum + soak, 0) / made.length;
      console.info(
        `${JSON.stringify(wish)}: estimate ${soakS.toFixed(2)} s (${intervalS.map((s) => s.toFixed(2)).join(' to ')}), made ${mean.toFixed(2)} s, inside ${inside} of 5`,
      );
      expect(inside).toBeGreaterThanOrEqual(4);
      expect(Math.abs(mean - soakS)).toBeLessThan(1);
    },
  );
});
