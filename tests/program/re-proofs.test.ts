import { expect, it } from 'vitest';
import { REPROVE_LIMIT_C } from '../../src/core/conditions/to-be-re-proved.ts';
import type { Recipe } from '../../src/core/recipe/Recipe.ts';
import type { Store, StoredTrial } from '../../src/core/store/Store.ts';
import { reProofs } from '../../src/program/trials/re-proofs.ts';
import { trialRun } from '../core/trial/trial-run.ts';

const recipe = {
  assemblyName: 'WB-212',
  pressName: 'North',
  acceptedAt: '2026-03-02T10:00:00Z',
  platenMeasuredC: { upper: 232, lower: 232 },
  platenSetPointC: { upper: 232.2, lower: 232.2 },
  restsOn: [{ recordingId: 'own', runNumber: 1 }],
  simulated: false,
} as unknown as Recipe;

const trial = (trialId: string, startedAt: string, change: Partial<StoredTrial> = {}): StoredTrial => ({
  trialId,
  assemblyName: 'WB-150',
  pressName: 'North',
  startedAt,
  closedAt: null,
  simulated: false,
  recordingIds: [trialId],
  ...change,
});

function store(
  trials: readonly StoredTrial[],
  platensC: Readonly<Record<string, number>>,
): Pick<Store, 'presses' | 'trials' | 'trialRuns'> {
  return {
    presses: () => [],
    trials: () => trials,
    trialRuns: (trialId) => {
      const made = trialRun(53);
      const upper = platensC[trialId]!;
      return [
        {
          ...made,
          recordingId: trialId,
          result: { ...made.result, platenAtClosingC: { upper, lower: upper } },
        },
      ];
    },
  };
}

it(`asks for a new proof when a later trial on the press measured its platens more than ${REPROVE_LIMIT_C} °C off`, () => {
  const later = [trial('a', '2026-04-01T08:00:00Z'), trial('b', '2026-05-01T08:00:00Z')];
  expect(reProofs(store(later, { a: 232, b: 226 }), [recipe])[0]).toMatchObject({
    movedC: -6,
    by: 'measured',
  });
  expect(reProofs(store(later, { a: 226, b: 231 }), [recipe])[0]).toBeNull();
});

it('does not go by its own runs, earlier trials, another press or a simulation', () => {
  const others = [
    trial('own', '2026-03-03T08:00:00Z'),
    trial('earlier', '2026-02-01T08:00:00Z'),
    trial('south', '2026-04-01T08:00:00Z', { pressName: 'South' }),
    trial('simulated', '2026-04-01T08:00:00Z', { simulated: true }),
  ];
  expect(
    reProofs(store(others, { own: 200, earlier: 200, south: 200, simulated: 200 }), [recipe])[0],
  ).toBeNull();
});
