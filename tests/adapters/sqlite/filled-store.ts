import Database from 'better-sqlite3';
import { openStore } from '../../../src/adapters/sqlite/open-store.ts';
import { recipesInForce } from '../../../src/core/bonding/recipes-in-force.ts';
import type { Store } from '../../../src/core/store/Store.ts';
import { headOf, lineAt, north, resultOf, wb212 } from './samples.ts';

/** A recording of `entries` lines in a trial of its own name, with one run. */
export function addTrial(
  store: Store,
  name: string,
  {
    entries = 300,
    closed = true,
    assembly = 'WB-212',
    press = 'North',
    startedAt = '2026-03-02T07:15:00.000Z',
  } = {},
): void {
  const trialId = `trial-${name}`;
  store.startTrial({ trialId, assemblyName: assembly, pressName: press, startedAt, simulated: true });
  const writer = store.startRecording(headOf(`recording-${name}`, { trialId }));
  for (let number = 0; number < entries; number += 1) {
    writer.append(lineAt(number * 100_000));
    if (number % 50 === 49) writer.flush();
  }
  if (closed) writer.close();
  else writer.flush();
  store.saveRunResult(`recording-${name}`, resultOf(1));
}

/** Fills the store at a path and closes it. */
export function filled(path: string, fill: (store: Store) => void): string {
  const store = openStore({ path });
  store.savePress(north);
  store.saveAssembly(wb212);
  fill(store);
  store.close();
  return path;
}

/** Everything a store holds, in an order of its own: rows without their row numbers, lines as sets, what is in force. */
export function contentsOf(path: string): unknown {
  const store = openStore({ path });
  try {
    const trials = store.trials().map(({ recordingIds, ...trial }) => ({
      ...trial,
      recordingIds: recordingIds.toSorted(),
      runs: store
        .trialRuns(trial.trialId)
        .map((run) => JSON.stringify(run))
        .toSorted(),
    }));
    const recordings = store
      .recordingIds()
      .toSorted()
      .map((id) => ({ id, text: [...(store.recordingText(id) ?? [])].join('') }));
    const recipes = store.recipes();
    const inForce = recipesInForce(recipes).map(({ version: _version, ...recipe }) => recipe);
    return {
      presses: byText(store.presses()),
      assemblies: byText(store.assemblies()),
      trials: byText(trials),
      recordings,
      recipes: [...new Set(byText(recipes.map(({ version: _version, ...recipe }) => recipe)))],
      inForce: byText(inForce),
      decisions: decisionsOf(path),
      layouts: store.exchange.layouts(),
      // The number of a recipe differs from store to store, what the cycle was made by does not.
      cycles: byText(
        store.cycles().map(({ recipeVersion, ...cycle }) => {
          const { version: _version, ...recipe } =
            recipes.find(
              (one) =>
                one.version === recipeVersion &&
                one.assemblyName === cycle.assemblyName &&
                one.pressName === cycle.pressName,
            ) ?? {};
          return [cycle, recipe];
        }),
      ),
    };
  } finally {
    store.close();
  }
}

const byText = (values: readonly unknown[]): readonly string[] =>
  values.map((value) => JSON.stringify(value)).toSorted();

function decisionsOf(path: string): readonly unknown[] {
  const database = new Database(path, { readonly: true });
  const rows = database
    .prepare(
      `SELECT DISTINCT recording_id, run_number, kind, reason, decided_at
       FROM run_decisions JOIN recordings USING (recording_row) ORDER BY 1, 2, 3, 4, 5`,
    )
    .all();
  database.close();
  return rows;
}

/** Number of rows of every table, so that "nothing was added" is seen without trusting the merge's own counts. */
export function rowCounts(path: string): Readonly<Record<string, number>> {
  const database = new Database(path, { readonly: true });
  const tables = database
    .prepare<[], string>("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
    .pluck()
    .all();
  const counts = tables.map((table): [string, number] => [
    table,
    database.prepare<[], number>(`SELECT count(*) FROM ${table}`).pluck().get() as number,
  ]);
  database.close();
  return Object.fromEntries(counts);
}

/** Changes a store from outside, past everything that guards it. */
export function tamper(path: string, sql: string): void {
  const database = new Database(path);
  database.pragma('foreign_keys = OFF');
  database.exec(sql);
  database.close();
}
