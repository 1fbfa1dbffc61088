import { carrierWarm } from './carrier-warm.ts';
import { fromOnset } from './from-onset.ts';
import { gap } from './gap.ts';
import { gapAtCrossing } from './gap-at-crossing.ts';
import { holdDipped } from './hold-dipped.ts';
import { holdNotVerified } from './hold-not-verified.ts';
import { lateMark } from './late-mark.ts';
import { marksDisagree } from './marks-disagree.ts';
import { noPressClosed } from './no-press-closed.ts';
import { noReadings } from './no-readings.ts';
import { openedEarly } from './opened-early.ts';
import { probeOpenCircuit } from './probe-open-circuit.ts';
import type { RunCheck } from './RunCheck.ts';
import { readerRestarted } from './reader-restarted.ts';
import { spoilt } from './spoilt.ts';
import { startedAboveTarget } from './started-above-target.ts';
import { targetNeverReached } from './target-never-reached.ts';

/** Every check, gravest causes first: the first reason of a severity is the one shown first. */
export const RUN_CHECKS: readonly RunCheck[] = [
  spoilt,
  noReadings,
  noPressClosed,
  probeOpenCircuit,
  startedAboveTarget,
  gapAtCrossing,
  targetNeverReached,
  carrierWarm,
  lateMark,
  marksDisagree,
  openedEarly,
  fromOnset,
  readerRestarted,
  gap,
  holdDipped,
  holdNotVerified,
];
