import { neutralise } from '../text/neutralise.ts';
import { momentText, REPORT_TEXT } from '../text/report-text.ts';
import { WARM_UP_RULE_VERSION } from '../warm-up/WarmUp.ts';
import type { ReportSection } from './ReportContent.ts';

/** A recording of platens that a report rests on. */
export interface PlatenRecording {
  /** Which of two presses; null where there is one. */
  readonly side: string | null;
  readonly name: string;
  readonly madeAt: string | null;
  readonly sound: boolean;
  readonly sha256: string;
}

/** Versions, and the hash of every recording. `warmUpRules` false where no warm-up was analysed. */
export function platenDataSection(
  recordings: readonly PlatenRecording[],
  { program, warmUpRules }: { readonly program: string; readonly warmUpRules: boolean },
): ReportSection {
  const sides = recordings.some(({ side }) => side !== null);
  return {
    heading: REPORT_TEXT.dataHeading,
    blocks: [
      {
        kind: 'facts',
        facts: [
          { name: REPORT_TEXT.program, value: program },
          ...(warmUpRules
            ? [{ name: REPORT_TEXT.warmUpRules, value: REPORT_TEXT.version(WARM_UP_RULE_VERSION) }]
            : []),
        ],
      },
      {
        kind: 'table',
        columns: [
          { heading: REPORT_TEXT.recording, align: 'left', wide: true },
          ...(sides ? [{ heading: REPORT_TEXT.side, align: 'left' } as const] : []),
          { heading: REPORT_TEXT.made, align: 'left' },
          { heading: REPORT_TEXT.state, align: 'left' },
          { heading: REPORT_TEXT.sha256, align: 'left', code: true },
        ],
        rows: recordings.map(({ name, side, madeAt, sound, sha256 }) => ({
          cells: [
            neutralise(name),
            ...(sides ? [neutralise(side ?? '—')] : []),
            madeAt === null ? '—' : neutralise(momentText(madeAt)),
            sound ? REPORT_TEXT.soundness.sound : REPORT_TEXT.notSound,
            sha256,
          ],
        })),
      },
      { kind: 'paragraphs', lines: [REPORT_TEXT.howToCheckHash] },
    ],
  };
}
