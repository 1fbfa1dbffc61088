import type { Probe, ProbeToleranceClass } from '../probe/Probe.ts';
import { probeErrorAt } from '../probe/probe-error-at.ts';
import type { ProbeTypeClash } from '../probe/probe-type-clashes.ts';
import { probeUncertaintyC } from '../probe/probe-uncertainty-c.ts';
import { neutralise } from './neutralise.ts';
import { differenceText, type TemperatureUnit, temperatureText } from './units-text.ts';

export const TOLERANCE_CLASS_NAME: Readonly<Record<ProbeToleranceClass, string>> = {
  'astm-standard': 'ASTM E230 standard',
  'astm-special': 'ASTM E230 special',
  'iec-class-1': 'IEC 60584-1 class 1',
  'iec-class-2': 'IEC 60584-1 class 2',
  'iec-class-3': 'IEC 60584-1 class 3',
};

/** A probe in a few lines: what it is, its calibration, and what that leaves open at the target. */
export function probeLines(probe: Probe, targetC: number, unit: TemperatureUnit): readonly string[] {
  const { toleranceClass, points } = probe;
  const kind = toleranceClass === null ? 'class not stated' : TOLERANCE_CLASS_NAME[toleranceClass];
  return [
    `${neutralise(probe.name)}: type ${probe.thermocoupleType}, ${kind}${points.length === 0 ? ', never calibrated' : ''}`,
    ...points.map(
      (point) =>
        `  at ${temperatureText(point.temperatureC, unit)} reads ${high(point.errorC, unit)}, ± ${differenceText(2 * point.standardUncertaintyC, unit)} (k = 2)${point.calibratedOn === null ? '' : `, ${neutralise(point.calibratedOn)}`}`,
    ),
    ...(points.length === 0 ? [] : [calibratedWith(probe, unit)]),
    `  ${probeAtTargetText(probe, targetC, unit)}`,
  ];
}

/** What is known of a probe at the target, in a sentence. */
export function probeAtTargetText(probe: Probe, targetC: number, unit: TemperatureUnit): string {
  const at = temperatureText(targetC, unit);
  const found = probeUncertaintyC(probe, targetC);
  const standard = `standard uncertainty ${differenceText(found.standardUncertaintyC, unit)}`;
  if (found.limitC !== null && found.toleranceClass !== null) {
    const assumed = found.classAssumed ? ' (the widest class of its type, for want of a stated one)' : '';
    return `At ${at}: anywhere within ± ${differenceText(found.limitC, unit)} by ${TOLERANCE_CLASS_NAME[found.toleranceClass]}${assumed}; ${standard}. Which way is not known: readings stay as they are.`;
  }
  const error = probeErrorAt(probe, targetC)?.errorC ?? 0;
  const takenOff = `readings are corrected by ${differenceText(-error, unit)}`;
  return found.from === 'calibration'
    ? `At ${at}: ${takenOff}; ${standard}.`
    : `At ${at}: EXTRAPOLATED, ${differenceText(found.distanceC ?? 0, unit)} from the nearest calibration point; ${takenOff}; ${standard}, growing with that distance. Calibrate on both sides of the target.`;
}

/** A probe on a channel that the reader has set to another type. */
export function probeTypeClashText({ channel, probeName, probeType, readerType }: ProbeTypeClash): string {
  return `channel ${channel}: probe ${neutralise(probeName)} is type ${probeType}, but the reader is set to type ${readerType}: every reading of it is wrong`;
}

function calibratedWith({ readerIncluded, headC, readerC }: Probe, unit: TemperatureUnit): string {
  const where = [
    headC === null ? '' : `connection head at ${temperatureText(headC, unit)}`,
    readerC === null ? '' : `reader at ${temperatureText(readerC, unit)}`,
  ].filter((part) => part !== '');
  const how = readerIncluded
    ? 'calibrated together with its reader'
    : 'calibrated without the reader: the reader’s own error is not in it';
  return `  ${how}${where.length === 0 ? '' : ` (${where.join(', ')})`}`;
}

function high(errorC: number, unit: TemperatureUnit): string {
  if (errorC === 0) return 'right';
  return `${differenceText(Math.abs(errorC), unit)} ${errorC > 0 ? 'high' : 'low'}`;
}
