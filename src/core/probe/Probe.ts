import type { ToleranceClass } from '../uncertainty/probe-tolerance-c.ts';
import type { ThermocoupleType } from '../wire/WireEvent.ts';

/** Tolerance class of new thermocouple wire. Class 3 of IEC 60584-1 is for cold work: −200 to 40 °C. */
export type ProbeToleranceClass = ToleranceClass | 'iec-class-3';

/** One temperature at which a probe was compared with a reference. */
export interface CalibrationPoint {
  /** Temperature of the reference, °C. */
  readonly temperatureC: number;
  /** What the probe read less the reference, a difference in °C: −0.6 where it reads 0.6 °C low. */
  readonly errorC: number;
  /** Standard uncertainty of that error, °C (the certificate's expanded uncertainty ÷ its coverage factor). */
  readonly standardUncertaintyC: number;
  /** Day of the calibration, ISO 8601 (2026-03-01); null where not stated. */
  readonly calibratedOn: string | null;
}

/** A thermocouple and what is known of it. A probe is never changed by a reading: raw readings stay raw. */
export interface Probe {
  readonly name: string;
  readonly thermocoupleType: ThermocoupleType;
  /** Null where not known: then the widest class of the type is assumed. */
  readonly toleranceClass: ProbeToleranceClass | null;
  /** Lowest temperature first; empty where the probe was never calibrated. */
  readonly points: readonly CalibrationPoint[];
  /** True when probe and reader were calibrated together: then the points hold the reader's error too. */
  readonly readerIncluded: boolean;
  /** Temperature of the connection head and of the reader during the calibration, °C; null where not noted. */
  readonly headC: number | null;
  readonly readerC: number | null;
}
