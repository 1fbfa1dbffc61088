import { RUN_RULE_VERSION } from '../run/RunResult.ts';
import { neutralise } from '../text/neutralise.ts';
import { momentText, REPORT_TEXT } from '../text/report-text.ts';
import type { FactsBlock, ReportSection, TableBlock } from './ReportContent.ts';
import type { ReportRecording } from './TrialReportInput.ts';

export interface DataInput {
  readonly recordings: readonly Pick<ReportRecording, 'name' | 'head' | 'soundness' | 'sha256'>[];
  /** Versions of the rules that the results come from. */
  readonly ruleVersions: readonly number[];
  readonly program: string;
  readonly further?: { readonly facts: FactsBlock['facts']; readonly lines: readonly string[] };
}

/** Versions, and the hash of every recording, by which anybody can tell that the data are the same. */
export function dataSection({
  recordings,
  ruleVersions,
  program,
  further = { facts: [], lines: [] },
}: DataInput): ReportSection {
  const versions = [...new Set(ruleVersions)].toSorted((a, b) => a - b);
  return {
    heading: REPORT_TEXT.dataHeading,
    blocks: [
      {
        kind: 'facts',
        facts: [
          { name: REPORT_TEXT.program, value: program },
          { name: REPORT_TEXT.ruleVersion, value: REPORT_TEXT.ruleVersions(versions, RUN_RULE_VERSION) },
          ...further.facts,
        ],
      },
      ...(recordings.length === 0 ? [] : [recordingsTable(recordings)]),
      {
        kind: 'paragraphs',
        lines: [...(recordings.length === 0 ? [] : [REPORT_TEXT.howToCheckHash]), ...further.lines],
      },
    ],
  };
}

function recordingsTable(recordings: DataInput['recordings']): TableBlock {
  return {
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
  };
}
