import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { fixtureProgram } from './fixture-program.ts';
import { openedStore, temporaryFolder } from './samples.ts';

let program: Awaited<ReturnType<typeof fixtureProgram>>;
beforeAll(async () => {
  program = await fixtureProgram('write-hard');
});
afterAll(() => rmSync(dirname(program.file), { recursive: true, force: true }));

/** Starts a program that records so many entries; resolves with its output and exit code. */
async function record(path: string, id: string, entries: number, before: readonly string[] = []) {
  const [command = '', ...given] = [...before, process.execPath, program.file, path, id, String(entries)];
  const child = spawn(command, given, { env: program.env, stdio: ['ignore', 'pipe', 'inherit'] });
  let text = '';
  child.stdout.on('data', (chunk: Buffer) => {
    text += chunk.toString();
  });
  const [code] = await once(child, 'close');
  return { code, text };
}

const integrityOf = (path: string): unknown => {
  const database = new Database(path);
  const finding = database.pragma('integrity_check', { simple: true });
  database.close();
  return finding;
};

test('two programs record into one new store at once while a third reads: nothing is lost, all is sound', async () => {
  const path = join(temporaryFolder(), 'store.db');
  const writing = Promise.all([record(path, 'a', 2_400), record(path, 'b', 2_400)]);
  let running = true;
  const finished = writing.then((ends) => {
    running = false;
    return ends;
  });
  const store = openedStore({ path });
  let looks = 0;
  let seen = 0;
  while (running) {
    for (const id of store.recordingIds()) {
      const count = [...(store.recording(id)?.entries() ?? [])].length;
      expect(count % 20).toBe(0);
      if (id === 'a') {
        expect(count).toBeGreaterThanOrEqual(seen);
        seen = count;
      }
    }
    looks += 1;
    await new Promise((resolve) => setImmediate(resolve));
  }
  expect((await finished).map(({ code }) => code)).toEqual([0, 0]);
  expect(looks).toBeGreaterThan(1);
  for (const id of ['a', 'b']) {
    expect(store.recording(id)?.soundness).toEqual({ kind: 'sound' });
    expect([...(store.recording(id)?.entries() ?? [])]).toHaveLength(2_400);
  }
  store.close();
  expect(integrityOf(path)).toBe('ok');
});

test('six programs that make the same new store at the same moment all succeed', async () => {
  const path = join(temporaryFolder(), 'store.db');
  const ends = await Promise.all(['a', 'b', 'c', 'd', 'e', 'f'].map((id) => record(path, id, 100)));
  expect(ends.map(({ code, text }) => [code, /trouble.*/.exec(text)?.[0]])).toEqual(
    Array(6).fill([0, undefined]),
  );
  expect(openedStore({ path }).recordingIds().toSorted()).toEqual(['a', 'b', 'c', 'd', 'e', 'f']);
});

test('while another program is making the store (it holds the empty file for 0.3 s), opening waits for it', async () => {
  const path = join(temporaryFolder(), 'store.db');
  const hold = `
    const database = new (require('better-sqlite3'))(${JSON.stringify(path)});
    database.exec('BEGIN IMMEDIATE');
    console.log('held');
    setTimeout(() => database.close(), 300);`;
  const child = spawn(process.execPath, ['-e', hold], {
    env: program.env,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = once(child, 'close');
  await once(child.stdout, 'data');
  const before = performance.now();
  const store = openedStore({ path });
  expect(performance.now() - before).toBeGreaterThan(200);
  expect(store.durability.journalMode).toBe('wal');
  await ended;
});

test('when the disk takes no more (a file size limit), it is told by code, and all that was flushed is there', async ({
  skip,
}) => {
  skip(process.platform === 'win32', 'skipped: there is no file size limit to set on Windows');
  const path = join(temporaryFolder(), 'store.db');
  openedStore({ path }).close();
  const limited = ['sh', '-c', 'ulimit -f 1000; exec "$@"', 'sh'];
  const { code, text } = await record(path, 'a', 50_000, limited);
  expect(code).toBe(3);
  expect(text).toMatch(/trouble store-disk-(fault|full)\n$/);
  const flushed = Number([...text.matchAll(/^flushed (\d+)$/gm)].at(-1)?.[1]);
  expect(flushed).toBeGreaterThan(100);
  const store = openedStore({ path });
  expect([...(store.recording('a')?.entries() ?? [])].length).toBeGreaterThanOrEqual(flushed);
  expect(store.recording('a')?.soundness).toEqual({ kind: 'not-closed' });
  store.close();
  expect(integrityOf(path)).toBe('ok');
});
