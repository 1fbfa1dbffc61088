import { DwellwrightError } from '../../core/DwellwrightError.ts';
import { crossingProbes } from '../../core/probe/crossing-probes.ts';
import type { RunRules } from '../../core/run/RunResult.ts';
import { whatIfLines, whatIfRefusalText } from '../../core/text/what-if-text.ts';
import { countingRuns } from '../../core/trial/counting-runs.ts';
import type { TrialRun } from '../../core/trial/TrialResult.ts';
import { parseTemperature } from '../../core/units/parse-temperature.ts';
import { whatIf } from '../../core/what-if/what-if.ts';
import { commonParts } from '../options/common-parts.ts';
import { OptionError } from '../options/OptionError.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';
import { type AnalyseOptions, analyseSource } from '../sources/analyse-source.ts';
import { openSource } from '../sources/open-source.ts';
import { recordingSource } from '../sources/recording-source.ts';
import { type ReplayedSource, sharedRules } from '../sources/report-replay.ts';
import type { SourceOptions } from '../sources/Source.ts';
import { findTrial } from '../trials/stored-outcome.ts';

interface WhatIfOptions extends StoreOptions, SourceOptions {
  readonly trial?: string;
  readonly target?: string;
  readonly platens?: string;
  readonly start?: string;
  /** Target, set points and hold of the runs as made. */
  readonly runTarget?: string;
  readonly setPoints?: string;
  readonly hold?: string;
  readonly closedAt?: string;
  readonly probes?: string;
  readonly show: 'F' | 'C';
  readonly json?: boolean;
}

/** `what-if FILE…`: an estimate for another target, other platens or another start, from the runs' fitted curves. */
export async function whatIfCommand(files: readonly string[], options: WhatIfOptions): Promise<void> {
  const { target, platens, start, show } = options;
  if (target === undefined && platens === undefined && start === undefined) {
    throw new OptionError('what-if: nothing is changed', 'Give --target, --platens or --start');
  }
  const replayed = await replayedRuns(files, options);
  const rules = sharedRules(replayed);
  const { counting } = countingRuns(runsOf(replayed));
  const results = counting.map(({ result }) => result);
  const answer = whatIf({
    runs: results,
    targetC: rules.targetC,
    holdS: rules.holdS,
    probeExpandedC: probeExpandedC(replayed, rules.targetC),
    setPointC: meanSetPointC(rules),
    wish: {
      ...(target === undefined ? {} : { targetC: parseTemperature(target, '--target') }),
      ...(platens === undefined ? {} : { platenC: parseTemperature(platens, '--platens') }),
      ...(start === undefined ? {} : { startC: parseTemperature(start, '--start') }),
    },
  });
  if (answer.kind === 'refused') {
    throw new DwellwrightError(
      answer.refusal.code,
      `what-if refused: ${whatIfRefusalText(answer.refusal, show)}`,
      {
        exitCode: 1,
        remedy: 'Make runs at these conditions instead',
      },
    );
  }
  if (options.json) printJson({ estimate: answer.estimate, holdS: rules.holdS, recipe: null });
  else print(whatIfLines(answer.estimate, rules.holdS, show).join('\n'));
}

/** The target and platens in the options are the wished ones: runs are read by their own. */
async function asMade(options: WhatIfOptions): Promise<AnalyseOptions> {
  const { runTarget, setPoints, hold, closedAt } = options;
  return {
    ...(runTarget === undefined ? {} : { target: runTarget }),
    ...(setPoints === undefined ? {} : { platens: setPoints }),
    ...(hold === undefined ? {} : { hold }),
    ...(closedAt === undefined ? {} : { closedAt }),
    ...(await statedProbes(options)),
  };
}

async function replayedRuns(
  files: readonly string[],
  options: WhatIfOptions,
): Promise<readonly ReplayedSource[]> {
  const read = await asMade(options);
  if (options.trial !== undefined) {
    if (files.length > 0)
      throw new OptionError('what-if: came both files and --trial', 'Give one of the two');
    const id = options.trial;
    return readFromStore(options, (store) => {
      const trial = findTrial(store, id);
      const decided = store.trialRuns(trial.trialId);
      return trial.recordingIds.flatMap((recordingId) => {
        const recording = store.recording(recordingId);
        if (recording === undefined) return [];
        const source = recordingSource(recordingId, recording, options);
        const decisionOf: ReplayedSource['decisionOf'] = (runNumber) =>
          decided.find((run) => run.recordingId === recordingId && run.result.runNumber === runNumber)
            ?.decision ?? {
            kind: 'automatic',
          };
        return [{ source, analysis: analyseSource(source, read), decisionOf }];
      });
    });
  }
  if (files.length === 0)
    throw new OptionError('what-if: no file given', 'Name one or more recordings, or --trial ID');
  const replayed: ReplayedSource[] = [];
  for (const file of files) {
    const source = await openSource(file, options);
    replayed.push({ source, analysis: analyseSource(source, read) });
  }
  return replayed;
}

async function statedProbes({ probes, ...options }: WhatIfOptions) {
  if (probes === undefined) return {};
  const { channelProbes } = await import('../options/channel-probes.ts');
  return { probeList: await readFromStore(options, (store) => channelProbes(store, probes)) };
}

function runsOf(replayed: readonly ReplayedSource[]): readonly TrialRun[] {
  return replayed.flatMap(({ source, analysis, decisionOf }) =>
    analysis.results.map((result) => ({
      source: source.name,
      result,
      decision: decisionOf?.(result.runNumber) ?? { kind: 'automatic' as const },
    })),
  );
}

/** What holds the probe's error with 95 %: 0.95·a of a limit ±a, else 1.96·u. */
function probeExpandedC(replayed: readonly ReplayedSource[], targetC: number): number {
  const probes = replayed.flatMap(({ analysis }) => crossingProbes(analysis.results, analysis.probes));
  const stated = commonParts(probes, [], targetC)[0]?.stated;
  if (stated !== undefined && 'limitC' in stated) return 0.95 * stated.limitC;
  return stated !== undefined && 'standardUncertaintyC' in stated ? 1.96 * stated.standardUncertaintyC : 0;
}

function meanSetPointC({ platenSetPointC }: RunRules): number | null {
  return platenSetPointC === null ? null : (platenSetPointC.upper + platenSetPointC.lower) / 2;
}
