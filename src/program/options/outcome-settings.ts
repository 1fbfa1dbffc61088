import type { Press } from '../../core/press/Press.ts';
import type { Probe } from '../../core/probe/Probe.ts';
import type { OutcomeSettings } from '../../core/result/trial-outcome.ts';
import type { DwellRule } from '../../core/trial/TrialResult.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { parseTemperature } from '../../core/units/parse-temperature.ts';
import { commonParts } from './common-parts.ts';
import { OptionError } from './OptionError.ts';
import { parseFraction } from './parse-fraction.ts';

export interface DwellOptions {
  readonly rule?: DwellRule;
  readonly margin?: string;
  readonly timerStep?: string;
  readonly content?: string;
  readonly confidence?: string;
  /** Further parts of the uncertainty, each CODE:LIMIT. */
  readonly part?: readonly string[];
  readonly referenceStart?: string;
  readonly referencePlatens?: string;
}

/** How a dwell is worked out: the options before the press's own timer, that before the defaults. */
export function outcomeSettings(
  options: DwellOptions,
  rules: { readonly targetC: number; readonly holdS: number },
  press?: Press,
  /** Probes that gave the crossings, where known. */
  probes: readonly Probe[] = [],
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
    tolerance: {
      content: share(options.content, '--content'),
      confidence: share(options.confidence, '--confidence'),
    },
    timerOffsetS: press?.timerOffsetS ?? 0,
    timerStartsAt: press?.timerStartsAt ?? 'closing',
    commonParts: commonParts(probes, options.part ?? [], rules.targetC),
    reference: {
      ...(options.referenceStart === undefined
        ? {}
        : { startC: parseTemperature(options.referenceStart, '--reference-start') }),
      ...(options.referencePlatens === undefined
        ? {}
        : { platenC: parseTemperature(options.referencePlatens, '--reference-platens') }),
    },
  };
}

/** A share of cycles or a confidence: 95 % unless stated, at most 99.9 %. */
function share(text: string | undefined, option: string): number {
  if (text === undefined) return 0.95;
  const value = parseFraction(text, option);
  if (value >= 0.5 && value <= 0.999 + 1e-9) return value;
  throw new OptionError(
    `${option}: expected 50 % to 99.9 %, came "${text}"`,
    `Write for example ${option} 95%`,
  );
}
