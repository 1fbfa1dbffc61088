import type { RecordingEntry } from '../recording/RecordingEntry.ts';
import { untypedChannelsText } from '../text/untyped-channels.ts';
import type { ContactEvent, ReaderIdentity, SampleEvent, WireEvent } from '../wire/WireEvent.ts';
import { createTimeline } from './create-timeline.ts';
import { createValueReader } from './create-value-reader.ts';
import { createWaitingList, edgeTimeUs } from './create-waiting-list.ts';
import { createWireCounter } from './create-wire-counter.ts';
import { readHostSleptDetail } from './host-slept-detail.ts';
import type { ReadingAssembler, ReadingAssemblerOptions } from './ReadingAssembler.ts';
import type { Reading, StreamEvent } from './StreamEvent.ts';

/** A reader that was already sending when the port was opened names its types in reply; so long they are awaited. */
const TYPE_AWAITED_US = 5_000_000;
const TYPE_UNKNOWN = 'thermocouple-type-unknown';
const NOTHING: readonly StreamEvent[] = Object.freeze([]);

/**
 * Lines, marks and host events of a recording to readings on one continuous time. Lost, repeated and late
 * samples, restarts, silences, unplugs and a sleeping host are counted and become gaps, never bridged.
 * Marks and edges that come before the first reading wait for it and then carry a time below zero; trouble
 * before the first reading carries 0. Constant memory, except for marks made before any reading.
 */
export function createReadingAssembler(options: ReadingAssemblerOptions): ReadingAssembler {
  const { decoder } = options;
  const timeline = createTimeline(decoder);
  const values = createValueReader(options.thermocoupleTypes);
  const { counts, trouble } = createWireCounter();
  const waiting = createWaitingList(timeline);
  let latestReading: Reading | null = null;
  let identity: ReaderIdentity | null = null;
  let refusal: { readonly problem: string; readonly detail: string } | null = null;
  let arrivedUs = 0;
  let heard = false;
  let away = false;
  let untypedSinceUs: number | null = null;

  const refuse = (problem: string, detail: string, out: StreamEvent[]): void => {
    if (refusal?.problem === problem && refusal.detail === detail) return;
    refusal = Object.freeze({ problem, detail });
    out.push({ kind: 'refusal', problem, detail });
  };

  const refuseUntyped = (out: StreamEvent[]): void =>
    refuse(TYPE_UNKNOWN, untypedChannelsText([...values.untyped]), out);

  const takeEdge = (event: ContactEvent, out: StreamEvent[]): void => {
    const timeUs = edgeTimeUs(timeline, event, arrivedUs);
    if (timeUs === null) waiting.edge(event, arrivedUs);
    else out.push({ kind: 'contact', timeS: timeUs / 1e6, closed: event.closed });
  };

  const takeSample = (sample: SampleEvent, out: StreamEvent[]): void => {
    const fromUs = timeline.latestTimeUs ?? 0;
    const placement = timeline.place(finite(sample.sequence), finite(sample.deviceTimeUs), arrivedUs);
    if (!placement.placed) {
      counts.duplicates += 1;
      return;
    }
    const { timeUs, gapCause, lostSamples } = placement;
    if (placement.restarted) counts.restarts += 1;
    if (gapCause !== null) {
      counts.gaps += 1;
      counts.lostSamples += lostSamples ?? 0;
      out.push({ kind: 'gap', fromS: fromUs / 1e6, toS: timeUs / 1e6, cause: gapCause, lostSamples });
    }
    waiting.release(timeUs, arrivedUs, out);
    latestReading = { timeS: timeUs / 1e6, arrivedUs, values: values.read(sample.channels) };
    counts.readings += 1;
    out.push({ kind: 'reading', reading: latestReading });
    if (values.untyped.size > 0) {
      untypedSinceUs ??= timeUs;
      if (timeUs - untypedSinceUs >= TYPE_AWAITED_US) refuseUntyped(out);
    }
  };

  const takeOther = (event: Exclude<WireEvent, SampleEvent>, out: StreamEvent[]): void => {
    switch (event.kind) {
      case 'contact':
        takeEdge(event, out);
        break;
      case 'identity':
        identity = event.identity;
        values.learn(event.identity);
        untypedSinceUs = null;
        if (refusal?.problem === TYPE_UNKNOWN) refusal = null;
        out.push({ kind: 'identity', identity });
        break;
      case 'started':
        timeline.noteStarted();
        break;
      case 'overflow':
        if (Number.isFinite(event.lostSamples)) timeline.noteOverflow(event.lostSamples);
        break;
      case 'trouble':
        trouble(event.trouble);
        out.push({
          kind: 'trouble',
          timeS: timeline.seenTimeUs(arrivedUs) / 1e6,
          trouble: event.trouble,
          text: event.text,
        });
        break;
      case 'refusal':
        refuse(event.problem, event.detail, out);
        break;
      case 'reply':
      case 'remark':
        break;
    }
  };
  const takeHostEvent = (entry: Extract<RecordingEntry, { kind: 'host' }>): void => {
    if (entry.event === 'host-slept')
      timeline.noteBreak('host-asleep', readHostSleptDetail(entry.detail).uncountedS * 1e6);
    else timeline.noteBreak('unplugged', 0);
    if (entry.event === 'port-lost') counts.unplugs += 1;
    away = entry.event === 'port-lost' || (away && entry.event !== 'port-back');
  };

  return {
    accept(entry) {
      if (Number.isFinite(entry.arrivedUs)) {
        arrivedUs = heard ? Math.max(arrivedUs, entry.arrivedUs) : entry.arrivedUs;
        heard = true;
      }
      if (entry.kind === 'line') {
        counts.lines += 1;
        const events = decoder.decode(entry);
        if (events.length === 0) return NOTHING;
        const out: StreamEvent[] = [];
        for (const event of events)
          if (event.kind === 'sample') takeSample(event, out);
          else takeOther(event, out);
        return out;
      }
      if (entry.kind === 'host') {
        takeHostEvent(entry);
        return NOTHING;
      }
      if (timeline.latestTimeUs === null) {
        waiting.mark(entry.mark, arrivedUs);
        return NOTHING;
      }
      return [{ kind: 'mark', timeS: timeline.seenTimeUs(arrivedUs) / 1e6, mark: entry.mark }];
    },
    finish() {
      const out: StreamEvent[] = [];
      const latestUs = timeline.latestTimeUs;
      if (latestUs !== null && away) {
        counts.gaps += 1;
        const toS = timeline.seenTimeUs(arrivedUs) / 1e6;
        out.push({ kind: 'gap', fromS: latestUs / 1e6, toS, cause: 'unplugged', lostSamples: null });
      }
      away = false;
      waiting.release(latestUs ?? 0, arrivedUs, out);
      if (values.untyped.size > 0) refuseUntyped(out);
      return out;
    },
    counts,
    get clock() {
      return timeline.clock;
    },
    get latestReading() {
      return latestReading;
    },
    get identity() {
      return identity;
    },
    get refusal() {
      return refusal;
    },
    get recognised() {
      return decoder.recognised;
    },
  };
}

function finite(value: number | null): number | null {
  return value !== null && Number.isFinite(value) ? value : null;
}
