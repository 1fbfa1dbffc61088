import { neutralise } from '../text/neutralise.ts';
import { REPORT_TEXT } from '../text/report-text.ts';
import { temperatureText } from '../text/units-text.ts';
import type { ReportSection } from './ReportContent.ts';
import type { TrialReportInput } from './TrialReportInput.ts';

/** How each run was set up, and where its temperatures stood when the press closed. */
export function conditionsSection({ outcome, job, unit }: TrialReportInput): ReportSection {
  const t = (temperatureC: number | null) =>
    temperatureC === null ? '—' : temperatureText(temperatureC, unit);
  const rows = outcome.runs.map(({ result }, index) => {
    const { ring, coating, carrierId, probe } = result.conditions;
    return {
      cells: [
        String(index + 1),
        t(result.startC),
        t(result.platenAtClosingC.upper),
        t(result.platenAtClosingC.lower),
        ring === null && coating === null ? '—' : [ring, coating].filter((word) => word !== null).join(', '),
        carrierId === null ? '—' : neutralise(carrierId),
        probe ?? '—',
      ],
      leftOut: outcome.leftOut[index] !== null,
    };
  });
  return {
    heading: REPORT_TEXT.conditionsHeading,
    blocks: [
      {
        kind: 'table',
        columns: [
          { heading: REPORT_TEXT.run, align: 'right' },
          { heading: REPORT_TEXT.start, align: 'right', width: 82 },
          { heading: REPORT_TEXT.upperPlaten, align: 'right', width: 82 },
          { heading: REPORT_TEXT.lowerPlaten, align: 'right', width: 82 },
          { heading: REPORT_TEXT.ringState, align: 'left' },
          { heading: REPORT_TEXT.carrierId, align: 'left', wide: true },
          { heading: REPORT_TEXT.probe, align: 'left' },
        ],
        rows,
      },
      {
        kind: 'paragraphs',
        lines: [
          REPORT_TEXT.room(job.ambientC === null ? null : temperatureText(job.ambientC, unit)),
          ...outcome.runs.flatMap(({ result }, index) =>
            result.notes.map((note) => REPORT_TEXT.runNote(index + 1, neutralise(note))),
          ),
        ],
      },
    ],
  };
}
