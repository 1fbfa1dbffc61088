import type { StyledRow } from '../chart/StyledRow.ts';
import { choiceRows } from '../screen-shell/choice-rows.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { RECORDS_TEXT } from '../text/records-text.ts';

/** How fast a run is replayed: one key each. */
export function guideRowsOfSpeeds(size: PageSize): readonly StyledRow[] {
  return [
    [],
    ...textRows(RECORDS_TEXT.replaySpeed, size, 'strong'),
    [],
    ...choiceRows(
      RECORDS_TEXT.replaySpeeds.map((speed) => ({ ...speed, first: false })),
      { ...size, rows: size.rows - 3 },
      8,
    ),
  ];
}
