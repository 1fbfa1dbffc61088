import type { Equivalence, EquivalencePlan } from '../transfer/EquivalencePlan.ts';
import type { RecipeCover } from '../transfer/recipe-covers.ts';
import { differenceText, numberText, secondsText, type TemperatureUnit } from './units-text.ts';

export interface TwoPresses {
  readonly first: string;
  readonly second: string;
}

/** The answer in one sentence: shown, not shown or different, with what would be next. */
export function equivalenceText(result: Equivalence, { first, second }: TwoPresses): string {
  if (result.kind === 'too-few-runs') {
    return `No claim: at least three runs that count are needed on each press, there are ${result.runsFirst} on ${first} and ${result.runsSecond} on ${second}.`;
  }
  const probe =
    result.probePartS === 0
      ? ''
      : ` Different probes: ${secondsText(result.probePartS)} for them is in each end.`;
  const { lowS, highS } = result;
  switch (result.kind) {
    case 'shown':
      return `Shown: ${second} within ${signed(lowS)} to ${signed(highS)} s of ${first} (90 %), inside ${marginsText(result.plan)}.${probe}`;
    case 'different': {
      const way = lowS > 0 ? 'slower' : 'faster';
      const [near, far] = lowS > 0 ? [lowS, highS] : [-highS, -lowS];
      return `Different: ${second} is ${fixed(near)} to ${fixed(far)} s ${way} than ${first} (90 %).${probe}`;
    }
    case 'not-shown':
      return `Not shown: ${second} could be up to ${couldBe(result)} than ${first}; ${more(result.moreRunsEach)}.${probe}`;
  }
}

/** Said beside every comparison of one trial a press. */
export function oneTrialPerPressText({ first, second }: TwoPresses): string {
  return `One trial on each of ${first} and ${second} cannot tell the press from the set-up: repeat on a second day or with the probe laid anew.`;
}

/** Said before starting. */
export function powerText(runsEach: number, marginInSd: number, power: number): string {
  return `With ${runsEach} runs on each press and margins of ${numberText(marginInSd, 1)} times the run-to-run deviation, presses that are alike will be shown so in about ${numberText(power * 100, 0)} % of comparisons.`;
}

/** The first answer: does the recipe's dwell do on that press? */
export function recipeCoverText(cover: RecipeCover, press: string, unit: TemperatureUnit = 'F'): string {
  switch (cover.kind) {
    case 'too-few-runs':
      return `Not known: two runs that count are needed on ${press}, there are ${cover.runs}.`;
    case 'covers':
      return `The recipe covers ${press}: ${secondsText(cover.neededS)} needed for a full hold in the next run (95 %), ${secondsText(cover.spareS)} to spare${cover.spareC === null ? '; no peak limit was checked' : `, ${differenceText(cover.spareC, unit)} below the peak limit`}.`;
    case 'too-short':
      return `The recipe is too short for ${press}: ${secondsText(cover.neededS)} needed for a full hold in the next run (95 %), ${secondsText(-cover.spareS)} more than its dwell.`;
    case 'too-hot':
      return `The recipe is too hot on ${press}: the bond line went ${differenceText(-(cover.spareC ?? 0), unit)} above the highest allowed peak.`;
  }
}

function couldBe({ lowS, highS, plan }: Extract<Equivalence, { kind: 'not-shown' }>): string {
  const ways = [];
  if (highS >= plan.slowerS) ways.push(`${fixed(highS)} s slower`);
  if (lowS <= -plan.fasterS) ways.push(`${fixed(-lowS)} s faster`);
  return ways.join(' or ');
}

function more(moreRunsEach: number | null): string {
  if (moreRunsEach === null) return 'more runs alone would not show it';
  return `about ${moreRunsEach} more ${moreRunsEach === 1 ? 'run' : 'runs'} each`;
}

function marginsText({ slowerS, fasterS }: EquivalencePlan): string {
  if (slowerS === fasterS) return `±${secondsText(slowerS)}`;
  return `${signed(-fasterS)} to ${signed(slowerS)} s`;
}

function signed(seconds: number): string {
  return `${seconds < 0 ? '−' : '+'}${fixed(Math.abs(seconds))}`;
}

function fixed(seconds: number): string {
  return numberText(seconds, 1);
}
