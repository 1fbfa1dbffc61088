import { DEFAULT_READY_RULE } from './ReadyRule.ts';
import type { WarmUpRules } from './WarmUp.ts';

/** ±5 °F for 5 min; a cold part is a dip of more than 2 °F after 5 quiet minutes. Common practice and judgement, no source. */
export const DEFAULT_WARM_UP_RULES: WarmUpRules = Object.freeze({
  setPointC: null,
  ready: DEFAULT_READY_RULE,
  recoveryBandC: 2 / 1.8,
  quietS: 300,
});
