import { headCure, headHighestPeakC } from '../../core/cure/head-cure.ts';
import { headProbes } from '../../core/probe/head-probes.ts';
import type { Probe } from '../../core/probe/Probe.ts';
import { probeCorrection } from '../../core/probe/probe-correction.ts';
import { headAmbientC } from '../../core/recording/head-ambient.ts';
import { headClosedAtS } from '../../core/recording/head-closed-at.ts';
import { headDip } from '../../core/recording/head-dip.ts';
import { headRiseUnderWay } from '../../core/recording/head-rise-under-way.ts';
import type { RunRules } from '../../core/run/RunResult.ts';
import { type Analysis, analyseEntries } from '../../core/session/analyse-entries.ts';
import { withFileClock } from '../../core/session/with-file-clock.ts';
import { withSoundness } from '../../core/session/with-soundness.ts';
import { withTimeResolution } from '../../core/session/with-time-resolution.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { OptionError } from '../options/OptionError.ts';
import { type RuleOptions, runRules } from '../options/run-rules.ts';
import { refuseUnreadable } from './refuse-unreadable.ts';
import type { Source } from './Source.ts';

export interface SourceAnalysis extends Analysis {
  readonly rules: RunRules;
  /** Probe on each channel, channel 1 first; null where not known. */
  readonly probes: readonly (Probe | null)[];
}

export interface AnalyseOptions extends RuleOptions {
  /** Goes before what the head says. */
  readonly probeList?: readonly (Probe | null)[];
}

/** Rules and probes that a source is analysed by: the user's options before its own conditions. */
export function sourceConditions(
  { head }: Pick<Source, 'head'>,
  options: AnalyseOptions,
): { readonly rules: RunRules; readonly probes: readonly (Probe | null)[] } {
  if (head === null) return { rules: runRules(options), probes: options.probeList ?? [] };
  const rules = runRules(options, {
    ...head,
    ambientC: headAmbientC(head),
    dip: headDip(head),
    closedAtS: headClosedAtS(head),
    riseUnderWay: headRiseUnderWay(head),
    cure: headCure(head),
    highestPeakC: headHighestPeakC(head),
  });
  return { rules, probes: options.probeList ?? headProbes(head) };
}

export const correctionsOf = (probes: readonly (Probe | null)[]) =>
  probes.map((probe) => (probe === null ? null : probeCorrection(probe)));

/** Replays a source by its own conditions and the user's options. Refuses lines that no option made readable. */
export function analyseSource(source: Source, options: AnalyseOptions): SourceAnalysis {
  const { head } = source;
  const { rules, probes } = sourceConditions(source, options);
  const analysis = analyseEntries(source.entries(), {
    decoder: source.decoder,
    roles: source.roles,
    rules,
    probeCorrections: correctionsOf(probes),
  });
  refuseUnreadable(source.name, analysis.state);
  refuseClosingOutside(source.name, options, analysis);
  const soundness = source.soundness();
  return {
    ...analysis,
    rules,
    probes,
    results: analysis.results.map((result) => {
      const timed = withTimeResolution(withSoundness(result, soundness), source.timeStepS);
      return head === null ? withFileClock(timed) : timed;
    }),
  };
}

/** A time given for press closed must lie inside the readings; else it would be ignored without a word. */
function refuseClosingOutside(
  name: string,
  { closedAt }: AnalyseOptions,
  { results, state }: Analysis,
): void {
  if (
    closedAt === undefined ||
    results.some(({ pressClosed }) => pressClosed?.all.some(({ by }) => by === 'option'))
  )
    return;
  const endS = state.latestReading?.timeS ?? 0;
  throw new OptionError(
    `${neutralise(name)}: --closed-at ${closedAt} lies outside its readings, which run from 0 to ${endS.toFixed(1)} s`,
    'Count from the file’s first reading, for example --closed-at 12.5s',
    'closing-outside',
  );
}
