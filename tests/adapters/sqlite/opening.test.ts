import { chmodSync, copyFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { openStore } from '../../../src/adapters/sqlite/open-store.ts';
import { translateSqliteError } from '../../../src/adapters/sqlite/translate-sqlite-error.ts';
import { headOf, lineAt, openedStore, temporaryFolder } from './samples.ts';

const refused = (code: string, text: string) =>
  expect.objectContaining({
    name: 'StoreError',
    code,
    message: expect.stringContaining(text),
    remedy: expect.stringMatching(/\w/),
  });

test('makes the folder and the file where missing', () => {
  const path = join(temporaryFolder(), 'a', 'b', 'store.db');
  openedStore({ path });
  expect(existsSync(path)).toBe(true);
});

test('sets synchronous FULL again on each open, since it is not kept in the file', () => {
  const path = join(temporaryFolder(), 'store.db');
  for (let round = 0; round < 3; round += 1) {
    const store = openStore({ path });
    store.startRecording(headOf(`r${round}`)).close();
    expect(store.durability).toEqual({ journalMode: 'wal', synchronous: 'FULL' });
    store.close();
  }
});

test('refuses a folder, a path through a file, and a file missing when only reading', () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'file'), 'x');
  expect(() => openStore({ path: folder })).toThrow(refused('store-is-folder', folder));
  expect(() => openStore({ path: join(folder, 'file', 'store.db') })).toThrow(
    refused('store-cannot-open', 'file'),
  );
  const missing = join(folder, 'none.db');
  expect(() => openStore({ path: missing, readonly: true })).toThrow(refused('store-missing', missing));
  expect(existsSync(missing)).toBe(false);
});

test('refuses a text file and leaves it as it is', () => {
  const path = join(temporaryFolder(), 'log.csv');
  const text = 'time,temperature\n'.repeat(100);
  writeFileSync(path, text);
  expect(() => openStore({ path })).toThrow(refused('store-not-a-store', path));
  expect(readFileSync(path, 'utf8')).toBe(text);
});

test('says that a file with overwritten pages is damaged', () => {
  const path = join(temporaryFolder(), 'store.db');
  const store = openStore({ path });
  const writer = store.startRecording(headOf('a'));
  for (let number = 0; number < 4_000; number += 1) writer.append(lineAt(number));
  writer.close();
  store.close();
  const bytes = readFileSync(path);
  bytes.fill(0xa5, 4_096);
  writeFileSync(path, bytes);
  const use = () => {
    const damaged = openStore({ path });
    try {
      damaged.recordingIds();
    } finally {
      damaged.close();
    }
  };
  expect(use).toThrow(refused('store-corrupt', path));
});

test('a recording altered in the file from outside opens and says that it was altered', () => {
  const path = join(temporaryFolder(), 'store.db');
  const store = openStore({ path });
  const writer = store.startRecording(headOf('a'));
  for (const arrivedUs of [0, 1_000]) {
    writer.append(lineAt(arrivedUs, 'T1: 21.5'));
    writer.flush();
  }
  writer.close();
  store.close();
  const outside = new Database(path);
  outside.exec('DROP TRIGGER recording_blocks_never_updated');
  outside.exec(
    "UPDATE recording_blocks SET body_text = replace(body_text, '21.5', '27.5') WHERE first_entry = 1",
  );
  outside.close();
  const recording = openedStore({ path }).recording('a');
  expect([...(recording?.entries() ?? [])]).toEqual([lineAt(0, 'T1: 21.5'), lineAt(1_000, 'T1: 27.5')]);
  expect(recording?.soundness.kind).toBe('altered');
});

test('reading only: refuses every write by name', () => {
  const path = join(temporaryFolder(), 'store.db');
  const writing = openedStore({ path });
  writing.startRecording(headOf('a')).close();
  const reading = openedStore({ path, readonly: true });
  expect(reading.recordingIds()).toEqual(['a']);
  expect(() => reading.saveSetting('unit', 'C')).toThrow(refused('store-read-only', path));
  expect(() => reading.startRecording(headOf('b'))).toThrow(refused('store-read-only', path));
});

test('a folder or file that may not be written is refused by name', ({ skip }) => {
  skip(process.platform === 'win32', 'skipped: rights work otherwise on Windows');
  const folder = temporaryFolder();
  const locked = join(folder, 'locked');
  openStore({ path: join(locked, 'store.db') }).close();
  chmodSync(folder, 0o755);
  chmodSync(join(locked, 'store.db'), 0o444);
  chmodSync(locked, 0o555);
  asOrdinaryUser(() => {
    expect(() => openStore({ path: join(locked, 'new.db') })).toThrow(refused('store-cannot-open', locked));
    expect(() => openStore({ path: join(locked, 'in', 'new.db') })).toThrow(
      refused('store-cannot-open', locked),
    );
    expect(() => openStore({ path: join(locked, 'store.db') })).toThrow(refused('store-read-only', locked));
  });
});

test('in a folder that may only be read, a store is read (from a copy in memory), but not while a log waits beside it', ({
  skip,
}) => {
  skip(process.platform === 'win32', 'skipped: rights work otherwise on Windows');
  const folder = temporaryFolder();
  const path = join(folder, 'store.db');
  const writing = openStore({ path });
  const writer = writing.startRecording(headOf('a'));
  writer.append(lineAt(0));
  writer.close();
  const withLog = join(temporaryFolder(), 'store.db');
  for (const ending of ['', '-wal']) copyFileSync(`${path}${ending}`, `${withLog}${ending}`);
  writing.close();
  chmodSync(folder, 0o555);
  chmodSync(dirname(withLog), 0o555);
  asOrdinaryUser(() => {
    const store = openedStore({ path, readonly: true });
    expect(store.recording('a')?.soundness).toEqual({ kind: 'sound' });
    expect([...(store.recording('a')?.entries() ?? [])]).toEqual([lineAt(0)]);
    expect(() => store.saveSetting('unit', 'C')).toThrow(refused('store-read-only', path));
    expect(() => openStore({ path: withLog, readonly: true })).toThrow(refused('store-cannot-open', withLog));
  });
});

/** The superuser may write anywhere; where the tests run as such, another user id is taken on for a moment. */
function asOrdinaryUser(act: () => void): void {
  const superuser = process.getuid?.() === 0;
  if (superuser) process.seteuid?.(65_534);
  try {
    act();
  } finally {
    if (superuser) process.seteuid?.(0);
  }
}

test('a store held by another program for longer than the waiting time is refused; a shorter hold is waited for', () => {
  const path = join(temporaryFolder(), 'store.db');
  const store = openedStore({ path, busyTimeoutMs: 60 });
  const other = new Database(path);
  other.exec('BEGIN IMMEDIATE');
  const before = performance.now();
  expect(() => store.saveSetting('unit', 'C')).toThrow(refused('store-busy', path));
  expect(performance.now() - before).toBeGreaterThan(50);
  expect(store.setting('unit')).toBeUndefined();
  other.exec('COMMIT');
  store.saveSetting('unit', 'C');
  other.close();
});

test('a full disk (here: a page limit of the database) is told as such', () => {
  const database = new Database(join(temporaryFolder(), 'full.db'));
  database.exec('CREATE TABLE t (a TEXT)');
  database.pragma('max_page_count = 4');
  let error: unknown;
  try {
    database.prepare('INSERT INTO t VALUES (?)').run('x'.repeat(100_000));
  } catch (caught) {
    error = caught;
  }
  database.close();
  expect(translateSqliteError(error, '/s/store.db')).toEqual(refused('store-disk-full', '/s/store.db'));
});

test('an error that is not of the database comes back as it was', () => {
  const error = new RangeError('x');
  expect(translateSqliteError(error, 'p')).toBe(error);
  expect(translateSqliteError('x', 'p')).toBe('x');
});
