import { ExchangeError } from '../../core/exchange/ExchangeError.ts';
import type { LoggerFileOptions } from '../../core/logger-file/LoggerLayout.ts';
import type { Store } from '../../core/store/Store.ts';
import { exchangeRefusals } from '../../core/text/exchange-text.ts';
import type { Ask } from './ask.ts';
import type { ImportContext } from './ImportContext.ts';
import type { ImportOptions } from './ImportOptions.ts';
import { loggerOptions } from './logger-options.ts';
import type { PreparedImport } from './PreparedImport.ts';
import { type AlreadyThere, prepareImport } from './prepare-import.ts';
import { storeImport } from './store-import.ts';
import { createTrialChooser } from './trial-chooser.ts';

export interface ImportOutcome {
  /** In the order of the files. */
  readonly files: readonly (PreparedImport | AlreadyThere)[];
  readonly layoutSaved: string | null;
}

/**
 * Brings files into the store. All of them are read and found fit first; only then is each put in, whole or not at all,
 * so that one bad file leaves the store as it was.
 */
export async function importFiles(
  store: Store,
  paths: readonly string[],
  options: ImportOptions,
  { ask, now }: { readonly ask: Ask | null; readonly now: Date },
): Promise<ImportOutcome> {
  const layoutName = options.saveLayout?.trim();
  if (layoutName === '') throw new ExchangeError('layout-empty', exchangeRefusals.layoutNameEmpty());
  const context: ImportContext = {
    store,
    options,
    loggerOptions: loggerOptions(store, options),
    ask,
    trials: createTrialChooser({ store, options, ask, now }),
    importedAt: now.toISOString(),
  };
  const files: (PreparedImport | AlreadyThere)[] = [];
  for (const path of paths) files.push(await prepareImport(path, context));
  const added = files.filter((file) => 'head' in file);
  const ids = new Set<string>();
  for (const file of added) {
    const again = ids.has(file.head.recordingId);
    ids.add(file.head.recordingId);
    if (!again) storeImport(store, file, startOf(file, added));
    // The same recording twice in one call: by now the store has it, so it is found there, or refused as another.
    else files[files.indexOf(file)] = await prepareImport(file.path, context);
  }
  const layout = added.find((file) => file.layoutOptions !== null)?.layoutOptions ?? null;
  const layoutSaved = layoutName !== undefined && layout !== null ? layoutName : null;
  if (layoutSaved !== null) save(store, layoutSaved, layout ?? {}, context.importedAt);
  return { files, layoutSaved };
}

/** A new trial starts with the earliest of its files. */
function startOf(file: PreparedImport, all: readonly PreparedImport[]): string {
  const times = all
    .filter((one) => one.trial?.trialId === file.trial?.trialId)
    .map((one) => Date.parse(one.head.madeAt));
  return new Date(Math.min(...times)).toISOString();
}

function save(store: Store, name: string, options: LoggerFileOptions, savedAt: string): void {
  store.exchange.saveLayout({ name, options, savedAt });
}
