import { warmUpChart } from '../figure/warm-up-chart.ts';
import type { AlignedSeries } from '../press-comparison/aligned-series.ts';
import type { WarmUpComparison } from '../press-comparison/WarmUpComparison.ts';
import { comparedFigureCells, comparisonRemarks } from '../text/comparison-text.ts';
import { neutralise } from '../text/neutralise.ts';
import { momentText, REPORT_TEXT, ROLE_NAME } from '../text/report-text.ts';
import type { TemperatureUnit } from '../text/units-text.ts';
import { WARM_UP_DEFINITIONS } from '../text/warm-up-text.ts';
import { WARM_UP_RULE_VERSION } from '../warm-up/WarmUp.ts';
import type { ReportContent, ReportSection } from './ReportContent.ts';
import { cautionsSection, signaturesSection } from './standing-sections.ts';

export interface ComparisonReportInput {
  readonly comparison: WarmUpComparison;
  readonly series: readonly AlignedSeries[];
  readonly recordings: readonly {
    readonly side: string;
    readonly name: string;
    readonly madeAt: string | null;
    readonly sound: boolean;
    readonly sha256: string;
  }[];
  readonly simulated: boolean;
  readonly note: string | null;
  /** What was left out, and why. */
  readonly remarks?: readonly string[];
  readonly unit: TemperatureUnit;
  readonly madeAt: string;
  readonly program: string;
}

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
      cautionsSection(),
      dataSection(input),
      signaturesSection(),
    ],
  };
}

function dataSection({ recordings, program }: ComparisonReportInput): ReportSection {
  return {
    heading: REPORT_TEXT.dataHeading,
    blocks: [
      {
        kind: 'facts',
        facts: [
          { name: REPORT_TEXT.program, value: program },
          { name: REPORT_TEXT.warmUpRules, value: REPORT_TEXT.version(WARM_UP_RULE_VERSION) },
        ],
      },
      {
        kind: 'table',
        columns: [
          { heading: REPORT_TEXT.recording, align: 'left', wide: true },
          { heading: REPORT_TEXT.side, align: 'left' },
          { heading: REPORT_TEXT.made, align: 'left' },
          { heading: REPORT_TEXT.state, align: 'left' },
          { heading: REPORT_TEXT.sha256, align: 'left', code: true },
        ],
        rows: recordings.map(({ name, side, madeAt, sound, sha256 }) => ({
          cells: [
            neutralise(name),
            neutralise(side),
            madeAt === null ? '—' : neutralise(momentText(madeAt)),
            sound ? REPORT_TEXT.soundness.sound : REPORT_TEXT.notSound,
            sha256,
          ],
        })),
      },
      { kind: 'paragraphs', lines: [REPORT_TEXT.howToCheckHash] },
    ],
  };
}
