import type { BondingCycle } from '../bonding/BondingCycle.ts';
import type { ChartBandPoint } from '../chart/ChartSpec.ts';
import type { TracePoint } from '../figure/RunTrace.ts';
import type { Assembly, Press } from '../press/Press.ts';
import type { PressureResult } from '../press/PressureResult.ts';
import type { Probe } from '../probe/Probe.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import type { ReportRecording } from './TrialReportInput.ts';

/** A cycle of the lot. */
export interface LotCycle {
  /** Among all cycles of its assembly on its press, 1 first. */
  readonly number: number;
  readonly cycle: BondingCycle;
  /** Coldest bond-line probe, s from press closed; empty without a probe or without its recording. */
  readonly bondLine: readonly TracePoint[];
}

/** A version of the recipe that cycles of the lot were made by. */
export interface LotRecipe {
  readonly version: number;
  /** Null where it is not in this store. */
  readonly recipe: Recipe | null;
  /** Lowest and highest of the runs that it rests on; empty where they are not in this store. */
  readonly band: readonly ChartBandPoint[];
}

export interface LotReportInput {
  readonly lot: string;
  readonly assemblyName: string;
  readonly pressName: string;
  readonly assembly: Assembly | null;
  readonly press: Press | null;
  readonly pressure: PressureResult | null;
  readonly gaugeStated: boolean;
  readonly gaugePsi: number | null;
  /** In the order they were made; at least one. */
  readonly cycles: readonly LotCycle[];
  readonly recipes: readonly LotRecipe[];
  /** Recordings of the lot's cycles; their traces hold no points. */
  readonly recordings: readonly ReportRecording[];
  readonly probes: readonly Probe[];
  readonly equipment: readonly string[];
  /** SHA-256 of the cycles' records as `export cycles` writes them. */
  readonly cyclesSha256: string;
  readonly note: string | null;
  readonly unit: TemperatureUnit;
  readonly madeAt: string;
  readonly program: string;
}
