import { join } from 'node:path';
import { expect, it } from 'vitest';
import { openStore } from '../../src/adapters/sqlite/open-store.ts';
import { runProgram, startProgram, temporaryFolder, until } from './run-program.ts';

const store = join(temporaryFolder(), 'store.db');
const TRIAL = ['trial', '--simulated', '--plain', '--speed', '20', '--store', store];

/** Runs of the trial as stored, by recording. */
function storedRuns(trialId: string) {
  const opened = openStore({ path: store, readonly: true });
  try {
    const ids = opened.trials().find((one) => one.trialId === trialId)?.recordingIds ?? [];
    const runs = opened.trialRuns(trialId);
    return ids.map((id) => runs.filter(({ recordingId }) => recordingId === id).map(({ result }) => result));
  } finally {
    opened.close();
  }
}

it('killed outright in a run: going on stores that run with what its cut record says, and makes none of its rise', async () => {
  const program = startProgram([...TRIAL, '--assembly', 'WB-212', '--press', 'North']);
  await until('press closed', () => /press closed/i.test(program.out), 30_000);
  // About 30 s of the reader's time: inside the rise.
  await new Promise((resolve) => setTimeout(resolve, 1500));
  program.child.kill('SIGKILL');
  await program.ended;
  const trialId = /Trial (\S+?),/.exec(program.out)?.[1] ?? '';
  expect(storedRuns(trialId)).toEqual([[]]);
  const again = startProgram([...TRIAL, '--go-on', trialId, '--seconds', '1s']);
  // 1: no run that counts yet.
  expect((await again.ended).code).toBeLessThanOrEqual(1);
  const [cut = [], fresh = []] = storedRuns(trialId);
  expect(cut).toHaveLength(1);
  expect(cut[0]).toMatchObject({ verdict: 'unusable', pressClosed: { by: 'contact' }, crossing: null });
  expect(fresh.filter(({ pressClosed }) => pressClosed?.by === 'onset')).toEqual([]);
  const { out } = runProgram(['trials', trialId, '--store', store]);
  expect(out).toMatch(/Run 1: UNUSABLE/);
}, 60_000);
