import type { Samples } from '../run/collect-samples.ts';

/** Where a probe lies on the platen: mm from its front left corner, x to the right, y to the back. */
export interface ProbePlace {
  readonly xMm: number;
  readonly yMm: number;
}

export interface SurveyedProbe {
  readonly label: string;
  readonly place: ProbePlace | null;
  readonly samples: Samples;
}

export interface SurveyProbe {
  readonly label: string;
  readonly place: ProbePlace | null;
  readonly readings: number;
  readonly meanC: number;
  /** Scatter of its readings about their mean, °C. */
  readonly sdC: number;
  /** Mean of the last half less mean of the first, per minute, °C. */
  readonly driftCPerMin: number;
}

export type SurveyCaution = 'not-steady' | 'few-probes' | 'no-places';

/** Uniformity of one platen. Temperatures in °C, differences in °C. */
export interface PlatenSurvey {
  readonly overS: number;
  readonly probes: readonly SurveyProbe[];
  readonly hottest: SurveyProbe;
  readonly coldest: SurveyProbe;
  /** Hottest mean less coldest mean. */
  readonly spreadC: number;
  readonly meanC: number;
  /** Standard deviation of the probes' means. */
  readonly sdC: number;
  readonly limitC: number;
  readonly withinLimit: boolean;
  readonly cautions: readonly SurveyCaution[];
}

/** Largest spread allowed: 10 °F. Common practice, no source; changeable. */
export const DEFAULT_SPREAD_LIMIT_C = 10 / 1.8;
