import { budgetSentence, commonPartSentence, PART_NAME } from '../text/budget-text.ts';
import { REPORT_TEXT } from '../text/report-text.ts';
import { numberText } from '../text/units-text.ts';
import type { BudgetLine, SoakTimeBudget } from '../uncertainty/SoakTimeBudget.ts';
import type { ReportSection, TableBlock } from './ReportContent.ts';
import type { TrialReportInput } from './TrialReportInput.ts';

/** The uncertainty budget where there is one; else what is known, and what is not in it. */
export function uncertaintySection({ outcome }: Pick<TrialReportInput, 'outcome'>): ReportSection {
  const { budget } = outcome;
  if (budget === null) {
    return {
      heading: REPORT_TEXT.uncertaintyHeading,
      blocks: [{ kind: 'paragraphs', lines: REPORT_TEXT.noBudget }],
    };
  }
  return {
    heading: REPORT_TEXT.uncertaintyHeading,
    blocks: [
      {
        kind: 'paragraphs',
        lines: [budgetSentence(budget), commonPartSentence(budget)].map(REPORT_TEXT.sentence),
      },
      budgetTable(budget),
      { kind: 'paragraphs', lines: [REPORT_TEXT.budgetTotal(budget.total)] },
    ],
  };
}

function budgetTable(budget: SoakTimeBudget): TableBlock {
  const row = (line: BudgetLine, name: string) => ({
    cells: [
      name,
      numberText(line.standardUncertaintyS, 2),
      REPORT_TEXT.shape[line.shape],
      Number.isFinite(line.degreesOfFreedom) ? numberText(line.degreesOfFreedom, 0) : '∞',
      numberText(line.expandedS, 2),
      line.share === null ? REPORT_TEXT.ofWhich : `${numberText(line.share * 100, 0)} %`,
    ],
  });
  return {
    kind: 'table',
    columns: [
      { heading: REPORT_TEXT.part, align: 'left', wide: true },
      { heading: REPORT_TEXT.standardS, align: 'right' },
      { heading: REPORT_TEXT.shapeHeading, align: 'left' },
      { heading: REPORT_TEXT.degrees, align: 'right' },
      { heading: REPORT_TEXT.expandedS, align: 'right' },
      { heading: REPORT_TEXT.share, align: 'right' },
    ],
    rows: budget.lines.flatMap((line) => [
      row(line, PART_NAME[line.code]),
      ...(line.code === 'run-to-run'
        ? budget.ofWhich.map((part) => row(part, REPORT_TEXT.ofWhichPart(PART_NAME[part.code])))
        : []),
    ]),
  };
}
