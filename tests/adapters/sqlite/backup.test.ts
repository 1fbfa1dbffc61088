import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, linkSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { backUpStore } from '../../../src/adapters/sqlite/back-up-store.ts';
import { migrate } from '../../../src/adapters/sqlite/migrate.ts';
import { MIGRATIONS } from '../../../src/adapters/sqlite/migrations.ts';
import { openStore } from '../../../src/adapters/sqlite/open-store.ts';
import { verifyStore } from '../../../src/adapters/sqlite/verify-store.ts';
import { addTrial, contentsOf, filled, rowCounts, tamper } from './filled-store.ts';
import { fixtureProgram } from './fixture-program.ts';
import { cycleOf, openedStore, recipeOf, temporaryFolder } from './samples.ts';

let steady: Awaited<ReturnType<typeof fixtureProgram>>;
beforeAll(async () => {
  steady = await fixtureProgram('append-steadily');
});
afterAll(() => rmSync(dirname(steady.file), { recursive: true, force: true }));

const oneTrial = (folder: string): string =>
  filled(join(folder, 'store.db'), (store) => {
    addTrial(store, 'a');
    store.saveRecipe(recipeOf());
    store.saveCycle(cycleOf('cycle-a', { recordingId: 'recording-a' }));
    store.saveSetting('roles:North', 'bond-line');
  });

test('a backup holds what the store holds, row for row, and is a store itself', () => {
  const folder = temporaryFolder();
  const path = oneTrial(folder);
  const to = join(folder, 'backup.db');
  const report = backUpStore({ path, to, replace: false });
  expect(report.verification).toMatchObject({ path: to, recordings: 1, sound: 1, problems: [] });
  expect(report.bytes).toBe(readFileSync(to).length);
  expect(rowCounts(to)).toEqual(rowCounts(path));
  expect(contentsOf(to)).toEqual(contentsOf(path));
  expect(openedStore({ path: to }).setting('roles:North')).toBe('bond-line');
});

test('while another program records 100 lines a second, a backup is one whole state and loses the recording nothing', async () => {
  const folder = temporaryFolder();
  const path = oneTrial(folder);
  const child = spawn(process.execPath, [steady.file, path, 'live', '150'], {
    env: steady.env,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let text = '';
  child.stdout.on('data', (chunk: Buffer) => {
    text += chunk.toString();
  });
  const ended = once(child, 'close');
  const counts: number[] = [];
  for (let turn = 0; child.exitCode === null && turn < 50; turn += 1) {
    const to = join(folder, `backup-${turn}.db`);
    const { verification } = backUpStore({ path, to, replace: false });
    expect(verification.problems).toEqual([]);
    const copy = openStore({ path: to, readonly: true });
    const live = copy.recording('live');
    counts.push(live === undefined ? -1 : [...live.entries()].length);
    copy.close();
    await new Promise((resolve) => setTimeout(resolve, 30));
  }
  const [code] = await ended;
  expect(code).toBe(0);
  expect(text).toContain('append 149 ');
  // Each backup holds at least what the one before held, and some were made in the middle of the recording.
  expect(counts).toEqual(counts.toSorted((a, b) => a - b));
  expect(counts.filter((count) => count > 0 && count < 150).length).toBeGreaterThan(0);
  expect(verifyStore(path)).toMatchObject({ recordings: 2, sound: 2, notClosed: [], problems: [] });
});

describe('refused, with nothing left behind and what was there unchanged', () => {
  const refusal = (code: string, act: (folder: string, path: string) => void) => () => {
    const folder = temporaryFolder();
    const path = oneTrial(folder);
    let before: readonly string[] = [];
    expect(() => {
      before = readdirSync(folder);
      act(folder, path);
    }).toThrow(expect.objectContaining({ code }));
    expect(readdirSync(folder).filter((name) => name.includes('.part'))).toEqual([]);
    expect(before.filter((name) => !readdirSync(folder).includes(name))).toEqual([]);
  };

  test(
    'onto a file that is there',
    refusal('backup-exists', (folder, path) => {
      writeFileSync(join(folder, 'there'), 'kept');
      try {
        backUpStore({ path, to: join(folder, 'there'), replace: false });
      } finally {
        expect(readFileSync(join(folder, 'there'), 'utf8')).toBe('kept');
      }
    }),
  );
  test(
    'onto the store itself, also by another name for it',
    refusal('backup-same-file', (folder, path) =>
      backUpStore({
        path,
        to: join(folder, '..', folder.split('/').at(-1) as string, 'store.db'),
        replace: true,
      }),
    ),
  );
  test(
    'onto a hard link to the store',
    refusal('backup-same-file', (folder, path) => {
      linkSync(path, join(folder, 'link.db'));
      try {
        backUpStore({ path, to: join(folder, 'link.db'), replace: true });
      } finally {
        rmSync(join(folder, 'link.db'));
      }
    }),
  );
  test(
    'onto a folder',
    refusal('store-is-folder', (folder, path) => {
      mkdirSync(join(folder, 'place'));
      backUpStore({ path, to: join(folder, 'place'), replace: true });
    }),
  );
  test(
    'into a folder that is not there',
    refusal('store-cannot-open', (folder, path) =>
      backUpStore({ path, to: join(folder, 'none', 'backup.db'), replace: false }),
    ),
  );
  test(
    'of a store that is not there',
    refusal('store-missing', (folder) =>
      backUpStore({ path: join(folder, 'none.db'), to: join(folder, 'backup.db'), replace: false }),
    ),
  );
});

test('--replace puts the new backup in the place of the old one', () => {
  const folder = temporaryFolder();
  const path = oneTrial(folder);
  const to = join(folder, 'backup.db');
  backUpStore({ path, to, replace: false });
  filled(path, (store) => addTrial(store, 'b'));
  expect(backUpStore({ path, to, replace: true }).verification.recordings).toBe(2);
  expect(contentsOf(to)).toEqual(contentsOf(path));
});

test('a store with an altered recording is still backed up, and the report names the recording', () => {
  const folder = temporaryFolder();
  const path = oneTrial(folder);
  tamper(
    path,
    `DROP TRIGGER recording_blocks_never_updated;
     UPDATE recording_blocks SET body_text = replace(body_text, '0.100000', '0.100001')`,
  );
  const to = join(folder, 'backup.db');
  const { problems } = backUpStore({ path, to, replace: false }).verification;
  expect(problems.map(({ subject }) => subject)).toContain('recording-a');
  expect(existsSync(to)).toBe(true);
});

test('a store of an older program is backed up as it is, before it is brought up to date', () => {
  const folder = temporaryFolder();
  const path = join(folder, 'old.db');
  const database = new Database(path);
  const options = { path, readonly: false, appliedAt: '2026-03-02T08:00:00.000Z' };
  migrate(database, { ...options, migrations: MIGRATIONS.slice(0, 4) });
  database.exec(`INSERT INTO settings (key, value) VALUES ('kept', 'yes')`);
  database.close();
  const to = join(folder, 'backup.db');
  expect(backUpStore({ path, to, replace: false }).verification.problems).toEqual([]);
  expect(readdirSync(folder).toSorted()).toEqual(['backup.db', 'old.db']);
  expect(rowCounts(to)).toEqual(rowCounts(path));
  expect(rowCounts(to).migrations).toBe(4);
  expect(openedStore({ path: to }).setting('kept')).toBe('yes');
});
