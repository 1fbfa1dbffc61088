import { readRecordingFile } from '../../adapters/files/read-recording-file.ts';
import { readTextFileHead } from '../../adapters/files/read-text-file-head.ts';
import { looksLikeRecording } from '../../core/recording/looks-like-recording.ts';
import { parseRecording } from '../../core/recording/parse-recording.ts';
import { OptionError } from '../options/OptionError.ts';
import { recordingSource } from './recording-source.ts';
import type { Source, SourceOptions } from './Source.ts';

/** Opens a file for replay: our own recording, or another logger's file; `-` is standard input. */
export async function openSource(path: string, options: SourceOptions): Promise<Source> {
  if (path === '-') return standardInput(options);
  if (looksLikeRecording(readTextFileHead(path)))
    return recordingSource(path, readRecordingFile(path), options);
  const [{ readLoggerBytes }, { loggerSource }] = await Promise.all([
    import('../../adapters/files/read-logger-bytes.ts'),
    import('./logger-source.ts'),
  ]);
  return loggerSource(path, readLoggerBytes(path), options);
}

async function standardInput(options: SourceOptions): Promise<Source> {
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
  const bytes = Buffer.concat(chunks);
  if (bytes.length === 0)
    throw new OptionError(
      'standard input was empty',
      'Pipe a recording or a logger’s file into it, or name a file',
    );
  const text = bytes.toString('utf8');
  if (looksLikeRecording(text.slice(0, 4096))) {
    const { entries, ...recording } = parseRecording(text);
    return recordingSource('-', { ...recording, entries: () => entries }, options);
  }
  const { loggerSource } = await import('./logger-source.ts');
  return loggerSource('-', bytes, options);
}
