import { crossingProbes } from '../../core/probe/crossing-probes.ts';
import { probeTypeClashes } from '../../core/probe/probe-type-clashes.ts';
import { outcomeJson } from '../../core/result/outcome-json.ts';
import { type TrialOutcome, trialOutcome } from '../../core/result/trial-outcome.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
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
  /** Average them all, whatever assembly and press their heads name. */
  readonly together?: boolean;
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

interface Group {
  /** "WB-212 on North"; null where the sources do not say. */
  readonly name: string | null;
  readonly replayed: readonly ReplayedSource[];
  readonly outcome: TrialOutcome;
}

/**
 * Prints the outcome of replayed sources; exit code 1 when no run counts. Recordings that name different assemblies or
 * presses are never averaged: each pair gets an outcome of its own, unless `together` asks for one.
 */
export function reportReplay(replayed: readonly ReplayedSource[], options: ReplayReportOptions): void {
  const groups = grouped(replayed, options.together === true).map(
    ([name, members]): Group => ({ name, replayed: members, outcome: outcomeOf(members, options) }),
  );
  if (options.json) printJson(replayJson(groups, replayed, options));
  else print(groups.flatMap((group) => groupLines(group, groups.length > 1, options)).join('\n'));
  if (groups.every(({ outcome }) => outcome.statistics.runs === 0)) process.exitCode = 1;
}

/** By assembly and press where the heads name several; one group otherwise. */
function grouped(
  replayed: readonly ReplayedSource[],
  together: boolean,
): readonly (readonly [string | null, readonly ReplayedSource[]])[] {
  const nameOf = ({ source: { head } }: ReplayedSource): string | null =>
    head?.assemblyName === undefined || head.pressName === undefined
      ? null
      : `${head.assemblyName} on ${head.pressName}`;
  const names = [...new Set(replayed.map(nameOf))];
  if (together || names.length < 2) return [[names[0] ?? null, replayed]];
  return names.map((name) => [name, replayed.filter((one) => nameOf(one) === name)]);
}

function outcomeOf(replayed: readonly ReplayedSource[], options: ReplayReportOptions): TrialOutcome {
  const rules = sharedRules(replayed);
  const seen = new Set<string>();
  const runs: TrialRun[] = replayed.flatMap(({ source, analysis, decisionOf }) => {
    const again = seen.has(source.identity);
    seen.add(source.identity);
    return analysis.results.map((result) => ({
      source: source.name,
      result,
      decision: again
        ? { kind: 'set-aside', reason: COMMAND_TEXT.givenBefore }
        : (decisionOf?.(result.runNumber) ?? { kind: 'automatic' }),
    }));
  });
  const probes = replayed.flatMap(({ analysis }) => crossingProbes(analysis.results, analysis.probes));
  return trialOutcome(runs, outcomeSettings(options, rules, undefined, probes));
}

function groupLines(
  { name, replayed, outcome }: Group,
  several: boolean,
  options: ReplayReportOptions,
): readonly string[] {
  return [
    ...(several ? [`== ${name === null ? COMMAND_TEXT.notStated : neutralise(name)} ==`] : []),
    ...replayed.flatMap(sourceLines),
    ...outcomeLines(outcome, options.show, { explain: options.explain === true }),
    ...(several ? [''] : []),
  ];
}

/** One group: its outcome. Several: all runs, no common trial or dwell, and each group's own under `groups`. */
function replayJson(
  groups: readonly Group[],
  replayed: readonly ReplayedSource[],
  options: ReplayReportOptions,
) {
  const clashes = replayed.flatMap(({ source, analysis }) =>
    probeTypeClashes(analysis.probes, analysis.state.identity).map((clash) => ({
      source: source.name,
      ...clash,
    })),
  );
  const [first] = groups;
  const results = groups.map(({ outcome }) => outcomeJson(outcome, options.show));
  if (groups.length < 2 || first === undefined) return { ...results[0], probeTypeClashes: clashes };
  return {
    ...outcomeJson(trialOutcome([], first.outcome.settings), options.show),
    runs: results.flatMap(({ runs }) => runs),
    probeTypeClashes: clashes,
    groups: groups.map(({ name }, at) => ({ name, ...results[at] })),
  };
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
