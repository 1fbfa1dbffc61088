import { statSync } from 'node:fs';
import { join } from 'node:path';
import { writeTextFile } from '../../adapters/files/write-text-file.ts';
import { ASSEMBLY_FIELDS } from '../../core/exchange/assembly-fields.ts';
import { csvText } from '../../core/exchange/csv-text.ts';
import { CYCLE_FIELDS } from '../../core/exchange/cycle-fields.ts';
import type { ExportField } from '../../core/exchange/ExportField.ts';
import { jsonText } from '../../core/exchange/json-text.ts';
import { PRESS_FIELDS } from '../../core/exchange/press-fields.ts';
import { PROBE_FIELDS } from '../../core/exchange/probe-fields.ts';
import { RECIPE_FIELDS } from '../../core/exchange/recipe-fields.ts';
import { RUN_FIELDS } from '../../core/exchange/run-fields.ts';
import { TRIAL_FIELDS } from '../../core/exchange/trial-fields.ts';
import type { Store } from '../../core/store/Store.ts';
import { fieldLines } from '../../core/text/export-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { VERSION } from '../command-line/version.ts';
import { exportRecordings } from '../exchange/export-recordings.ts';
import { allProbeRows, runRows, trialRows } from '../exchange/export-rows.ts';
import { OptionError } from '../options/OptionError.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';
import { print } from '../output/print.ts';
import { findTrial } from '../trials/stored-outcome.ts';

interface ExportOptions extends StoreOptions {
  readonly out?: string;
  readonly format: 'csv' | 'json';
  readonly trial?: string;
}

/** Every table that can be written, with its fields. */
const TABLES = {
  runs: RUN_FIELDS,
  trials: TRIAL_FIELDS,
  recipes: RECIPE_FIELDS,
  cycles: CYCLE_FIELDS,
  probes: PROBE_FIELDS,
  presses: PRESS_FIELDS,
  assemblies: ASSEMBLY_FIELDS,
} as const;

export type Exported = keyof typeof TABLES | 'recordings' | 'fields';

const OF_A_TRIAL: readonly Exported[] = ['runs', 'trials', 'recipes', 'recordings', 'fields'];

/** `export runs|trials|…`: one table as CSV or JSON. `export recordings`: each as a file. `export fields`: what they hold. */
export async function exportCommand(what: Exported, options: ExportOptions): Promise<void> {
  if (what === 'fields')
    return print(
      Object.entries(TABLES)
        .flatMap(([table, fields]) => fieldLines(table, fields))
        .join('\n'),
    );
  if (options.trial !== undefined && !OF_A_TRIAL.includes(what))
    throw new OptionError(
      `export ${what}: --trial was given, but ${what} belong to no trial`,
      'Leave --trial out',
    );
  await readFromStore(options, (store) => {
    const trials = options.trial === undefined ? store.trials() : [findTrial(store, options.trial)];
    switch (what) {
      case 'runs':
        return write(what, TABLES.runs, runRows(store, trials), options);
      case 'trials':
        return write(what, TABLES.trials, trialRows(store, trials), options);
      case 'recipes':
        return write(what, TABLES.recipes, recipesOf(store, options), options);
      case 'cycles':
        return write(what, TABLES.cycles, store.cycles(), options);
      case 'probes':
        return write(what, TABLES.probes, allProbeRows(store), options);
      case 'presses':
        return write(what, TABLES.presses, store.presses(), options);
      case 'assemblies':
        return write(what, TABLES.assemblies, store.assemblies(), options);
      case 'recordings':
        return recordings(store, options);
    }
  });
}

function write<Row>(
  what: string,
  fields: readonly ExportField<Row>[],
  rows: Iterable<Row>,
  { format, out }: ExportOptions,
): void {
  let count = 0;
  function* countedRows(): Generator<Row> {
    for (const row of rows) {
      count += 1;
      yield row;
    }
  }
  const made = { madeAt: new Date().toISOString(), program: `Dwellwright ${VERSION}` };
  const text =
    format === 'csv' ? csvText(fields, countedRows()) : jsonText(what, fields, countedRows(), made);
  if (out === undefined) {
    for (const piece of text) process.stdout.write(piece);
    return;
  }
  const path = isFolder(out) ? join(out, `${what}.${format}`) : out;
  writeTextFile(path, text);
  print(`Written: ${neutralise(path)} (${count} ${count === 1 ? 'row' : 'rows'})`);
}

function recipesOf(store: Store, { trial }: ExportOptions) {
  const all = store.recipes();
  if (trial === undefined) return all;
  const ids = new Set(findTrial(store, trial).recordingIds);
  return all.filter((recipe) => recipe.restsOn.some((run) => ids.has(run.recordingId)));
}

function recordings(store: Store, { out, trial }: ExportOptions): void {
  if (out === undefined)
    throw new OptionError(
      'export recordings: no folder named',
      'Add --out FOLDER; each recording becomes a file of its own in it',
    );
  const ids = trial === undefined ? store.recordingIds() : findTrial(store, trial).recordingIds;
  const written = exportRecordings(store, ids, out);
  print(
    `Written: ${written.length} ${written.length === 1 ? 'recording' : 'recordings'} into ${neutralise(out)}`,
  );
}

const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
