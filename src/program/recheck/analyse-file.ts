import { decodeTrace } from '../../core/session/decode-trace.ts';
import { openSource } from '../sources/open-source.ts';
import type { SourceOptions } from '../sources/Source.ts';
import { analyseSourceByRules } from './analyse-source-by-rules.ts';
import type { AskedRules, RecordingAnalysis } from './RecordingAnalysis.ts';

/** Runs of a file, which is let go before the next one is opened: memory stays that of the largest. */
export async function analyseFile(
  path: string,
  options: SourceOptions,
  asked: AskedRules,
): Promise<RecordingAnalysis> {
  const source = await openSource(path, options);
  const trace = decodeTrace(source.entries(), source.decoder);
  return { ...analyseSourceByRules(source, trace, source.soundness(), asked), traceToKeep: null };
}
