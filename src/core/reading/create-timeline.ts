import { createArrivalMap } from './create-arrival-map.ts';
import { createClockFit } from './create-clock-fit.ts';
import { createIntervalEstimate } from './create-interval-estimate.ts';
import type { ClockComparison, GapCause } from './StreamEvent.ts';
import { signedStep } from './signed-step.ts';

/** Host and reader may differ by this much over a step before their relation counts as broken: 2 s + 10 %. */
const STEP_TOLERANCE_US = 2_000_000;
/** A number this little behind the latest is a line out of order, until a second one follows on from it. */
const OUT_OF_ORDER_SAMPLES = 64;

/** Where a sample lies in time. One object, filled anew at each call: read it before the next. */
export interface Placement {
  /** False: repeated or out of order, not to be used. */
  placed: boolean;
  timeUs: number;
  /** A gap lies between the reading before and this one. */
  gapCause: GapCause | null;
  lostSamples: number | null;
  /** The reader's counters began anew. */
  restarted: boolean;
}

export interface Timeline {
  place(sequence: number | null, deviceUs: number | null, arrivedUs: number): Placement;
  /** Time of something the reader stamped itself (a contact edge), or null if only the next sample can tell. */
  stampedTimeUs(deviceUs: number, arrivedUs: number): number | null;
  /** Time of something the host saw. */
  seenTimeUs(arrivedUs: number): number;
  /** The reader said that it started: its counters begin anew. */
  noteStarted(): void;
  noteOverflow(lostSamples: number): void;
  /** The link was away, or the host slept for `uncountedUs` that the arrival clock did not count. */
  noteBreak(cause: 'unplugged' | 'host-asleep', uncountedUs: number): void;
  readonly latestTimeUs: number | null;
  readonly clock: ClockComparison;
}

/**
 * Makes a reader's time continuous: µs from the recording's first reading, on the reader's clock where it has
 * one, else by arrival. Wraps are undone (over a long silence with the help of the arrival time); where the
 * counters begin anew, time goes on by arrival, and the step is a gap. Never runs backwards. O(1), constant memory.
 */
export function createTimeline(wraps: {
  readonly clockWrapUs: number | null;
  readonly sequenceWrap: number | null;
}): Timeline {
  const interval = createIntervalEstimate();
  const arrivals = createArrivalMap();
  const fit = createClockFit();
  const placement: Placement = {
    placed: true,
    timeUs: 0,
    gapCause: null,
    lostSamples: null,
    restarted: false,
  };
  let latestTimeUs: number | null = null;
  let latestDeviceUs: number | null = null;
  let latestSequence: number | null = null;
  let latestArrivedUs = 0;
  let strayedSequence: number | null = null;
  let started = false;
  let broken: 'unplugged' | 'host-asleep' | null = null;
  let uncountedUs = 0;
  let overflowed = 0;

  const settle = (
    sequence: number | null,
    deviceUs: number | null,
    arrivedUs: number,
    timeUs: number,
  ): void => {
    placement.placed = true;
    placement.timeUs = timeUs;
    latestTimeUs = timeUs;
    latestDeviceUs = deviceUs;
    latestSequence = sequence;
    latestArrivedUs = arrivedUs;
    strayedSequence = null;
    started = false;
    broken = null;
    uncountedUs = 0;
    overflowed = 0;
    arrivals.add(timeUs, arrivedUs);
    if (deviceUs !== null) fit.add(timeUs, arrivedUs);
  };

  return {
    place(sequence, deviceUs, arrivedUs) {
      placement.gapCause = null;
      placement.lostSamples = null;
      placement.restarted = false;
      if (latestTimeUs === null) {
        settle(sequence, deviceUs, arrivedUs, 0);
        return placement;
      }
      const { clockWrapUs, sequenceWrap } = wraps;
      const hostUs = Math.max(0, arrivedUs - latestArrivedUs) + uncountedUs;
      const toleranceUs = STEP_TOLERANCE_US + 0.1 * hostUs;
      const steps =
        sequence === null || latestSequence === null
          ? null
          : signedStep(latestSequence, sequence, sequenceWrap);
      let deviceStepUs: number | null = null;
      if (deviceUs !== null && latestDeviceUs !== null) {
        deviceStepUs = signedStep(latestDeviceUs, deviceUs, clockWrapUs);
        if (clockWrapUs !== null && hostUs > clockWrapUs / 2)
          deviceStepUs += clockWrapUs * Math.round((hostUs - deviceStepUs) / clockWrapUs);
      }
      const clocksAgree = deviceStepUs !== null && Math.abs(deviceStepUs - hostUs) <= toleranceUs;
      const intervalUs = interval.intervalUs ?? Number.POSITIVE_INFINITY;
      let anew = started;
      let backwards = false;
      let hostBehind = false;
      if (!anew && broken === null) {
        if (steps === 0 && (deviceStepUs === null || deviceStepUs === 0)) {
          placement.placed = false;
          return placement;
        }
        if (steps !== null && steps < 0 && steps >= -OUT_OF_ORDER_SAMPLES) {
          anew =
            strayedSequence !== null && signedStep(strayedSequence, sequence as number, sequenceWrap) === 1;
          strayedSequence = sequence;
          if (!anew) {
            placement.placed = false;
            return placement;
          }
        } else if (steps !== null && steps < 0) {
          // So long a silence that the sequence counter went round, or counters begun anew.
          anew = !(clocksAgree && (deviceStepUs as number) > ((sequenceWrap ?? 0) / 4) * intervalUs);
        }
        if (deviceStepUs !== null && deviceStepUs < 0) {
          anew = true;
          backwards = clockWrapUs === null;
        } else if (clockWrapUs !== null && deviceStepUs !== null && deviceStepUs > hostUs + toleranceUs) {
          // The reader's clock ran on without the host's: asleep, if the samples missing meanwhile are missing.
          hostBehind =
            steps !== null && steps > 1 && deviceStepUs <= 2 * steps * intervalUs + STEP_TOLERANCE_US;
          if (!hostBehind) anew = true;
        }
      } else if (!anew && deviceStepUs !== null) {
        const goesOn =
          broken === 'unplugged' ? clocksAgree : deviceStepUs >= 0 && (steps === null || steps > 0);
        anew = !goesOn || deviceStepUs < 0;
      }

      const latestUs = latestTimeUs;
      let timeUs: number;
      if (!anew && deviceStepUs !== null) timeUs = latestUs + deviceStepUs;
      else timeUs = Math.max(latestUs, arrivals.timeAtUs(arrivedUs) + uncountedUs);
      if (anew && interval.intervalUs !== null) timeUs = Math.max(timeUs, latestUs + interval.intervalUs);
      const stepUs = timeUs - latestUs;

      if (broken === 'unplugged') placement.gapCause = 'unplugged';
      else if (broken === 'host-asleep') {
        const nothingMissing =
          !anew && steps === 1 && deviceStepUs !== null && stepUs <= interval.silenceLimitUs;
        placement.gapCause = nothingMissing ? null : 'host-asleep';
      } else if (anew) placement.gapCause = backwards ? 'clock-backwards' : 'reader-restarted';
      else if ((steps !== null && (steps > 1 || steps < 0)) || overflowed > 0)
        placement.gapCause = hostBehind ? 'host-asleep' : 'lost-samples';
      else if (stepUs > interval.silenceLimitUs) placement.gapCause = 'silence';
      placement.restarted = anew && !backwards;
      if (placement.gapCause !== null) {
        const ambiguous =
          steps === null || steps < 0 || stepUs > ((sequenceWrap ?? Infinity) / 2) * intervalUs;
        if (!anew && !ambiguous) placement.lostSamples = Math.max(steps - 1, overflowed, 0);
        else if (overflowed > 0) placement.lostSamples = overflowed;
      }
      if (anew || hostBehind || broken !== null || uncountedUs > 0) fit.breakHere();
      else interval.add(steps !== null && steps > 1 ? stepUs / steps : stepUs);
      settle(sequence, deviceUs, arrivedUs, timeUs);
      return placement;
    },
    stampedTimeUs(deviceUs, arrivedUs) {
      if (latestTimeUs === null || latestDeviceUs === null || started || broken !== null) return null;
      const stepUs = signedStep(latestDeviceUs, deviceUs, wraps.clockWrapUs);
      const hostUs = Math.max(0, arrivedUs - latestArrivedUs);
      const credible = stepUs >= -STEP_TOLERANCE_US && stepUs <= hostUs + STEP_TOLERANCE_US + 0.1 * hostUs;
      return credible ? latestTimeUs + stepUs : null;
    },
    seenTimeUs(arrivedUs) {
      return latestTimeUs === null ? 0 : Math.max(latestTimeUs, arrivals.timeAtUs(arrivedUs) + uncountedUs);
    },
    noteStarted() {
      started = latestTimeUs !== null;
    },
    noteOverflow(lostSamples) {
      if (latestTimeUs !== null) overflowed += lostSamples;
    },
    noteBreak(cause, awayUs) {
      if (latestTimeUs === null) return;
      if (broken !== 'unplugged') broken = cause;
      uncountedUs += awayUs;
    },
    get latestTimeUs() {
      return latestTimeUs;
    },
    get clock() {
      return fit.comparison;
    },
  };
}
