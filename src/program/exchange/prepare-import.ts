import { readTextFileHead } from '../../adapters/files/read-text-file-head.ts';
import { looksLikeRecording } from '../../core/recording/looks-like-recording.ts';
import { hashFile } from './hash-file.ts';
import type { ImportContext } from './ImportContext.ts';
import type { PreparedImport } from './PreparedImport.ts';
import { prepareLoggerFile } from './prepare-logger-file.ts';
import { prepareOwnRecording } from './prepare-own-recording.ts';

export interface AlreadyThere {
  readonly path: string;
  readonly alreadyThere: {
    readonly recordingId: string;
    readonly trialId: string | null;
    readonly importedAt: string | null;
  };
}

/** Reads a file to bring it in, or says under which id the store has it already. Changes nothing. */
export async function prepareImport(
  path: string,
  context: ImportContext,
): Promise<PreparedImport | AlreadyThere> {
  const fileSha256 = hashFile(path);
  const { store, options } = context;
  const before = store.exchange.importsOf(fileSha256);
  const [first] = before;
  if (first !== undefined && options.again !== true) return there(path, first);
  if (looksLikeRecording(readTextFileHead(path))) {
    const prepared = await prepareOwnRecording(path, fileSha256, context);
    if (!('alreadyThere' in prepared)) return prepared;
    return { path, alreadyThere: { recordingId: prepared.alreadyThere, trialId: null, importedAt: null } };
  }
  const prepared = await prepareLoggerFile(path, fileSha256, context);
  const same = before.find(
    (one) =>
      one.recordingId === prepared.head.recordingId ||
      (one.readAs === prepared.file.readAs && options.trial === undefined),
  );
  return same === undefined ? prepared : there(path, same);
}

const there = (
  path: string,
  { recordingId, trialId, importedAt }: ReturnType<ImportContext['store']['exchange']['importsOf']>[number],
): AlreadyThere => ({
  path,
  alreadyThere: { recordingId, trialId, importedAt: importedAt === '' ? null : importedAt },
});
