import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../src/adapters/sqlite/open-store.ts';
import { parseRecording } from '../../src/core/recording/parse-recording.ts';
import { analyseEntries } from '../../src/core/session/analyse-entries.ts';
import { createReaderDecoder } from '../../src/core/wire/create-reader-decoder.ts';
import { runRules } from '../../src/program/options/run-rules.ts';
import { runProgram, temporaryFolder } from './run-program.ts';

/** Puts three shipped runs of a press into the store as a trial. */
function storeTrial(store: ReturnType<typeof openStore>, press: 'North' | 'South'): void {
  const trialId = `trial-${press.toLowerCase()}`;
  const startedAt = '2026-03-02T08:00:00+01:00';
  store.startTrial({ trialId, assemblyName: 'WB-212', pressName: press, startedAt, simulated: true });
  for (const run of [1, 2, 3]) {
    const name = `wb-212-${press.toLowerCase()}-run-${run}.dwell.txt`;
    const path = join(import.meta.dirname, '..', '..', 'recordings', name);
    const { head, entries } = parseRecording(readFileSync(path, 'utf8'));
    const writer = store.startRecording({ ...head, trialId });
    for (const entry of entries) writer.append(entry);
    writer.close();
    const { results } = analyseEntries(entries, {
      decoder: createReaderDecoder({}),
      roles: head.roles,
      rules: runRules({}, head),
    });
    store.saveRunResult(head.recordingId, results[0]!);
  }
}

describe('compare trials of the store', () => {
  const path = join(temporaryFolder(), 'store.db');
  const store = openStore({ path });
  storeTrial(store, 'North');
  storeTrial(store, 'South');
  store.close();
  const compare = (...more: string[]) =>
    runProgram([
      'compare',
      '--first-trial',
      'trial-north',
      '--second-trial',
      'trial-south',
      '--store',
      path,
      ...more,
    ]);

  it('the same soak times as from the recordings, both presses named', () => {
    const stored = compare('--json');
    expect(stored.err).toBe('');
    expect(stored.code).toBe(0);
    const files = (press: string) =>
      [1, 2, 3].map((run) =>
        join(import.meta.dirname, '..', '..', 'recordings', `wb-212-${press}-run-${run}.dwell.txt`),
      );
    const replayed = runProgram([
      'compare',
      '--first',
      ...files('north'),
      '--second',
      ...files('south'),
      '--json',
    ]);
    const [a, b] = [stored, replayed].map(({ out }) => JSON.parse(out));
    expect(a.first.soakTimesS).toHaveLength(3);
    expect(a.first.soakTimesS).toEqual(b.first.soakTimesS);
    expect(a.second.soakTimesS).toEqual(b.second.soakTimesS);
    expect([a.first.name, a.second.name]).toEqual(['North', 'South']);
  });

  it('without a recipe the cover is not asked; an accepted recipe of the first press is', () => {
    expect(compare().out).toContain('Does the recipe cover the second press? Not asked');
    const accepted = runProgram([
      'accept',
      'trial-north',
      '--initials',
      'AB',
      '--rule',
      'next-run',
      '--store',
      path,
    ]);
    expect(accepted.err).toBe('');
    expect(accepted.code).toBe(0);
    expect(compare().out).toMatch(/The recipe (covers|is too short for) South/);
  });
});
