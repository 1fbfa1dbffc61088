import { statSync } from 'node:fs';
import { basename } from 'node:path';
import { createNativeHasher } from '../../adapters/files/create-native-hasher.ts';
import { readLoggerBytes } from '../../adapters/files/read-logger-bytes.ts';
import { ExchangeError } from '../../core/exchange/ExchangeError.ts';
import { importedHead, readAsText } from '../../core/exchange/imported-head.ts';
import { recordingDecoder } from '../../core/exchange/recording-decoder.ts';
import { recordingParts } from '../../core/exchange/recording-parts.ts';
import { LoggerFileProblem } from '../../core/logger-file/LoggerFileProblem.ts';
import { loggerFileEntries } from '../../core/logger-file/logger-file-entries.ts';
import { loggerFileText } from '../../core/logger-file/logger-file-text.ts';
import { createRecordingParser } from '../../core/recording/create-recording-parser.ts';
import { formatRecording } from '../../core/recording/format-recording.ts';
import { headClosedAtS } from '../../core/recording/head-closed-at.ts';
import type { RecordingEntry, RecordingHead } from '../../core/recording/RecordingEntry.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { exchangeRefusals, importQuestions } from '../../core/text/exchange-text.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { VERSION } from '../command-line/version.ts';
import { channelProbes } from '../options/channel-probes.ts';
import { runRules } from '../options/run-rules.ts';
import { analyseSource } from '../sources/analyse-source.ts';
import type { ImportContext } from './ImportContext.ts';
import { openLoggerAsking } from './open-logger-asking.ts';
import type { PreparedImport } from './PreparedImport.ts';

/** Reads another logger's file to bring it in; what it does not say is asked for, or refused with the option to add. */
export async function prepareLoggerFile(
  path: string,
  hashes: { readonly fileSha256: string; readonly contentSha256: string },
  context: ImportContext,
): Promise<PreparedImport> {
  const { store, options, ask, askClosing, trials, importedAt } = context;
  const { layout, options: layoutOptions } = await openLoggerAsking(
    path,
    readLoggerBytes(path),
    context.loggerOptions,
    ask,
  );
  const wish = { path, head: null };
  const names = await trials.names(wish);
  const assembly = store.assemblies().find((one) => one.name === names.assemblyName);
  const press = store.presses().find((one) => one.name === names.pressName);
  const rules = runRules(options, {
    targetC: assembly?.targetC,
    holdS: assembly?.holdS,
    platenSetPointC: press?.platenSetPointC,
    cure: assembly?.cure,
    highestPeakC: assembly?.highestPeakC,
  });
  const probes =
    options.probes === undefined ? [] : channelProbes(store, options.probes, layout.temperatures.length);
  const trial = trials.choose(wish, names, rules);
  const prepare = (closedAtS: number | null) => {
    const head = importedHead({
      fileName: basename(path),
      ...hashes,
      fileWrittenAt: statSync(path).mtime.toISOString(),
      program: `Dwellwright ${VERSION}`,
      layout,
      rules: { ...rules, closedAtS },
      probes,
      ...trial,
    });
    function* text(): Generator<string> {
      const read = loggerFileText(readLoggerBytes(path));
      if (read instanceof LoggerFileProblem) throw read;
      yield* formatRecording(head, loggerFileEntries(read, layout), createNativeHasher);
    }
    const { results, state } = analyseAsStored(path, head, text, options);
    return { head, text, results, recognised: state.recognised };
  };
  let prepared = prepare(rules.closedAtS);
  const [only, ...more] = prepared.results;
  if (
    askClosing !== null &&
    rules.closedAtS === null &&
    more.length === 0 &&
    only?.pressClosed?.by === 'onset'
  ) {
    const answer = await askClosing(importQuestions.closedAt(path), isTimeOrEmpty);
    if (answer !== '') prepared = prepare(parseDuration(answer, COMMAND_TEXT.answer, { negative: true }));
  }
  const { head, text, results, recognised } = prepared;
  const readAs = readAsText(
    layout,
    {
      ...rules,
      closedAtS: headClosedAtS(head) ?? null,
    },
    probes,
  );
  return {
    path,
    trial,
    head,
    file: { fileSha256: hashes.fileSha256, fileName: basename(path), readAs, importedAt },
    contentSha256: hashes.contentSha256,
    parts: () => recordingParts(text()),
    results,
    recognised,
    soundness: { kind: 'sound' },
    layoutOptions,
  };
}

/** The file's runs as every later replay from the store will find them: from the text that is kept. */
function analyseAsStored(
  path: string,
  head: RecordingHead,
  text: () => Iterable<string>,
  { closedAt }: Pick<ImportContext['options'], 'closedAt'>,
) {
  const parser = createRecordingParser(createNativeHasher);
  function* entries(): Generator<RecordingEntry> {
    for (const piece of text()) yield* parser.accept(piece);
  }
  const { decoder, timeStepS } = recordingDecoder(head);
  const soundness = () => {
    const found = parser.finish();
    if (found.kind !== 'sound')
      throw new ExchangeError('import-too-wide', exchangeRefusals.lineTooLong(path));
    return found;
  };
  return analyseSource(
    {
      name: path,
      identity: head.recordingId,
      head,
      decoder,
      roles: head.roles,
      timeStepS,
      entries,
      soundness,
    },
    closedAt === undefined ? {} : { closedAt },
  );
}

function isTimeOrEmpty(answer: string): string | null {
  if (answer === '') return null;
  try {
    parseDuration(answer, COMMAND_TEXT.answer, { negative: true });
    return null;
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
