import { crossingChart } from '../figure/crossing-chart.ts';
import { overlayChart } from '../figure/overlay-chart.ts';
import { recheckChart } from '../figure/recheck-chart.ts';
import { neutralise } from '../text/neutralise.ts';
import { RECHECK_REPORT_TEXT } from '../text/recheck-report-text.ts';
import { recheckSummaryLines } from '../text/recheck-text.ts';
import { REPORT_TEXT } from '../text/report-text.ts';
import { dataSection } from './data-section.ts';
import { dwellSection } from './dwell-section.ts';
import { equipmentSection } from './equipment-section.ts';
import type { RecheckReportInput } from './RecheckReportInput.ts';
import type { ReportBlock, ReportContent, ReportSection } from './ReportContent.ts';
import { oldAndNew, recheckTable } from './recheck-section.ts';
import { recipeFacts } from './recipe-facts.ts';
import { cautionsSection, signaturesSection } from './standing-sections.ts';
import { uncertaintySection } from './uncertainty-section.ts';
import { whatIfSection } from './what-if-section.ts';

/**
 * Report of a re-check: whether a recipe still holds, from runs analysed again by today's rules, each beside its stored
 * result; what dwell the runs would suggest now and how sure; equipment, data. The clock is an argument.
 */
export function recheckReport(input: RecheckReportInput): ReportContent {
  const { recipe, result, outcome, unit, simulated } = input;
  const short = (text: string) => neutralise(text, { longest: 120 });
  return {
    title: RECHECK_REPORT_TEXT.title,
    subtitle: RECHECK_REPORT_TEXT.subtitle(
      short(recipe.assemblyName),
      short(recipe.pressName),
      recipe.version,
    ),
    simulated,
    reference: '',
    madeAt: input.reportedAt,
    program: input.program,
    sections: [
      verdictSection(input),
      { heading: RECHECK_REPORT_TEXT.recipeHeading, blocks: [recipeFacts(recipe, unit)] },
      {
        heading: RECHECK_REPORT_TEXT.runsHeading,
        blocks: [
          recheckTable(result, unit, input.madeAt),
          { kind: 'paragraphs', lines: [oldAndNew(result)] },
        ],
      },
      picturesSection(input),
      { ...dwellSection({ outcome, job: { recipes: [] }, unit }), heading: RECHECK_REPORT_TEXT.nowHeading },
      ...(input.byTarget.length === 0 ? [] : [whatIfSection(input.byTarget, { unit, simulated })]),
      uncertaintySection(input),
      equipmentSection({ ...input, targetC: recipe.targetC }),
      cautionsSection(),
      dataSection({ ...input, ruleVersions: result.runs.map(({ run }) => run.result.ruleVersion) }),
      signaturesSection(),
    ],
  };
}

function verdictSection({ recipe, result, unit, reProof, note }: RecheckReportInput): ReportSection {
  return {
    heading: RECHECK_REPORT_TEXT.verdictHeading,
    blocks: [
      {
        kind: 'paragraphs',
        lines: [
          ...recheckSummaryLines(recipe, result, unit).map(REPORT_TEXT.sentence),
          ...reProof.map(REPORT_TEXT.sentence),
          ...(note === null ? [] : [neutralise(note, { longest: 1000 })]),
        ],
      },
    ],
  };
}

function picturesSection({
  recipe,
  result,
  overlay,
  recordings,
  simulated,
}: RecheckReportInput): ReportSection {
  const soaks = recheckChart({ result, dwellS: recipe.dwellS, simulated });
  const crossing = overlay === null ? null : crossingChart(overlay);
  const blocks: ReportBlock[] = [];
  if (soaks !== null)
    blocks.push({ kind: 'figure', picture: soaks, caption: RECHECK_REPORT_TEXT.recheckCaption });
  if (overlay !== null && overlay.runs.length > 0)
    blocks.push({
      kind: 'figure',
      picture: overlayChart(overlay),
      caption: RECHECK_REPORT_TEXT.overlayCaption,
    });
  if (crossing !== null)
    blocks.push({ kind: 'figure', picture: crossing, caption: REPORT_TEXT.crossingCaption });
  if (overlay === null)
    blocks.push({ kind: 'paragraphs', lines: [RECHECK_REPORT_TEXT.tooManyTraces(recordings.length)] });
  return { heading: RECHECK_REPORT_TEXT.picturesHeading, blocks };
}
