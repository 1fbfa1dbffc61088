import type { OperatorMark } from '../reading/StreamEvent.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import type { DwellRule } from '../trial/TrialResult.ts';

/** What the screen asks the program to do. Times: host monotonic clock, µs, of the key itself. */
export type TrialIntent =
  | {
      readonly kind: 'mark';
      readonly mark: OperatorMark;
      readonly atUs: number;
      /** A pedal that types a key, or the program itself (what the ready check found); else a key. */
      readonly by?: 'pedal' | 'command';
    }
  | {
      readonly kind: 'decide-run';
      /** Place in the standing's list of runs, 0 = first. */
      readonly run: number;
      readonly decision: 'set-aside' | 'taken-in' | 'automatic';
      readonly reason: string;
    }
  | {
      readonly kind: 'accept-recipe';
      readonly rule: DwellRule;
      readonly ruleReason: string | null;
      readonly initials: string;
      /** Ram gauge pressure that was confirmed in a ready check; null where none was. */
      readonly gaugePsi: number | null;
      readonly note: string;
    }
  | { readonly kind: 'cautions-acknowledged'; readonly atUs: number }
  | { readonly kind: 'scan'; readonly text: string; readonly atUs: number }
  | { readonly kind: 'unit'; readonly unit: TemperatureUnit }
  | { readonly kind: 'bell'; readonly why: 'crossing' | 'hold-done' | 'tried' }
  | { readonly kind: 'replay-pace'; readonly speed: number; readonly paused: boolean }
  | { readonly kind: 'quit' };
