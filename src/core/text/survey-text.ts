import { drawSurveyMap, type SurveyMap, type SurveyMapOptions } from '../survey/draw-survey-map.ts';
import type { PlatenSurvey, SurveyCaution } from '../survey/PlatenSurvey.ts';
import { CAUTIONS } from './cautions.ts';
import { differenceText, numberText, temperatureText } from './units-text.ts';
import { tableLines, timeText } from './warm-up-text.ts';

/** What a survey cannot say, or says with doubt. */
export const SURVEY_CAUTION: Readonly<Record<SurveyCaution, string>> = {
  'not-steady':
    'A probe moved by more than 0.5 °C a minute: wait until the platen is steady, then survey again.',
  'few-probes': 'Fewer than five probes: spots between them may be hotter or colder.',
  'no-places': 'Places are not known, so there is no map: give --positions.',
};

/** Said beside every survey: what the probes alone may account for. */
export const PROBE_NOTE =
  'Note: thermocouple wires inside their standard tolerance may differ by 4.4 °C (7.9 °F) among themselves (±2.2 °C each, ASTM E230): compare the probes in one place before you blame the platen.';

/** A survey: table of probes, figures against the limit, the map, cautions. The caution before touching the press comes first. */
export function surveyLines(survey: PlatenSurvey, options: SurveyMapOptions): readonly string[] {
  const { unit } = options;
  const map = drawSurveyMap(survey, options);
  return [
    ...CAUTIONS.repair.map((text) => `CAUTION: ${text}`),
    '',
    ...tableLines([
      ['probe', 'place', 'mean', 'from mean'],
      ...survey.probes.map((probe) => [
        probe.label,
        probe.place === null
          ? '—'
          : `${numberText(probe.place.xMm, 0)} / ${numberText(probe.place.yMm, 0)} mm`,
        temperatureText(probe.meanC, unit),
        differenceText(probe.meanC - survey.meanC, unit),
      ]),
    ]),
    '',
    ...(map === null ? [] : [...map.lines, ...legend(options), ...crowded(map), '']),
    `Mean ${temperatureText(survey.meanC, unit)} over ${timeText(survey.overS)}; standard deviation between places ${differenceText(survey.sdC, unit)}.`,
    `Hottest ${survey.hottest.label}: ${temperatureText(survey.hottest.meanC, unit)}. Coldest ${survey.coldest.label}: ${temperatureText(survey.coldest.meanC, unit)}.`,
    `Spread ${differenceText(survey.spreadC, unit)}: ${survey.withinLimit ? 'within' : 'OVER'} the limit of ${differenceText(survey.limitC, unit)}.`,
    ...survey.cautions.map((caution) => `Note: ${SURVEY_CAUTION[caution]}`),
    PROBE_NOTE,
  ];
}

function legend({ unit, ascii }: SurveyMapOptions): readonly string[] {
  return [
    `Front edge below. Difference from the mean in °${unit}; ${ascii ? '^ hottest, v' : '▲ hottest, ▼'} coldest.`,
    'The shade between probes is a guide for the eye, not a measurement.',
  ];
}

function crowded({ leftOut }: SurveyMap): readonly string[] {
  return leftOut.length === 0
    ? []
    : [`No room on the map for ${leftOut.map((one) => one.label).join(', ')}.`];
}
