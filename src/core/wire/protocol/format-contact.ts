import { sealLine } from './seal-line.ts';

/** Writes an edge of the press contact: debounced state and device time, µs, of the edge's first movement. */
export function formatContact(contact: { readonly closed: boolean; readonly deviceTimeUs: number }): string {
  return sealLine(`contact ${contact.deviceTimeUs} ${contact.closed ? 'closed' : 'opened'}`);
}
