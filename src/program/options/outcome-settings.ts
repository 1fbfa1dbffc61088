import type { Press } from '../../core/press/Press.ts';
import type { OutcomeSettings } from '../../core/result/trial-outcome.ts';
import type { DwellRule } from '../../core/trial/TrialResult.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';

export interface DwellOptions {
  readonly rule?: DwellRule;
  readonly margin?: string;
  readonly timerStep?: string;
}

/** How a dwell is worked out: the options before the press's own timer, that before the defaults. */
export function outcomeSettings(
  options: DwellOptions,
  rules: { readonly targetC: number; readonly holdS: number },
  press?: Press,
): OutcomeSettings {
  return {
    rule: options.rule ?? 'mean',
    targetC: rules.targetC,
    holdS: rules.holdS,
    marginS: options.margin === undefined ? 0 : parseDuration(options.margin, '--margin'),
    timerStepS:
      options.timerStep === undefined
        ? (press?.timerStepS ?? 1)
        : parseDuration(options.timerStep, '--timer-step'),
    timerOffsetS: press?.timerOffsetS ?? 0,
    timerStartsAt: press?.timerStartsAt ?? 'closing',
  };
}
