import { DwellwrightError } from '../../core/DwellwrightError.ts';
import { ExchangeError } from '../../core/exchange/ExchangeError.ts';
import type { LoggerFileOptions } from '../../core/logger-file/LoggerLayout.ts';
import type { Store } from '../../core/store/Store.ts';
import { EXCHANGE_TEXT, exchangeRefusals } from '../../core/text/exchange-text.ts';
import { progressBar } from '../output/progress-bar.ts';
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

/** With more files than this nobody is asked about each; the closing is taken from the rise, and the result says so. */
const MOST_ASKED = 5;

/**
 * Brings files into the store. All of them are read and found fit first; only then is each put in, whole or not at all,
 * so that one bad file leaves the store as it was.
 */
export async function importFiles(
  store: Store,
  paths: readonly string[],
  options: ImportOptions,
  { ask, now: startedAt }: { readonly ask: Ask | null; readonly now: Date },
): Promise<ImportOutcome> {
  const layoutName = options.saveLayout?.trim();
  if (layoutName === '') throw new ExchangeError('layout-empty', exchangeRefusals.layoutNameEmpty());
  const context: ImportContext = {
    store,
    options,
    loggerOptions: loggerOptions(store, options),
    ask,
    askClosing: paths.length > MOST_ASKED ? null : ask,
    trials: createTrialChooser({ store, options, ask, now: startedAt }),
    importedAt: startedAt.toISOString(),
  };
  const files = await allFit(paths, context);
  const added = files.filter((file) => 'head' in file);
  const starts = startOfTrials(added);
  const stored = new Set<string>();
  const bar = progressBar(EXCHANGE_TEXT.filesStored, added.length);
  try {
    for (const [at, file] of files.entries()) {
      if (!('head' in file)) continue;
      const same = [file.head.recordingId, file.contentSha256].filter((one) => one !== null);
      // The same twice in one call: by now the store has it, so it is found there, or refused as another.
      const now = same.some((one) => stored.has(one)) ? await prepareImport(file.path, context) : file;
      files[at] = now;
      if ('head' in now) storeImport(store, now, starts.get(now.trial?.trialId ?? '') ?? now.head.madeAt);
      for (const one of same) stored.add(one);
      bar.step();
    }
  } finally {
    bar.end();
  }
  const layout = added.find((file) => file.layoutOptions !== null)?.layoutOptions ?? null;
  const layoutSaved = layoutName !== undefined && layout !== null ? layoutName : null;
  if (layoutSaved !== null) save(store, layoutSaved, layout ?? {}, context.importedAt);
  return { files, layoutSaved };
}

/** Reads every file before any is put in; all that do not fit are named together. */
async function allFit(
  paths: readonly string[],
  context: ImportContext,
): Promise<(PreparedImport | AlreadyThere)[]> {
  const files: (PreparedImport | AlreadyThere)[] = [];
  const unfit: { readonly path: string; readonly error: DwellwrightError }[] = [];
  const bar = progressBar(EXCHANGE_TEXT.filesRead, paths.length);
  try {
    for (const path of paths) {
      try {
        files.push(await prepareImport(path, context));
      } catch (error) {
        if (!(error instanceof DwellwrightError) || context.ask !== null) throw error;
        unfit.push({ path, error });
      }
      bar.step();
    }
  } finally {
    bar.end();
  }
  const [first, ...more] = unfit;
  if (first === undefined) return files;
  if (more.length === 0) throw first.error;
  throw new ExchangeError('import-several-unfit', exchangeRefusals.severalUnfit(paths.length, unfit), 2);
}

/** A new trial starts with the earliest of its files. */
function startOfTrials(files: readonly PreparedImport[]): ReadonlyMap<string, string> {
  const starts = new Map<string, string>();
  for (const { trial, head } of files) {
    const trialId = trial?.trialId ?? '';
    const madeAt = new Date(head.madeAt).toISOString();
    const before = starts.get(trialId);
    if (before === undefined || madeAt < before) starts.set(trialId, madeAt);
  }
  return starts;
}

function save(store: Store, name: string, options: LoggerFileOptions, savedAt: string): void {
  store.exchange.saveLayout({ name, options, savedAt });
}
