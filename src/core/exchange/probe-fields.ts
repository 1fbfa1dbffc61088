import type { CalibrationPoint, Probe } from '../probe/Probe.ts';
import { type ExportField, field } from './ExportField.ts';

/** A version of a probe with one of its calibration points; a version without any has one row with none. */
export interface ProbeRow {
  readonly probe: Probe;
  readonly savedAt: string;
  readonly latest: boolean;
  readonly point: CalibrationPoint | null;
}

/** The rows of a probe's history, the latest version first. */
export function* probeRows(
  history: readonly { readonly savedAt: string; readonly probe: Probe }[],
): Generator<ProbeRow> {
  for (const [version, { probe, savedAt }] of history.entries()) {
    const points = probe.points.length === 0 ? [null] : probe.points;
    for (const point of points) yield { probe, savedAt, latest: version === 0, point };
  }
}

/** Fields of `export probes`, one row a calibration point of each version. */
export const PROBE_FIELDS: readonly ExportField<ProbeRow>[] = [
  field('probe', 'probe', ({ probe }) => probe.name),
  field('savedAt', 'when this version was entered, date and time', ({ savedAt }) => savedAt),
  field('latest', 'true for the version that holds now', ({ latest }) => latest),
  field('thermocoupleType', 'letter of the thermocouple type', ({ probe }) => probe.thermocoupleType),
  field(
    'toleranceClass',
    'tolerance class of the wire; empty where not known',
    ({ probe }) => probe.toleranceClass,
  ),
  field(
    'readerIncluded',
    'true where probe and reader were calibrated together',
    ({ probe }) => probe.readerIncluded,
  ),
  field('headC', 'connection head during the calibration', ({ probe }) => probe.headC),
  field('readerC', 'reader during the calibration', ({ probe }) => probe.readerC),
  field(
    'temperatureC',
    'calibration point: reference; empty where never calibrated',
    ({ point }) => point?.temperatureC ?? null,
  ),
  field('errorC', 'probe less reference, a difference', ({ point }) => point?.errorC ?? null),
  field(
    'standardUncertaintyC',
    'standard uncertainty of that error',
    ({ point }) => point?.standardUncertaintyC ?? null,
  ),
  field('calibratedOn', 'day of the calibration', ({ point }) => point?.calibratedOn ?? null),
];
