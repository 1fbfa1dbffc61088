import type { LeftOutWhy } from '../trial/counting-runs.ts';

/** Why a run does not enter the mean, in words. */
export const LEFT_OUT_WHY: Readonly<Record<LeftOutWhy, string>> = {
  unusable: 'unusable: never enters the mean',
  suspect: 'suspect: stays out until taken in with a reason',
  'set-aside': 'set aside',
  'from-onset': 'timed from the onset of the rise: never averaged with runs timed from a mark',
  'same-readings': 'the readings of an earlier run once more: counted once',
  'no-soak-time': 'has no soak time',
};
