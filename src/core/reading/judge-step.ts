import { signedStep } from './signed-step.ts';

/** Host and reader may differ by this much over a step before their relation counts as broken: 2 s + 10 %. */
const STEP_TOLERANCE_US = 2_000_000;
/** A number this little behind the latest is a line out of order, until a second one follows on from it. */
const OUT_OF_ORDER_SAMPLES = 64;

/** What lies between the latest reading and the next sample. Fields of an absent counter are null. */
export interface Step {
  /** Steps of the sequence number, the shorter way round. */
  sequenceSteps: number | null;
  deviceUs: number | null;
  /** By the host's clock, with the time that it slept. */
  hostUs: number;
  /** Usual step; infinite while not known. */
  intervalUs: number;
  /** The reader said that it started. */
  started: boolean;
  broken: 'unplugged' | 'host-asleep' | null;
  /** The sample follows on from one that was taken for late. */
  followsStrayed: boolean;
}

export type StepJudgement =
  | 'goes-on'
  /** Goes on by the reader's clock; the host's stood still meanwhile. */
  | 'host-slept'
  | 'repeated'
  | 'late'
  /** The reader's counters began anew: only arrival tells the time between. */
  | 'began-anew'
  /** The same, seen from a file's clock that ran backwards. */
  | 'ran-backwards';

interface Wraps {
  readonly clockWrapUs: number | null;
  readonly sequenceWrap: number | null;
}

/** How far host and reader may differ over a step, µs. */
export function stepToleranceUs(hostUs: number): number {
  return STEP_TOLERANCE_US + 0.1 * hostUs;
}

/** Step of the reader's clock, µs; over more than half its period the host tells how often it went round. */
export function deviceStepUs(fromUs: number, toUs: number, hostUs: number, wrapUs: number | null): number {
  const stepUs = signedStep(fromUs, toUs, wrapUs);
  if (wrapUs === null || hostUs <= wrapUs / 2) return stepUs;
  return stepUs + wrapUs * Math.round((hostUs - stepUs) / wrapUs);
}

/** Judges from sequence numbers, both clocks and what reader and host said whether the reader's counters go on. */
export function judgeStep(step: Step, { clockWrapUs, sequenceWrap }: Wraps): StepJudgement {
  const { sequenceSteps, deviceUs, hostUs, intervalUs, broken } = step;
  const toleranceUs = stepToleranceUs(hostUs);
  const clocksAgree = deviceUs !== null && Math.abs(deviceUs - hostUs) <= toleranceUs;
  if (step.started) return 'began-anew';
  if (broken === 'unplugged')
    return deviceUs === null || (clocksAgree && deviceUs >= 0) ? 'goes-on' : 'began-anew';
  if (broken === 'host-asleep') {
    if (deviceUs === null) return 'goes-on';
    return deviceUs >= 0 && (sequenceSteps === null || sequenceSteps > 0) ? 'goes-on' : 'began-anew';
  }
  if (sequenceSteps === 0 && (deviceUs === null || deviceUs === 0)) return 'repeated';
  let anew = false;
  if (sequenceSteps !== null && sequenceSteps < 0) {
    const near = sequenceSteps >= -OUT_OF_ORDER_SAMPLES;
    if (near && !step.followsStrayed) return 'late';
    // Else so long a silence that the sequence counter went round, or counters begun anew.
    anew = near || !(clocksAgree && (deviceUs as number) > ((sequenceWrap ?? 0) / 4) * intervalUs);
  }
  if (deviceUs !== null && deviceUs < 0) return clockWrapUs === null ? 'ran-backwards' : 'began-anew';
  if (anew) return 'began-anew';
  if (clockWrapUs === null || deviceUs === null || deviceUs <= hostUs + toleranceUs) return 'goes-on';
  // The reader's clock ran on without the host's: asleep, if the samples missing meanwhile are missing.
  const missing = sequenceSteps !== null && sequenceSteps > 1;
  return missing && deviceUs <= 2 * sequenceSteps * intervalUs + STEP_TOLERANCE_US
    ? 'host-slept'
    : 'began-anew';
}
