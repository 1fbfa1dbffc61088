import { headAmbientC } from '../recording/head-ambient.ts';
import type { RecordingHead } from '../recording/RecordingEntry.ts';
import { neutralise } from '../text/neutralise.ts';
import { momentText, REPORT_TEXT } from '../text/report-text.ts';
import { type TemperatureUnit, temperatureText } from '../text/units-text.ts';
import type { PlatenRecording } from './platen-data-section.ts';
import type { ReportSection } from './ReportContent.ts';

/** Under what each warm-up was recorded: press, day, set points, room, who. */
export function platenConditionsSection(
  recordings: readonly PlatenRecording[],
  heads: readonly (RecordingHead | null)[],
  unit: TemperatureUnit,
): ReportSection {
  const t = (temperatureC: number | null | undefined) =>
    temperatureC == null ? '—' : temperatureText(temperatureC, unit);
  return {
    heading: REPORT_TEXT.warmUpConditionsHeading,
    blocks: [
      {
        kind: 'table',
        columns: [
          { heading: REPORT_TEXT.side, align: 'left' },
          { heading: REPORT_TEXT.recording, align: 'left', wide: true },
          { heading: REPORT_TEXT.made, align: 'left', width: 58 },
          { heading: REPORT_TEXT.setPoints, align: 'left', width: 110 },
          { heading: REPORT_TEXT.roomHeading, align: 'right', width: 76 },
          { heading: REPORT_TEXT.operator, align: 'left', width: 44 },
        ],
        rows: recordings.map(({ side, name, madeAt }, at) => {
          const head = heads[at] ?? null;
          const setPoint = head?.platenSetPointC;
          return {
            cells: [
              neutralise(side ?? '—'),
              neutralise(name),
              madeAt === null ? '—' : neutralise(momentText(madeAt)),
              setPoint === undefined ? '—' : REPORT_TEXT.upperLower(t(setPoint.upper), t(setPoint.lower)),
              t(head === null ? null : headAmbientC(head)),
              head?.operatorInitials === undefined ? '—' : neutralise(head.operatorInitials),
            ],
          };
        }),
      },
    ],
  };
}
