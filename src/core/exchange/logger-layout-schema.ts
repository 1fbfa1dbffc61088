import * as v from 'valibot';
import type { LoggerLayout } from '../logger-file/LoggerLayout.ts';
import { CHANNEL_ROLES } from '../recording/RecordingEntry.ts';

const column = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(100_000));
const count = column;
const above0 = v.pipe(v.number(), v.finite(), v.gtValue(0));

const time = v.variant('kind', [
  v.object({ kind: v.literal('number'), column, tickUs: above0 }),
  v.object({
    kind: v.literal('stamp'),
    columns: v.pipe(v.array(column), v.minLength(1), v.maxLength(2)),
    order: v.picklist(['day-first', 'month-first']),
    short: v.nullable(v.picklist(['h', 'min'])),
  }),
  v.object({ kind: v.literal('interval'), intervalUs: above0 }),
]);

const schema = v.object({
  delimiter: v.picklist([',', ';', '\t', '|', 'space']),
  decimal: v.picklist(['.', ',']),
  leadingLines: count,
  headingTexts: v.array(v.string()),
  labelled: v.boolean(),
  columnCount: count,
  leastColumns: count,
  time,
  temperatures: v.pipe(
    v.array(
      v.object({
        column,
        heading: v.nullable(v.string()),
        unit: v.picklist(['C', 'F', 'K']),
        role: v.picklist(CHANNEL_ROLES),
      }),
    ),
    v.minLength(1),
  ),
  sharedTimes: v.nullable(v.object({ stepUs: above0, rowsPerStep: count })),
  timeResolutionS: v.pipe(v.number(), v.finite(), v.minValue(0)),
  cuts: v.exactOptional(v.array(count)),
  only: v.exactOptional(v.object({ column, text: v.string() })),
  lastColumnDecimals: v.nullable(count),
  recognised: v.string(),
});

/** A logger's layout as it stands in the head of an imported recording. */
export const loggerLayoutSchema: v.GenericSchema<unknown, LoggerLayout> = schema;
