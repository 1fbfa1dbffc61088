import { surveyMap } from '../figure/survey-map.ts';
import type { Probe } from '../probe/Probe.ts';
import type { ChannelRole, RecordingHead } from '../recording/RecordingEntry.ts';
import type { PlatenSurvey } from '../survey/PlatenSurvey.ts';
import { neutralise } from '../text/neutralise.ts';
import { ROLE_NAME } from '../text/report-text.ts';
import { SURVEY_REPORT_TEXT } from '../text/survey-report-text.ts';
import { PROBE_NOTE, SURVEY_CAUTION } from '../text/survey-text.ts';
import {
  differenceText,
  numberText,
  secondsText,
  type TemperatureUnit,
  temperatureText,
} from '../text/units-text.ts';
import { probesSection } from './equipment-section.ts';
import { fact } from './fact.ts';
import { type PlatenRecording, platenDataSection } from './platen-data-section.ts';
import type { ReportContent, ReportSection } from './ReportContent.ts';
import { cautionsSection, signaturesSection } from './standing-sections.ts';

export interface SurveyReportInput {
  readonly survey: PlatenSurvey;
  readonly platen: ChannelRole;
  readonly pressName: string | null;
  readonly heads: readonly (RecordingHead | null)[];
  readonly recordings: readonly PlatenRecording[];
  readonly probes: readonly Probe[];
  readonly equipment: readonly string[];
  readonly simulated: boolean;
  readonly note: string | null;
  readonly unit: TemperatureUnit;
  readonly madeAt: string;
  readonly program: string;
}

/** Report of a platen survey: spread against its limit, map, a row a probe, probes with their calibration, data. */
export function surveyReport(input: SurveyReportInput): ReportContent {
  const { survey, unit, simulated } = input;
  const picture = surveyMap({ survey, unit, simulated });
  const press = input.pressName === null ? '—' : neutralise(input.pressName, { longest: 80 });
  return {
    title: SURVEY_REPORT_TEXT.title,
    subtitle: SURVEY_REPORT_TEXT.subtitle(press, ROLE_NAME[input.platen].toLowerCase()),
    simulated,
    reference: '',
    madeAt: input.madeAt,
    program: input.program,
    sections: [
      verdictSection(input),
      {
        heading: SURVEY_REPORT_TEXT.mapHeading,
        blocks: [
          picture === null
            ? { kind: 'paragraphs', lines: [SURVEY_REPORT_TEXT.noMap] }
            : { kind: 'figure', picture, caption: SURVEY_REPORT_TEXT.caption },
        ],
      },
      probesTable(input),
      probesSection({ probes: input.probes, equipment: input.equipment, atC: survey.meanC, unit }),
      cautionsSection('repair', 'probe'),
      platenDataSection(input.recordings, { program: input.program, warmUpRules: false }),
      signaturesSection(),
    ],
  };
}

function verdictSection({ survey, platen, heads, unit, note }: SurveyReportInput): ReportSection {
  const t = (c: number) => temperatureText(c, unit);
  const which = platen === 'upper-platen' ? 'upper' : platen === 'lower-platen' ? 'lower' : null;
  const setPointC = which === null ? null : (heads[0]?.platenSetPointC?.[which] ?? null);
  return {
    heading: SURVEY_REPORT_TEXT.heading,
    blocks: [
      {
        kind: 'paragraphs',
        lines: [
          SURVEY_REPORT_TEXT.verdict(survey, unit),
          ...survey.cautions.map((caution) => SURVEY_CAUTION[caution]),
          PROBE_NOTE,
          ...(note === null ? [] : [neutralise(note, { longest: 1000 })]),
        ],
      },
      {
        kind: 'facts',
        facts: [
          fact(SURVEY_REPORT_TEXT.mean, t(survey.meanC)),
          ...(setPointC === null ? [] : [fact(SURVEY_REPORT_TEXT.setPoint, t(setPointC))]),
          fact(SURVEY_REPORT_TEXT.hottest, atProbe(survey.hottest, unit)),
          fact(SURVEY_REPORT_TEXT.coldest, atProbe(survey.coldest, unit)),
          fact(SURVEY_REPORT_TEXT.between, differenceText(survey.sdC, unit)),
          fact(SURVEY_REPORT_TEXT.over, secondsText(survey.overS)),
        ],
      },
    ],
  };
}

const atProbe = ({ label, meanC }: PlatenSurvey['hottest'], unit: TemperatureUnit): string =>
  SURVEY_REPORT_TEXT.atProbe(label, temperatureText(meanC, unit));

function probesTable({ survey, unit }: SurveyReportInput): ReportSection {
  return {
    heading: SURVEY_REPORT_TEXT.probesHeading,
    blocks: [
      {
        kind: 'table',
        columns: [
          { heading: SURVEY_REPORT_TEXT.probe, align: 'left', wide: true },
          { heading: SURVEY_REPORT_TEXT.place, align: 'right' },
          { heading: SURVEY_REPORT_TEXT.mean, align: 'right' },
          { heading: SURVEY_REPORT_TEXT.fromMean, align: 'right' },
          { heading: SURVEY_REPORT_TEXT.scatter, align: 'right' },
          { heading: SURVEY_REPORT_TEXT.drift, align: 'right' },
          { heading: SURVEY_REPORT_TEXT.readings, align: 'right' },
        ],
        rows: survey.probes.map(({ label, place, meanC, sdC, driftCPerMin, readings }) => ({
          cells: [
            neutralise(label),
            place === null ? '—' : SURVEY_REPORT_TEXT.placeOf(place.xMm, place.yMm),
            temperatureText(meanC, unit),
            SURVEY_REPORT_TEXT.signed(meanC - survey.meanC, unit),
            differenceText(sdC, unit),
            SURVEY_REPORT_TEXT.signed(driftCPerMin, unit),
            numberText(readings, 0),
          ],
        })),
      },
    ],
  };
}
