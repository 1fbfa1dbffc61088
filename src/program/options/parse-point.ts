import { boilingPointC, ICE_POINT_C } from '../../core/probe/boiling-point-c.ts';
import type { CalibrationPoint } from '../../core/probe/Probe.ts';
import { parseTemperature } from '../../core/units/parse-temperature.ts';
import { parseTemperatureDifference } from '../../core/units/parse-temperature-difference.ts';
import { OptionError } from './OptionError.ts';

export interface PointContext {
  readonly uncertaintyIs: 'expanded' | 'standard';
  /** Absolute, kPa; null where not stated. */
  readonly airPressureKpa: number | null;
  readonly calibratedOn: string | null;
}

/** Coverage factor of a certificate that states expanded uncertainties. Common practice (ISO/IEC 17025 certificates), from memory. */
const CERTIFICATE_K = 2;

/**
 * `177C:-0.6C:0.5C:2026-03-01`: temperature, error (what the probe read less the reference), uncertainty, date.
 * `ice` and `boiling` stand for 0 °C and the boiling point at the place's air pressure.
 */
export function parsePoint(text: string, context: PointContext): CalibrationPoint {
  const [at, error, uncertainty, date, ...more] = text.split(':').map((part) => part.trim());
  if (at === undefined || error === undefined || uncertainty === undefined || more.length > 0) {
    throw new OptionError(
      `--point: expected temperature:error:uncertainty and perhaps a date, came "${text}"`,
      'Write --point 177C:-0.6C:0.5C or --point 177C:-0.6C:0.5C:2026-03-01',
    );
  }
  const stated = parseTemperatureDifference(uncertainty, '--point');
  return {
    temperatureC: temperature(at, context.airPressureKpa),
    errorC: parseTemperatureDifference(error, '--point'),
    standardUncertaintyC: context.uncertaintyIs === 'expanded' ? stated / CERTIFICATE_K : stated,
    calibratedOn: date === undefined ? context.calibratedOn : parseDay(date, '--point'),
  };
}

function temperature(text: string, airPressureKpa: number | null): number {
  if (text.toLowerCase() === 'ice') return ICE_POINT_C;
  if (text.toLowerCase() !== 'boiling') return parseTemperature(text, '--point');
  if (airPressureKpa !== null) return boilingPointC(airPressureKpa);
  throw new OptionError(
    '--point boiling: water boils at another temperature at every air pressure, and none is given',
    'Give the pressure at the place, not reduced to sea level: --air-pressure 985mbar',
  );
}

/** A day as 2026-03-01. */
export function parseDay(text: string, option: string): string {
  const day = /^\d{4}-\d{2}-\d{2}$/.test(text) ? new Date(`${text}T00:00:00Z`) : new Date(Number.NaN);
  if (!Number.isNaN(day.getTime()) && day.toISOString().startsWith(text)) return text;
  throw new OptionError(`${option}: expected a day, came "${text}"`, 'Write it as 2026-03-01');
}
