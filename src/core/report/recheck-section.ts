import type { Recheck, RunRecheck } from '../recheck/RecheckResult.ts';
import type { Recipe } from '../recipe/Recipe.ts';
import { recheckReasonText } from '../text/recheck-reason-text.ts';
import { recheckSummaryLines } from '../text/recheck-text.ts';
import { REPORT_TEXT } from '../text/report-text.ts';
import { numberText, type TemperatureUnit } from '../text/units-text.ts';
import type { ReportSection } from './ReportContent.ts';

/** A recipe held against runs: the verdict with why, and a row for each run. */
export function recheckSection(recipe: Recipe, result: Recheck, unit: TemperatureUnit): ReportSection {
  return {
    heading: REPORT_TEXT.recheckHeading,
    blocks: [
      {
        kind: 'paragraphs',
        lines: recheckSummaryLines(recipe, result, unit).map(REPORT_TEXT.sentence),
      },
      {
        kind: 'table',
        columns: [
          { heading: REPORT_TEXT.run, align: 'right' },
          { heading: REPORT_TEXT.soak, align: 'right', width: 46 },
          { heading: REPORT_TEXT.inBand, align: 'left', width: 50 },
          { heading: REPORT_TEXT.holdAtDwell, align: 'right', width: 62 },
          { heading: REPORT_TEXT.storedSoak, align: 'right', width: 62 },
          { heading: REPORT_TEXT.reasons, align: 'left', wide: true },
        ],
        rows: result.runs.map((one, index) => ({ cells: cells(one, index, unit), leftOut: !one.comparable })),
      },
    ],
  };
}

function cells(one: RunRecheck, index: number, unit: TemperatureUnit): readonly string[] {
  const { result } = one.run;
  return [
    String(index + 1),
    numberText(result.soakTimeS, 2),
    one.insideBand === null ? '—' : REPORT_TEXT.yesNo(one.insideBand),
    numberText(one.heldAtDwellS, 1),
    one.before === null ? '—' : numberText(one.before.soakTimeS, 2),
    one.reasons.map((reason) => recheckReasonText(reason, unit)).join(' ') || '—',
  ];
}
