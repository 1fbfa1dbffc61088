import { readRecordingFile } from '../../adapters/files/read-recording-file.ts';
import { readTextFileHead } from '../../adapters/files/read-text-file-head.ts';
import { looksLikeRecording } from '../../core/recording/looks-like-recording.ts';
import { recordingSource } from './recording-source.ts';
import type { Source, SourceOptions } from './Source.ts';

/** Opens a file for replay: our own recording, or another logger's file. */
export async function openSource(path: string, options: SourceOptions): Promise<Source> {
  if (looksLikeRecording(readTextFileHead(path)))
    return recordingSource(path, readRecordingFile(path), options);
  const [{ readLoggerBytes }, { loggerSource }] = await Promise.all([
    import('../../adapters/files/read-logger-bytes.ts'),
    import('./logger-source.ts'),
  ]);
  return loggerSource(path, readLoggerBytes(path), options);
}
