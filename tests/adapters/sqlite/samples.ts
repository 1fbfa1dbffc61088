import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { type OpenStoreOptions, openStore } from '../../../src/adapters/sqlite/open-store.ts';
import type { BondingCycle } from '../../../src/core/bonding/BondingCycle.ts';
import type { Assembly, Press } from '../../../src/core/press/Press.ts';
import type { Recipe } from '../../../src/core/recipe/Recipe.ts';
import type { RecordingEntry, RecordingHead } from '../../../src/core/recording/RecordingEntry.ts';
import type { RunResult } from '../../../src/core/run/RunResult.ts';
import type { Store } from '../../../src/core/store/Store.ts';

/** A folder that is gone when the test is. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'dwellwright-store-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A store that is closed when the test is finished. */
export function openedStore(options: OpenStoreOptions): Store {
  const store = openStore(options);
  onTestFinished(() => store.close());
  return store;
}

export const headOf = (recordingId: string, more: Partial<RecordingHead> = {}): RecordingHead => ({
  recordingId,
  madeAt: '2026-03-02T08:15:00+01:00',
  program: 'dwellwright 0.1.0',
  roles: ['bond-line', 'bond-line-outer', 'upper-platen', 'lower-platen'],
  simulated: true,
  further: {},
  ...more,
});

export const lineAt = (arrivedUs: number, text = `T1: ${(arrivedUs % 997) / 10}`): RecordingEntry => ({
  kind: 'line',
  arrivedUs,
  text,
  wholeness: 'whole',
});

export const north: Press = {
  name: 'North',
  ramBoreMm: 200,
  ramRodMm: null,
  rams: 1,
  gaugeDivisionPsi: 2,
  platenSetPointC: { upper: 232.2, lower: 232.2 },
  timerStartsAt: 'button',
  timerOffsetS: 1.5,
  timerStepS: 1,
};

export const wb212: Assembly = {
  name: 'WB-212',
  ringOuterDiameterMm: 212,
  ringInnerDiameterMm: 168,
  carrier: 'brake plate',
  targetC: 176.66666666666666,
  holdS: 120,
  adhesive: null,
  dataSheetRevision: null,
  highestDwellS: 240,
  highestPeakC: null,
  leastRecoveryS: null,
};

export const resultOf = (runNumber: number, more: Partial<RunResult> = {}): RunResult => ({
  ruleVersion: 1,
  runNumber,
  pressClosed: {
    timeS: 2.5,
    standardUncertaintyS: 0.03,
    by: 'contact',
    all: [{ timeS: 2.5, standardUncertaintyS: 0.03, by: 'contact' }],
    disagreementS: null,
  },
  onset: null,
  provisionalCrossing: null,
  crossing: { timeS: 56.02, standardUncertaintyS: 0.02, slopeCPerS: 1.37 },
  crossings: [
    {
      channel: 1,
      role: 'bond-line',
      crossing: { timeS: 56.02, standardUncertaintyS: 0.02, slopeCPerS: 1.37 },
    },
  ],
  soakTimeS: 53.52,
  soakTimeStandardUncertaintyS: 0.04,
  openedS: 180,
  endedS: 182,
  startC: 24,
  peakC: 221.5,
  lowestAfterCrossingC: 176.6,
  hold: {
    wantedS: 120,
    countedS: 123.98,
    longestUnbrokenS: 123.98,
    totalAboveS: 123.98,
    verified: true,
    dips: [{ fromS: 60, toS: 60.4, lowestC: 176.5 }],
  },
  platenAtClosingC: { upper: 231.8, lower: null },
  conditions: { ring: 'fresh', coating: 'bare', carrierId: null, probe: 're-laid' },
  notes: ['probe slipped'],
  verdict: 'good',
  reasons: [{ code: 'gap', severity: 'note', facts: { gapS: 1.2, cause: 'silence' } }],
  ...more,
});

export const recipeOf = (more: Partial<Omit<Recipe, 'version'>> = {}): Omit<Recipe, 'version'> => ({
  assemblyName: 'WB-212',
  pressName: 'North',
  acceptedAt: '2026-03-02T10:00:00+01:00',
  initials: 'JS',
  note: '',
  provisional: false,
  platenSetPointC: null,
  platenMeasuredC: { upper: 231.8, lower: null },
  gaugePsi: 40,
  targetC: 176.66666666666666,
  rule: 'next-run',
  ruleReason: null,
  soakS: 56.4,
  holdS: 120,
  marginS: 0,
  dwellS: 177,
  dip: 'restarts',
  statistics: {
    runs: 5,
    meanSoakS: 53.6,
    sdSoakS: 0.9,
    minSoakS: 52.5,
    maxSoakS: 54.9,
    rangeSoakS: 2.4,
    meanCi95S: [52.5, 54.7],
    nextRunUpper95S: 55.7,
    moreRunsForWidth: 0,
    wantedHalfWidthS: 2,
    partSpreadMissing: true,
    fromOnset: false,
  },
  restsOn: [{ recordingId: 'a', runNumber: 1 }],
  adhesive: null,
  dataSheetRevision: null,
  highestDwellS: null,
  highestPeakC: null,
  leastRecoveryS: null,
  runRuleVersion: 1,
  simulated: true,
  ...more,
});

export const cycleOf = (cycleId: string, more: Partial<BondingCycle> = {}): BondingCycle => ({
  cycleId,
  assemblyName: 'WB-212',
  pressName: 'North',
  recipeVersion: 1,
  recordingId: null,
  simulated: true,
  initials: 'JS',
  closedAt: '2026-03-03T08:00:00.000Z',
  closedBy: 'key',
  dwellWantedS: 177,
  dwellHeldS: 178.25,
  targetC: 176.66666666666666,
  holdWantedS: 120,
  holdCountedS: null,
  hold: 'not-measured',
  platensAtClosingC: { upper: 231.8, lower: null },
  lowestC: null,
  peakC: null,
  result: 'done',
  flags: [],
  ...more,
});
