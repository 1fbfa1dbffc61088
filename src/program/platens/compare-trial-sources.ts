import { recipeInForce } from '../../core/bonding/recipes-in-force.ts';
import { compareTrials } from '../../core/press-comparison/compare-trials.ts';
import { trialComparisonJson } from '../../core/press-comparison/comparison-json.ts';
import type { Recipe } from '../../core/recipe/Recipe.ts';
import { MARGIN_TEXT } from '../../core/text/command-text.ts';
import { trialComparisonLines } from '../../core/text/comparison-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import type { EquivalencePlan } from '../../core/transfer/EquivalencePlan.ts';
import { storedPlan } from '../../core/transfer/stored-plan.ts';
import type { TrialRun } from '../../core/trial/TrialResult.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { parseTemperature } from '../../core/units/parse-temperature.ts';
import { type CompareOptions, sideNames } from '../commands/compare.ts';
import { OptionError } from '../options/OptionError.ts';
import { readFromStore } from '../options/with-store.ts';
import { print, printJson } from '../output/print.ts';
import { analyseSource } from '../sources/analyse-source.ts';
import { openSource } from '../sources/open-source.ts';
import { findTrial } from '../trials/stored-outcome.ts';

interface Side {
  readonly runs: readonly TrialRun[];
  readonly press: string | undefined;
  readonly assembly: string | undefined;
  readonly holdS: number;
  readonly simulated: boolean;
  readonly recipe: Recipe | undefined;
}

/** Trials of one assembly on two presses, each from the store or from recordings. Ends with 1 when the recipe does not cover. */
export async function compareTrialSources(options: CompareOptions): Promise<void> {
  const first = await side(options.firstTrial, options.first, 'first', options);
  const second = await side(options.secondTrial, options.second, 'second', options);
  if (first.assembly !== second.assembly && first.assembly !== undefined && second.assembly !== undefined) {
    throw new OptionError(
      `compare: trials of different assemblies, ${neutralise(first.assembly)} and ${neutralise(second.assembly)}`,
      'Compare presses with trials of one assembly',
    );
  }
  const names = sideNames(options, first.press, second.press);
  const presses = { first: neutralise(names.first), second: neutralise(names.second) };
  const stated = planOf(options);
  const plan = stated ?? (await keptPlan(options, first, second));
  const comparison = compareTrials({
    first: first.runs,
    second: second.runs,
    plan,
    probePartS: options.probePart === undefined ? 0 : parseDuration(options.probePart, '--probe-part'),
    recipe: recipeOf(options, first),
  });
  const simulated = first.simulated || second.simulated;
  const marginsStated = plan === null ? null : stated === null ? 'before' : 'with-the-data';
  if (options.json)
    printJson({
      simulated,
      ...trialComparisonJson(comparison, presses),
      marginsStated,
      marginsStatedAt: plan?.statedAt ?? null,
    });
  else {
    print(
      [
        ...(simulated ? ['SIMULATED.'] : []),
        ...trialComparisonLines(comparison, presses, options.show),
        ...marginLines(plan, stated !== null),
      ].join('\n'),
    );
  }
  if (comparison.cover !== null && comparison.cover.kind !== 'covers') process.exitCode = 1;
}

async function side(
  trialId: string | undefined,
  files: readonly string[] | undefined,
  which: 'first' | 'second',
  options: CompareOptions,
): Promise<Side> {
  if (trialId !== undefined && files !== undefined) {
    throw new OptionError(`compare: came both --${which} and --${which}-trial`, 'Give one of the two');
  }
  if (trialId !== undefined) return storedSide(trialId, options);
  if (files === undefined || files.length === 0) {
    throw new OptionError(`compare: no ${which} trial given`, `Give --${which} FILE… or --${which}-trial ID`);
  }
  const all = [];
  for (const file of files) {
    const source = await openSource(file, options);
    all.push({ source, analysis: analyseSource(source, options) });
  }
  const head = all[0]!.source.head;
  return {
    runs: all.flatMap(({ source, analysis }) =>
      analysis.results.map(
        (result): TrialRun => ({ source: source.name, result, decision: { kind: 'automatic' } }),
      ),
    ),
    press: head?.pressName,
    assembly: head?.assemblyName,
    holdS: all[0]!.analysis.rules.holdS,
    simulated: all.some(({ source }) => source.head?.simulated === true),
    recipe: undefined,
  };
}

function storedSide(trialId: string, options: CompareOptions): Promise<Side> {
  return readFromStore(options, (store) => {
    const trial = findTrial(store, trialId);
    const recordingId = trial.recordingIds[0];
    const head = recordingId === undefined ? undefined : store.recording(recordingId)?.head;
    const recipe = recipeInForce(store.recipes(), trial) ?? undefined;
    return {
      runs: store.trialRuns(trial.trialId),
      press: trial.pressName,
      assembly: trial.assemblyName,
      holdS: head?.holdS ?? recipe?.holdS ?? 120,
      simulated: trial.simulated,
      recipe,
    };
  });
}

/** Margins kept by the command `margins` before the runs were compared; null where none were, or sides are not named. */
async function keptPlan(options: CompareOptions, first: Side, second: Side): Promise<EquivalencePlan | null> {
  const assembly = first.assembly ?? second.assembly;
  if (assembly === undefined || first.press === undefined || second.press === undefined) return null;
  const sides = { assembly, first: first.press, second: second.press };
  return readFromStore(options, (store) => storedPlan(sides, (key) => store.setting(key)));
}

function marginLines(plan: EquivalencePlan | null, withTheData: boolean): readonly string[] {
  if (plan === null) return [MARGIN_TEXT.none];
  return withTheData ? [MARGIN_TEXT.withTheData] : [MARGIN_TEXT.statedOn(plan.statedAt)];
}

function planOf({ slower, faster }: CompareOptions) {
  if (slower === undefined && faster === undefined) return null;
  if (slower === undefined || faster === undefined) {
    throw new OptionError(
      'compare: came only one of --slower and --faster',
      'State both, for example --slower 3s --faster 5s',
    );
  }
  return {
    slowerS: parseDuration(slower, '--slower'),
    fasterS: parseDuration(faster, '--faster'),
    statedAt: new Date().toISOString(),
  };
}

function recipeOf(
  options: CompareOptions,
  first: Side,
): Pick<Recipe, 'dwellS' | 'holdS' | 'highestPeakC'> | null {
  const highestPeakC =
    options.highestPeak === undefined
      ? (first.recipe?.highestPeakC ?? null)
      : parseTemperature(options.highestPeak, '--highest-peak');
  if (options.dwell !== undefined) {
    const holdS = options.hold === undefined ? first.holdS : parseDuration(options.hold, '--hold');
    return { dwellS: parseDuration(options.dwell, '--dwell'), holdS, highestPeakC };
  }
  return first.recipe === undefined ? null : { ...first.recipe, highestPeakC };
}
