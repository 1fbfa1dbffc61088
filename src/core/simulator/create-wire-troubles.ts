import type { HostEvent } from '../recording/RecordingEntry.ts';
import { formatReply } from '../wire/protocol/index.ts';
import type { LineWholeness } from '../wire/WireEvent.ts';
import type { ReaderVoice } from './create-reader-voice.ts';
import type { BenchEvent } from './create-simulated-bench.ts';
import type { Scenario, WireTroubleSetup } from './Scenario.ts';

/** What reaches the host, with the moment it was sent (s of the simulation). */
export type SentLine = {
  readonly sentS: number;
  /** The moment of the reading it holds; null if it holds none that can be used. */
  readonly readingS: number | null;
} & (
  | { readonly kind: 'line'; readonly text: string; readonly wholeness: LineWholeness }
  | { readonly kind: 'host'; readonly event: HostEvent; readonly sleptS: number }
);

/** Characters of the very first line that the host missed, having opened the port in the middle of it. */
const MISSED_CHARACTERS = 17;

/** Passes the reader's lines on to the host, with the scenario's trouble on the way. */
export function createWireTroubles(scenario: Scenario, voice: ReaderVoice) {
  const state = scenario.wireTroubles.map((trouble) => ({ trouble, left: linesOf(trouble), done: false }));
  let opened = false;

  const line = (sentS: number, text: string, wholeness: LineWholeness = 'whole'): SentLine => ({
    kind: 'line',
    sentS,
    readingS: null,
    text,
    wholeness,
  });

  /** The host asks a reader that it has (again) opened who it is, and to start. */
  function greeting(sentS: number): SentLine[] {
    const identity = voice.identityLine();
    return identity === null ? [] : [line(sentS, identity), line(sentS + 0.001, formatReply('start'))];
  }

  function send(event: BenchEvent): SentLine[] {
    const now = event.sentS;
    const before: SentLine[] = [];
    for (const entry of state) {
      const { trouble } = entry;
      const startS = 'fromS' in trouble ? trouble.fromS : trouble.atS;
      if (entry.done || now < startS) continue;
      switch (trouble.kind) {
        case 'garbage':
          entry.done = true;
          before.push(line(now - 0.003, trouble.text));
          break;
        case 'lost-lines':
        case 'damaged-lines': {
          if (event.kind !== 'sample') break;
          entry.left -= 1;
          entry.done = entry.left <= 0;
          if (trouble.kind === 'lost-lines') {
            voice.skipSample();
            return before;
          }
          return [...before, line(now, damaged(voice.lineOf(event) ?? ''))];
        }
        case 'host-asleep':
          if (now < trouble.toS) {
            if (event.kind === 'sample') voice.skipSample();
            return before;
          }
          entry.done = true;
          before.push({
            kind: 'host',
            sentS: now - 0.002,
            readingS: null,
            event: 'host-slept',
            sleptS: trouble.toS - trouble.fromS,
          });
          break;
        case 'reader-restarted':
          if (now < trouble.atS + trouble.awayS) return before;
          entry.done = true;
          before.push(...voice.restart(now - 0.012, 'watchdog').map((text) => line(now - 0.01, text)));
          break;
        case 'clock-reset':
          entry.done = true;
          voice.resetClock(now);
          break;
        case 'unplugged':
          if (now < trouble.toS) {
            if (entry.left > 0) {
              entry.left = 0;
              before.push(line(now, (voice.lineOf(event) ?? '').slice(0, 21), 'cut-off'), {
                kind: 'host',
                sentS: now + 0.004,
                readingS: null,
                event: 'port-lost',
                sleptS: 0,
              });
            }
            return before;
          }
          entry.done = true;
          before.push(
            { kind: 'host', sentS: now - 0.03, readingS: null, event: 'port-back', sleptS: 0 },
            ...voice
              .restart(now - 0.03, 'power-up')
              .map((text, index) => line(now - 0.02, text, index === 0 ? 'start-unknown' : 'whole')),
            ...greeting(now - 0.01),
          );
          break;
      }
    }
    const text = voice.lineOf(event);
    if (text === null) return before;
    if (!opened) {
      opened = true;
      return [line(now, text.slice(MISSED_CHARACTERS), 'start-unknown'), ...greeting(now + 0.01)];
    }
    const readingS = event.kind === 'sample' ? event.timeS : null;
    return [...before, { kind: 'line', sentS: now, readingS, text, wholeness: 'whole' }];
  }

  return { send };
}

function linesOf(trouble: WireTroubleSetup): number {
  return 'lines' in trouble ? trouble.lines : 1;
}

/** One bit of one character flipped on the way. */
function damaged(text: string): string {
  const at = Math.floor(text.length / 2);
  return text.slice(0, at) + String.fromCharCode(text.charCodeAt(at) ^ 0x04) + text.slice(at + 1);
}
