import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { recordingFileName } from '../../../src/core/exchange/recording-file-name.ts';
import { recordingParts } from '../../../src/core/exchange/recording-parts.ts';
import { formatRecording } from '../../../src/core/recording/format-recording.ts';
import type { RecordingEntry, RecordingHead } from '../../../src/core/recording/RecordingEntry.ts';
import { anyText } from '../recording/arbitraries.ts';

const head: RecordingHead = {
  recordingId: 'a',
  madeAt: '2026-03-02T08:15:00+01:00',
  program: 'test',
  roles: ['bond-line'],
  simulated: true,
  further: { note: 'end 3 sha256' },
};
const entries = (count: number): RecordingEntry[] =>
  Array.from({ length: count }, (_, at) => ({
    kind: 'line',
    arrivedUs: at * 1_000,
    text: at % 7 === 0 ? '' : `end ${at}`,
    wholeness: 'whole',
  }));
const whole = (count: number): string => [...formatRecording(head, entries(count))].join('');

function* chopped(text: string, sizes: readonly number[]): Generator<string> {
  let at = 0;
  for (let turn = 0; at < text.length; turn += 1) {
    const size = sizes[turn % sizes.length] ?? 1;
    yield text.slice(at, at + size);
    at += size;
  }
}

describe('recordingParts', () => {
  it('gives head, entries and closing whose texts are the recording, with the number of entries, however it is cut', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 60 }),
        fc.array(fc.integer({ min: 1, max: 90 }), { minLength: 1, maxLength: 5 }),
        fc.boolean(),
        fc.boolean(),
        (count, sizes, returns, mark) => {
          const text = whole(count);
          const edited = `${mark ? '\uFEFF' : ''}${returns ? text.replaceAll('\n', '\r\n') : text}`;
          const parts = [...recordingParts(chopped(edited, sizes))];
          expect(parts.map((part) => part.text).join('')).toBe(text);
          expect(parts[0]?.kind).toBe('head');
          expect(parts.at(-1)?.kind).toBe('closing');
          expect(parts.reduce((sum, part) => sum + (part.kind === 'entries' ? part.entries : 0), 0)).toBe(
            count,
          );
        },
      ),
      { numRuns: 100 },
    );
  });

  it('keeps 5,000 entries in parts of at most 2,000', () => {
    const parts = [...recordingParts([whole(5_000)])];
    expect(parts.map((part) => (part.kind === 'entries' ? part.entries : part.kind))).toEqual([
      'head',
      2_000,
      2_000,
      1_000,
      'closing',
    ]);
  });

  it('leaves a cut last line out, and takes a closing line without its line feed', () => {
    const text = whole(3);
    const open = text.slice(0, text.indexOf('end 3 sha256 ', text.indexOf('begin')));
    expect([...recordingParts([`${open}0.003000 li`])].map((part) => part.text).join('')).toBe(open);
    expect([...recordingParts([text.slice(0, -1)])].map((part) => part.text).join('')).toBe(text);
  });
});

describe('recordingFileName', () => {
  it('keeps a plain id', () => {
    expect(recordingFileName('import-00ff')).toBe('import-00ff.dwell.txt');
  });

  it.each([
    '../../etc/passwd',
    '/root',
    'a\\b',
    '.hidden',
    '',
    'con',
    'NUL.x',
    'a b',
    'x'.repeat(300),
    'ends.',
  ])('makes %j a plain name of its own', (id) => {
    expect(recordingFileName(id)).toMatch(/^recording-[A-Za-z0-9-]*-[0-9a-f]{12}\.dwell\.txt$/);
  });

  it('never leaves its folder and never gives two ids one name (1,000 pairs)', () => {
    fc.assert(
      fc.property(anyText, anyText, (one, two) => {
        expect(recordingFileName(one)).toMatch(/^[A-Za-z0-9][A-Za-z0-9._-]*\.dwell\.txt$/);
        if (one !== two) expect(recordingFileName(one)).not.toBe(recordingFileName(two));
      }),
      { numRuns: 1_000 },
    );
  });
});
