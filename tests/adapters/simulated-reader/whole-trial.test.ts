import { describe, expect, it } from 'vitest';
import { createSteppedReader } from '../../../src/adapters/simulated-reader/create-stepped-reader.ts';
import { createSession } from '../../../src/core/session/create-session.ts';
import { demoTrialScenario } from '../../../src/core/simulator/demo-trial-scenario.ts';
import { simulateRun } from '../../../src/core/simulator/simulate-run.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';
import { createLineSplitter } from '../../../src/core/wire/line-splitter.ts';

describe('a whole simulated trial through bytes', () => {
  it('five closings give five good runs, each soak time within 0.1 s of the probe’s true one', async () => {
    const scenario = demoTrialScenario({ runs: 5 });
    const reader = createSteppedReader({ scenario });
    const splitter = createLineSplitter({ longestLine: 500, startKnown: false });
    const session = createSession({
      decoder: createReaderDecoder({}),
      roles: ['bond-line', 'bond-line-outer', 'upper-platen', 'lower-platen'],
      rules: {
        targetC: scenario.targetC,
        holdS: scenario.holdS,
        longestDipS: 2,
        dip: 'restarts',
        platenSetPointC: { upper: 232.22, lower: 232.22 },
        ambientC: scenario.ambientC,
        warmCarrierLimitC: 15,
        closingDisagreementLimitS: 1,
        closedAtS: null,
      },
    });
    await reader.open({
      bytes: (chunk, arrivedUs) => {
        for (const line of splitter.push(chunk, arrivedUs)) session.accept({ kind: 'line', ...line });
      },
      lost: () => undefined,
      back: () => undefined,
    });
    // Uneven turns, as timers give them.
    for (let timeS = 0; timeS < scenario.endS; timeS += 3.7) reader.advanceToS(timeS);
    reader.advanceToS(scenario.endS);
    session.finish();

    const { results, counts } = session.state;
    expect(results.map(({ verdict }) => verdict)).toEqual(['good', 'good', 'good', 'good', 'good']);
    expect(counts.lostSamples).toBe(0);
    const truths = simulateRun(scenario).closings;
    results.forEach((result, index) => {
      const trueSoakS = truths[index]!.probeCrossingS! - truths[index]!.pressClosedS;
      expect(Math.abs(result.soakTimeS! - trueSoakS)).toBeLessThan(0.1);
    });
  });
});
