import type { TrialReportInput } from '../../../src/core/report/TrialReportInput.ts';
import { type OutcomeSettings, trialOutcome } from '../../../src/core/result/trial-outcome.ts';
import type { TrialRun } from '../../../src/core/trial/TrialResult.ts';

const SETTINGS: OutcomeSettings = {
  rule: 'mean',
  targetC: (350 - 32) / 1.8,
  holdS: 120,
  marginS: 0,
  timerStepS: 1,
  timerOffsetS: 0,
  timerStartsAt: 'closing',
};

const COUNTS = {
  lines: 0,
  readings: 0,
  garbage: 0,
  badChecksum: 0,
  malformed: 0,
  overLong: 0,
  cutOff: 0,
  startUnknown: 0,
  duplicates: 0,
  lostSamples: 0,
  gaps: 0,
  restarts: 0,
  unplugs: 0,
};

/** A report's input for given runs, one recording each, with a plain heating curve as its trace. */
export function trialReportInput(
  runs: readonly TrialRun[],
  change: {
    readonly settings?: Partial<OutcomeSettings>;
    readonly job?: Partial<TrialReportInput['job']>;
    readonly input?: Partial<TrialReportInput>;
    /** Stands wherever a reader, a file or a person may put a text. */
    readonly text?: string;
  } = {},
): TrialReportInput {
  const { text } = change;
  return {
    outcome: trialOutcome(runs, { ...SETTINGS, ...change.settings }),
    recordingOfRun: runs.map((_, index) => index),
    recordings: runs.map((run, index) => ({
      name: text ?? `run-${index + 1}.dwell.txt`,
      head: null,
      soundness: { kind: 'sound' },
      sha256: String(index).repeat(64),
      trace: {
        identity: {
          name: text ?? 'bench reader',
          firmwareVersion: text ?? '1.0',
          serialNumber: text ?? '0001',
          channels: [
            { number: 1, name: text ?? null, thermocoupleType: 'K', sends: 'temperature', resolutionC: 0.25 },
          ],
          ratesHz: [10],
          rateHz: 10,
          hasContact: true,
        },
        counts: COUNTS,
        clock: { driftPpm: 18, standardUncertaintyPpm: 2, overS: 180 },
        recognised: null,
        channels: [
          {
            channel: 1,
            role: 'bond-line',
            points: Array.from({ length: 2000 }, (_, at) => ({
              timeS: at / 10,
              temperatureC: heating(at / 10 - 10, run),
            })),
          },
        ],
      },
    })),
    job: {
      trialId: text ?? '20260302-0820-ab12',
      startedAt: text ?? '2026-03-02T08:20:00+01:00',
      assemblyName: text ?? 'WB-212',
      pressName: text ?? 'North',
      assembly: null,
      press: null,
      platenSetPointC: { upper: 232.2, lower: 232.2 },
      ambientC: 24,
      pressure: null,
      gaugeStated: false,
      gaugePsi: null,
      operators: [text ?? 'AB'],
      simulated: false,
      recipes: [],
      ...change.job,
    },
    probes: [],
    equipment: text === undefined ? [] : [text],
    note: text ?? null,
    furtherSections: [],
    unit: 'F',
    madeAt: '2026-03-02T12:00:00Z',
    program: 'Dwellwright 0.1.0',
    ...change.input,
  };
}

/** Heating between platens of 232 °C that reaches 176.7 °C at the run's own soak time. */
function heating(timeS: number, run: TrialRun): number {
  const soakS = run.result.soakTimeS ?? 60;
  const timeConstantS = soakS / Math.log((232 - 24) / (232 - 176.67));
  return timeS < 0 ? 24 : 232 - (232 - 24) * Math.exp(-timeS / timeConstantS);
}
