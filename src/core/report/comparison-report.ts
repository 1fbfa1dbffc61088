import { warmUpChart } from '../figure/warm-up-chart.ts';
import type { AlignedSeries } from '../press-comparison/aligned-series.ts';
import type { WarmUpComparison } from '../press-comparison/WarmUpComparison.ts';
import type { Probe } from '../probe/Probe.ts';
import type { RecordingHead } from '../recording/RecordingEntry.ts';
import { comparedFigureCells, comparisonRemarks } from '../text/comparison-text.ts';
import { neutralise } from '../text/neutralise.ts';
import { REPORT_TEXT, ROLE_NAME } from '../text/report-text.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import { WARM_UP_DEFINITIONS } from '../text/warm-up-text.ts';
import { probesSection } from './equipment-section.ts';
import { platenConditionsSection } from './platen-conditions-section.ts';
import { type PlatenRecording, platenDataSection } from './platen-data-section.ts';
import type { ReportContent, ReportSection } from './ReportContent.ts';
import { cautionsSection, signaturesSection } from './standing-sections.ts';

export interface ComparisonReportInput {
  readonly comparison: WarmUpComparison;
  readonly series: readonly AlignedSeries[];
  readonly recordings: readonly PlatenRecording[];
  /** Set points, room and people, by recording; absent or null where a recording does not say. */
  readonly heads?: readonly (RecordingHead | null)[];
  /** Probes that the recordings name, each once. */
  readonly probes?: readonly Probe[];
  readonly equipment?: readonly string[];
  readonly simulated: boolean;
  readonly note: string | null;
  /** What was left out, and why. */
  readonly remarks?: readonly string[];
  readonly unit: TemperatureUnit;
  readonly madeAt: string;
  readonly program: string;
}

/** Where a probe's record is read when no recording states a set point: 450 °F. Common practice, no source. */
const USUAL_PLATEN_C = (450 - 32) / 1.8;

/** Report of two presses (or one before and after) compared by their warm-ups. Names come in neutralised or not. */
export function comparisonReport(input: ComparisonReportInput): ReportContent {
  const { comparison, unit, simulated, note, series } = input;
  // Short enough for a legend and the heading of a column.
  const names = {
    first: neutralise(comparison.first.name, { longest: 40 }),
    second: neutralise(comparison.second.name, { longest: 40 }),
  };
  const roles = [...new Set(comparison.figures.map(({ role }) => role))];
  return {
    title: REPORT_TEXT.comparisonTitle,
    subtitle: REPORT_TEXT.comparisonSubtitle(names.first, names.second),
    simulated,
    reference: '',
    madeAt: input.madeAt,
    program: input.program,
    sections: [
      {
        heading: REPORT_TEXT.figuresHeading,
        blocks: [
          {
            kind: 'figure',
            picture: warmUpChart({ series, names, unit, simulated }),
            caption: REPORT_TEXT.warmUpCaption,
          },
          {
            kind: 'paragraphs',
            lines: [
              ...comparisonRemarks(comparison),
              ...(input.remarks ?? []),
              ...(note === null ? [] : [neutralise(note, { longest: 1000 })]),
            ],
          },
        ],
      },
      ...roles.map(
        (role): ReportSection => ({
          heading: ROLE_NAME[role],
          blocks: [
            {
              kind: 'table',
              columns: [
                { heading: REPORT_TEXT.figure, align: 'left', wide: true },
                { heading: names.first, align: 'right', width: 76 },
                { heading: names.second, align: 'right', width: 76 },
                { heading: REPORT_TEXT.difference, align: 'right', width: 60 },
                { heading: REPORT_TEXT.interval, align: 'right', width: 92 },
                { heading: '', align: 'left', width: 50 },
              ],
              rows: comparison.figures
                .filter((figure) => figure.role === role)
                .map((figure) => ({ cells: comparedFigureCells(figure, unit) })),
            },
          ],
        }),
      ),
      {
        heading: REPORT_TEXT.definitionsHeading,
        blocks: [{ kind: 'facts', facts: WARM_UP_DEFINITIONS.map(([name, value]) => ({ name, value })) }],
      },
      ...(input.heads === undefined
        ? []
        : [platenConditionsSection(input.recordings, input.heads, input.unit)]),
      probesSection({
        probes: input.probes ?? [],
        equipment: input.equipment ?? [],
        atC: input.heads?.find((head) => head?.platenSetPointC)?.platenSetPointC?.upper ?? USUAL_PLATEN_C,
        unit: input.unit,
      }),
      cautionsSection('repair'),
      platenDataSection(input.recordings, { program: input.program, warmUpRules: true }),
      signaturesSection(),
    ],
  };
}
