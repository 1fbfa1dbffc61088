import { join } from 'node:path';
import { expect, it } from 'vitest';
import { openStore } from '../../src/adapters/sqlite/open-store.ts';
import { DECODE_VERSION } from '../../src/core/session/DecodedTrace.ts';
import { DEMO_SCENARIO } from '../../src/core/simulator/demo-scenario.ts';
import { variedClosing } from '../../src/core/simulator/good-scenarios.ts';
import { simulateRecording } from '../../src/core/simulator/simulate-recording.ts';
import { analyseRecordings } from '../../src/program/recheck/analyse-recordings.ts';
import { runProgram, temporaryFolder } from './run-program.ts';

const RUNS = 120;

function recordingOf(seed: number) {
  return simulateRecording({
    ...DEMO_SCENARIO,
    seed,
    closings: [variedClosing(seed, 5, 82)],
    endS: 90,
    holdS: 20,
    name: `many-${seed}`,
  });
}

// From source there is no worker beside the module: one thread. The built program takes several for so many.
it(`${RUNS} stored runs give the same in several threads as in one, in order, twice (decoded, then kept)`, async () => {
  const path = join(temporaryFolder(), 'store.db');
  const ids = Array.from({ length: RUNS }, (_, run) => `many-${run}`);
  const store = openStore({ path });
  store.startTrial({
    trialId: 'many',
    assemblyName: 'WB-212',
    pressName: 'North',
    startedAt: '2026-01-05T08:00:00Z',
    simulated: true,
  });
  for (const [run, recordingId] of ids.entries()) {
    const { head, entries } = recordingOf(1 + (run % 7));
    const writer = store.startRecording({ ...head, recordingId, trialId: 'many' });
    for (const entry of entries) writer.append(entry);
    writer.close();
  }
  store.close();
  const demo = join(temporaryFolder(), 'demo.db');
  expect(runProgram(['demo', '--store', demo]).code).toBe(0);
  expect(runProgram(['merge', demo, '--store', path]).code).toBe(0);
  const recheck = () => {
    const { out, err } = runProgram([
      'recheck',
      '--trial',
      'many',
      '--hold',
      '20s',
      '--json',
      '--store',
      path,
    ]);
    expect(err).toBe('');
    const { recipe, runs } = JSON.parse(out) as {
      recipe: { targetC: number };
      runs: readonly { source: string; soakTimeS: number; verdict: string }[];
    };
    return {
      targetC: recipe.targetC,
      runs: runs.map(({ source, soakTimeS, verdict }) => [source, soakTimeS, verdict]),
    };
  };
  const first = recheck();
  expect(recheck()).toEqual(first);
  const asked = { options: { hold: '20s', target: `${first.targetC}C` }, targetsC: [] };
  const inOne = await analyseRecordings({ place: { kind: 'store', path }, asked }, ids, () => {});
  expect(first.runs).toEqual(
    inOne.flatMap(({ name, results }) => results.map(({ soakTimeS, verdict }) => [name, soakTimeS, verdict])),
  );
  const kept = openStore({ path, readonly: true });
  expect(kept.keptTrace('many-0', DECODE_VERSION)).toBeDefined();
  kept.close();
}, 60_000);
