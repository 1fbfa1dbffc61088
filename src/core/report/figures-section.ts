import { crossingChart } from '../figure/crossing-chart.ts';
import { overlayChart } from '../figure/overlay-chart.ts';
import { REPORT_TEXT } from '../text/report-text.ts';
import { overlayOf } from './overlay-of.ts';
import type { ReportBlock, ReportSection } from './ReportContent.ts';
import type { TrialReportInput } from './TrialReportInput.ts';

/** Pictures of the runs: all of them from press closed, and the same near the target. */
export function figuresSection(input: TrialReportInput): ReportSection {
  const overlay = overlayOf(input, input.job.simulated);
  const crossing = crossingChart(overlay);
  const blocks: ReportBlock[] = [];
  if (overlay.runs.length > 0) {
    blocks.push({ kind: 'figure', picture: overlayChart(overlay), caption: REPORT_TEXT.overlayCaption });
  }
  if (crossing !== null)
    blocks.push({ kind: 'figure', picture: crossing, caption: REPORT_TEXT.crossingCaption });
  if (blocks.length === 0) blocks.push({ kind: 'paragraphs', lines: [REPORT_TEXT.nothingToDraw] });
  return { heading: REPORT_TEXT.figuresHeading, blocks };
}
