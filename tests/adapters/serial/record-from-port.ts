import { setTimeout as wait } from 'node:timers/promises';
import { createMonotonicClock } from '../../../src/adapters/host/create-monotonic-clock.ts';
import { createSerialLink, type SerialLinkOptions } from '../../../src/adapters/serial/create-serial-link.ts';
import { createLineSource } from '../../../src/core/reading/create-line-source.ts';
import { createReadingAssembler } from '../../../src/core/reading/create-reading-assembler.ts';
import type { StreamEvent } from '../../../src/core/reading/StreamEvent.ts';
import type { RecordingEntry } from '../../../src/core/recording/RecordingEntry.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';

/** The whole way from a port to readings, as a live recording takes it. */
export function recordFromPort(
  path: string,
  options: Pick<SerialLinkOptions, 'onOpenCommands' | 'list'> = {},
) {
  const clock = createMonotonicClock();
  const link = createSerialLink({ path, baudRate: 115_200, clock, ...options });
  const assembler = createReadingAssembler({ decoder: createReaderDecoder() });
  const entries: RecordingEntry[] = [];
  const events: StreamEvent[] = [];
  const source = createLineSource({
    startUs: clock.nowUs(),
    onEntry(entry) {
      entries.push(entry);
      events.push(...assembler.accept(entry));
    },
  });
  return {
    clock,
    link,
    assembler,
    entries,
    events,
    open: () => link.open(source),
    async close() {
      await link.close();
      source.finish(clock.nowUs());
      events.push(...assembler.finish());
    },
    hostEvents: () => entries.flatMap((entry) => (entry.kind === 'host' ? [entry.event] : [])),
    lines: () => entries.flatMap((entry) => (entry.kind === 'line' ? [entry] : [])),
    readings: () => events.flatMap((event) => (event.kind === 'reading' ? [event.reading] : [])),
    gaps: () => events.filter((event) => event.kind === 'gap'),
  };
}

/** Waits until it is so; fails after the limit with what was waited for. */
export async function until(what: string, isSo: () => boolean, limitMs = 5_000): Promise<void> {
  const endMs = performance.now() + limitMs;
  while (!isSo()) {
    if (performance.now() > endMs) throw new Error(`waited ${limitMs} ms for ${what}`);
    await wait(2);
  }
}
