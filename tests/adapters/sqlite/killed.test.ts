import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { fixtureProgram } from './fixture-program.ts';
import { openedStore, temporaryFolder } from './samples.ts';

let program: Awaited<ReturnType<typeof fixtureProgram>>;
beforeAll(async () => {
  program = await fixtureProgram('append-steadily');
});
afterAll(() => rmSync(dirname(program.file), { recursive: true, force: true }));

interface Printed {
  readonly number: number;
  readonly wallMs: number;
}

/** Runs until so many appends were printed, then kills without any chance to tidy up. */
async function killAfter(path: string, appends: number): Promise<{ printed: Printed[]; killedMs: number }> {
  const child: ChildProcess = spawn(process.execPath, [program.file, path, 'a'], { env: program.env });
  const ended = once(child, 'exit');
  let text = '';
  let killedMs = 0;
  child.stdout?.on('data', (chunk: Buffer) => {
    text += chunk.toString();
    if (killedMs === 0 && text.split('\n').length > appends) {
      killedMs = Date.now();
      child.kill('SIGKILL');
    }
  });
  const [, signal] = await ended;
  expect(signal).toBe('SIGKILL');
  const printed = [...text.matchAll(/^append (\d+) (\d+)$/gm)].map((match) => ({
    number: Number(match[1]),
    wallMs: Number(match[2]),
  }));
  return { printed, killedMs };
}

test.each([25, 40, 61, 88, 119])(
  'killed (SIGKILL) after %i appends at 100/s, the store holds everything that was older than 200 ms',
  { concurrent: false },
  async (appends) => {
    const path = join(temporaryFolder(), 'store.db');
    const { printed, killedMs } = await killAfter(path, appends);
    expect(printed.length).toBeGreaterThanOrEqual(appends);
    const due = printed.filter(({ wallMs }) => wallMs < killedMs - 200);
    expect(due.length).toBeGreaterThan(0);

    const store = openedStore({ path });
    const recording = store.recording('a');
    const entries = [...(recording?.entries() ?? [])];
    expect(recording?.soundness).toEqual({ kind: 'not-closed' });
    expect(entries.length).toBeGreaterThanOrEqual(due.length);
    entries.forEach((entry, number) => {
      expect(entry).toEqual({
        kind: 'line',
        arrivedUs: number * 10_000,
        text: `T1: ${number}`,
        wholeness: 'whole',
      });
    });
    store.close();
    const database = new Database(path);
    expect(database.pragma('integrity_check', { simple: true })).toBe('ok');
    database.close();
  },
);

test('killed and started again three times on one store, each recording is there as far as it got', async () => {
  const path = join(temporaryFolder(), 'store.db');
  const { printed } = await killAfter(path, 30);
  const store = openedStore({ path });
  const before = [...(store.recording('a')?.entries() ?? [])].length;
  const writer = store.startRecording({
    recordingId: 'b',
    madeAt: '2026-03-02T09:15:00+01:00',
    program: 'test',
    roles: ['bond-line'],
    simulated: true,
    further: {},
  });
  writer.append({ kind: 'host', arrivedUs: 0, event: 'recording-resumed', detail: 'a' });
  writer.close();
  expect(store.recordingIds()).toEqual(['a', 'b']);
  expect([...(store.recording('a')?.entries() ?? [])]).toHaveLength(before);
  expect(store.recording('b')?.soundness).toEqual({ kind: 'sound' });
  expect(before).toBeGreaterThan(0);
  expect(before).toBeLessThanOrEqual(printed.length + 1);
});
