import { describe, expect, it } from 'vitest';
import type { RunResult } from '../../../src/core/run/RunResult.ts';
import { analyseEntries } from '../../../src/core/session/analyse-entries.ts';
import { DEMO_CLOSING, DEMO_SCENARIO } from '../../../src/core/simulator/demo-scenario.ts';
import { variedClosing } from '../../../src/core/simulator/good-scenarios.ts';
import { simulateRecording } from '../../../src/core/simulator/simulate-recording.ts';
import type { WhatIfWish } from '../../../src/core/what-if/WhatIf.ts';
import { whatIf } from '../../../src/core/what-if/what-if.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';
import { runRules } from '../../../src/program/options/run-rules.ts';

const TARGET_C = (350 - 32) / 1.8;
const { press } = DEMO_SCENARIO;
const platenMeanC = (press.upper.setPointC + press.lower.setPointC) / 2;

/** One simulated closing (conduction through steel, ring and film; no first-order curve in it), measured as a recording. */
function run(seed: number, { targetC = TARGET_C, platenC = platenMeanC, startC }: WhatIfWish): RunResult {
  const varied = variedClosing(seed, DEMO_CLOSING.closedAtS, 110);
  const moved = platenC - platenMeanC;
  const scenario = {
    ...DEMO_SCENARIO,
    seed,
    press: {
      ...press,
      upper: { ...press.upper, setPointC: press.upper.setPointC + moved },
      lower: { ...press.lower, setPointC: press.lower.setPointC + moved },
    },
    closings: [
      startC === undefined ? varied : { ...varied, startC: varied.startC - DEMO_CLOSING.startC + startC },
    ],
    endS: varied.openedAtS + 5,
  };
  const { head, entries } = simulateRecording(scenario);
  return analyseEntries(entries, {
    decoder: createReaderDecoder({}),
    roles: head.roles,
    rules: runRules({}, { targetC, holdS: 30 }),
  }).results[0]!;
}

const SEEDS = [1, 2, 3, 4, 5];
const base = SEEDS.map((seed) => run(seed, {}));

describe('what-if against simulated runs made at the other conditions', () => {
  const wishes: readonly [string, WhatIfWish][] = [
    ['target 340 °F', { targetC: (340 - 32) / 1.8 }],
    ['target 365 °F', { targetC: (365 - 32) / 1.8 }],
    ['platens 8 °C colder', { platenC: platenMeanC - 8 }],
    ['platens 8 °C hotter', { platenC: platenMeanC + 8 }],
    ['start at 40 °C', { startC: 40 }],
    [
      'target 360 °F, platens 5 °C colder, start 32 °C',
      { targetC: (360 - 32) / 1.8, platenC: platenMeanC - 5, startC: 32 },
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
      const made = SEEDS.map((seed) => run(seed + 100, wish).soakTimeS!);
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
