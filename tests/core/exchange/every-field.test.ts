import { describe, expect, it } from 'vitest';
import { ASSEMBLY_FIELDS } from '../../../src/core/exchange/assembly-fields.ts';
import { CYCLE_FIELDS } from '../../../src/core/exchange/cycle-fields.ts';
import type { ExportField } from '../../../src/core/exchange/ExportField.ts';
import { PRESS_FIELDS } from '../../../src/core/exchange/press-fields.ts';
import { PROBE_FIELDS } from '../../../src/core/exchange/probe-fields.ts';
import { RECIPE_FIELDS } from '../../../src/core/exchange/recipe-fields.ts';
import { RUN_FIELDS, type RunRow } from '../../../src/core/exchange/run-fields.ts';
import type { Probe } from '../../../src/core/probe/Probe.ts';
import { cycleOf, north, recipeOf, resultOf, wb212 } from '../../adapters/sqlite/samples.ts';

/** Paths of every figure and text in an object, lists by their first item. */
function* leaves(value: unknown, path: readonly string[] = []): Generator<readonly string[]> {
  if (typeof value !== 'object' || value === null) {
    yield path;
    return;
  }
  for (const [key, part] of Object.entries(value)) yield* leaves(part, [...path, key]);
}

/** The same with another figure or text at one place. */
function changed<Value>(value: Value, [key, ...rest]: readonly string[]): Value {
  if (key === undefined) {
    const other =
      typeof value === 'number' ? value + 1 : typeof value === 'boolean' ? !value : `${value ?? ''}x`;
    return other as Value;
  }
  const copy = (Array.isArray(value) ? [...value] : { ...value }) as Record<string, unknown>;
  copy[key] = changed(copy[key], rest);
  return copy as Value;
}

const cells = <Row>(fields: readonly ExportField<Row>[], row: Row): string =>
  JSON.stringify(fields.map(({ value }) => value(row)));

/** What does not show in the export whatever it says. */
const unseen = <Row>(
  fields: readonly ExportField<Row>[],
  row: Row,
  part: (row: Row) => unknown,
  root: readonly string[] = [],
) =>
  [...leaves(part(row))]
    .filter((path) => cells(fields, changed(row, [...root, ...path])) === cells(fields, row))
    .map((path) => path.join('.'));

describe('nothing that is stored of them is missing from the export of', () => {
  it('cycles', () => {
    const cycle = cycleOf('cycle-1', {
      recordingId: 'r',
      holdCountedS: 1,
      lowestC: 1,
      peakC: 1,
      againstBand: 'inside',
      recordedAtS: 3,
      flags: ['left'],
    });
    expect(unseen(CYCLE_FIELDS, cycle, (row) => row)).toEqual([]);
  });

  it('recipes', () => {
    const recipe = {
      ...recipeOf({
        platenSetPointC: { upper: 232, lower: 230 },
        tolerance: { content: 0.95, confidence: 0.9 },
      }),
      version: 1,
    };
    expect(unseen(RECIPE_FIELDS, recipe, (row) => row)).toEqual([]);
  });

  it('presses and assemblies', () => {
    expect(unseen(PRESS_FIELDS, north, (row) => row)).toEqual([]);
    const cure = { activationEnergyKjPerMol: 80, referenceC: 177, rangeC: { from: 120, to: 200 } };
    expect(unseen(ASSEMBLY_FIELDS, { ...wb212, cure }, (row) => row)).toEqual([]);
  });

  it('probes and their points', () => {
    const point = { temperatureC: 177, errorC: -0.6, standardUncertaintyC: 0.25, calibratedOn: '2026-03-01' };
    const probe: Probe = {
      name: 'K-07',
      thermocoupleType: 'K',
      toleranceClass: 'iec-class-2',
      points: [],
      readerIncluded: false,
      headC: 25,
      readerC: 24,
    };
    const row = { probe, savedAt: '2026-03-02T08:00:00.000Z', latest: true, point };
    expect(unseen(PROBE_FIELDS, row, (one) => one)).toEqual([]);
  });

  it('runs, but for the figures behind a sentence and the doubt of single sources', () => {
    const estimate = { timeS: 12, standardUncertaintyS: 0.1 };
    const crossing = { ...estimate, slopeCPerS: 1.4 };
    const row: RunRow = {
      trial: {
        trialId: 't',
        assemblyName: 'WB-212',
        pressName: 'North',
        startedAt: '2026-03-02T08:00:00.000Z',
        closedAt: null,
        simulated: false,
        recordingIds: ['r'],
      },
      run: {
        source: 'r',
        recordingId: 'r',
        decision: { kind: 'set-aside', reason: 'x' },
        result: resultOf(1, {
          pressClosed: { ...estimate, by: 'key', all: [{ ...estimate, by: 'key' }], disagreementS: 1 },
          onset: estimate,
          provisionalCrossing: crossing,
          crossing,
          reasons: [],
          crossings: [{ channel: 1, role: 'bond-line', crossing }],
          fit: {
            plateauC: 230,
            timeConstantS: 40,
            delayS: 1,
            startC: 24,
            covariance: [
              [1, 0, 0],
              [0, 1, 0],
              [0, 0, 1],
            ],
            residualSdC: 0.1,
            runsZ: 0.5,
            lag1Autocorrelation: 0.1,
            misfitC: 0.2,
            verdict: 'fits',
          },
          cure: {
            activationEnergyKjPerMol: 80,
            referenceC: 177,
            rangeC: { from: 120, to: 200 },
            equivalentS: 100,
            belowRangeS: 1,
            aboveRangeS: 2,
            missingS: 3,
          },
        } as Parameters<typeof resultOf>[1]),
      },
      runInTrial: 1,
      leftOut: null,
      reference: null,
      head: null,
      probes: [],
    };
    const missing = unseen(RUN_FIELDS, row, (one) => one.run.result, ['run', 'result']);
    const known =
      /^(?:pressClosed\.standardUncertaintyS|pressClosed\.all\.\d\.standardUncertaintyS|onset\.standardUncertaintyS|provisionalCrossing\.(?:standardUncertaintyS|slopeCPerS)|crossings\.\d\.crossing\.(?:standardUncertaintyS|slopeCPerS)|fit\.covariance\.\d\.\d)$/;
    expect(missing.filter((path) => !known.test(path))).toEqual([]);
  });
});
