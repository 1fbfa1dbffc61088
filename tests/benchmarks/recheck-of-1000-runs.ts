import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openStore } from '../../src/adapters/sqlite/open-store.ts';
import { formatRecording } from '../../src/core/recording/format-recording.ts';
import { analyseEntries } from '../../src/core/session/analyse-entries.ts';
import { DEMO_SCENARIO } from '../../src/core/simulator/demo-scenario.ts';
import { variedClosing } from '../../src/core/simulator/good-scenarios.ts';
import { simulateRecording } from '../../src/core/simulator/simulate-recording.ts';
import { createReaderDecoder } from '../../src/core/wire/create-reader-decoder.ts';
import { benchRules } from './bench-data.ts';

const RUNS = 1000;

/** A run of about 1,200 samples with a bond line and both platens; the reader's fourth channel is recorded, and unused. */
const ROLES = ['bond-line', 'unused', 'upper-platen', 'lower-platen'] as const;

function recordingOf(seed: number) {
  const closing = { ...variedClosing(seed, 5, 112) };
  const { head, entries } = simulateRecording({
    ...DEMO_SCENARIO,
    seed,
    closings: [closing],
    endS: 120,
    holdS: 40,
    name: `bench-${seed}`,
  });
  return { head: { ...head, roles: ROLES }, entries };
}

/** A store with 1,000 runs and an accepted recipe, and the same recordings as files. */
export function makeStore(program: string) {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const path = join(folder, 'store.db');
  const store = openStore({ path });
  store.startTrial({
    trialId: 'bench',
    assemblyName: 'WB-212',
    pressName: 'North',
    startedAt: '2026-01-05T08:00:00Z',
    simulated: true,
  });
  const made = Array.from({ length: 10 }, (_, seed) => recordingOf(seed + 1));
  for (let run = 0; run < RUNS; run += 1) {
    const { head, entries } = made[run % made.length]!;
    const recordingId = `bench-${run}`;
    const writer = store.startRecording({ ...head, recordingId, trialId: 'bench' });
    for (const entry of entries) writer.append(entry);
    writer.close();
    const rules = { ...benchRules, holdS: 40 };
    const { results } = analyseEntries(run < 10 ? entries : [], {
      decoder: createReaderDecoder(),
      roles: head.roles,
      rules,
    });
    if (run < 10 && results[0] !== undefined) store.saveRunResult(recordingId, results[0]);
    writeFileSync(join(folder, `${recordingId}.dwell.txt`), [...formatRecording(head, entries)].join(''));
  }
  store.close();
  const { status, stderr } = spawnSync(
    process.execPath,
    [program, 'accept', 'bench', '--initials', 'B', '--store', path],
    { encoding: 'utf8' },
  );
  if (status !== 0) throw new Error(`accept failed: ${stderr}`);
  return { folder, path, remove: () => rmSync(folder, { recursive: true }) };
}

function seconds(program: string, args: readonly string[]): { readonly s: number; readonly peakMB: number } {
  const startMs = performance.now();
  const { status, stderr } = spawnSync('/usr/bin/time', ['-f', '%M', process.execPath, program, ...args], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (status !== 0 && status !== 1) throw new Error(`${args[0]} ended with ${status}: ${stderr.slice(-500)}`);
  return { s: (performance.now() - startMs) / 1000, peakMB: Number(stderr.trim().split('\n').at(-1)) / 1000 };
}

/** Re-check of 1,000 stored runs (first time, then from kept traces), of 1,000 files, and a plain script that only reads them. */
export function recheckFigures(program: string) {
  const { folder, path, remove } = makeStore(program);
  try {
    const files = readdirSync(folder)
      .filter((name) => name.endsWith('.dwell.txt'))
      .map((name) => join(folder, name));
    const first = seconds(program, ['recheck', '--store', path, '--json']);
    const again = seconds(program, ['recheck', '--store', path, '--json']);
    const fromFiles = seconds(program, ['recheck', ...files, '--store', path, '--json']);
    const startMs = performance.now();
    let characters = 0;
    for (const file of files) characters += readFileSync(file, 'utf8').split('\n').length;
    return { first, again, fromFiles, readOnlyS: (performance.now() - startMs) / 1000, lines: characters };
  } finally {
    remove();
  }
}
