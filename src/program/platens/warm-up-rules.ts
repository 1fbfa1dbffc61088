import type { RecordingHead } from '../../core/recording/RecordingEntry.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { parseTemperatureDifference } from '../../core/units/parse-temperature-difference.ts';
import { DEFAULT_WARM_UP_RULES } from '../../core/warm-up/default-warm-up-rules.ts';
import type { WarmUpRules } from '../../core/warm-up/WarmUp.ts';
import { OptionError } from '../options/OptionError.ts';
import { parsePlatens } from '../options/run-rules.ts';

export interface WarmUpRuleOptions {
  readonly platens?: string;
  readonly band?: string;
  readonly for?: string;
  readonly recoveryBand?: string;
}

/** Rules of a warm-up: an option goes before the recording's head, that before the trade's defaults. */
export function warmUpRules(options: WarmUpRuleOptions, head: RecordingHead | null): WarmUpRules {
  return {
    ...DEFAULT_WARM_UP_RULES,
    setPointC:
      options.platens === undefined
        ? (head?.platenSetPointC ?? null)
        : parsePlatens(options.platens, '--platens'),
    ready: {
      bandC:
        options.band === undefined
          ? DEFAULT_WARM_UP_RULES.ready.bandC
          : aboveZero(parseTemperatureDifference(options.band, '--band'), '--band', '5F'),
      forS:
        options.for === undefined ? DEFAULT_WARM_UP_RULES.ready.forS : parseDuration(options.for, '--for'),
    },
    recoveryBandC:
      options.recoveryBand === undefined
        ? DEFAULT_WARM_UP_RULES.recoveryBandC
        : aboveZero(
            parseTemperatureDifference(options.recoveryBand, '--recovery-band'),
            '--recovery-band',
            '2F',
          ),
  };
}

export function aboveZero(value: number, option: string, example: string): number {
  if (value > 0) return value;
  throw new OptionError(`${option}: expected a difference above 0`, `Write for example ${option} ${example}`);
}
