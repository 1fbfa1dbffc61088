import { describe, expect, it } from 'vitest';
import { WB_150, WB_212 } from '../../../src/core/simulator/demo-assemblies.ts';
import { NORTH, SOUTH } from '../../../src/core/simulator/demo-presses.ts';
import { DEMO_SCENARIO } from '../../../src/core/simulator/demo-scenario.ts';
import type { Scenario } from '../../../src/core/simulator/Scenario.ts';
import { simulateRun } from '../../../src/core/simulator/simulate-run.ts';

function soakOf(change: Partial<Scenario>): { soakS: number; slopeCPerS: number } {
  const { closings, bondLineC } = simulateRun({ ...DEMO_SCENARIO, ...change });
  const { bondLineCrossingS, pressClosedS } = closings[0]!;
  const index = Math.round(bondLineCrossingS! * 100);
  return {
    soakS: bondLineCrossingS! - pressClosedS,
    slopeCPerS: (bondLineC[index + 10]! - bondLineC[index - 10]!) / 0.2,
  };
}

describe('simulateRun', () => {
  it('WB-212 on North: 350 °F after 53 to 54 s at about 1.37 °C/s (trade check values, common practice, no source)', () => {
    const { soakS, slopeCPerS } = soakOf({ press: NORTH, assembly: WB_212 });
    expect(soakS).toBeGreaterThan(53);
    expect(soakS).toBeLessThan(54);
    expect(Math.abs(slopeCPerS - 1.37)).toBeLessThan(0.05);
  });

  it('WB-150 is faster by more than 10 s and South slower than North by 0.5 to 2.5 s (demo scenario)', () => {
    const north = soakOf({ press: NORTH, assembly: WB_212 }).soakS;
    const south = soakOf({ press: SOUTH, assembly: WB_212 }).soakS;
    expect(soakOf({ press: NORTH, assembly: WB_150 }).soakS).toBeLessThan(north - 10);
    expect(south - north).toBeGreaterThan(0.5);
    expect(south - north).toBeLessThan(2.5);
  });

  it('a start 10 °C warmer comes about 2 s earlier (sensitivity −0.2 s/°C of the first-order curve)', () => {
    const usual = soakOf({}).soakS;
    const warm = soakOf({ closings: [{ ...DEMO_SCENARIO.closings[0]!, startC: 34 }] }).soakS;
    // τ/(Tp − T0) = 40.5 / 208.2 = 0.19 s/°C; the conduction model is not exactly first order.
    expect((usual - warm) / 10).toBeGreaterThan(0.15);
    expect((usual - warm) / 10).toBeLessThan(0.25);
  });

  it('platens 4 °C lower cost about 2 s (sensitivity −0.5 s/°C of the first-order curve)', () => {
    const lower = {
      ...NORTH,
      upper: { ...NORTH.upper, offsetC: -4 },
      lower: { ...NORTH.lower, offsetC: -4 },
    };
    const costS = (soakOf({ press: lower }).soakS - soakOf({}).soakS) / 4;
    // dt/dTp = τ·(1/(Tp − T) − 1/(Tp − T0)) = 40.5·(1/55.5 − 1/208.2) = 0.535 s/°C.
    expect(costS).toBeGreaterThan(0.4);
    expect(costS).toBeLessThan(0.65);
  });

  it('the probe crosses later than the bond line by about its time constant of 0.3 s', () => {
    const { closings } = simulateRun(DEMO_SCENARIO);
    expect(closings[0]!.probeCrossingS! - closings[0]!.bondLineCrossingS!).toBeCloseTo(0.3, 2);
  });

  it('crossing times and trace agree: the value beside the crossing is the target within one step’s rise', () => {
    const { closings, bondLineC } = simulateRun(DEMO_SCENARIO);
    const crossingS = closings[0]!.bondLineCrossingS!;
    const before = Math.floor(crossingS * 100);
    expect(bondLineC[before]!).toBeLessThan(DEMO_SCENARIO.targetC);
    expect(bondLineC[before + 1]!).toBeGreaterThanOrEqual(DEMO_SCENARIO.targetC);
  });

  it('heats before, not after: flat until press closed, falling after opened', () => {
    const { bondLineC, closings } = simulateRun(DEMO_SCENARIO);
    const { pressClosedS, openedS } = closings[0]!;
    expect(Math.abs(bondLineC[Math.round(pressClosedS * 100)]! - 24)).toBeLessThan(0.01);
    expect(bondLineC[Math.round(openedS! * 100) + 500]!).toBeLessThan(
      bondLineC[Math.round(openedS! * 100)]! - 5,
    );
  });

  it('is the same again for the same scenario and differs for another seed', () => {
    const crossing = (seed: number) => simulateRun({ ...DEMO_SCENARIO, seed }).closings[0]!.bondLineCrossingS;
    expect(crossing(3)).toBe(crossing(3));
    expect(crossing(3)).not.toBe(crossing(4));
  });
});
