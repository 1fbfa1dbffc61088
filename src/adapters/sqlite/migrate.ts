import { createHash } from 'node:crypto';
import type Database from 'better-sqlite3';
import { storeRefusals } from '../../core/text/store-refusals.ts';
import { MIGRATIONS, type Migration } from './migrations.ts';
import { StoreError } from './StoreError.ts';

/** Marks a file as a store of this program ("DWEL" in ASCII), kept in SQLite's application_id. */
export const APPLICATION_ID = 0x4457454c;

const LEDGER = `
  CREATE TABLE migrations (
    number INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE,
    sha256 TEXT NOT NULL,
    applied_at TEXT NOT NULL
  ) STRICT`;

interface Applied {
  readonly number: number;
  readonly name: string;
  readonly sha256: string;
}

/**
 * Brings a store up to date, each change in a transaction of its own. Refuses by name, without touching the file:
 * another program's database, a change this program does not know (newer), one missing, one that differs.
 */
export function migrate(
  database: Database.Database,
  options: {
    readonly path: string;
    readonly readonly: boolean;
    readonly appliedAt: string;
    readonly migrations?: readonly Migration[];
  },
): void {
  const migrations = options.migrations ?? MIGRATIONS;
  const pending = pendingAfter(database, migrations, options.path);
  if (pending >= migrations.length) return;
  if (options.readonly) {
    const next = migrations[pending]?.name ?? '';
    throw new StoreError('store-older', storeRefusals.olderReadonly(options.path, next));
  }
  for (let number = pending; number < migrations.length; number += 1) {
    // Looked up again inside: a second program may have made the change in between.
    database.transaction(() => applyNext(database, migrations, number, options)).immediate();
  }
}

function applyNext(
  database: Database.Database,
  migrations: readonly Migration[],
  number: number,
  options: { readonly path: string; readonly appliedAt: string },
): void {
  const migration = migrations[number];
  if (migration === undefined || pendingAfter(database, migrations, options.path) > number) return;
  if (number === 0) {
    database.exec(LEDGER);
    database.pragma(`application_id = ${APPLICATION_ID}`);
  }
  database.exec(migration.sql);
  database
    .prepare('INSERT INTO migrations (number, name, sha256, applied_at) VALUES (?, ?, ?, ?)')
    .run(number + 1, migration.name, hashOf(migration), options.appliedAt);
}

/** Number of changes already made, after checking each against the list. */
function pendingAfter(database: Database.Database, migrations: readonly Migration[], path: string): number {
  const tables = database.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() as number;
  if (tables === 0) return 0;
  if (database.pragma('application_id', { simple: true }) !== APPLICATION_ID) {
    throw new StoreError('store-not-a-store', storeRefusals.notAStore(path));
  }
  const applied = database
    .prepare('SELECT number, name, sha256 FROM migrations ORDER BY number')
    .all() as Applied[];
  for (const [index, row] of applied.entries()) checkOne(row, index, migrations, path);
  return applied.length;
}

function checkOne(row: Applied, index: number, migrations: readonly Migration[], path: string): void {
  const expected = migrations[index];
  if (expected === undefined) throw new StoreError('store-newer', storeRefusals.newer(path, row.name));
  if (row.number !== index + 1) {
    throw new StoreError('store-migration-missing', storeRefusals.migrationMissing(path, expected.name));
  }
  if (row.name !== expected.name) {
    throw new StoreError(
      'store-migration-differs',
      storeRefusals.migrationDiffers(path, expected.name, row.name),
    );
  }
  if (row.sha256 !== hashOf(expected)) {
    const came = `${row.name}, written differently`;
    throw new StoreError(
      'store-migration-differs',
      storeRefusals.migrationDiffers(path, expected.name, came),
    );
  }
}

function hashOf(migration: Migration): string {
  return createHash('sha256').update(migration.sql).digest('hex');
}
