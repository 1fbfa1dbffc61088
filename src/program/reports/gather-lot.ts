import type { BondingCycle } from '../../core/bonding/BondingCycle.ts';
import { csvText } from '../../core/exchange/csv-text.ts';
import { CYCLE_FIELDS } from '../../core/exchange/cycle-fields.ts';
import type { TracePoint } from '../../core/figure/RunTrace.ts';
import { headProbes } from '../../core/probe/head-probes.ts';
import type { LotRecipe, LotReportInput } from '../../core/report/LotReportInput.ts';
import type { ReportRecording } from '../../core/report/TrialReportInput.ts';
import { bandOfRuns } from '../../core/screen/band-of-runs.ts';
import type { Store } from '../../core/store/Store.ts';
import { recipeRuns } from '../bonding/prepare-job.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';
import { chooseCycles, type LotChoice } from './choose-cycles.ts';
import { cycleTraces } from './cycle-traces.ts';
import { piecesSha256 } from './file-sha256.ts';
import { distinctProbes } from './source-trace.ts';
import { statedPressure } from './stated-pressure.ts';

export interface LotOptions extends StoreOptions, LotChoice {
  readonly gauge?: string;
}

export type GatheredLot = Omit<LotReportInput, 'lot' | 'equipment' | 'note' | 'unit' | 'madeAt' | 'program'>;

/** A bonded lot from the store: its cycles, the recipe they were made by, what was measured in them. */
export function gatherLot(options: LotOptions): Promise<GatheredLot> {
  return readFromStore(options, (store) => {
    const chosen = chooseCycles(store, options);
    const cycles = chosen.map(({ cycle }) => cycle);
    const [{ assemblyName, pressName }] = cycles as [BondingCycle];
    const assembly = store.assemblies().find(({ name }) => name === assemblyName) ?? null;
    const press = store.presses().find(({ name }) => name === pressName) ?? null;
    const recipes = recipesOf(store, cycles);
    const { recordings, bondLines } = measured(store, cycles);
    const ownGaugePsi = recipes.at(-1)?.recipe?.gaugePsi ?? null;
    const gauge = options.gauge ?? (ownGaugePsi === null ? undefined : `${ownGaugePsi}psi`);
    return {
      assemblyName,
      pressName,
      assembly,
      press,
      ...statedPressure({ assembly, press, gauge }),
      cycles: chosen.map((one) => ({ ...one, bondLine: bondLines.get(one.cycle.cycleId) ?? [] })),
      recipes,
      recordings,
      probes: distinctProbes(recordings.flatMap(({ head }) => (head === null ? [] : headProbes(head)))),
      cyclesSha256: piecesSha256(csvText(CYCLE_FIELDS, cycles)),
    };
  });
}

function recipesOf(store: Store, cycles: readonly BondingCycle[]): readonly LotRecipe[] {
  const [first] = cycles as [BondingCycle];
  const all = store
    .recipes()
    .filter(
      ({ assemblyName, pressName }) => assemblyName === first.assemblyName && pressName === first.pressName,
    );
  const versions = [...new Set(cycles.map(({ recipeVersion }) => recipeVersion))].toSorted((a, b) => a - b);
  return versions.map((version) => {
    const recipe = all.find((one) => one.version === version) ?? null;
    return { version, recipe, band: recipe === null ? [] : bandOfRuns(recipeRuns(store, recipe)) };
  });
}

function measured(store: Store, cycles: readonly BondingCycle[]) {
  const recordings: ReportRecording[] = [];
  const bondLines = new Map<string, readonly TracePoint[]>();
  for (const id of new Set(cycles.flatMap(({ recordingId }) => recordingId ?? []))) {
    const recording = store.recording(id);
    if (recording === undefined) continue;
    const own = cycleTraces(
      recording,
      cycles.filter(({ recordingId }) => recordingId === id),
    );
    for (const [cycleId, points] of own.bondLines) bondLines.set(cycleId, points);
    recordings.push({
      name: id,
      head: recording.head,
      trace: own.trace,
      soundness: recording.soundness,
      sha256: piecesSha256(store.recordingText(id) ?? []),
    });
  }
  return { recordings, bondLines };
}
