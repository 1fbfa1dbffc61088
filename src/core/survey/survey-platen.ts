import { sampleMean } from '../statistics/sample-mean.ts';
import { sampleSd } from '../statistics/sample-sd.ts';
import { WarmUpError } from '../warm-up/WarmUpError.ts';
import type { PlatenSurvey, SurveyCaution, SurveyedProbe, SurveyProbe } from './PlatenSurvey.ts';

/** Below this number a map says little. Judgement, no source. */
const GOOD_PROBES = 5;
const LEAST_READINGS = 10;
/** A platen that moves faster is not steady, °C/min. Judgement, no source. */
const STEADY_C_PER_MIN = 0.5;

/**
 * Uniformity of a platen: each probe's mean over the same `overS` up to `endS`, hottest less coldest, the standard
 * deviation of the means (n − 1), against a limit. Refuses under two probes, or a probe with under ten readings in that time.
 */
export function surveyPlaten(
  probes: readonly SurveyedProbe[],
  { overS, endS, limitC }: { readonly overS: number; readonly endS: number; readonly limitC: number },
): PlatenSurvey {
  if (probes.length < 2) {
    throw new WarmUpError(
      'too-few-probes',
      `a platen survey requires two probes on one platen or more, came ${probes.length}`,
      'Say what each channel is laid on, for example --roles lower-platen,lower-platen,lower-platen',
    );
  }
  const measured = probes.map((probe) => measure(probe, endS - overS, endS));
  const means = measured.map((probe) => probe.meanC);
  const hottest = measured[means.indexOf(Math.max(...means))]!;
  const coldest = measured[means.indexOf(Math.min(...means))]!;
  const spreadC = hottest.meanC - coldest.meanC;
  const cautions: SurveyCaution[] = [];
  if (measured.some((probe) => Math.abs(probe.driftCPerMin) > STEADY_C_PER_MIN)) cautions.push('not-steady');
  if (probes.length < GOOD_PROBES) cautions.push('few-probes');
  if (probes.some((probe) => probe.place === null)) cautions.push('no-places');
  return {
    overS,
    probes: measured,
    hottest,
    coldest,
    spreadC,
    meanC: sampleMean(means),
    sdC: sampleSd(means),
    limitC,
    withinLimit: spreadC <= limitC,
    cautions,
  };
}

function measure({ label, place, samples }: SurveyedProbe, fromS: number, toS: number): SurveyProbe {
  const first: number[] = [];
  const last: number[] = [];
  samples.timesS.forEach((timeS, i) => {
    if (timeS < fromS || timeS > toS) return;
    (timeS < (fromS + toS) / 2 ? first : last).push(samples.valuesC[i]!);
  });
  const all = [...first, ...last];
  if (all.length < LEAST_READINGS || first.length === 0 || last.length === 0) {
    throw new WarmUpError(
      'too-few-readings',
      `${label}: a survey requires ${LEAST_READINGS} readings spread over the averaged time, came ${all.length}`,
      'Check the probe, name its channel "unused" with --roles, or choose the time with --over and --at',
    );
  }
  return {
    label,
    place,
    readings: all.length,
    meanC: sampleMean(all),
    sdC: sampleSd(all),
    driftCPerMin: (sampleMean(last) - sampleMean(first)) / ((toS - fromS) / 2 / 60),
  };
}
