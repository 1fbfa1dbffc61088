import { pressSoaksChart } from '../figure/press-soaks-chart.ts';
import type { TrialComparison } from '../press-comparison/compare-trials.ts';
import { PRESS_SOAKS_TEXT, trialComparisonLines } from '../text/comparison-text.ts';
import { REPORT_TEXT } from '../text/report-text.ts';
import type { TwoPresses } from '../text/transfer-text.ts';
import { numberText, type TemperatureUnit } from '../text/units-text.ts';
import type { TrialStatistics } from '../trial/TrialResult.ts';
import type { ReportSection } from './ReportContent.ts';

export interface TransferSetting {
  readonly unit: TemperatureUnit;
  /** Longest soak time that leaves the recipe's whole hold, s; null where no recipe is known. */
  readonly limitS: number | null;
  readonly simulated: boolean;
  /** When the margins were stated, or that none were. */
  readonly further: readonly string[];
}

/** Soak times on both presses against the recipe's limit; null where no run counts. */
export function transferPicture(
  comparison: TrialComparison,
  presses: TwoPresses,
  setting: Pick<TransferSetting, 'limitS' | 'simulated'>,
) {
  return pressSoaksChart({
    presses: (['first', 'second'] as const).map((side) => ({
      name: presses[side],
      soakTimesS: side === 'first' ? comparison.firstSoakTimesS : comparison.secondSoakTimesS,
      statistics: comparison[side],
    })),
    ...setting,
  });
}

/** Trials of one assembly on two presses: soak times side by side, whether the recipe covers the second, whether they are alike. */
export function transferSection(
  comparison: TrialComparison,
  presses: TwoPresses,
  { unit, limitS, simulated, further }: TransferSetting,
): ReportSection {
  const row = (name: string, of: (statistics: TrialStatistics) => string) => ({
    cells: [name, of(comparison.first), of(comparison.second)],
  });
  const picture = transferPicture(comparison, presses, { limitS, simulated });
  const lines = trialComparisonLines(comparison, presses, unit);
  return {
    heading: REPORT_TEXT.transferHeading(presses.second),
    blocks: [
      {
        kind: 'table',
        columns: [
          { heading: REPORT_TEXT.soak, align: 'left', wide: true },
          { heading: presses.first, align: 'right', width: 110 },
          { heading: presses.second, align: 'right', width: 110 },
        ],
        rows: [
          row(REPORT_TEXT.runsThatCount, ({ runs }) => String(runs)),
          row(REPORT_TEXT.meanSoak, ({ meanSoakS }) => numberText(meanSoakS, 2)),
          row(REPORT_TEXT.standardDeviation, ({ sdSoakS }) => numberText(sdSoakS, 2)),
          row(REPORT_TEXT.nextRunBelow, ({ nextRunUpper95S }) => numberText(nextRunUpper95S, 2)),
        ],
      },
      ...(picture === null ? [] : [{ kind: 'figure', picture, caption: PRESS_SOAKS_TEXT.caption } as const]),
      // Before the empty line stands the same table as text.
      {
        kind: 'paragraphs',
        lines: [...lines.slice(lines.indexOf('') + 1), ...further].map(REPORT_TEXT.sentence),
      },
    ],
  };
}
