import { crossingProbes } from '../../core/probe/crossing-probes.ts';
import type { RecordingSoundness } from '../../core/recording/RecordingEntry.ts';
import type { RunResult } from '../../core/run/RunResult.ts';
import type { TraceRoom } from '../../core/run/TraceBuffer.ts';
import { analyseTrace } from '../../core/session/analyse-trace.ts';
import type { DecodedTrace } from '../../core/session/DecodedTrace.ts';
import { withFileClock } from '../../core/session/with-file-clock.ts';
import { withSoundness } from '../../core/session/with-soundness.ts';
import { withTimeResolution } from '../../core/session/with-time-resolution.ts';
import type { RuleOptions } from '../options/run-rules.ts';
import { correctionsOf, sourceConditions } from '../sources/analyse-source.ts';
import { refuseUnreadable } from '../sources/refuse-unreadable.ts';
import type { Source } from '../sources/Source.ts';
import type { AskedRules, RecordingAnalysis } from './RecordingAnalysis.ts';

/** Sources are analysed one after the other. */
const ROOM: TraceRoom = { latest: null };

/** Runs of a decoded source by each of the rules asked for. Refuses lines that no option made readable. */
export function analyseSourceByRules(
  source: Source,
  trace: DecodedTrace,
  soundness: RecordingSoundness,
  { options, targetsC }: AskedRules,
): Omit<RecordingAnalysis, 'traceToKeep'> {
  refuseUnreadable(source.name, { refusal: latestRefusal(trace), counts: { readings: trace.timesS.length } });
  const byRules = (rules: RuleOptions): readonly RunResult[] =>
    resultsOf(source, trace, rules).map((result) => withSoundness(result, soundness));
  const results = byRules(options);
  return {
    name: source.name,
    identity: source.identity,
    madeOn: {
      assemblyName: source.head?.assemblyName ?? null,
      pressName: source.head?.pressName ?? null,
    },
    results,
    probes: crossingProbes(results, sourceConditions(source, options).probes),
    atTargets: targetsC.map((targetC) => byRules({ ...options, target: `${targetC}C` })),
  };
}

function resultsOf(source: Source, trace: DecodedTrace, options: RuleOptions): readonly RunResult[] {
  const { rules, probes } = sourceConditions(source, options);
  const results = analyseTrace(trace, {
    room: ROOM,
    roles: source.roles,
    rules,
    probeCorrections: correctionsOf(probes),
  });
  const timed =
    source.timeStepS > 0 ? results.map((result) => withTimeResolution(result, source.timeStepS)) : results;
  return source.head === null ? timed.map(withFileClock) : timed;
}

function latestRefusal({ others }: DecodedTrace) {
  const refusal = others.findLast(({ event }) => event.kind === 'refusal')?.event;
  return refusal?.kind === 'refusal' ? refusal : null;
}
