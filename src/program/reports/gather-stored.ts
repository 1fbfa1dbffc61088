import { headProbes } from '../../core/probe/head-probes.ts';
import { headAmbientC } from '../../core/recording/head-ambient.ts';
import type { ReportRecording } from '../../core/report/TrialReportInput.ts';
import type { Store } from '../../core/store/Store.ts';
import { OptionError } from '../options/OptionError.ts';
import { readFromStore } from '../options/with-store.ts';
import { recordingSource } from '../sources/recording-source.ts';
import type { SourceOptions } from '../sources/Source.ts';
import { storedOutcome } from '../trials/stored-outcome.ts';
import { piecesSha256 } from './file-sha256.ts';
import type { GatheredTrial } from './GatheredTrial.ts';
import type { GatherOptions } from './gather-trial.ts';
import { distinctProbes, sourceTrace } from './source-trace.ts';
import { statedPressure } from './stated-pressure.ts';

/** A trial from the store: its runs as stored with the latest decisions, and its traces. */
export function gatherStored(trialId: string, options: GatherOptions): Promise<GatheredTrial> {
  return readFromStore(options, (store) => {
    const { trial, head, runs, outcome } = storedOutcome(store, trialId, options);
    if (runs.length === 0) {
      throw new OptionError(`trial ${trial.trialId} has no run`, 'Make a run first, then report it');
    }
    const assembly = store.assemblies().find(({ name }) => name === trial.assemblyName) ?? null;
    const press = store.presses().find(({ name }) => name === trial.pressName) ?? null;
    const ids = trial.recordingIds.filter((id) => store.recording(id) !== undefined);
    const recordings = ids.map((id) => storedRecording(store, id, options));
    return {
      outcome,
      recordings,
      probes: distinctProbes(recordings.flatMap((one) => (one.head === null ? [] : headProbes(one.head)))),
      recordingOfRun: runs.map(({ recordingId }) => {
        const index = ids.indexOf(recordingId);
        return index < 0 ? null : index;
      }),
      job: {
        trialId: trial.trialId,
        startedAt: trial.startedAt,
        assemblyName: trial.assemblyName,
        pressName: trial.pressName,
        assembly,
        press,
        platenSetPointC: head?.platenSetPointC ?? press?.platenSetPointC ?? null,
        ambientC: head === null ? null : (headAmbientC(head) ?? null),
        ...statedPressure({ assembly, press, gauge: options.gauge }),
        operators: [...new Set(recordings.flatMap((one) => one.head?.operatorInitials ?? []))],
        simulated: trial.simulated,
        recipes: store
          .recipes()
          .filter((recipe) => recipe.restsOn.some(({ recordingId }) => ids.includes(recordingId))),
      },
    };
  });
}

function storedRecording(store: Store, id: string, options: SourceOptions): ReportRecording {
  const recording = store.recording(id)!;
  const source = recordingSource(id, recording, options);
  return {
    name: id,
    head: source.head,
    trace: sourceTrace(source, headProbes(recording.head)),
    soundness: source.soundness(),
    sha256: piecesSha256(store.recordingText(id) ?? []),
  };
}
