import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createRecordingParser } from '../../../src/core/recording/create-recording-parser.ts';
import { formatRecording } from '../../../src/core/recording/format-recording.ts';
import { looksLikeRecording } from '../../../src/core/recording/looks-like-recording.ts';
import { parseRecording } from '../../../src/core/recording/parse-recording.ts';
import type { RecordingEntry, RecordingHead } from '../../../src/core/recording/RecordingEntry.ts';
import { RecordingError } from '../../../src/core/recording/RecordingError.ts';

const head: RecordingHead = {
  recordingId: 'wb-212-north-1',
  madeAt: '2026-03-02T08:15:00+01:00',
  program: 'dwellwright 0.1.0',
  roles: ['bond-line', 'upper-platen'],
  simulated: true,
  pressName: 'North',
  further: { bench: 'Fensterseite' },
};
const entries: readonly RecordingEntry[] = [
  { kind: 'line', arrivedUs: 0, text: 'T1: 21.9 \xb0C', wholeness: 'start-unknown' },
  { kind: 'line', arrivedUs: 100_113, text: 'T1: 22.0 \xb0C', wholeness: 'whole' },
  { kind: 'mark', arrivedUs: 141_020, by: 'pedal', mark: { kind: 'press-closed' } },
  { kind: 'mark', arrivedUs: 141_021, by: 'key', mark: { kind: 'note', text: 'Öl an der Sonde \\ é' } },
  { kind: 'host', arrivedUs: 12_000_000, event: 'host-slept', detail: '11.9 s' },
  { kind: 'line', arrivedUs: 12_100_000, text: 'T1: 2', wholeness: 'cut-off' },
];
const text = [...formatRecording(head, entries)].join('');
const bodyStart = text.indexOf('\nbegin\n') + '\nbegin\n'.length;
const closingStart = text.lastIndexOf('end ');

function codeOf(open: () => unknown): string {
  try {
    open();
  } catch (error) {
    if (error instanceof RecordingError) return error.code;
    throw error;
  }
  return 'opened';
}

test('cut at every position of its body, a recording gives exactly the entries whose line feed is there, and says it is not closed', () => {
  for (let cut = bodyStart; cut < text.length - 1; cut += 1) {
    const part = text.slice(0, cut);
    const whole = part.slice(bodyStart).split('\n').length - 1;
    const opened = parseRecording(part);
    expect(opened.entries).toEqual(entries.slice(0, whole));
    expect(opened.soundness).toEqual({ kind: 'not-closed' });
    expect(opened.head).toEqual(head);
  }
});

test('a closing line without its line feed is complete by its length and counts', () => {
  expect(parseRecording(text.slice(0, -1)).soundness).toEqual({ kind: 'sound' });
});

test('cut at every position of its head, a recording does not open and says so', () => {
  for (let cut = 0; cut < bodyStart; cut += 1) {
    const firstLineWhole = cut >= 'dwellwright-recording: 1'.length;
    const codes = firstLineWhole ? ['recording-head-cut'] : ['recording-not-one', 'recording-version'];
    expect(codes).toContain(codeOf(() => parseRecording(text.slice(0, cut))));
  }
});

test('cut at every byte, also within a letter, the bytes open as far as they are whole', () => {
  const bytes = new TextEncoder().encode(text);
  const bodyStartByte = new TextEncoder().encode(text.slice(0, bodyStart)).length;
  for (let cut = bodyStartByte; cut < bytes.length - 1; cut += 1) {
    const opened = parseRecording(new TextDecoder().decode(bytes.subarray(0, cut)));
    expect(opened.soundness).toEqual({ kind: 'not-closed' });
    expect(opened.entries).toEqual(entries.slice(0, opened.entries.length));
  }
});

test('one character changed, left out or put in anywhere before the closing line is noticed', () => {
  fc.assert(
    fc.property(
      fc.nat({ max: closingStart - 1 }),
      fc.constantFrom('changed', 'left out', 'put in'),
      fc.constantFrom('0', '7', 'x', ' ', 'A', '\\', '\n', '.'),
      (at, how, character) => {
        const after = how === 'put in' ? at : at + 1;
        const altered = text.slice(0, at) + (how === 'left out' ? '' : character) + text.slice(after);
        fc.pre(altered !== text);
        let finding: string;
        try {
          finding = parseRecording(altered).soundness.kind;
        } catch (error) {
          expect(error).toBeInstanceOf(RecordingError);
          finding = 'refused';
        }
        expect(finding).not.toBe('sound');
        // Only where the line feed before it is gone there is no closing line any more.
        if (at < closingStart - 1) expect(finding).not.toBe('not-closed');
      },
    ),
    { numRuns: 2_000 },
  );
});

test('an entry taken out whole is noticed by count and hash, and the finding gives both', () => {
  const lines = text.split('\n');
  lines.splice(lines.indexOf('begin') + 2, 1);
  const { entries: left, soundness } = parseRecording(lines.join('\n'));
  expect(left).toHaveLength(5);
  expect(soundness).toMatchObject({
    kind: 'altered',
    expected: expect.stringMatching(/^6 entries, SHA-256 [0-9a-f]{64}$/),
    came: expect.stringMatching(/^5 entries, SHA-256 [0-9a-f]{64}$/),
  });
});

test('something after the closing line is noticed, empty lines are not', () => {
  expect(parseRecording(`${text}\n\n`).soundness).toEqual({ kind: 'sound' });
  expect(parseRecording(`${text}12.200000 line T1: 25.0\n`).soundness.kind).toBe('altered');
  expect(parseRecording(`${text}12.200000 line`).soundness.kind).toBe('altered');
});

describe('a broken line ends what is used, and its number and text are told', () => {
  const beforeBroken = text.slice(0, closingStart);
  const lineNumber = beforeBroken.split('\n').length;
  test.each([
    ['no time', 'line T1: 22.0'],
    ['a time without all six decimals', '12.2 line T1: 22.0'],
    ['a time with comma', '12,200000 line T1: 22.0'],
    ['an unknown tag', '12.200000 lines T1: 22.0'],
    ['an unknown escape', '12.200000 line \\q'],
    ['an escape with a capital letter', '12.200000 line \\X41'],
    ['half an escape', '12.200000 line \\x4'],
    ['an unknown mark', '12.200000 mark key press-shut'],
    ['a mark of nobody', '12.200000 mark foot press-closed'],
    ['a mark with too much', '12.200000 mark key opened now'],
    ['an unknown condition', '12.200000 mark key conditions ring=new'],
    ['an unknown host event', '12.200000 host port-gone'],
    ['a closing line with a short hash', 'end 6 sha256 abc'],
    ['an empty line', ''],
  ])('%s', (_what, line) => {
    const opened = parseRecording(`${beforeBroken}${line}\n12.300000 line T1: 23.0\n`);
    expect(opened.entries).toEqual(entries);
    expect(opened.soundness).toEqual({ kind: 'broken', lineNumber, text: line });
  });
});

test('a line of 2 MB is broken whether it comes in pieces or at once, and not held in memory for ever', () => {
  const long = `13.000000 line ${'x'.repeat(2 << 20)}\n`;
  const inPieces = createRecordingParser();
  inPieces.accept(text.slice(0, closingStart));
  for (let from = 0; from < long.length; from += 65_536) inPieces.accept(long.slice(from, from + 65_536));
  const atOnce = createRecordingParser();
  atOnce.accept(text.slice(0, closingStart) + long);
  expect(inPieces.finish()).toMatchObject({ kind: 'broken' });
  expect(inPieces.finish()).toEqual(atOnce.finish());
});

describe('a head that may not be so is refused by the key', () => {
  const withHead = (change: (lines: string[]) => void) => {
    const lines = text.split('\n');
    change(lines);
    return () => parseRecording(lines.join('\n'));
  };
  const replaced = (from: string, to: string) =>
    withHead((lines) => lines.splice(lines.indexOf(from), 1, to));
  test.each([
    ['simulated: maybe', replaced('simulated: yes', 'simulated: maybe'), '"simulated"'],
    ['no recording-id', replaced('recording-id: wb-212-north-1', 'zz: 1'), '"recording-id"'],
    ['a role that is none', replaced('roles: bond-line, upper-platen', 'roles: bondline'), '"roles"'],
    [
      'a time without offset',
      replaced('made-at: 2026-03-02T08:15:00+01:00', 'made-at: 2026-03-02T08:15:00'),
      '"made-at"',
    ],
    ['a key twice', replaced('press: North', 'simulated: yes'), '"simulated"'],
    ['a target in words', replaced('press: North', 'target-c: hot'), '"target-c"'],
    ['an endless target', replaced('press: North', 'target-c: 1e999'), '"target-c"'],
    ['one set point of two', replaced('press: North', 'lower-platen-set-point-c: 232'), 'set-point'],
    ['no key at all', replaced('press: North', 'Press North'), '"Press North"'],
  ])('%s', (_what, open, named) => {
    expect(codeOf(open)).toBe('recording-head-wrong');
    expect(open).toThrow(named);
  });
});

test('a recording of format version 2 and a text that is no recording are told apart', () => {
  expect(codeOf(() => parseRecording(text.replace(': 1\n', ': 2\n')))).toBe('recording-version');
  expect(codeOf(() => parseRecording('time,temperature\n0,21\n'))).toBe('recording-not-one');
  expect(looksLikeRecording(text.slice(0, 40))).toBe(true);
  expect(looksLikeRecording(`\uFEFF${text}`)).toBe(true);
  expect(looksLikeRecording(' dwellwright-recording: 1')).toBe(false);
  expect(looksLikeRecording('T1: 231.2 C')).toBe(false);
});

test('a head with a target that is not finite, or a further key that has a meaning of its own, is not written', () => {
  expect(() => [...formatRecording({ ...head, targetC: Number.NaN }, [])]).toThrow('"target-c"');
  expect(() => [...formatRecording({ ...head, further: { press: 'South' } }, [])]).toThrow('"press"');
  expect(() => [...formatRecording({ ...head, further: { 'Two Words': 'x' } }, [])]).toThrow('Two Words');
  expect(() => [...formatRecording({ ...head, recordingId: '' }, [])]).toThrow('"recording-id"');
});

test('an arrival that is no whole number of microseconds is not written', () => {
  for (const arrivedUs of [0.5, Number.NaN, Number.POSITIVE_INFINITY]) {
    const entry: RecordingEntry = { kind: 'line', arrivedUs, text: '', wholeness: 'whole' };
    expect(() => [...formatRecording(head, [entry])]).toThrow(RangeError);
  }
});
