import type { CureFacts } from '../../core/cure/CureFacts.ts';
import { CHANNEL_ROLES, type ChannelRole } from '../../core/recording/RecordingEntry.ts';
import type { RunRules } from '../../core/run/RunResult.ts';
import { parseDuration } from '../../core/units/parse-duration.ts';
import { parseTemperature } from '../../core/units/parse-temperature.ts';
import { type CureOptions, cureOptions } from './cure-options.ts';
import { OptionError } from './OptionError.ts';

export interface RuleOptions extends CureOptions {
  readonly target?: string;
  readonly hold?: string;
  readonly platens?: string;
  readonly dip?: 'restarts' | 'pauses';
  readonly closedAt?: string;
  readonly ambient?: string;
  readonly highestPeak?: string;
}

/** What is known without options: from a recording's head, an assembly, a press. Absent = unknown. */
export interface KnownConditions {
  readonly cure?: CureFacts | null | undefined;
  readonly highestPeakC?: number | null | undefined;
  readonly targetC?: number | undefined;
  readonly holdS?: number | undefined;
  readonly ambientC?: number | undefined;
  readonly dip?: 'restarts' | 'pauses' | undefined;
  readonly closedAtS?: number | undefined;
  readonly riseUnderWay?: 'left-out' | undefined;
  readonly platenSetPointC?: { readonly upper: number; readonly lower: number } | null | undefined;
}

/** Defaults of the trade (common practice, no source): 350 °F, hold 120 s; changeable by option. */
const DEFAULT_TARGET_C = (350 - 32) / 1.8;
const DEFAULT_HOLD_S = 120;

/** Rules of run detection: an option goes before what is known, what is known before the trade's default. */
export function runRules(options: RuleOptions, known: KnownConditions = {}): RunRules {
  const cure = cureOptions(options) ?? known.cure ?? null;
  const highestPeakC =
    options.highestPeak === undefined
      ? (known.highestPeakC ?? null)
      : parseTemperature(options.highestPeak, '--highest-peak');
  return {
    ...(cure === null ? {} : { cure }),
    ...(highestPeakC === null ? {} : { highestPeakC }),
    ...(known.riseUnderWay === undefined ? {} : { riseUnderWay: known.riseUnderWay }),
    targetC:
      options.target === undefined
        ? (known.targetC ?? DEFAULT_TARGET_C)
        : parseTemperature(options.target, '--target'),
    holdS:
      options.hold === undefined ? (known.holdS ?? DEFAULT_HOLD_S) : parseDuration(options.hold, '--hold'),
    longestDipS: 2,
    dip: options.dip ?? known.dip ?? 'restarts',
    platenSetPointC:
      options.platens === undefined
        ? (known.platenSetPointC ?? null)
        : parsePlatens(options.platens, '--platens'),
    ambientC:
      options.ambient === undefined
        ? (known.ambientC ?? null)
        : parseTemperature(options.ambient, '--ambient'),
    warmCarrierLimitC: 15,
    closingDisagreementLimitS: 1,
    closedAtS:
      options.closedAt === undefined
        ? (known.closedAtS ?? null)
        : parseDuration(options.closedAt, '--closed-at', { negative: true }),
  };
}

/** `450F` for both platens, or `450F/445F`: upper, then lower. */
export function parsePlatens(
  text: string,
  option: string,
): { readonly upper: number; readonly lower: number } {
  const parts = text.split('/');
  if (parts.length > 2) {
    throw new OptionError(
      `${option}: expected one or two temperatures parted by a slash, came "${text}"`,
      'Write 450F, or 450F/445F for upper and lower',
    );
  }
  const upper = parseTemperature(parts[0] as string, option);
  return { upper, lower: parts[1] === undefined ? upper : parseTemperature(parts[1], option) };
}

/** `bond-line,bond-line-outer,upper-platen,lower-platen`: channel 1 first. */
export function parseRoles(
  text: string,
  option: string,
  { bondLine = 'needed' }: { readonly bondLine?: 'needed' | 'optional' } = {},
): readonly ChannelRole[] {
  const roles = text.split(',').map((part) => part.trim());
  for (const role of roles) {
    if (!(CHANNEL_ROLES as readonly string[]).includes(role)) {
      throw new OptionError(
        `${option}: "${role}" is no place for a probe`,
        `Use ${CHANNEL_ROLES.join(', ')}; channel 1 first, parted by commas`,
      );
    }
  }
  if (bondLine === 'needed' && !roles.some((role) => role.startsWith('bond-line'))) {
    throw new OptionError(`${option}: no channel is on the bond line`, 'Name one channel bond-line');
  }
  return roles as ChannelRole[];
}
