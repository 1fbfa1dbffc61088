import * as v from 'valibot';
import type { LoggerLayout } from '../logger-file/LoggerLayout.ts';
import type { RecordingHead } from '../recording/RecordingEntry.ts';
import { exchangeRefusals } from '../text/exchange-text.ts';
import { ExchangeError } from './ExchangeError.ts';
import { loggerLayoutSchema } from './logger-layout-schema.ts';

/** Key under which the head of an imported recording keeps how its lines are laid out, as JSON. */
export const LAYOUT_KEY = 'logger-layout';

/** Layout of the lines of an imported recording; null for a reader's own recording. Throws where it cannot be read. */
export function headLayout(head: Pick<RecordingHead, 'recordingId' | 'further'>): LoggerLayout | null {
  const text = head.further[LAYOUT_KEY];
  if (text === undefined) return null;
  const checked = v.safeParse(loggerLayoutSchema, parsed(text), { abortEarly: true });
  if (checked.success) return checked.output;
  throw new ExchangeError('import-layout-unreadable', exchangeRefusals.layoutUnreadable(head.recordingId));
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    // No JSON: the schema refuses it like any other layout that cannot be read.
    return undefined;
  }
}
