import type { PlatenSurvey, SurveyProbe } from './PlatenSurvey.ts';

/** A survey for scripts, units in the keys. */
export function surveyJson(survey: PlatenSurvey): Readonly<Record<string, unknown>> {
  return {
    averagedOverS: survey.overS,
    probes: survey.probes.map((probe) => ({
      ...probeJson(probe),
      differenceFromMeanC: probe.meanC - survey.meanC,
    })),
    hottest: probeJson(survey.hottest),
    coldest: probeJson(survey.coldest),
    spreadC: survey.spreadC,
    meanC: survey.meanC,
    sdC: survey.sdC,
    limitC: survey.limitC,
    withinLimit: survey.withinLimit,
    cautions: survey.cautions,
  };
}

function probeJson({ label, place, readings, meanC, sdC, driftCPerMin }: SurveyProbe) {
  return {
    label,
    xMm: place?.xMm ?? null,
    yMm: place?.yMm ?? null,
    readings,
    meanC,
    scatterC: sdC,
    driftCPerMin,
  };
}
