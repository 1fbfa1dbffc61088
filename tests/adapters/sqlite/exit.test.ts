import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { fixtureProgram } from './fixture-program.ts';
import { openedStore, temporaryFolder } from './samples.ts';

let program: Awaited<ReturnType<typeof fixtureProgram>>;
beforeAll(async () => {
  program = await fixtureProgram('append-and-exit');
});
afterAll(() => rmSync(dirname(program.file), { recursive: true, force: true }));

test.each([
  ['exit', 0],
  ['throw', 1],
  ['return', 0],
])('a program that ends by %s without closing leaves all 100 lines in the store', (how, status) => {
  const path = join(temporaryFolder(), 'store.db');
  const ended = spawnSync(process.execPath, [program.file, path, how], { env: program.env });
  expect(ended.status).toBe(status);
  const recording = openedStore({ path }).recording('a');
  expect([...(recording?.entries() ?? [])]).toHaveLength(100);
  expect(recording?.soundness).toEqual({ kind: 'not-closed' });
});
