import { createNativeHasher } from '../../adapters/files/create-native-hasher.ts';
import { readLoggerBytes } from '../../adapters/files/read-logger-bytes.ts';
import { readTextFileHead } from '../../adapters/files/read-text-file-head.ts';
import { contentSha256 } from '../../core/exchange/content-sha256.ts';
import { LoggerFileProblem } from '../../core/logger-file/LoggerFileProblem.ts';
import { loggerFileText } from '../../core/logger-file/logger-file-text.ts';
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
  const content = sha256OfContent(path);
  const saidBefore = content === null ? [] : store.exchange.importsOf(content);
  const [said] = saidBefore;
  if (said !== undefined && options.again !== true) return there(path, said);
  const hashes = { fileSha256, contentSha256: content ?? fileSha256 };
  const prepared = await prepareLoggerFile(path, hashes, context).catch((error) => {
    throw error instanceof LoggerFileProblem ? error.inFile(path) : error;
  });
  const same = [...before, ...saidBefore].find(
    (one) =>
      one.recordingId === prepared.head.recordingId ||
      (one.readAs === prepared.file.readAs && options.trial === undefined),
  );
  return same === undefined ? prepared : there(path, same);
}

/** Null where the file is no text; opening it says so. */
function sha256OfContent(path: string): string | null {
  const text = loggerFileText(readLoggerBytes(path));
  return text instanceof LoggerFileProblem ? null : contentSha256(text, createNativeHasher);
}

const there = (
  path: string,
  { recordingId, trialId, importedAt }: ReturnType<ImportContext['store']['exchange']['importsOf']>[number],
): AlreadyThere => ({
  path,
  alreadyThere: { recordingId, trialId, importedAt: importedAt === '' ? null : importedAt },
});
