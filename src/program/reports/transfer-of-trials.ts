import { recipeInForce } from '../../core/bonding/recipes-in-force.ts';
import { compareTrials, type TrialComparison } from '../../core/press-comparison/compare-trials.ts';
import type { TransferSetting } from '../../core/report/transfer-section.ts';
import { MARGIN_TEXT } from '../../core/text/command-text.ts';
import { neutralise } from '../../core/text/neutralise.ts';
import type { TwoPresses } from '../../core/text/transfer-text.ts';
import type { TemperatureUnit } from '../../core/text/units-text.ts';
import { storedPlan } from '../../core/transfer/stored-plan.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { OptionError } from '../options/OptionError.ts';
import { readFromStore, type StoreOptions } from '../options/with-store.ts';
import { storedOutcome } from '../trials/stored-outcome.ts';
import type { GatheredTrial } from './GatheredTrial.ts';

export interface TransferOptions extends StoreOptions {
  readonly against?: string;
  readonly slower?: string;
  readonly faster?: string;
  readonly show: TemperatureUnit;
}

/** The trial set against a stored one of the same assembly on another press. `statedAt` is when the margins were stated. */
export function transferOfTrials(
  { outcome, job }: GatheredTrial,
  options: TransferOptions,
  statedAt: string,
): Promise<{
  readonly comparison: TrialComparison;
  readonly presses: TwoPresses;
  readonly setting: TransferSetting;
}> {
  return readFromStore(options, (store) => {
    const other = storedOutcome(store, options.against ?? '', {});
    if (job.assemblyName !== null && other.trial.assemblyName !== job.assemblyName) {
      throw new OptionError(
        `--against: that trial is of ${neutralise(other.trial.assemblyName)}, this one of ${neutralise(job.assemblyName)}`,
        'Compare presses with trials of one assembly',
      );
    }
    const recipe = recipeInForce(store.recipes(), job);
    const stated = planOf(options, statedAt);
    const plan =
      stated ??
      storedPlan(
        { assembly: other.trial.assemblyName, first: job.pressName ?? '', second: other.trial.pressName },
        (key) => store.setting(key),
      );
    const comparison = compareTrials({
      first: outcome.runs,
      second: other.runs,
      plan,
      probePartS: 0,
      recipe,
    });
    const name = (press: string) => neutralise(press, { longest: 40 });
    const presses = { first: name(job.pressName ?? 'first'), second: name(other.trial.pressName) };
    const setting = {
      unit: options.show,
      limitS: recipe === null ? null : recipe.dwellS - recipe.holdS,
      simulated: job.simulated || other.trial.simulated,
      further: [
        plan === null
          ? MARGIN_TEXT.none
          : stated === null
            ? MARGIN_TEXT.statedOn(plan.statedAt)
            : MARGIN_TEXT.withTheData,
      ],
    };
    return { comparison, presses, setting };
  });
}

function planOf({ slower, faster }: TransferOptions, statedAt: string) {
  if (slower === undefined && faster === undefined) return null;
  if (slower === undefined || faster === undefined) {
    throw new OptionError(
      'report: came only one of --slower and --faster',
      'State both, for example --slower 3s --faster 5s',
    );
  }
  return { slowerS: parseDuration(slower, '--slower'), fasterS: parseDuration(faster, '--faster'), statedAt };
}
