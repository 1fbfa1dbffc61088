import { ExchangeError } from '../../core/exchange/ExchangeError.ts';
import type { RecordingHead } from '../../core/recording/RecordingEntry.ts';
import type { Store } from '../../core/store/Store.ts';
import { exchangeRefusals } from '../../core/text/exchange-text.ts';
import { newAssembly } from '../commands/assemblies.ts';
import { newPress } from '../commands/presses.ts';
import { hashFile } from './hash-file.ts';
import type { PreparedImport } from './PreparedImport.ts';

/**
 * Puts one prepared file into the store: its trial where it is new (with its press and assembly), the recording and its
 * runs; all of it or nothing.
 */
export function storeImport(store: Store, prepared: PreparedImport, startedAt: string): void {
  const { trial, head, file, results, path } = prepared;
  if (hashFile(path) !== file.fileSha256)
    throw new ExchangeError('import-changed', exchangeRefusals.changedMeanwhile(path));
  store.exchange.atomically(() => {
    addPress(store, trial?.pressName ?? head.pressName);
    if (trial !== null && !store.trials().some((one) => one.trialId === trial.trialId)) {
      addAssembly(store, trial.assemblyName, head);
      const { trialId, assemblyName, pressName, simulated } = trial;
      store.startTrial({ trialId, assemblyName, pressName, startedAt, simulated });
      store.closeTrial(trialId, file.importedAt);
    }
    store.exchange.addRecording({
      recordingId: head.recordingId,
      trialId: trial?.trialId ?? null,
      simulated: head.simulated,
      parts: prepared.parts(),
      file,
    });
    for (const result of results) store.saveRunResult(head.recordingId, result);
  });
}

function addPress(store: Store, name: string | undefined): void {
  if (name === undefined || name === '' || store.presses().some((one) => one.name === name)) return;
  store.savePress(newPress(name));
}

function addAssembly(store: Store, name: string, head: RecordingHead): void {
  if (store.assemblies().some((one) => one.name === name)) return;
  store.saveAssembly({
    ...newAssembly(name),
    ...(head.targetC === undefined ? {} : { targetC: head.targetC }),
    ...(head.holdS === undefined ? {} : { holdS: head.holdS }),
  });
}
