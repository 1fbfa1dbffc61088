import { crossingChart } from '../figure/crossing-chart.ts';
import { overlayChart } from '../figure/overlay-chart.ts';
import { soakTimesChart } from '../figure/soak-times-chart.ts';
import { REPORT_TEXT } from '../text/report-text.ts';
import { overlayOf } from './overlay-of.ts';
import type { ReportBlock, ReportSection } from './ReportContent.ts';
import type { TrialReportInput } from './TrialReportInput.ts';

/** Pictures of the runs: all of them from press closed, the same near the target, and their soak times. */
export function figuresSection(input: TrialReportInput): ReportSection {
  const { outcome, job } = input;
  const overlay = overlayOf(input, job.simulated);
  const crossing = crossingChart(overlay);
  const soakTimes = soakTimesChart({
    runs: outcome.runs.map(({ result }, index) => ({
      label: String(index + 1),
      counts: outcome.leftOut[index] === null,
      soakTimeS: result.soakTimeS,
      standardUncertaintyS: result.soakTimeStandardUncertaintyS,
    })),
    statistics: outcome.statistics,
    simulated: job.simulated,
  });
  const blocks: ReportBlock[] = [];
  if (overlay.runs.length > 0) {
    blocks.push({ kind: 'figure', picture: overlayChart(overlay), caption: REPORT_TEXT.overlayCaption });
  }
  if (crossing !== null)
    blocks.push({ kind: 'figure', picture: crossing, caption: REPORT_TEXT.crossingCaption });
  if (soakTimes !== null)
    blocks.push({ kind: 'figure', picture: soakTimes, caption: REPORT_TEXT.soakTimesCaption });
  if (blocks.length === 0) blocks.push({ kind: 'paragraphs', lines: [REPORT_TEXT.nothingToDraw] });
  return { heading: REPORT_TEXT.figuresHeading, blocks };
}
