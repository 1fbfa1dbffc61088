import { drawChart } from '../chart/draw-chart.ts';
import type { Segment, StyledRow } from '../chart/StyledRow.ts';
import type { ReadingValue } from '../reading/StreamEvent.ts';
import { asciiText } from '../screen/ascii-text.ts';
import { bondLineChannels } from '../screen/bond-line-channels.ts';
import { channelStyle } from '../screen/channel-style.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { RECORDS_TEXT } from '../text/records-text.ts';
import { CHANNEL_NAME, FAULT_TEXT } from '../text/screen-text.ts';
import { numberText, type TemperatureUnit, temperatureField } from '../text/units-text.ts';
import type { ChartWindow, RecordsState, RunTrace } from './RecordsState.ts';
import { overlayRole, recordChart, runSign } from './record-chart.ts';
import { valueAt } from './value-at.ts';

type ChartView = Pick<Extract<RecordsState['view'], { readonly kind: 'chart' }>, 'window'>;

/** The chart, and under it the values at the cursor. */
export function chartRows(
  state: RecordsState,
  view: ChartView,
  unit: TemperatureUnit,
  size: PageSize,
): readonly StyledRow[] {
  const { traces } = state;
  if (traces === null || view.window === null || traces.length === 0)
    return [[], ...textRows(RECORDS_TEXT.noTrace, size)];
  const values = cursorRows(traces, view.window, unit, size);
  const spec = recordChart(traces, view.window, { unit, ascii: size.ascii });
  const rows = size.rows - values.length - 1;
  return [[], ...drawChart({ ...spec, columns: size.columns - 2, rows }), ...values];
}

/** "at 53.5 s from press closed: B bond line 350.0 °F …", or one value per run of an overlay. */
function cursorRows(
  traces: readonly RunTrace[],
  window: ChartWindow,
  unit: TemperatureUnit,
  { columns, ascii }: PageSize,
): readonly StyledRow[] {
  const known = traces.every((trace) => trace.closedKnown);
  const at = (known ? RECORDS_TEXT.cursor : RECORDS_TEXT.cursorFromStart)(
    `${numberText(window.cursorS, 1)} s`,
  );
  const parts: readonly Segment[] =
    traces.length === 1
      ? traces[0]!.roles.flatMap((role, channel) => {
          if (role === 'unused') return [];
          const style = channelStyle(role);
          const [name] = CHANNEL_NAME[role];
          const value = valueText(valueAt(traces[0]!, channel, window.cursorS), unit);
          return [{ text: `${style.letter} ${name} ${value}`, role: style.role }];
        })
      : traces.map((trace, i) => ({
          text: `${runSign(trace.run)} run ${trace.run + 1} ${valueText(
            valueAt(trace, bondLineChannels(trace.roles)[0] ?? 0, window.cursorS),
            unit,
          )}`,
          role: overlayRole(i),
        }));
  const rows: Segment[][] = [[{ text: ` ${at}`, role: 'strong' }]];
  if (traces.length > 1) rows[0]?.push({ text: `   ${RECORDS_TEXT.overlay}`, role: 'quiet' });
  let used = columns;
  for (const part of parts) {
    const text = ascii ? asciiText(part.text) : part.text;
    if (used + text.length + 2 > columns) {
      rows.push([]);
      used = 0;
    }
    rows.at(-1)?.push({ text: used === 0 ? ` ${text}` : `  ${text}`, role: part.role });
    used += text.length + 2;
  }
  return rows;
}

function valueText(value: ReadingValue | null, unit: TemperatureUnit): string {
  if (value?.kind === 'temperature') return temperatureField(value.temperatureC, unit).trim();
  return value?.kind === 'fault' ? (FAULT_TEXT[value.fault].split(':')[0] ?? '') : RECORDS_TEXT.noValue;
}
