import { neutralise } from '../text/neutralise.ts';
import { REPORT_TEXT } from '../text/report-text.ts';
import { runReasonText } from '../text/run-reasons.ts';
import { LEFT_OUT_WHY, oddRunText } from '../text/trial-text.ts';
import type { ReportBlock, ReportSection } from './ReportContent.ts';
import type { TrialReportInput } from './TrialReportInput.ts';

/** Runs set aside or left out with their reasons, runs taken in with theirs, and what was noticed about the rest. */
export function leftOutSection({ outcome, unit }: TrialReportInput): ReportSection {
  const rows = outcome.runs.flatMap(({ result, decision }, index) => {
    const why = outcome.leftOut[index] ?? null;
    const said = [
      ...(decision.kind === 'automatic'
        ? []
        : [REPORT_TEXT.decided(decision.kind, neutralise(decision.reason, { longest: 1000 }))]),
      ...result.reasons.map((reason) => runReasonText(reason, { unit })),
    ];
    if (why === null && said.length === 0) return [];
    return [
      {
        cells: [
          String(index + 1),
          why === null ? REPORT_TEXT.counts : LEFT_OUT_WHY[why],
          said.join(' ') || '—',
        ],
        leftOut: why !== null,
      },
    ];
  });
  const odd = outcome.oddRun;
  const blocks: readonly ReportBlock[] = [
    rows.length === 0
      ? { kind: 'paragraphs', lines: [REPORT_TEXT.noneLeftOut] }
      : {
          kind: 'table',
          columns: [
            { heading: REPORT_TEXT.run, align: 'right' },
            { heading: REPORT_TEXT.inMean, align: 'left', width: 120 },
            { heading: REPORT_TEXT.reasons, align: 'left', wide: true },
          ],
          rows,
        },
    ...(odd === null
      ? []
      : [{ kind: 'paragraphs', lines: [neutralise(oddRunText(odd, unit), { longest: 2000 })] } as const]),
  ];
  return { heading: REPORT_TEXT.leftOutHeading, blocks };
}
