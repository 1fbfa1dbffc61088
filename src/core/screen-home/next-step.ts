import { HOME_TEXT } from '../text/home-text.ts';
import { onPress } from '../text/run-facts-text.ts';
import { withoutYear } from '../text/when-text.ts';
import type { HomeFacts, TrialPlan } from './HomeFacts.ts';

/** The one thing one would do next. */
export interface NextStep {
  readonly kind: 'go-on' | 'set-up' | 'press' | 'assembly' | 'reader' | 'plug-in' | 'result' | 'trial';
  readonly word: string;
  readonly sentence: string;
  /** Trial that it is about. */
  readonly trialId: string | null;
}

/** From the store, the ports and what was chosen last: an open trial first, then what is missing, then a result. */
export function nextStep(facts: HomeFacts, plan: TrialPlan): NextStep {
  const say = (
    kind: NextStep['kind'],
    [word, sentence]: readonly string[],
    trialId: string | null = null,
  ) => ({
    kind,
    word: word ?? '',
    sentence: sentence ?? '',
    trialId,
  });
  const text = HOME_TEXT.suggestion;
  const open = openTrial(facts);
  if (open !== null) return say('go-on', text.goOn(trialName(open), withoutYear(open.when)), open.trialId);
  if (facts.presses.length === 0 && facts.assemblies.length === 0) return say('set-up', text.setUp);
  if (facts.presses.length === 0) return say('press', text.press);
  if (facts.assemblies.length === 0) return say('assembly', text.assembly);
  if (plan.reader === null) return say('reader', text.reader);
  const latest = facts.trials[0];
  if (latest !== undefined && latest.countingRuns >= 2 && !latest.hasRecipe)
    return say('result', text.result(trialName(latest), latest.countingRuns), latest.trialId);
  const { reader } = plan;
  if (reader !== 'simulated' && facts.ports !== null && !facts.ports.some((port) => port.path === reader))
    return say('plug-in', text.plugIn(reader));
  const what =
    plan.assemblyName === null || plan.pressName === null
      ? text.choose
      : onPress(plan.assemblyName, plan.pressName);
  return say('trial', text.trial(what));
}

/** The newest trial that was never closed; null when there is none. */
export function openTrial(facts: HomeFacts) {
  return facts.trials.find((trial) => trial.closedAt === null) ?? null;
}

export function trialName(trial: { readonly assemblyName: string; readonly pressName: string }): string {
  return `${trial.assemblyName} on ${trial.pressName}`;
}
