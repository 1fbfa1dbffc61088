import { carrierWarm } from './carrier-warm.ts';
import { extensionReversed } from './extension-reversed.ts';
import { fromOnset } from './from-onset.ts';
import { gap } from './gap.ts';
import { gapAtCrossing } from './gap-at-crossing.ts';
import { groundShift } from './ground-shift.ts';
import { holdDipped } from './hold-dipped.ts';
import { holdNotVerified } from './hold-not-verified.ts';
import { interference } from './interference.ts';
import { lateMark } from './late-mark.ts';
import { marksDisagree } from './marks-disagree.ts';
import { noPressClosed } from './no-press-closed.ts';
import { noReadings } from './no-readings.ts';
import { noisy } from './noisy.ts';
import { openedEarly } from './opened-early.ts';
import { peakAboveLimit } from './peak-above-limit.ts';
import { platenLow } from './platen-low.ts';
import { plugReversed } from './plug-reversed.ts';
import { probeNotAtBondLine } from './probe-not-at-bond-line.ts';
import { probeOnPlaten } from './probe-on-platen.ts';
import { probeOpenCircuit } from './probe-open-circuit.ts';
import type { RunCheck } from './RunCheck.ts';
import { readerRestarted } from './reader-restarted.ts';
import { readyCheckNotPassed } from './ready-check-not-passed.ts';
import { secondJunction } from './second-junction.ts';
import { slowRise } from './slow-rise.ts';
import { spoilt } from './spoilt.ts';
import { startedAboveTarget } from './started-above-target.ts';
import { targetNeverReached } from './target-never-reached.ts';
import { unevenBondLine } from './uneven-bond-line.ts';
import { wrongThermocoupleType } from './wrong-thermocouple-type.ts';

/** Every check, gravest causes first: the first reason of a severity is the one shown first. */
export const RUN_CHECKS: readonly RunCheck[] = [
  spoilt,
  noReadings,
  noPressClosed,
  probeOpenCircuit,
  plugReversed,
  probeOnPlaten,
  startedAboveTarget,
  gapAtCrossing,
  targetNeverReached,
  secondJunction,
  extensionReversed,
  wrongThermocoupleType,
  probeNotAtBondLine,
  groundShift,
  interference,
  carrierWarm,
  platenLow,
  slowRise,
  unevenBondLine,
  lateMark,
  marksDisagree,
  openedEarly,
  fromOnset,
  readyCheckNotPassed,
  readerRestarted,
  gap,
  holdDipped,
  holdNotVerified,
  peakAboveLimit,
  noisy,
];
