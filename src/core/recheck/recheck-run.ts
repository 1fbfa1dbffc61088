import type { Recipe } from '../recipe/Recipe.ts';
import { isFromOnset } from '../trial/counting-runs.ts';
import type { TrialRun } from '../trial/TrialResult.ts';
import type { RecheckReason, RunRecheck } from './RecheckResult.ts';

export interface RecheckLimits {
  /** Start temperature may differ from that of the recipe's trial by this, °C. */
  readonly startC: number;
  readonly platenC: number;
}

/** About 1 s of soak time for the start and 2.5 s for the platens. Common practice, no source. */
export const RECHECK_LIMITS: RecheckLimits = Object.freeze({ startC: 5, platenC: 5 });

/** Assembly and press that a recording names; null where it names none. */
export interface MadeOn {
  readonly assemblyName: string | null;
  readonly pressName: string | null;
}

export interface RecheckContext {
  readonly recipe: Recipe;
  /** Hold that is asked for; the recipe's own unless a what-if asks for another, s. */
  readonly holdS: number;
  readonly bandS: readonly [number, number] | null;
  /** Start temperature of the recipe's own trial, °C; null where not known any more. */
  readonly recipeStartC: number | null;
  readonly limits: RecheckLimits;
  readonly own: boolean;
  readonly madeOn: MadeOn;
  readonly before: RunRecheck['before'];
}

/** A millisecond of float dust is no missing hold. */
const DUST_S = 0.0005;

/** Holds one run against a recipe: soak inside the band, hold fully met at its dwell, conditions comparable. */
export function recheckRun(run: TrialRun, context: RecheckContext): RunRecheck {
  const { recipe, bandS, holdS, own, before } = context;
  const { soakTimeS } = run.result;
  const conditions = conditionReasons(run, context);
  const unusable = unusableReason(run);
  const onset = isFromOnset(run);
  const reasons: RecheckReason[] = [...conditions];
  if (unusable !== null) reasons.push(unusable);
  if (onset) reasons.push({ code: 'from-onset' });
  const { pressName } = context.madeOn;
  if (pressName !== null && pressName !== recipe.pressName)
    reasons.push({ code: 'other-press', name: pressName });
  const inside = soakTimeS === null || bandS === null ? null : soakTimeS >= bandS[0] && soakTimeS <= bandS[1];
  if (inside === false && soakTimeS !== null && bandS !== null) {
    reasons.push(
      soakTimeS > bandS[1]
        ? { code: 'soak-above-band', soakS: soakTimeS, limitS: bandS[1] }
        : { code: 'soak-below-band', soakS: soakTimeS, limitS: bandS[0] },
    );
  }
  const heldAtDwellS = soakTimeS === null ? null : recipe.dwellS - soakTimeS;
  const holdMet = heldAtDwellS === null ? null : heldAtDwellS >= holdS - DUST_S;
  if (holdMet === false && heldAtDwellS !== null)
    reasons.push({ code: 'hold-short', heldS: heldAtDwellS, wantedS: holdS });
  return {
    run,
    own,
    insideBand: inside,
    heldAtDwellS,
    holdMet,
    comparable: unusable === null && !onset && conditions.length === 0 && soakTimeS !== null,
    reasons,
    before,
  };
}

function unusableReason({ result, decision }: TrialRun): RecheckReason | null {
  if (decision.kind === 'set-aside') return { code: 'set-aside', reason: decision.reason };
  const usable = decision.kind === 'taken-in' ? result.verdict !== 'unusable' : result.verdict === 'good';
  if (usable) return null;
  const because = result.reasons.filter(({ severity }) => severity !== 'note');
  return { code: 'run-not-usable', verdict: result.verdict, because };
}

function conditionReasons(
  { result }: TrialRun,
  { recipe, recipeStartC, limits, madeOn }: RecheckContext,
): readonly RecheckReason[] {
  const reasons: RecheckReason[] = [];
  const { assemblyName } = madeOn;
  if (assemblyName !== null && assemblyName !== recipe.assemblyName)
    reasons.push({ code: 'other-assembly', name: assemblyName });
  if (result.startC !== null && recipeStartC !== null) {
    const differenceC = result.startC - recipeStartC;
    if (Math.abs(differenceC) > limits.startC)
      reasons.push({ code: 'start-differs', differenceC, limitC: limits.startC });
  }
  for (const which of ['upper', 'lower'] as const) {
    const [now, then] = [result.platenAtClosingC[which], recipe.platenMeasuredC[which]];
    if (now === null || then === null) continue;
    const differenceC = now - then;
    if (Math.abs(differenceC) > limits.platenC)
      reasons.push({ code: 'platen-differs', which, differenceC, limitC: limits.platenC });
  }
  return reasons;
}
