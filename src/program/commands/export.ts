import { statSync } from 'node:fs';
import { join } from 'node:path';
import { writeTextFile } from '../../adapters/files/write-text-file.ts';
import { csvText } from '../../core/exchange/csv-text.ts';
import { CYCLE_FIELDS } from '../../core/exchange/cycle-fields.ts';
import type { ExportField } from '../../core/exchange/ExportField.ts';
import { jsonText } from '../../core/exchange/json-text.ts';
import { RECIPE_FIELDS } from '../../core/exchange/recipe-fields.ts';
import { RUN_FIELDS } from '../../core/exchange/run-fields.ts';
import { TRIAL_FIELDS } from '../../core/exchange/trial-fields.ts';
import type { Store } from '../../core/store/Store.ts';
import { fieldLines } from '../../core/text/export-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { VERSION } from '../command-line/version.ts';
import { exportRecordings } from '../exchange/export-recordings.ts';
import { runRows, trialRows } from '../exchange/export-rows.ts';
import { OptionError } from '../options/OptionError.ts';
import { type StoreOptions, withStore } from '../options/with-store.ts';
import { print } from '../output/print.ts';
import { findTrial } from '../trials/stored-outcome.ts';

interface ExportOptions extends StoreOptions {
  readonly out?: string;
  readonly format: 'csv' | 'json';
  readonly trial?: string;
}

export type Exported = 'runs' | 'trials' | 'recipes' | 'cycles' | 'recordings' | 'fields';

/** `export runs|trials|recipes|cycles`: one table as CSV or JSON. `export recordings`: each as a file. `export fields`: what they hold. */
export async function exportCommand(what: Exported, options: ExportOptions): Promise<void> {
  if (what === 'fields')
    return print(
      [
        ...fieldLines('runs', RUN_FIELDS),
        ...fieldLines('trials', TRIAL_FIELDS),
        ...fieldLines('recipes', RECIPE_FIELDS),
        ...fieldLines('cycles', CYCLE_FIELDS),
      ].join('\n'),
    );
  if (what === 'cycles' && options.trial !== undefined)
    throw new OptionError(
      'export cycles: --trial was given, but cycles of production belong to no trial',
      'Leave --trial out; assembly, press and recipeVersion say what each was made by',
    );
  await withStore(options, (store) => {
    const trials = options.trial === undefined ? store.trials() : [findTrial(store, options.trial)];
    switch (what) {
      case 'runs':
        return write(what, RUN_FIELDS, runRows(store, trials), options);
      case 'trials':
        return write(what, TRIAL_FIELDS, trialRows(store, trials), options);
      case 'recipes':
        return write(what, RECIPE_FIELDS, recipesOf(store, options), options);
      case 'cycles':
        return write(what, CYCLE_FIELDS, store.cycles(), options);
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
  print(`Written: ${neutralise(path)} (${count} ${count === 1 ? what.slice(0, -1) : what})`);
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
