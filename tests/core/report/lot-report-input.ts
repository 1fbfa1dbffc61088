import type { BondingCycle } from '../../../src/core/bonding/BondingCycle.ts';
import type { TracePoint } from '../../../src/core/figure/RunTrace.ts';
import type { LotCycle, LotReportInput } from '../../../src/core/report/LotReportInput.ts';
import { trialRun } from '../trial/trial-run.ts';
import { trialReportInput } from './trial-report-input.ts';

export const cleanCycle: BondingCycle = {
  cycleId: 'c-1',
  assemblyName: 'WB-212',
  pressName: 'North',
  recipeVersion: 2,
  recordingId: 'r-1',
  simulated: false,
  initials: 'AB',
  closedAt: '2026-03-02T08:20:00.000Z',
  closedBy: 'key',
  dwellWantedS: 174,
  dwellHeldS: 175.2,
  targetC: (350 - 32) / 1.8,
  holdWantedS: 120,
  holdCountedS: 121.4,
  hold: 'verified',
  platensAtClosingC: { upper: 232, lower: 231 },
  lowestC: 176.9,
  peakC: 205,
  againstBand: 'inside',
  recordedAtS: 40,
  result: 'done',
  flags: [],
};

/** First order from 24 °C towards 232 °C with 40.5 s, s from press closed. */
export const bondLine: readonly TracePoint[] = Array.from({ length: 1900 }, (_, at) => {
  const timeS = at / 10 - 10;
  return { timeS, temperatureC: timeS < 0 ? 24 : 232 - 208 * Math.exp(-timeS / 40.5) };
});

export const lotCycle = (number: number, change: Partial<BondingCycle> = {}): LotCycle => ({
  number,
  cycle: { ...cleanCycle, cycleId: `c-${number}`, ...change },
  bondLine: change.hold === 'not-measured' ? [] : bondLine,
});

/** A lot of given cycles; `text` stands wherever a person, a reader or a file may put one. */
export function lotReportInput(
  cycles: readonly LotCycle[],
  change: Partial<LotReportInput> = {},
  text?: string,
): LotReportInput {
  const { recordings } = trialReportInput([trialRun(53.5)], text === undefined ? {} : { text });
  return {
    lot: text ?? 'L-2041',
    assemblyName: text ?? 'WB-212',
    pressName: text ?? 'North',
    assembly: null,
    press: null,
    pressure: null,
    gaugeStated: false,
    gaugePsi: null,
    cycles,
    recipes: [
      {
        version: 2,
        recipe: null,
        band: bondLine.flatMap(({ timeS, temperatureC }, at) =>
          at % 5 === 0 && temperatureC !== null
            ? [{ timeS, lowC: temperatureC - 3, highC: temperatureC + 3 }]
            : [],
        ),
      },
    ],
    recordings,
    probes: [],
    equipment: text === undefined ? [] : [text],
    cyclesSha256: 'ab'.repeat(32),
    note: text ?? null,
    unit: 'F',
    madeAt: '2026-03-02T12:00:00Z',
    program: 'Dwellwright 0.1.0',
    ...change,
  };
}
