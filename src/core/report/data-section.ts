import { RUN_RULE_VERSION } from '../run/RunResult.ts';
import { neutralise } from '../text/neutralise.ts';
import { momentText, REPORT_TEXT } from '../text/report-text.ts';
import type { ReportSection } from './ReportContent.ts';
import type { TrialReportInput } from './TrialReportInput.ts';

/** Versions, and the hash of every recording, by which anybody can tell that the data are the same. */
export function dataSection({ recordings, outcome, program }: TrialReportInput): ReportSection {
  const versions = [...new Set(outcome.runs.map(({ result }) => result.ruleVersion))].toSorted(
    (a, b) => a - b,
  );
  return {
    heading: REPORT_TEXT.dataHeading,
    blocks: [
      {
        kind: 'facts',
        facts: [
          { name: REPORT_TEXT.program, value: program },
          { name: REPORT_TEXT.ruleVersion, value: REPORT_TEXT.ruleVersions(versions, RUN_RULE_VERSION) },
        ],
      },
      {
        kind: 'table',
        columns: [
          { heading: REPORT_TEXT.recording, align: 'left', wide: true },
          { heading: REPORT_TEXT.made, align: 'left' },
          { heading: REPORT_TEXT.state, align: 'left' },
          { heading: REPORT_TEXT.sha256, align: 'left', code: true },
        ],
        rows: recordings.map(({ name, head, soundness, sha256 }) => ({
          cells: [
            neutralise(name),
            head === null ? '—' : neutralise(momentText(head.madeAt)),
            REPORT_TEXT.soundness[soundness.kind],
            sha256,
          ],
        })),
      },
      { kind: 'paragraphs', lines: [REPORT_TEXT.howToCheckHash] },
    ],
  };
}
