import { createArrivalMap } from './create-arrival-map.ts';
import { createClockFit } from './create-clock-fit.ts';
import { createIntervalEstimate } from './create-interval-estimate.ts';
import { deviceStepUs, judgeStep, type Step, type StepJudgement, stepToleranceUs } from './judge-step.ts';
import type { ClockComparison, GapCause } from './StreamEvent.ts';
import { signedStep } from './signed-step.ts';

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
  const step: Step = {
    sequenceSteps: null,
    deviceUs: null,
    hostUs: 0,
    intervalUs: Number.POSITIVE_INFINITY,
    started: false,
    broken: null,
    followsStrayed: false,
  };
  let uncountedUs = 0;
  let overflowed = 0;

  const settle = (
    sequence: number | null,
    deviceUs: number | null,
    arrivedUs: number,
    timeUs: number,
  ): void => {
    placement.timeUs = timeUs;
    latestTimeUs = timeUs;
    latestDeviceUs = deviceUs;
    latestSequence = sequence;
    latestArrivedUs = arrivedUs;
    strayedSequence = null;
    step.started = false;
    step.broken = null;
    uncountedUs = 0;
    overflowed = 0;
    arrivals.add(timeUs, arrivedUs);
    if (deviceUs !== null) fit.add(timeUs, arrivedUs);
  };

  const gapCauseOf = (judgement: StepJudgement, stepUs: number): GapCause | null => {
    const { sequenceSteps, deviceUs, broken } = step;
    if (broken === 'unplugged') return 'unplugged';
    const anew = judgement === 'began-anew' || judgement === 'ran-backwards';
    if (broken === 'host-asleep') {
      const nothingMissing =
        !anew && sequenceSteps === 1 && deviceUs !== null && stepUs <= interval.silenceLimitUs;
      return nothingMissing ? null : 'host-asleep';
    }
    if (anew) return judgement === 'began-anew' ? 'reader-restarted' : 'clock-backwards';
    if (judgement === 'host-slept') return 'host-asleep';
    const missing = sequenceSteps !== null && (sequenceSteps > 1 || sequenceSteps < 0);
    if (missing || overflowed > 0) return 'lost-samples';
    return stepUs > interval.silenceLimitUs ? 'silence' : null;
  };

  /** Samples missing in a step; null where no number tells, or its counter may have gone round meanwhile. */
  const lostIn = (stepUs: number): number | null => {
    const { sequenceSteps, intervalUs } = step;
    const roundUs = ((wraps.sequenceWrap ?? Number.POSITIVE_INFINITY) / 2) * intervalUs;
    const told = sequenceSteps !== null && sequenceSteps >= 0 && stepUs <= roundUs;
    return told ? Math.max(sequenceSteps - 1, overflowed, 0) : overflowed || null;
  };

  return {
    place(sequence, deviceUs, arrivedUs) {
      placement.gapCause = null;
      placement.lostSamples = null;
      placement.restarted = false;
      placement.placed = true;
      if (latestTimeUs === null) {
        settle(sequence, deviceUs, arrivedUs, 0);
        return placement;
      }
      const { clockWrapUs, sequenceWrap } = wraps;
      step.hostUs = Math.max(0, arrivedUs - latestArrivedUs) + uncountedUs;
      step.sequenceSteps =
        sequence === null || latestSequence === null
          ? null
          : signedStep(latestSequence, sequence, sequenceWrap);
      step.deviceUs =
        deviceUs === null || latestDeviceUs === null
          ? null
          : deviceStepUs(latestDeviceUs, deviceUs, step.hostUs, clockWrapUs);
      step.intervalUs = interval.intervalUs ?? Number.POSITIVE_INFINITY;
      step.followsStrayed =
        sequence !== null &&
        strayedSequence !== null &&
        signedStep(strayedSequence, sequence, sequenceWrap) === 1;
      const judgement = judgeStep(step, wraps);
      if (judgement === 'late') strayedSequence = sequence;
      placement.placed = judgement !== 'repeated' && judgement !== 'late';
      if (!placement.placed) return placement;

      const anew = judgement === 'began-anew' || judgement === 'ran-backwards';
      let timeUs: number;
      if (!anew && step.deviceUs !== null) timeUs = latestTimeUs + step.deviceUs;
      else timeUs = Math.max(latestTimeUs, arrivals.timeAtUs(arrivedUs) + uncountedUs);
      if (anew && interval.intervalUs !== null) timeUs = Math.max(timeUs, latestTimeUs + interval.intervalUs);
      const stepUs = timeUs - latestTimeUs;
      placement.restarted = judgement === 'began-anew';
      placement.gapCause = gapCauseOf(judgement, stepUs);
      if (placement.gapCause !== null) placement.lostSamples = anew ? overflowed || null : lostIn(stepUs);
      if (anew || judgement === 'host-slept' || step.broken !== null) fit.breakHere();
      else
        interval.add(
          step.sequenceSteps !== null && step.sequenceSteps > 1 ? stepUs / step.sequenceSteps : stepUs,
        );
      settle(sequence, deviceUs, arrivedUs, timeUs);
      return placement;
    },
    stampedTimeUs(deviceUs, arrivedUs) {
      if (latestTimeUs === null || latestDeviceUs === null || step.started || step.broken !== null)
        return null;
      const stepUs = signedStep(latestDeviceUs, deviceUs, wraps.clockWrapUs);
      const hostUs = Math.max(0, arrivedUs - latestArrivedUs);
      const credible = stepUs >= -stepToleranceUs(0) && stepUs <= hostUs + stepToleranceUs(hostUs);
      return credible ? latestTimeUs + stepUs : null;
    },
    seenTimeUs(arrivedUs) {
      return latestTimeUs === null ? 0 : Math.max(latestTimeUs, arrivals.timeAtUs(arrivedUs) + uncountedUs);
    },
    noteStarted() {
      step.started = latestTimeUs !== null;
    },
    noteOverflow(lostSamples) {
      if (latestTimeUs !== null && lostSamples > 0) overflowed += lostSamples;
    },
    noteBreak(cause, awayUs) {
      if (latestTimeUs === null) return;
      if (step.broken !== 'unplugged') step.broken = cause;
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
