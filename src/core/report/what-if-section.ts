import { whatIfChart } from '../figure/what-if-chart.ts';
import type { DwellAtTarget } from '../recheck/dwell-at-target.ts';
import { RECHECK_REPORT_TEXT } from '../text/recheck-report-text.ts';
import { numberText, type TemperatureUnit, temperatureText } from '../text/units-text.ts';
import type { ReportSection } from './ReportContent.ts';

/** Dwell at other targets: table and picture. */
export function whatIfSection(
  rows: readonly DwellAtTarget[],
  { unit, simulated }: { readonly unit: TemperatureUnit; readonly simulated: boolean },
): ReportSection {
  const picture = whatIfChart({ rows, unit, simulated });
  return {
    heading: RECHECK_REPORT_TEXT.whatIfHeading,
    blocks: [
      {
        kind: 'table',
        columns: [
          { heading: RECHECK_REPORT_TEXT.target, align: 'left', wide: true },
          { heading: RECHECK_REPORT_TEXT.runs, align: 'right' },
          { heading: RECHECK_REPORT_TEXT.meanSoak, align: 'right' },
          { heading: RECHECK_REPORT_TEXT.meanDwell, align: 'right' },
          { heading: RECHECK_REPORT_TEXT.nextRunDwell, align: 'right' },
          { heading: RECHECK_REPORT_TEXT.toleranceDwell, align: 'right' },
        ],
        rows: rows.map((row) => ({
          cells: [
            temperatureText(row.targetC, unit),
            String(row.runs),
            numberText(row.meanSoakS, 2),
            numberText(row.meanDwellS, 0),
            numberText(row.nextRunDwellS, 0),
            numberText(row.toleranceDwellS, 0),
          ],
        })),
      },
      ...(picture === null
        ? []
        : [{ kind: 'figure', picture, caption: RECHECK_REPORT_TEXT.whatIfCaption } as const]),
    ],
  };
}
