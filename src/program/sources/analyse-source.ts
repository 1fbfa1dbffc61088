import { headAmbientC } from '../../core/recording/head-ambient.ts';
import { headClosedAtS } from '../../core/recording/head-closed-at.ts';
import { headDip } from '../../core/recording/head-dip.ts';
import type { RunRules } from '../../core/run/RunResult.ts';
import { type Analysis, analyseEntries } from '../../core/session/analyse-entries.ts';
import { withSoundness } from '../../core/session/with-soundness.ts';
import { withTimeResolution } from '../../core/session/with-time-resolution.ts';
import { type RuleOptions, runRules } from '../options/run-rules.ts';
import { refuseUnreadable } from './refuse-unreadable.ts';
import type { Source } from './Source.ts';

export interface SourceAnalysis extends Analysis {
  readonly rules: RunRules;
}

/** Replays a source by its own conditions and the user's options. Refuses lines that no option made readable. */
export function analyseSource(source: Source, options: RuleOptions): SourceAnalysis {
  const { head } = source;
  const rules = runRules(
    options,
    head === null
      ? {}
      : {
          ...head,
          ambientC: headAmbientC(head),
          dip: headDip(head),
          closedAtS: headClosedAtS(head),
        },
  );
  const analysis = analyseEntries(source.entries(), { decoder: source.decoder, roles: source.roles, rules });
  refuseUnreadable(source.name, analysis.state);
  const soundness = source.soundness();
  return {
    ...analysis,
    rules,
    results: analysis.results.map((result) =>
      withTimeResolution(withSoundness(result, soundness), source.timeStepS),
    ),
  };
}
