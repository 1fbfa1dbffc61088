import { neutralise } from '../text/neutralise.ts';
import { REPORT_TEXT } from '../text/report-text.ts';
import { conditionsSection } from './conditions-section.ts';
import { dataSection } from './data-section.ts';
import { dwellSection } from './dwell-section.ts';
import { equipmentSection } from './equipment-section.ts';
import { figuresSection } from './figures-section.ts';
import { jobSection } from './job-section.ts';
import { leftOutSection } from './left-out-section.ts';
import type { ReportContent } from './ReportContent.ts';
import { runsSection } from './runs-section.ts';
import { cautionsSection, signaturesSection } from './standing-sections.ts';
import type { TrialReportInput } from './TrialReportInput.ts';
import { uncertaintySection } from './uncertainty-section.ts';

/**
 * Report of a trial, for a customer or an auditor: what is proved first, then the job, the runs, the pictures, the
 * doubt, what was left out and why, with what it was measured and the data it rests on. The clock is an argument.
 */
export function trialReport(input: TrialReportInput): ReportContent {
  const { job } = input;
  return {
    title: REPORT_TEXT.trialTitle,
    subtitle: REPORT_TEXT.trialSubtitle(
      neutralise(job.assemblyName ?? REPORT_TEXT.notStated),
      neutralise(job.pressName ?? REPORT_TEXT.notStated),
    ),
    simulated: job.simulated,
    reference: job.trialId === null ? '' : REPORT_TEXT.trialReference(neutralise(job.trialId)),
    madeAt: input.madeAt,
    program: input.program,
    sections: [
      dwellSection(input),
      jobSection(input),
      conditionsSection(input),
      runsSection(input),
      figuresSection(input),
      uncertaintySection(input),
      leftOutSection(input),
      ...input.furtherSections,
      equipmentSection({ ...input, targetC: input.outcome.settings.targetC }),
      cautionsSection(),
      dataSection({ ...input, ruleVersions: input.outcome.runs.map(({ result }) => result.ruleVersion) }),
      signaturesSection(),
    ],
  };
}
