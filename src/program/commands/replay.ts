import { outcomeJson } from '../../core/result/outcome-json.ts';
import { trialOutcome } from '../../core/result/trial-outcome.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import { outcomeLines } from '../../core/text/outcome-text.ts';
import type { TrialRun } from '../../core/trial/TrialResult.ts';
import { OptionError } from '../options/OptionError.ts';
import { type DwellOptions, outcomeSettings } from '../options/outcome-settings.ts';
import type { RuleOptions } from '../options/run-rules.ts';
import type { StoreOptions } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';
import { analyseSource, type SourceAnalysis } from '../sources/analyse-source.ts';
import { openSource } from '../sources/open-source.ts';
import type { Source, SourceOptions } from '../sources/Source.ts';

interface ReplayOptions extends RuleOptions, SourceOptions, DwellOptions, StoreOptions {
  readonly trial?: string;
  readonly show: 'F' | 'C';
  readonly json?: boolean;
  readonly explain?: boolean;
}

/** `replay FILE…`: recordings and other loggers' files through the one pipeline, to runs, trial and dwell. */
export async function replay(files: readonly string[], options: ReplayOptions): Promise<void> {
  if (options.trial !== undefined) {
    if (files.length > 0) throw new OptionError('replay: came both files and --trial', 'Give one of the two');
    const { replayStored } = await import('./replay-stored.ts');
    return replayStored(options.trial, options, report);
  }
  if (files.length === 0) {
    throw new OptionError(
      'replay: no file given',
      'Name one or more recordings, for example: dwellwright replay recordings/*.dwell.txt',
    );
  }
  const replayed: { source: Source; analysis: SourceAnalysis }[] = [];
  for (const file of files) {
    const source = await openSource(file, options);
    replayed.push({ source, analysis: analyseSource(source, options) });
  }
  report(replayed, options);
}

/** One target and one hold belong to one dwell: sources that disagree need the option. */
export function sharedRules(replayed: readonly { readonly source: Source; readonly analysis: SourceAnalysis }[]) {
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

export function report(
  replayed: readonly { readonly source: Source; readonly analysis: SourceAnalysis }[],
  options: DwellOptions & { readonly show: 'F' | 'C'; readonly json?: boolean; readonly explain?: boolean },
): void {
  const rules = sharedRules(replayed);
  const runs: TrialRun[] = replayed.flatMap(({ source, analysis }) =>
    analysis.results.map((result) => ({ source: source.name, result, decision: { kind: 'automatic' } })),
  );
  const outcome = trialOutcome(runs, outcomeSettings(options, rules));
  if (options.json) printJson(outcomeJson(outcome, options.show));
  else
    print(
      [
        ...replayed.flatMap(sourceLines),
        ...outcomeLines(outcome, options.show, { explain: options.explain === true }),
      ].join('\n'),
    );
  if (outcome.statistics.runs === 0) process.exitCode = 1;
}

function sourceLines({
  source,
  analysis,
}: {
  readonly source: Source;
  readonly analysis: SourceAnalysis;
}): readonly string[] {
  const { recognised } = analysis.state;
  const simulated = source.head?.simulated ? ' SIMULATED.' : '';
  return recognised === null ? [] : [`${neutralise(source.name)}: ${recognised}.${simulated}`];
}
