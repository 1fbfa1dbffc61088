import { recheck } from '../../../src/core/recheck/recheck.ts';
import type { Recipe } from '../../../src/core/recipe/Recipe.ts';
import { comparisonReport } from '../../../src/core/report/comparison-report.ts';
import { lotReport } from '../../../src/core/report/lot-report.ts';
import { overlayOf } from '../../../src/core/report/overlay-of.ts';
import type { ReportContent } from '../../../src/core/report/ReportContent.ts';
import { recheckReport } from '../../../src/core/report/recheck-report.ts';
import { surveyReport } from '../../../src/core/report/survey-report.ts';
import { trialReport } from '../../../src/core/report/trial-report.ts';
import { surveyPlaten } from '../../../src/core/survey/survey-platen.ts';
import { trialRun } from '../trial/trial-run.ts';
import { lotCycle, lotReportInput } from './lot-report-input.ts';
import { trialReportInput } from './trial-report-input.ts';

/** Spread like a trial's, the same each time. */
const soakOf = (at: number): number => 53.6 + 0.45 * Math.sin(at * 2.4) + 0.2 * Math.cos(at * 5.1);

export const reportRecipe: Recipe = {
  assemblyName: 'WB-212',
  pressName: 'North',
  version: 2,
  acceptedAt: '2026-03-02T09:00:00Z',
  initials: 'AB',
  note: '',
  provisional: false,
  platenSetPointC: { upper: 232.2, lower: 232.2 },
  platenMeasuredC: { upper: 232, lower: 231.5 },
  gaugePsi: 94.1,
  targetC: (350 - 32) / 1.8,
  rule: 'next-run',
  ruleReason: null,
  soakS: 54.7,
  holdS: 120,
  marginS: 0,
  dwellS: 175,
  dip: 'restarts',
  statistics: {
    runs: 5,
    meanSoakS: 53.6,
    sdSoakS: 0.45,
    minSoakS: 53.1,
    maxSoakS: 54.3,
    rangeSoakS: 1.2,
    meanCi95S: [53.04, 54.16],
    nextRunUpper95S: 54.7,
    moreRunsForWidth: 0,
    wantedHalfWidthS: 2,
    partSpreadMissing: false,
    fromOnset: false,
  },
  restsOn: [],
  adhesive: 'film A-7',
  dataSheetRevision: 'C',
  highestDwellS: 240,
  highestPeakC: 240,
  leastRecoveryS: 60,
  runRuleVersion: 1,
  simulated: false,
};

/**
 * One report of every kind with `count` runs or cycles; `text` stands wherever a person, a reader or a file may put one.
 */
export function everyReport(count: number, text?: string): Readonly<Record<string, ReportContent>> {
  const word = (usual: string) => text ?? usual;
  const runs = Array.from({ length: count }, (_, at) =>
    trialRun(soakOf(at), {
      conditions: { carrierId: word(`C-${at + 1}`) },
      ...(at % 9 === 4 ? { decision: { kind: 'set-aside', reason: word('ram slipped') } } : {}),
    }),
  );
  const input = trialReportInput(runs, text === undefined ? {} : { text });
  const recipe: Recipe = {
    ...reportRecipe,
    assemblyName: word('WB-212'),
    pressName: word('North'),
    initials: word('AB'),
    note: word('as before'),
    adhesive: word('film A-7'),
  };
  const cycles = Array.from({ length: count }, (_, at) =>
    lotCycle(at + 1, {
      initials: word(at % 2 === 0 ? 'AB' : 'CD'),
      dwellHeldS: 174.5 + (at % 5) * 0.6,
      ...(at % 13 === 6
        ? {
            hold: 'not-verified',
            result: 'hold-not-verified',
            flags: ['hold-not-verified', 'outside-recipe-band'],
          }
        : {}),
    }),
  );
  const lot = lotReportInput(cycles, {}, text);
  const held = recheck({
    recipe,
    recipeStartC: null,
    runs: runs.map((run, at) => ({
      run,
      before:
        at % 4 === 0
          ? null
          : { soakTimeS: soakOf(at) + (at % 6 === 1 ? 0.3 : 0), verdict: 'good', ruleVersion: 1 },
      madeOn: { assemblyName: word('WB-212'), pressName: word('South') },
    })),
  });
  const { outcome, recordings, probes, equipment, note, unit, madeAt, program } = input;
  const common = { probes, equipment, note, unit, madeAt, program, simulated: false };
  const platenFiles = Array.from({ length: count }, (_, at) => ({
    side: at % 2 === 0 ? word('North') : word('South'),
    name: word(`warm-up-${at + 1}.dwell.txt`),
    madeAt: word('2026-03-02T08:20:00Z'),
    sound: true,
    sha256: 'cd'.repeat(32),
  }));
  return {
    trial: trialReport(input),
    recheck: recheckReport({
      ...common,
      recipe,
      result: held,
      outcome,
      byTarget: [330, 340, 350, 360].map((targetF, at) => ({
        targetC: (targetF - 32) / 1.8,
        runs: count,
        meanSoakS: 46 + 4 * at,
        meanDwellS: 167 + 4 * at,
        nextRunDwellS: 168 + 4 * at,
        toleranceDwellS: at === 0 ? null : 169 + 4 * at,
        chosenDwellS: 167 + 4 * at,
      })),
      madeAt: runs.map(() => word('2026-03-02T08:20:00Z')),
      overlay: overlayOf({ ...input, unit }, false),
      recordings,
      reProof: [],
      reportedAt: madeAt,
    }),
    lot: lotReport({ ...lot, recipes: lot.recipes.map((one) => ({ ...one, recipe })) }),
    comparison: comparisonReport({
      ...common,
      comparison: {
        first: { name: word('North'), warmUps: [] },
        second: { name: word('South'), warmUps: [] },
        figures: (['upper-platen', 'lower-platen'] as const).flatMap((role) =>
          (['riseTimeS', 'settlingTimeS'] as const).map((key) => ({
            role,
            key,
            kind: 'time' as const,
            first: [960, 966],
            second: [1040, 1043],
            firstMean: 963,
            secondMean: 1041.5,
            difference: 78.5,
            interval: { low: 18.3, high: 138.7, degreesOfFreedom: 2 },
            standsOut: true,
          })),
        ),
        repeated: true,
        rulesDiffer: false,
      },
      series: (['first', 'second'] as const).flatMap((side, at) =>
        (['upper-platen', 'lower-platen'] as const).map((role) => ({
          source: word(`${side}.txt`),
          side,
          role,
          stepS: 10,
          points: Array.from({ length: 360 }, (_, step) => ({
            timeS: step * 10,
            temperatureC: 24 + 208 * (1 - Math.exp(-step / (60 + 8 * at))),
          })),
        })),
      ),
      recordings: platenFiles,
      heads: platenFiles.map(() => null),
    }),
    survey: surveyReport({
      ...common,
      survey: surveyPlaten(
        Array.from({ length: 9 }, (_, at) => ({
          label: word(`channel ${at + 1}`),
          place: { xMm: 30 + (at % 3) * 120, yMm: 30 + Math.floor(at / 3) * 120 },
          samples: {
            timesS: Float64Array.from({ length: 301 }, (_, step) => step - 300),
            valuesC: Float64Array.from({ length: 301 }, () => 229 + (at % 4) * 1.4),
          },
        })),
        { overS: 300, endS: 0, limitC: 10 / 1.8 },
      ),
      platen: 'lower-platen',
      pressName: word('South'),
      heads: [null],
      recordings: platenFiles.slice(0, 1).map((one) => ({ ...one, side: null })),
    }),
  };
}
