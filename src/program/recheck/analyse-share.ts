import type { ShareAnalysed, ShareAsked } from './analyse-in-threads.ts';
import type { RecordingAnalyser } from './recording-analyser.ts';

/** Analyses a share; a recording that cannot be used is only marked, since an error keeps its kind only in its thread. */
export async function analyseShare(
  analyser: RecordingAnalyser,
  { from, names }: ShareAsked,
): Promise<ShareAnalysed> {
  const analyses: ShareAnalysed['analyses'][number][] = [];
  for (const name of names) analyses.push(await analyser.analyse(name).catch((): 'failed' => 'failed'));
  return { from, analyses };
}
