import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { APPLICATION_ID, migrate } from '../../../src/adapters/sqlite/migrate.ts';
import { MIGRATIONS } from '../../../src/adapters/sqlite/migrations.ts';
import { openStore } from '../../../src/adapters/sqlite/open-store.ts';
import { headOf, lineAt, openedStore, recipeOf, resultOf, temporaryFolder } from './samples.ts';

const appliedAt = '2026-03-02T08:00:00.000Z';

/** A store as the program of that many changes left it. */
function storeOfVersion(changes: number): string {
  const path = join(temporaryFolder(), 'store.db');
  const database = new Database(path);
  database.pragma('journal_mode = WAL');
  migrate(database, { path, readonly: false, appliedAt, migrations: MIGRATIONS.slice(0, changes) });
  database.close();
  return path;
}

function change(path: string, sql: string): void {
  const database = new Database(path);
  database.exec(sql);
  database.close();
}

const schemaOf = (path: string): unknown => {
  const database = new Database(path, { readonly: true });
  const rows = database.prepare('SELECT type, name, sql FROM sqlite_schema ORDER BY type, name').all();
  database.close();
  return rows;
};

const versions = MIGRATIONS.map((_migration, index) => index + 1);

test.each(versions)('a store of change %i is brought up to date, with what it held', (changes) => {
  const path = storeOfVersion(changes);
  change(
    path,
    `INSERT INTO recordings (recording_id, simulated, head_text)
     VALUES ('old', 1, 'dwellwright-recording: 1
recording-id: old
made-at: 2026-01-01T00:00:00Z
program: dwellwright 0.1.0
simulated: yes
roles: bond-line
begin
')`,
  );
  const store = openedStore({ path });
  expect(store.recordingIds()).toEqual(['old']);
  expect(store.recording('old')?.head.roles).toEqual(['bond-line']);
  expect(store.recipes()).toEqual([]);
  store.close();
  expect(schemaOf(path)).toEqual(schemaOf(storeOfVersion(MIGRATIONS.length)));
});

test('opening a store of today changes nothing in it', () => {
  const path = storeOfVersion(MIGRATIONS.length);
  const database = new Database(path, { readonly: true });
  const version = () => database.pragma('schema_version', { simple: true });
  const before = version();
  openStore({ path }).close();
  expect(version()).toBe(before);
  database.close();
});

describe('refused by name, and left as it was', () => {
  const refusal = (path: string, code: string, named: string, readonly = false) => {
    const before = schemaOf(path);
    const open = () => openStore({ path, readonly });
    expect(open).toThrow(expect.objectContaining({ code, remedy: expect.stringMatching(/\w/) }));
    expect(open).toThrow(named);
    expect(schemaOf(path)).toEqual(before);
  };

  test('a store of a newer program', () => {
    const path = storeOfVersion(MIGRATIONS.length);
    const number = MIGRATIONS.length + 1;
    change(path, `INSERT INTO migrations VALUES (${number}, '${number}-press-ram-wear', 'x', 'later')`);
    refusal(path, 'store-newer', `${number}-press-ram-wear`);
    refusal(path, 'store-newer', `${number}-press-ram-wear`, true);
  });

  test('a store that lacks a change in the middle', () => {
    const path = storeOfVersion(MIGRATIONS.length);
    change(path, 'DELETE FROM migrations WHERE number = 2');
    refusal(path, 'store-migration-missing', '002-presses-and-assemblies');
  });

  test('a store whose changes stand in another order', () => {
    const path = storeOfVersion(MIGRATIONS.length);
    change(
      path,
      `UPDATE migrations SET number = 99 WHERE number = 2;
       UPDATE migrations SET number = 2 WHERE number = 3;
       UPDATE migrations SET number = 3 WHERE number = 99`,
    );
    refusal(path, 'store-migration-differs', '002-presses-and-assemblies');
  });

  test('a store in which a change was written differently', () => {
    const path = storeOfVersion(MIGRATIONS.length);
    change(path, "UPDATE migrations SET sha256 = 'other' WHERE number = 3");
    refusal(path, 'store-migration-differs', '003-trials-and-runs, written differently');
  });

  test("another program's database", () => {
    const path = join(temporaryFolder(), 'other.db');
    change(path, 'CREATE TABLE stock (part TEXT)');
    refusal(path, 'store-not-a-store', path);
  });

  test('an older store opened only for reading', () => {
    refusal(storeOfVersion(2), 'store-older', '003-trials-and-runs', true);
  });
});

test('a change that fails half way leaves the store at the change before', () => {
  const path = storeOfVersion(1);
  const database = new Database(path);
  const broken = {
    name: '002-broken',
    sql: 'CREATE TABLE half (a TEXT) STRICT; CREATE TABLE half (a TEXT) STRICT',
  };
  const migrations = [...MIGRATIONS.slice(0, 1), broken];
  expect(() => migrate(database, { path, readonly: false, appliedAt, migrations })).toThrow();
  expect(database.prepare("SELECT count(*) FROM sqlite_schema WHERE name = 'half'").pluck().get()).toBe(0);
  expect(database.prepare('SELECT max(number) FROM migrations').pluck().get()).toBe(1);
  database.close();
});

describe('what the tables themselves refuse', () => {
  function filled(): Database.Database {
    const path = join(temporaryFolder(), 'store.db');
    const store = openedStore({ path });
    const writer = store.startRecording(headOf('a', { trialId: 't' }));
    writer.append(lineAt(0));
    writer.close();
    const open = store.startRecording(headOf('b'));
    open.append(lineAt(0));
    open.flush();
    store.startTrial({
      trialId: 't',
      assemblyName: 'WB-212',
      pressName: 'North',
      startedAt: 'x',
      simulated: true,
    });
    store.saveRunResult('a', resultOf(1));
    store.decideRun({ recordingId: 'a', runNumber: 1, kind: 'set-aside', reason: 'r', decidedAt: 'x' });
    store.saveRecipe(recipeOf());
    store.close();
    copyFileSync(path, `${path}.copy`);
    return new Database(`${path}.copy`);
  }

  test.each([
    ["UPDATE recording_blocks SET body_text = ''", 'recording_blocks is never updated'],
    ['DELETE FROM recording_blocks', 'recording_blocks is never deleted from'],
    ["UPDATE recordings SET head_text = '' WHERE recording_id = 'b'", 'never updated but for its closing'],
    [
      "UPDATE recordings SET closing_text = 'end' WHERE recording_id = 'a'",
      'never updated but for its closing',
    ],
    ['DELETE FROM recordings', 'recordings is never deleted from'],
    ["INSERT INTO recording_blocks VALUES (NULL, 1, 9, 1, 'x')", 'a closed recording takes no more entries'],
    ["UPDATE run_decisions SET reason = ''", 'run_decisions is never updated'],
    ['DELETE FROM run_decisions', 'run_decisions is never deleted from'],
    ['UPDATE recipes SET dwell_s = 1', 'recipes is never updated'],
    ['DELETE FROM recipes', 'recipes is never deleted from'],
    ['DELETE FROM trials', 'trials is never deleted from'],
    [
      "INSERT INTO recording_blocks VALUES (NULL, 2, 'ERR', 1, 'x')",
      'cannot store TEXT value in INTEGER column',
    ],
    ["INSERT INTO recording_blocks VALUES (NULL, 2, 0, 1, 'x')", 'UNIQUE constraint failed'],
    ["INSERT INTO recording_blocks VALUES (NULL, 2, 5, 1, x'00')", 'cannot store BLOB value in TEXT column'],
    ["UPDATE run_results SET result_json = 'no json'", 'CHECK constraint failed'],
  ])('%s', (sql, message) => {
    const database = filled();
    try {
      expect(() => database.exec(sql)).toThrow(message);
    } finally {
      database.close();
    }
  });

  test('every table is STRICT and the file is marked as a store', () => {
    const database = filled();
    const loose = database
      .prepare(
        "SELECT name FROM pragma_table_list WHERE schema = 'main' AND strict = 0 AND name NOT LIKE 'sqlite_%'",
      )
      .all();
    expect(loose).toEqual([]);
    expect(database.pragma('application_id', { simple: true })).toBe(APPLICATION_ID);
    database.close();
  });

  test('a run result that is not as it should be is named when it is read', () => {
    const database = filled();
    database.exec(`UPDATE run_results SET result_json = json_set(result_json, '$.verdict', 'fine')`);
    const path = database.name;
    database.close();
    const store = openedStore({ path });
    const refused = expect.objectContaining({
      code: 'store-unreadable',
      message: expect.stringContaining('verdict'),
    });
    expect(() => store.trialRuns('t')).toThrow(refused);
  });
});
