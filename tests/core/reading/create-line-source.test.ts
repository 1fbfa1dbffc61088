import { describe, expect, it } from 'vitest';
import { createLineSource } from '../../../src/core/reading/create-line-source.ts';
import type { RecordingEntry } from '../../../src/core/recording/RecordingEntry.ts';

const bytes = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

describe('createLineSource', () => {
  it('stamps lines from the start of the recording and never joins two connections', () => {
    const entries: RecordingEntry[] = [];
    const source = createLineSource({ startUs: 1000, onEntry: (entry) => entries.push(entry) });
    source.bytes(bytes('1.2\r\n23'), 1500);
    source.bytes(bytes('1.3\r\n23'), 2000);
    source.lost(2500, 'unplugged');
    source.back(9000);
    source.bytes(bytes('.4\r\n231.5\r\n23'), 9500);
    source.finish(9900);
    expect(entries).toEqual([
      { kind: 'line', arrivedUs: 500, text: '1.2', wholeness: 'start-unknown' },
      { kind: 'line', arrivedUs: 1000, text: '231.3', wholeness: 'whole' },
      { kind: 'line', arrivedUs: 1500, text: '23', wholeness: 'cut-off' },
      { kind: 'host', arrivedUs: 1500, event: 'port-lost', detail: 'unplugged' },
      { kind: 'host', arrivedUs: 8000, event: 'port-back', detail: '' },
      { kind: 'line', arrivedUs: 8500, text: '.4', wholeness: 'start-unknown' },
      { kind: 'line', arrivedUs: 8500, text: '231.5', wholeness: 'whole' },
      { kind: 'line', arrivedUs: 8900, text: '23', wholeness: 'cut-off' },
    ]);
  });
});
