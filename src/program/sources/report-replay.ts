import { crossingProbes } from '../../core/probe/crossing-probes.ts';
import { probeTypeClashes } from '../../core/probe/probe-type-clashes.ts';
import { outcomeJson } from '../../core/result/outcome-json.ts';
import { trialOutcome } from '../../core/result/trial-outcome.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { outcomeLines } from '../../core/text/outcome-text.ts';
import { probeTypeClashText } from '../../core/text/probe-text.ts';
import type { TrialRun } from '../../core/trial/TrialResult.ts';
import { OptionError } from '../options/OptionError.ts';
import { type DwellOptions, outcomeSettings } from '../options/outcome-settings.ts';
import { print, printJson } from '../output/print.ts';
import type { SourceAnalysis } from './analyse-source.ts';
import type { Source } from './Source.ts';

/** A source with what its replay gave, and the decisions on its runs where it comes from the store. */
export interface ReplayedSource {
  readonly source: Source;
  readonly analysis: SourceAnalysis;
  readonly decisionOf?: (runNumber: number) => TrialRun['decision'];
}

export interface ReplayReportOptions extends DwellOptions {
  readonly show: 'F' | 'C';
  readonly json?: boolean;
  readonly explain?: boolean;
}

/** One target and one hold belong to one dwell: sources that disagree need the option. */
export function sharedRules(replayed: readonly ReplayedSource[]) {
  const first = replayed[0]!.analysis.rules;
  for (const { source, analysis } of replayed) {
    const { targetC, holdS } = analysis.rules;
    if (Math.abs(targetC - first.targetC) > 0.005 || Math.abs(holdS - first.holdS) > 0.0005) {
      throw new OptionError(
        `${neutralise(source.name)}: its target or hold differs from that of ${neutralise(replayed[0]!.source.name)}; one trial has one of each`,
        'Replay them apart, or give --target and --hold for all',
      );
    }
  }
  return first;
}

/** Prints the outcome of replayed sources; exit code 1 when no run counts. */
export function reportReplay(replayed: readonly ReplayedSource[], options: ReplayReportOptions): void {
  const rules = sharedRules(replayed);
  const runs: TrialRun[] = replayed.flatMap(({ source, analysis, decisionOf }) =>
    analysis.results.map((result) => ({
      source: source.name,
      result,
      decision: decisionOf?.(result.runNumber) ?? { kind: 'automatic' },
    })),
  );
  const probes = replayed.flatMap(({ analysis }) => crossingProbes(analysis.results, analysis.probes));
  const outcome = trialOutcome(runs, outcomeSettings(options, rules, undefined, probes));
  if (options.json)
    printJson({
      ...outcomeJson(outcome, options.show),
      probeTypeClashes: replayed.flatMap(({ source, analysis }) =>
        probeTypeClashes(analysis.probes, analysis.state.identity).map((clash) => ({
          source: source.name,
          ...clash,
        })),
      ),
    });
  else
    print(
      [
        ...replayed.flatMap(sourceLines),
        ...outcomeLines(outcome, options.show, { explain: options.explain === true }),
      ].join('\n'),
    );
  if (outcome.statistics.runs === 0) process.exitCode = 1;
}

function sourceLines({ source, analysis }: ReplayedSource): readonly string[] {
  const { recognised } = analysis.state;
  const simulated = source.head?.simulated ? ' SIMULATED.' : '';
  const clashes = probeTypeClashes(analysis.probes, analysis.state.identity);
  return [
    ...(recognised === null ? [] : [`${neutralise(source.name)}: ${recognised}.${simulated}`]),
    ...clashes.map((clash) => `  ${probeTypeClashText(clash)}.`),
  ];
}
