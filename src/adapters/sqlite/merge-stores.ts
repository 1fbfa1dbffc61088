import type Database from 'better-sqlite3';
import { ExchangeError } from '../../core/exchange/ExchangeError.ts';
import type { MergeReport } from '../../core/exchange/MergeReport.ts';
import { exchangeRefusals } from '../../core/text/exchange-text.ts';
import { problemLine } from '../../core/text/verification-text.ts';
import { mergeCycles } from './merge-cycles.ts';
import { mergeImports } from './merge-imports.ts';
import { type LineTable, mergeLines } from './merge-lines.ts';
import { mergeNamed } from './merge-named.ts';
import { mergeRecipes } from './merge-recipes.ts';
import { mergeRecordings } from './merge-recordings.ts';
import { mergeRunResults } from './merge-runs.ts';
import { mergeTrials } from './merge-trials.ts';
import { openDatabase } from './open-database.ts';
import { sameFile } from './same-file.ts';
import { translateSqliteError } from './translate-sqlite-error.ts';
import { verifyDatabase } from './verify-store.ts';

const DECISIONS: LineTable = {
  table: 'run_decisions',
  order: 'decision_id',
  about: ['recording_row', 'run_number'],
  at: 'decided_at',
};
const PROBES: LineTable = { table: 'probes', order: 'probe_row', about: ['name'], at: 'saved_at' };

const BUSY_TIMEOUT_MS = 5_000;

/**
 * Brings another store into this one: all of it or nothing, nothing twice. The other is only read; both are checked
 * first and a damaged one is refused. Settings stay with their laptop.
 */
export function mergeStores({
  ownPath,
  otherPath,
}: {
  readonly ownPath: string;
  readonly otherPath: string;
}): MergeReport {
  if (sameFile(ownPath, otherPath))
    throw new ExchangeError('merge-same-store', exchangeRefusals.mergeSameStore(otherPath));
  // The other first: where it is none, no store of our own is made either.
  const { database: other } = openDatabase({
    path: otherPath,
    readonly: true,
    busyTimeoutMs: BUSY_TIMEOUT_MS,
  });
  try {
    return other.transaction(() => mergeInto(ownPath, otherPath, other))();
  } finally {
    other.close();
  }
}

function mergeInto(ownPath: string, otherPath: string, other: Database.Database): MergeReport {
  refuseDamaged(other, otherPath);
  const { database: own } = openDatabase({
    path: ownPath,
    readonly: false,
    busyTimeoutMs: BUSY_TIMEOUT_MS,
  });
  try {
    refuseDamaged(own, ownPath);
    return { ownPath, otherPath, ...own.transaction(() => mergeAll(own, other)).immediate() };
  } catch (error) {
    throw translateSqliteError(error, ownPath);
  } finally {
    own.close();
  }
}

function refuseDamaged(database: Database.Database, path: string): void {
  const { problems } = verifyDatabase(database, path);
  if (problems.length > 0)
    throw new ExchangeError(
      'merge-damaged',
      exchangeRefusals.mergeDamaged(path, problems.map(problemLine)),
      1,
    );
}

function mergeAll(
  own: Database.Database,
  other: Database.Database,
): Omit<MergeReport, 'ownPath' | 'otherPath'> {
  const presses = mergeNamed(own, other, 'presses');
  const assemblies = mergeNamed(own, other, 'assemblies');
  const layouts = mergeNamed(own, other, 'logger_layouts');
  const trials = mergeTrials(own, other);
  const recordings = mergeRecordings(own, other, trials.idOf);
  mergeImports(own, other, recordings.rowOf);
  const results = mergeRunResults(own, other, recordings.rowOf);
  const decisions = mergeLines(own, other, DECISIONS, (row) => {
    const recording_row = recordings.rowOf.get(Number(row.recording_row));
    return recording_row === undefined ? null : { ...row, recording_row };
  });
  const probes = mergeLines(own, other, PROBES);
  const recipes = mergeRecipes(own, other);
  const cycles = mergeCycles(own, other, recipes.versionsOf);
  return {
    added: {
      presses: presses.added,
      assemblies: assemblies.added,
      layouts: layouts.added,
      trials: trials.added,
      recordings: recordings.added,
      continued: recordings.continued,
      runResults: results.added,
      decisions,
      recipes: recipes.added,
      withdrawals: recipes.withdrawals,
      probes,
      cycles: cycles.added,
    },
    differences: [
      ...presses.differences,
      ...assemblies.differences,
      ...layouts.differences,
      ...recordings.differences,
      ...results.differences,
      ...cycles.differences,
    ],
    renumbered: recipes.renumbered,
    renamedTrials: trials.renamed,
  };
}
