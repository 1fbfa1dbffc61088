import Database from 'better-sqlite3';
import type { StoreProblem, StoreVerification } from '../../core/exchange/StoreVerification.ts';
import { verificationDetails } from '../../core/text/verification-text.ts';
import { migrate } from './migrate.ts';
import { openDatabase } from './open-database.ts';
import { StoreError } from './StoreError.ts';
import { translateSqliteError } from './translate-sqlite-error.ts';
import { verifyCycles } from './verify-cycles.ts';
import { verifyDerived } from './verify-derived.ts';
import { verifyRecordings } from './verify-recordings.ts';

/**
 * Checks a whole store without changing it: the database's own integrity check, references, tables as this program
 * makes them, every recording against its hash, results, recipes and cycles. Others may write meanwhile; one state is seen.
 * Damage that keeps the file from being read is a problem too. Throws a StoreError only where it is no store to check.
 */
export function verifyStore(path: string): StoreVerification {
  try {
    const { database } = openDatabase({ path, readonly: true, busyTimeoutMs: 5_000 });
    try {
      return database.transaction(() => verifyDatabase(database, path))();
    } finally {
      database.close();
    }
  } catch (error) {
    const translated = translateSqliteError(error, path);
    if (translated instanceof StoreError && translated.code === 'store-corrupt')
      return { ...NOTHING_READ, path, problems: [databaseProblem(translated.message)] };
    throw translated;
  }
}

const NOTHING_READ = { recordings: 0, sound: 0, notClosed: [], runResults: 0, recipes: 0, cycles: 0 };

/** As `verifyStore`, for a database that is open (and inside a transaction, where others may write). */
export function verifyDatabase(database: Database.Database, path: string): StoreVerification {
  const problems: StoreProblem[] = [...integrity(database), ...references(database), ...schema(database)];
  const found = { ...NOTHING_READ, path };
  try {
    const { recordings, notClosed, problems: wrong } = verifyRecordings(database);
    const { runResults, recipes, problems: derived } = verifyDerived(database);
    const { cycles, problems: ofCycles } = verifyCycles(database);
    const sound = recordings - notClosed.length - wrong.length;
    return {
      path,
      recordings,
      sound,
      notClosed,
      runResults,
      recipes,
      cycles,
      problems: [...problems, ...wrong, ...derived, ...ofCycles],
    };
  } catch (error) {
    // A damaged page stops the reading; the integrity check above has said where, or this says it.
    const translated = translateSqliteError(error, path);
    if (!(translated instanceof StoreError)) throw error;
    return { ...found, problems: [...problems, databaseProblem(translated.message)] };
  }
}

const databaseProblem = (detail: string): StoreProblem => ({ kind: 'database', subject: 'file', detail });

function integrity(database: Database.Database): readonly StoreProblem[] {
  const rows = database.pragma('integrity_check') as readonly { readonly integrity_check: string }[];
  return rows.flatMap((row) => (row.integrity_check === 'ok' ? [] : [databaseProblem(row.integrity_check)]));
}

function references(database: Database.Database): readonly StoreProblem[] {
  const rows = database.pragma('foreign_key_check') as readonly {
    readonly table: string;
    readonly rowid: number | null;
    readonly parent: string;
  }[];
  return rows.map(({ table, rowid, parent }) => ({
    kind: 'reference',
    subject: `${table} row ${rowid ?? '?'}`,
    detail: verificationDetails.referenceMissing(parent),
  }));
}

/** Tables, indexes and triggers are those that this program makes: a trigger that keeps traces unchanged may be gone. */
function schema(database: Database.Database): readonly StoreProblem[] {
  const expected = new Database(':memory:');
  try {
    migrate(expected, { path: ':memory:', readonly: false, appliedAt: '' });
    const wanted = schemaOf(expected);
    const came = schemaOf(database);
    return [...new Set([...wanted.keys(), ...came.keys()])].flatMap((name): StoreProblem[] => {
      if (wanted.get(name) === came.get(name)) return [];
      const detail = !came.has(name)
        ? verificationDetails.schemaMissing
        : wanted.has(name)
          ? verificationDetails.schemaDiffers
          : verificationDetails.schemaStrange;
      return [{ kind: 'schema', subject: name, detail }];
    });
  } finally {
    expected.close();
  }
}

function schemaOf(database: Database.Database): ReadonlyMap<string, string | null> {
  // The planner's own statistics tables may come and go.
  const rows = database
    .prepare<[], { name: string; type: string; sql: string | null }>(
      "SELECT name, type, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_stat%'",
    )
    .all();
  return new Map(rows.map((row) => [`${row.type} ${row.name}`, row.sql]));
}
