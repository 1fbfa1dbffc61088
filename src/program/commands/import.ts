import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { importedLines } from '../../core/text/imported-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { terminalAsk } from '../exchange/ask.ts';
import type { ImportOptions } from '../exchange/ImportOptions.ts';
import { importFiles } from '../exchange/import-files.ts';
import type { PreparedImport } from '../exchange/PreparedImport.ts';
import type { AlreadyThere } from '../exchange/prepare-import.ts';
import { withStore } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';

/** `import FILE…`: other loggers' files and recordings of our own into the store, each into a trial. */
export async function importCommand(files: readonly string[], options: ImportOptions): Promise<void> {
  await withStore(options, async (store) => {
    const outcome = await importFiles(store, files, options, { ask: terminalAsk(), now: new Date() });
    if (options.json)
      return printJson({ files: outcome.files.map(fileJson), layoutSaved: outcome.layoutSaved });
    const lines = outcome.files.flatMap((file) => importedLines(summary(file), options.show));
    const trials = new Set(
      outcome.files.flatMap((file) => ('head' in file && file.trial !== null ? [file.trial.trialId] : [])),
    );
    print(
      [
        ...lines,
        ...(outcome.layoutSaved === null ? [] : [COMMAND_TEXT.layoutSaved(neutralise(outcome.layoutSaved))]),
        ...[...trials].map((trialId) => COMMAND_TEXT.seeTrial(neutralise(trialId))),
      ].join('\n'),
    );
  });
}

function summary(file: PreparedImport | AlreadyThere) {
  return 'head' in file
    ? {
        path: file.path,
        recordingId: file.head.recordingId,
        simulated: file.head.simulated,
        trial: file.trial,
        recognised: file.recognised,
        soundness: file.soundness,
        targetC: file.head.targetC ?? null,
        holdS: file.head.holdS ?? null,
        results: file.results,
      }
    : file;
}

function fileJson(file: PreparedImport | AlreadyThere): Record<string, unknown> {
  if (!('head' in file))
    return {
      file: file.path,
      added: false,
      recordingId: file.alreadyThere.recordingId,
      trialId: file.alreadyThere.trialId,
      importedAt: file.alreadyThere.importedAt,
    };
  return {
    file: file.path,
    added: true,
    recordingId: file.head.recordingId,
    trialId: file.trial?.trialId ?? null,
    newTrial: file.trial?.isNew ?? false,
    assembly: file.trial?.assemblyName ?? null,
    press: file.trial?.pressName ?? file.head.pressName ?? null,
    recognised: file.recognised,
    closed: file.soundness.kind === 'sound',
    fileSha256: file.file.fileSha256,
    runs: file.results.map((result) => ({
      runNumber: result.runNumber,
      soakTimeS: result.soakTimeS,
      verdict: result.verdict,
      reasonCodes: result.reasons.map((reason) => reason.code),
    })),
  };
}
