import type { PlatenSurvey } from '../survey/PlatenSurvey.ts';
import { differenceCToF } from '../units/difference-c-to-f.ts';
import { temperatureCToF } from '../units/temperature-c-to-f.ts';
import { differenceText, numberText, type TemperatureUnit, temperatureText } from './units-text.ts';

const degrees = (c: number, unit: TemperatureUnit): string =>
  numberText(unit === 'F' ? temperatureCToF(c) : c, 1);

const signed = (value: number): string => {
  const text = numberText(Math.abs(value), 1);
  return Number(text) === 0 ? text : `${value > 0 ? '+' : '−'}${text}`;
};

/** Words of the map of a platen. */
export const SURVEY_MAP_TEXT = {
  title: 'Platen from above, front edge below',
  description: (survey: PlatenSurvey, unit: TemperatureUnit) =>
    `${survey.probes.map(({ label, meanC }) => `${label} ${temperatureText(meanC, unit)}`).join(', ')}; spread ${differenceText(survey.spreadC, unit)}.`,
  acrossAxis: 'mm from the left edge (front edge of the platen)',
  deepAxis: 'mm from the front edge',
  value: (c: number, unit: TemperatureUnit) => `${degrees(c, unit)} °${unit}`,
  fromMean: (differenceC: number, unit: TemperatureUnit) =>
    signed(unit === 'F' ? differenceCToF(differenceC) : differenceC),
  figures: (survey: PlatenSurvey, unit: TemperatureUnit): readonly string[] => [
    `mean ${temperatureText(survey.meanC, unit)}`,
    `▲ hottest ${temperatureText(survey.hottest.meanC, unit)}`,
    `▼ coldest ${temperatureText(survey.coldest.meanC, unit)}`,
    `spread ${differenceText(survey.spreadC, unit)}`,
    `${survey.withinLimit ? 'within' : 'OVER'} the limit of ${differenceText(survey.limitC, unit)}`,
    `small figures: from the mean, °${unit}`,
    'shade and lines between probes:',
    'a guide for the eye',
  ],
  step: (fromC: number, toC: number, unit: TemperatureUnit) =>
    `${degrees(fromC, unit)} to ${degrees(toC, unit)} °${unit}`,
} as const;

/** Words of the report of a platen survey. */
export const SURVEY_REPORT_TEXT = {
  title: 'Platen survey',
  subtitle: (press: string, platen: string) => `Press ${press}, ${platen}`,
  heading: 'Uniformity',
  mapHeading: 'Map',
  caption:
    'Temperature at each probe and, below it, its difference from the mean. Four steps of grey and level lines between the probes, weighted by the inverse square of the distance, are a guide for the eye, not a measurement.',
  verdict: (survey: PlatenSurvey, unit: TemperatureUnit) =>
    `Spread ${differenceText(survey.spreadC, unit)}: ${survey.withinLimit ? 'within' : 'OVER'} the limit of ${differenceText(survey.limitC, unit)}.`,
  noMap: 'The places of the probes are not known: there is no map.',
  mean: 'Mean',
  over: 'Averaged over',
  between: 'Standard deviation between places',
  hottest: 'Hottest',
  coldest: 'Coldest',
  setPoint: 'Set point',
  atProbe: (label: string, temperature: string) => `${label}, ${temperature}`,
  probesHeading: 'Probes',
  probe: 'Probe',
  place: 'Place, mm',
  placeOf: (xMm: number, yMm: number) => `${numberText(xMm, 0)} / ${numberText(yMm, 0)}`,
  readings: 'Readings',
  fromMean: 'From the mean',
  scatter: 'Scatter',
  drift: 'Drift a minute',
  signed: (differenceC: number, unit: TemperatureUnit) => {
    const words = differenceText(Math.abs(differenceC), unit);
    return differenceC < 0 ? `−${words}` : words;
  },
} as const;
