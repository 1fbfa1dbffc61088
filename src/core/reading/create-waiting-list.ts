import type { ContactEvent } from '../wire/WireEvent.ts';
import type { Timeline } from './create-timeline.ts';
import type { OperatorMark, StreamEvent } from './StreamEvent.ts';

/** Contact edges kept until a sample tells their time; more than this without a sample is chatter. */
const WAITING_EDGES = 32;

type Waiting =
  | { readonly kind: 'mark'; readonly arrivedUs: number; readonly mark: OperatorMark }
  | { readonly kind: 'contact'; readonly arrivedUs: number; readonly event: ContactEvent };

/** Time of a contact edge, µs: by the reader's stamp where it has one, else by arrival; null if not yet known. */
export function edgeTimeUs(timeline: Timeline, event: ContactEvent, arrivedUs: number): number | null {
  if (timeline.latestTimeUs === null) return null;
  const { deviceTimeUs } = event;
  if (deviceTimeUs === null || !Number.isFinite(deviceTimeUs)) return timeline.seenTimeUs(arrivedUs);
  return timeline.stampedTimeUs(deviceTimeUs, arrivedUs);
}

/** Marks made before the first reading, and contact edges whose clock only the next reading can place. */
export function createWaitingList(timeline: Timeline): {
  mark(mark: OperatorMark, arrivedUs: number): void;
  edge(event: ContactEvent, arrivedUs: number): void;
  /** Gives all that waits its time from the reading just placed, by the reader's stamp or by difference of arrival. */
  release(readingUs: number, readingArrivedUs: number, out: StreamEvent[]): void;
} {
  let waiting: Waiting[] = [];
  let edges = 0;
  return {
    mark(mark, arrivedUs) {
      waiting.push({ kind: 'mark', arrivedUs, mark });
    },
    edge(event, arrivedUs) {
      if (edges >= WAITING_EDGES)
        waiting.splice(
          waiting.findIndex((item) => item.kind === 'contact'),
          1,
        );
      else edges += 1;
      waiting.push({ kind: 'contact', arrivedUs, event });
    },
    release(readingUs, readingArrivedUs, out) {
      if (waiting.length === 0) return;
      const released = waiting;
      waiting = [];
      edges = 0;
      for (const item of released) {
        const byArrivalS = (readingUs + Math.min(0, item.arrivedUs - readingArrivedUs)) / 1e6;
        if (item.kind === 'mark') out.push({ kind: 'mark', timeS: byArrivalS, mark: item.mark });
        else {
          const { closed, deviceTimeUs } = item.event;
          const stampedUs = deviceTimeUs === null ? null : edgeTimeUs(timeline, item.event, readingArrivedUs);
          out.push({ kind: 'contact', timeS: stampedUs === null ? byArrivalS : stampedUs / 1e6, closed });
        }
      }
    },
  };
}
