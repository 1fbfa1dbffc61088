import { type CautionOccasion, cautionLines } from '../text/cautions.ts';
import { REPORT_TEXT } from '../text/report-text.ts';
import type { ReportSection } from './ReportContent.ts';

/** Cautions that every report carries: it is read by people who were not at the press. */
export function cautionsSection(...further: readonly CautionOccasion[]): ReportSection {
  return {
    heading: REPORT_TEXT.cautionsHeading,
    blocks: [
      {
        kind: 'list',
        items: cautionLines('not-a-safety-device', 'heat', 'closing', 'fumes', ...further),
      },
    ],
  };
}

/** Room for the people who answer for it. */
export function signaturesSection(): ReportSection {
  return {
    heading: REPORT_TEXT.signaturesHeading,
    blocks: [{ kind: 'signatures', roles: REPORT_TEXT.signatories }],
  };
}
