import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { createRecordingParser } from '../../../src/core/recording/create-recording-parser.ts';
import { createSha256Hasher } from '../../../src/core/recording/create-sha256-hasher.ts';
import { formatEntry } from '../../../src/core/recording/format-entry.ts';
import { formatRecording } from '../../../src/core/recording/format-recording.ts';
import { parseRecording } from '../../../src/core/recording/parse-recording.ts';
import type { RecordingEntry } from '../../../src/core/recording/RecordingEntry.ts';
import { anyEntry, anyHead } from './arbitraries.ts';

const deepFreeze = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null) Object.values(Object.freeze(value)).forEach(deepFreeze);
  return value;
};

test('any head and any entries come back unchanged, and the text is sound', () => {
  fc.assert(
    fc.property(anyHead, fc.array(anyEntry, { maxLength: 8 }), (head, entries) => {
      const text = [...formatRecording(deepFreeze(head), deepFreeze(entries))].join('');
      const back = parseRecording(text);
      expect(back.head).toEqual(head);
      expect(back.entries).toEqual(entries);
      expect(back.soundness).toEqual({ kind: 'sound' });
    }),
    { numRuns: 500 },
  );
});

test('the text of any wire line is printable ASCII without a space at its end', () => {
  fc.assert(
    fc.property(anyEntry, (entry) => {
      const line = formatEntry(entry);
      expect(line.endsWith('\n')).toBe(true);
      if (entry.kind === 'line') expect(line.slice(0, -1)).toMatch(/^[\x20-\x7e]*[\x21-\x7e]$/);
      else expect(line.slice(0, -1)).toMatch(/^[^\p{Cc}\p{Cs}\p{Zl}\p{Zp}]*\S$/u);
    }),
    { numRuns: 1_000 },
  );
});

test('a text cut into pieces anywhere, or with CR LF and a byte order mark, gives the same', () => {
  fc.assert(
    fc.property(
      anyHead,
      fc.array(anyEntry, { maxLength: 6 }),
      fc.array(fc.nat({ max: 60 }), { minLength: 1, maxLength: 10 }),
      (head, entries, sizes) => {
        const text = [...formatRecording(head, entries)].join('');
        const carried = `\uFEFF${text.replaceAll('\n', '\r\n')}`;
        const parser = createRecordingParser();
        const found: RecordingEntry[] = [];
        for (let from = 0, turn = 0; from < carried.length; turn += 1) {
          const size = 1 + (sizes[turn % sizes.length] ?? 0);
          found.push(...parser.accept(carried.slice(from, from + size)));
          from += size;
        }
        expect(parser.finish()).toEqual({ kind: 'sound' });
        expect(parser.head).toEqual(head);
        expect(found).toEqual(entries);
      },
    ),
    { numRuns: 200 },
  );
});

test('the closing hash is the SHA-256 that another implementation gives of everything before the closing line', () => {
  fc.assert(
    fc.property(anyHead, fc.array(anyEntry, { maxLength: 5 }), (head, entries) => {
      const pieces = [...formatRecording(head, entries)];
      const before = pieces.slice(0, -1).join('');
      const hash = createHash('sha256').update(before, 'utf8').digest('hex');
      expect(pieces.at(-1)).toBe(`end ${entries.length} sha256 ${hash}\n`);
    }),
    { numRuns: 100 },
  );
});

test('SHA-256 of "abc" is the value of FIPS 180-2 appendix B.1', () => {
  const hasher = createSha256Hasher();
  hasher.update('a');
  hasher.update('bc');
  expect(hasher.digestHex()).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
});

test('the example in recordings/README.md opens as it says: 5 entries, sound', () => {
  const page = readFileSync(new URL('../../../recordings/README.md', import.meta.url), 'utf8');
  const example = /```\n(dwellwright-recording[\s\S]*?)```/.exec(page)?.[1] ?? '';
  const { head, entries, soundness } = parseRecording(example);
  expect(soundness).toEqual({ kind: 'sound' });
  expect(head).toMatchObject({ pressName: 'North', targetC: 176.7, roles: { length: 4 } });
  expect(entries).toHaveLength(5);
  expect(entries[0]).toMatchObject({ arrivedUs: 0, wholeness: 'start-unknown', text: '1.9 C  T2: 24.0 C' });
  expect(entries[1]).toMatchObject({
    arrivedUs: 100_113,
    wholeness: 'whole',
    text: 'T1: 21.9 C  T2: 24.0 C',
  });
  expect(entries[2]).toEqual({ kind: 'mark', arrivedUs: 141_020, by: 'key', mark: { kind: 'press-closed' } });
  expect(entries[4]).toEqual({ kind: 'host', arrivedUs: 731_500, event: 'port-lost', detail: 'unplugged' });
});
