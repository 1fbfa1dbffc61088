import type { OverlayInput } from '../../core/figure/OverlayInput.ts';
import { runTrace, timedChannel } from '../../core/figure/run-trace.ts';
import { headProbes } from '../../core/probe/head-probes.ts';
import type { RecheckReportInput } from '../../core/report/RecheckReportInput.ts';
import type { ReportRecording } from '../../core/report/TrialReportInput.ts';
import type { Store } from '../../core/store/Store.ts';
import { reProveText } from '../../core/text/re-prove-text.ts';
import type { TemperatureUnit } from '../../core/text/units-text.ts';
import { changeInStore } from '../options/with-store.ts';
import { type RecheckedRecipe, type RecheckWish, recheckRecipe } from '../recheck/recheck-recipe.ts';
import { recordingSource } from '../sources/recording-source.ts';
import { reProveReasonsOf } from '../trials/re-prove-reasons-of.ts';
import { piecesSha256 } from './file-sha256.ts';
import { distinctProbes, sourceTrace } from './source-trace.ts';

/** Traces of more recordings than this are not read for the pictures: one could not tell the runs apart. */
const MOST_TRACES = 60;

export type GatheredRecheck = Omit<
  RecheckReportInput,
  'equipment' | 'note' | 'unit' | 'reportedAt' | 'program'
>;

/** A recipe of the store held against its runs there, with what a report needs beside. */
export function gatherRecheck(
  options: RecheckWish & { readonly show: TemperatureUnit },
): Promise<GatheredRecheck> {
  return changeInStore(options, async (store) => {
    const checked = await recheckRecipe(store, [], options);
    const { recipe, result, outcome, byTarget, gathered } = checked;
    const ids = [...new Set(gathered.runs.map(({ run }) => run.source))];
    const traced = ids.length <= MOST_TRACES;
    const recordings = ids.flatMap((id) => storedRecording(store, id, traced));
    const byId = new Map(recordings.map((one) => [one.name, one]));
    const simulated = recordings.some(({ head }) => head?.simulated === true);
    const [reasons = []] = reProveReasonsOf(store, [recipe], new Date().toISOString());
    return {
      recipe,
      result,
      outcome,
      byTarget,
      madeAt: gathered.runs.map(({ run }) => byId.get(run.source)?.head?.madeAt ?? null),
      overlay: traced ? overlayOfRuns(checked, byId, { unit: options.show, simulated }) : null,
      recordings,
      probes: distinctProbes(recordings.flatMap(({ head }) => (head === null ? [] : headProbes(head)))),
      reProof: reasons.map((reason) => reProveText(reason, options.show)),
      simulated,
    };
  });
}

function storedRecording(store: Store, id: string, traced: boolean): readonly ReportRecording[] {
  const recording = store.recording(id);
  if (recording === undefined) return [];
  const source = recordingSource(id, recording, {});
  return [
    {
      name: id,
      head: source.head,
      // Without its entries a trace says of the reader nothing, and costs nothing.
      trace: sourceTrace(traced ? source : { ...source, entries: () => [] }, headProbes(recording.head)),
      soundness: source.soundness(),
      sha256: piecesSha256(store.recordingText(id) ?? []),
    },
  ];
}

/** Every run that has a closing, aligned there; runs that are not compared are drawn as left out. */
function overlayOfRuns(
  { result, recipe }: RecheckedRecipe,
  recordings: ReadonlyMap<string, ReportRecording>,
  { unit, simulated }: Pick<OverlayInput, 'unit' | 'simulated'>,
): OverlayInput {
  return {
    runs: result.runs.flatMap(({ run, comparable }, at) => {
      const recording = recordings.get(run.source);
      if (recording === undefined || run.result.pressClosed === null) return [];
      const trace = runTrace(recording.trace, run.result, String(at + 1));
      return [
        {
          label: String(at + 1),
          counts: comparable,
          soakTimeS: run.result.soakTimeS,
          slopeCPerS: run.result.crossing?.slopeCPerS ?? null,
          points: timedChannel(trace, run.result)?.points ?? [],
        },
      ];
    }),
    targetC: result.targetC,
    holdS: recipe.holdS,
    unit,
    simulated,
  };
}
