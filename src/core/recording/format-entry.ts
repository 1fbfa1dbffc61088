import { escapePeopleText } from './escape-people-text.ts';
import { escapeWireText } from './escape-wire-text.ts';
import { formatArrival } from './format-arrival.ts';
import { formatMark, withText } from './format-mark.ts';
import type { RecordingEntry } from './RecordingEntry.ts';

/**
 * One entry of a recording's body as its line of text, line feed included: arrival time in seconds, tag, content.
 * The tag of a whole wire line is `line`; any other line's tag names what it lacks. Called for every line received.
 */
export function formatEntry(entry: RecordingEntry): string {
  const arrival = formatArrival(entry.arrivedUs);
  if (entry.kind === 'line') {
    const tag = entry.wholeness === 'whole' ? 'line' : entry.wholeness;
    return entry.text === '' ? `${arrival} ${tag}\n` : `${arrival} ${tag} ${escapeWireText(entry.text)}\n`;
  }
  if (entry.kind === 'mark') return `${arrival} mark ${entry.by} ${formatMark(entry.mark)}\n`;
  return `${arrival} host ${withText(entry.event, escapePeopleText(entry.detail))}\n`;
}
