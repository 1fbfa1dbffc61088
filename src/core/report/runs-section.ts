import { soakTimesChart } from '../figure/soak-times-chart.ts';
import type { TrialOutcome } from '../result/trial-outcome.ts';
import { cureText } from '../text/cure-text.ts';
import { REPORT_TEXT } from '../text/report-text.ts';
import { trialLines } from '../text/trial-text.ts';
import { numberText, type TemperatureUnit } from '../text/units-text.ts';
import { differenceCToF } from '../units/difference-c-to-f.ts';
import { temperatureCToF } from '../units/temperature-c-to-f.ts';
import type { ReportSection } from './ReportContent.ts';
import { soakTimesOf } from './soak-times-of.ts';
import type { TrialReportInput } from './TrialReportInput.ts';

/** One row a run: how press closed is known, soak time, slope, peak, hold, verdict; below it the trial's figures. */
export function runsSection({ outcome, job, unit }: TrialReportInput): ReportSection {
  const soakTimes = soakTimesChart(soakTimesOf(outcome, job.simulated));
  const rows = outcome.runs.map(({ result, decision }, index) => {
    const { crossing, hold, peakC } = result;
    const slope =
      crossing === null ? null : unit === 'F' ? differenceCToF(crossing.slopeCPerS) : crossing.slopeCPerS;
    const peak = peakC === null || unit === 'C' ? peakC : temperatureCToF(peakC);
    return {
      cells: [
        String(index + 1),
        result.pressClosed === null ? '—' : REPORT_TEXT.closedBy(result.pressClosed.by),
        numberText(result.soakTimeS, 2),
        numberText(result.soakTimeStandardUncertaintyS, 2),
        numberText(slope, 2),
        numberText(peak, 1),
        hold === null ? '—' : REPORT_TEXT.holdCell(numberText(hold.countedS, 1), hold.verified),
        REPORT_TEXT.verdict(result.verdict, decision.kind),
        outcome.leftOut[index] === null ? REPORT_TEXT.counts : REPORT_TEXT.leftOut,
      ],
      leftOut: outcome.leftOut[index] !== null,
    };
  });
  return {
    heading: REPORT_TEXT.runsHeading,
    blocks: [
      {
        kind: 'table',
        columns: [
          { heading: REPORT_TEXT.run, align: 'right' },
          { heading: REPORT_TEXT.closedKnownBy, align: 'left' },
          { heading: REPORT_TEXT.soak, align: 'right', width: 46 },
          { heading: REPORT_TEXT.standardUncertainty, align: 'right', width: 62 },
          { heading: REPORT_TEXT.slope(unit), align: 'right', width: 58 },
          { heading: REPORT_TEXT.peak(unit), align: 'right', width: 40 },
          { heading: REPORT_TEXT.holdCounted, align: 'left', width: 68 },
          { heading: REPORT_TEXT.verdictHeading, align: 'left', wide: true },
          { heading: REPORT_TEXT.inMean, align: 'left', width: 44 },
        ],
        rows,
      },
      { kind: 'paragraphs', lines: [...trialLines(outcome.statistics), ...cureLines(outcome, unit)] },
      ...(soakTimes === null
        ? []
        : [{ kind: 'figure', picture: soakTimes, caption: REPORT_TEXT.soakTimesCaption } as const]),
    ],
  };
}

/** Cure of each run that counts, where the data sheet's figures are known. */
function cureLines({ runs, leftOut }: TrialOutcome, unit: TemperatureUnit): readonly string[] {
  return runs.flatMap(({ result }, index) =>
    result.cure == null || leftOut[index] !== null
      ? []
      : [REPORT_TEXT.runCure(index + 1, cureText(result.cure, unit))],
  );
}
