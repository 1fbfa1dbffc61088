import { parseArrival } from './parse-arrival.ts';
import { parseMark } from './parse-mark.ts';
import type { HostEvent, RecordingEntry } from './RecordingEntry.ts';
import { splitWord } from './split-word.ts';
import { unescapeText } from './unescape-text.ts';

const HOST_EVENTS: ReadonlySet<string> = new Set<HostEvent>([
  'port-lost',
  'port-back',
  'host-slept',
  'recording-resumed',
]);

/** Reads one line of a recording's body (without line end), as `formatEntry` writes it; null when it is none. */
export function parseEntry(line: string): RecordingEntry | null {
  const [arrival, afterArrival] = splitWord(line);
  const arrivedUs = parseArrival(arrival);
  if (arrivedUs === null) return null;
  const [tag, content] = splitWord(afterArrival);
  switch (tag) {
    case 'line':
    case 'start-unknown':
    case 'cut-off':
    case 'over-long': {
      const text = unescapeText(content);
      if (text === null) return null;
      return { kind: 'line', arrivedUs, text, wholeness: tag === 'line' ? 'whole' : tag };
    }
    case 'mark': {
      const [by, words] = splitWord(content);
      if (by !== 'key' && by !== 'pedal' && by !== 'command') return null;
      const mark = parseMark(words);
      return mark === null ? null : { kind: 'mark', arrivedUs, by, mark };
    }
    case 'host': {
      const [event, escaped] = splitWord(content);
      const detail = unescapeText(escaped);
      if (detail === null || !isHostEvent(event)) return null;
      return { kind: 'host', arrivedUs, event, detail };
    }
    default:
      return null;
  }
}

function isHostEvent(word: string): word is HostEvent {
  return HOST_EVENTS.has(word);
}
