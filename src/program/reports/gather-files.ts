import { basename } from 'node:path';
import { crossingProbes } from '../../core/probe/crossing-probes.ts';
import { headAmbientC } from '../../core/recording/head-ambient.ts';
import type { RecordingHead } from '../../core/recording/RecordingEntry.ts';
import type { ReportRecording } from '../../core/report/TrialReportInput.ts';
import { trialOutcome } from '../../core/result/trial-outcome.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import type { TrialRun } from '../../core/trial/TrialResult.ts';
import { OptionError } from '../options/OptionError.ts';
import { outcomeSettings } from '../options/outcome-settings.ts';
import { analyseSource, type SourceAnalysis } from '../sources/analyse-source.ts';
import { openSource } from '../sources/open-source.ts';
import { sharedRules } from '../sources/report-replay.ts';
import type { Source } from '../sources/Source.ts';
import { fileSha256 } from './file-sha256.ts';
import type { GatheredTrial } from './GatheredTrial.ts';
import type { GatherOptions } from './gather-trial.ts';
import { namedInStore } from './named-in-store.ts';
import { distinctProbes, sourceTrace } from './source-trace.ts';
import { statedPressure } from './stated-pressure.ts';

/** A trial from files: every file analysed as `replay` does, and read once more for its traces. */
export async function gatherFiles(files: readonly string[], options: GatherOptions): Promise<GatheredTrial> {
  const replayed: { source: Source; analysis: SourceAnalysis }[] = [];
  const recordings: ReportRecording[] = [];
  for (const file of files) {
    const source = await openSource(file, options);
    const analysis = analyseSource(source, options);
    replayed.push({ source, analysis });
    // Decoders learn as they read: the second reading needs a fresh one.
    const again = await openSource(file, options);
    recordings.push({
      // A report goes to other people: the folders of this computer are not their business.
      name: basename(file),
      head: again.head,
      trace: sourceTrace(again, analysis.probes),
      soundness: again.soundness(),
      sha256: fileSha256(file),
    });
  }
  const rules = sharedRules(replayed);
  const heads = recordings.flatMap(({ head }) => head ?? []);
  const assemblyName = options.assembly ?? shared('assembly', heads, (head) => head.assemblyName);
  const pressName = options.press ?? shared('press', heads, (head) => head.pressName);
  const { assembly, press } = await namedInStore({ assemblyName, pressName }, options);
  const runs: TrialRun[] = replayed.flatMap(({ source, analysis }) =>
    analysis.results.map((result) => ({ source: source.name, result, decision: { kind: 'automatic' } })),
  );
  const probes = replayed.flatMap(({ analysis }) => crossingProbes(analysis.results, analysis.probes));
  return {
    outcome: trialOutcome(runs, outcomeSettings(options, rules, press ?? undefined, probes)),
    recordings,
    probes: distinctProbes(replayed.flatMap(({ analysis }) => analysis.probes)),
    recordingOfRun: replayed.flatMap(({ analysis }, index) => analysis.results.map(() => index)),
    job: {
      trialId: shared('trial', heads, (head) => head.trialId, false),
      startedAt: heads[0]?.madeAt ?? null,
      assemblyName,
      pressName,
      assembly,
      press,
      platenSetPointC: rules.platenSetPointC,
      ambientC: rules.ambientC ?? (heads[0] === undefined ? null : (headAmbientC(heads[0]) ?? null)),
      ...statedPressure({ assembly, press, gauge: options.gauge }),
      operators: [...new Set(heads.flatMap(({ operatorInitials }) => operatorInitials ?? []))],
      simulated: heads.some(({ simulated }) => simulated),
      recipes: [],
    },
  };
}

/** What all heads that state it agree on; refuses files of two assemblies or presses, for a trial has one of each. */
function shared(
  what: string,
  heads: readonly RecordingHead[],
  of: (head: RecordingHead) => string | undefined,
  refuse = true,
): string | null {
  const [first, second] = new Set(heads.flatMap((head) => of(head) ?? []));
  if (second === undefined) return first ?? null;
  if (!refuse) return null;
  throw new OptionError(
    `the files are of more than one ${what}: ${neutralise(first as string)} and ${neutralise(second)}`,
    `Make a report for each, or say --${what} NAME if they are the same`,
  );
}
