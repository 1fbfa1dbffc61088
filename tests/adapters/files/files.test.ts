import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, onTestFinished, test } from 'vitest';
import { decodeText } from '../../../src/adapters/files/decode-text.ts';
import { defaultStorePath } from '../../../src/adapters/files/default-store-path.ts';
import { readLoggerBytes } from '../../../src/adapters/files/read-logger-bytes.ts';
import { readRecordingFile } from '../../../src/adapters/files/read-recording-file.ts';
import { readTextFileHead } from '../../../src/adapters/files/read-text-file-head.ts';
import { writeRecordingFile } from '../../../src/adapters/files/write-recording-file.ts';
import { looksLikeRecording } from '../../../src/core/recording/looks-like-recording.ts';
import type { RecordingEntry, RecordingHead } from '../../../src/core/recording/RecordingEntry.ts';
import { anyEntry, anyHead } from '../../core/recording/arbitraries.ts';

function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'dwellwright-files-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

function fileOf(bytes: Uint8Array | string): string {
  const path = join(temporaryFolder(), 'a file.txt');
  writeFileSync(path, bytes);
  return path;
}

const refused = (code: string, text: string) =>
  expect.objectContaining({
    code,
    message: expect.stringContaining(text),
    remedy: expect.stringMatching(/\w/),
  });

const head: RecordingHead = {
  recordingId: 'a',
  madeAt: '2026-03-02T08:15:00+01:00',
  program: 'dwellwright 0.1.0',
  roles: ['bond-line'],
  simulated: true,
  pressName: 'Süd',
  further: {},
};
const lines = (count: number): RecordingEntry[] =>
  Array.from({ length: count }, (_none, number) => ({
    kind: 'line',
    arrivedUs: number * 1_000,
    text: `T1: ${number} \xb0C`,
    wholeness: 'whole',
  }));

describe('recording files', () => {
  test('any head and entries come back from the file, sound', () => {
    const path = join(temporaryFolder(), 'a.dwell.txt');
    fc.assert(
      fc.property(anyHead, fc.array(anyEntry, { maxLength: 6 }), (anyOne, entries) => {
        writeRecordingFile(path, anyOne, entries);
        const file = readRecordingFile(path);
        expect(file.head).toEqual(anyOne);
        expect([...file.entries()]).toEqual(entries);
        expect(file.soundness).toEqual({ kind: 'sound' });
      }),
      { numRuns: 60 },
    );
  });

  test('20,000 lines over many pieces come back in order, twice; soundness is known with or without a round before', () => {
    const path = join(temporaryFolder(), 'a.dwell.txt');
    writeRecordingFile(path, head, lines(20_000));
    const file = readRecordingFile(path);
    expect(file.soundness).toEqual({ kind: 'sound' });
    expect([...file.entries()]).toEqual(lines(20_000));
    expect([...file.entries()]).toHaveLength(20_000);
  });

  test('the hash in the file is what the usual tools compute over all lines but the last', ({ skip }) => {
    const path = join(temporaryFolder(), 'a.dwell.txt');
    writeRecordingFile(path, head, lines(5));
    const script = 'head -n -1 "$1" | sha256sum';
    const tool = spawnSync('sh', ['-c', script, 'sh', path], { encoding: 'utf8' });
    skip(tool.status !== 0, 'skipped: no sha256sum or GNU head on this machine');
    expect(readFileSync(path, 'utf8')).toContain(`end 5 sha256 ${tool.stdout.slice(0, 64)}\n`);
  });

  test('a file cut within a letter, and one with an altered byte, open as far as they are whole and say so', () => {
    const path = join(temporaryFolder(), 'a.dwell.txt');
    writeRecordingFile(path, head, [
      ...lines(3),
      { kind: 'mark', arrivedUs: 3_000, by: 'key', mark: { kind: 'note', text: 'Öl' } },
    ]);
    const bytes = readFileSync(path);
    const letter = bytes.indexOf(Buffer.from('Ö'));
    writeFileSync(path, bytes.subarray(0, letter + 1));
    expect([...readRecordingFile(path).entries()]).toEqual(lines(3));
    expect(readRecordingFile(path).soundness).toEqual({ kind: 'not-closed' });
    // A byte that is no UTF-8 where the letter was.
    bytes[letter] = 0xff;
    writeFileSync(path, bytes);
    expect(readRecordingFile(path).soundness.kind).toBe('altered');
    expect([...readRecordingFile(path).entries()]).toHaveLength(4);
  });

  test('writing takes the place of an older file as a whole, or leaves it as it was when the entries fail', () => {
    const folder = temporaryFolder();
    const path = join(folder, 'a.dwell.txt');
    writeRecordingFile(path, head, lines(2));
    const before = readFileSync(path, 'utf8');
    const failing = function* (): Generator<RecordingEntry> {
      yield* lines(5_000);
      throw new RangeError('no more');
    };
    expect(() => writeRecordingFile(path, head, failing())).toThrow(RangeError);
    expect(readFileSync(path, 'utf8')).toBe(before);
    expect(readdirSync(folder)).toEqual(['a.dwell.txt']);
    writeRecordingFile(path, head, lines(3));
    expect([...readRecordingFile(path).entries()]).toHaveLength(3);
    expect(readdirSync(folder)).toEqual(['a.dwell.txt']);
  });

  test('what cannot be read or written is named', () => {
    const folder = temporaryFolder();
    const missing = join(folder, 'none.dwell.txt');
    expect(() => readRecordingFile(missing)).toThrow(refused('file-missing', missing));
    expect(() => readRecordingFile(folder)).toThrow(refused('file-is-folder', folder));
    expect(() => readRecordingFile(fileOf(''))).toThrow(refused('file-empty', 'a file.txt'));
    expect(() => readRecordingFile(fileOf('time,T1\n0,21\n'))).toThrow(
      refused('recording-not-one', 'time,T1'),
    );
    expect(() => readRecordingFile(fileOf('dwellwright-recording: 1\nprogram: x\n'))).toThrow(
      refused('recording-head-cut', 'program: x'),
    );
    const nowhere = join(folder, 'no', 'such', 'a.dwell.txt');
    expect(() => writeRecordingFile(nowhere, head, [])).toThrow(refused('file-not-written', nowhere));
    const behindFile = join(fileOf('x'), 'a.dwell.txt');
    expect(() => writeRecordingFile(behindFile, head, [])).toThrow(refused('file-not-written', behindFile));
    mkdirSync(join(folder, 'taken'));
    expect(() => writeRecordingFile(join(folder, 'taken'), head, [])).toThrow(
      refused('file-not-written', 'taken'),
    );
    expect(readdirSync(folder)).toEqual(['taken']);
  });

  test('memory stays bounded: 60 MB of recording are read with less than 30 MB more', () => {
    const path = join(temporaryFolder(), 'long.dwell.txt');
    const many = function* (): Generator<RecordingEntry> {
      const text = `S,1,${'231.25,'.repeat(50)}`;
      for (let number = 0; number < 160_000; number += 1) {
        yield { kind: 'line', arrivedUs: number * 1_000, text, wholeness: 'whole' };
      }
    };
    writeRecordingFile(path, head, many());
    const before = process.memoryUsage.rss();
    let count = 0;
    let peak = 0;
    for (const _entry of readRecordingFile(path).entries()) {
      count += 1;
      if (count % 5_000 === 0) peak = Math.max(peak, process.memoryUsage.rss());
    }
    expect(count).toBe(160_000);
    console.log(`reading 60 MB of recording took ${((peak - before) / 1e6).toFixed(0)} MB more memory`);
    expect(peak - before).toBeLessThan(30e6);
  });
});

describe("other loggers' text", () => {
  const text = 'time;T1 [°C]\r\n0,1;21,5\r\n';
  const utf16le = Buffer.from(text, 'utf16le');
  const utf16be = Buffer.from(text, 'utf16le').swap16();
  test.each<[string, Uint8Array]>([
    ['UTF-8', Buffer.from(text)],
    ['UTF-8 with byte order mark', Buffer.from(`\uFEFF${text}`)],
    ['UTF-16 little-endian with byte order mark', Buffer.concat([Buffer.from([0xff, 0xfe]), utf16le])],
    ['UTF-16 big-endian with byte order mark', Buffer.concat([Buffer.from([0xfe, 0xff]), utf16be])],
    ['UTF-16 little-endian without mark', utf16le],
    ['UTF-16 big-endian without mark', utf16be],
    ['a single-byte code (0xB0 is the degree sign)', Buffer.from(text, 'latin1')],
  ])('%s', (_name, bytes) => {
    const path = fileOf(bytes);
    expect(decodeText(readLoggerBytes(path))).toBe(text);
    expect(text.startsWith(readTextFileHead(path, 12).slice(0, 4))).toBe(true);
  });

  test('the head of a file is decoded also when it is cut within a letter', () => {
    expect(readTextFileHead(fileOf('a°C'), 2)).toBe('a');
    const path = join(temporaryFolder(), 'a.dwell.txt');
    writeRecordingFile(path, head, lines(1));
    expect(looksLikeRecording(readTextFileHead(path))).toBe(true);
  });

  test('any bytes decode without failing', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 64 }), (bytes) => {
        expect(typeof decodeText(bytes)).toBe('string');
        expect(typeof decodeText(bytes, { cutAtEnd: true })).toBe('string');
      }),
    );
  });

  test('missing, empty and folder are refused by name', () => {
    const folder = temporaryFolder();
    const missing = join(folder, 'none.csv');
    expect(() => readLoggerBytes(missing)).toThrow(refused('file-missing', missing));
    expect(() => readTextFileHead(missing)).toThrow(refused('file-missing', missing));
    expect(() => readLoggerBytes(folder)).toThrow(refused('file-is-folder', folder));
    expect(() => readTextFileHead(folder)).toThrow(refused('file-is-folder', folder));
    expect(() => readLoggerBytes(fileOf(''))).toThrow(refused('file-empty', 'a file.txt'));
  });

  test('a file that may not be read is refused by name', ({ skip }) => {
    skip(process.platform === 'win32', 'skipped: rights work otherwise on Windows');
    const folder = temporaryFolder();
    const path = join(folder, 'secret.csv');
    writeFileSync(path, 'x');
    chmodSync(folder, 0o755);
    chmodSync(path, 0o000);
    const superuser = process.getuid?.() === 0;
    if (superuser) process.seteuid?.(65_534);
    try {
      expect(() => readLoggerBytes(path)).toThrow(refused('file-not-allowed', path));
    } finally {
      if (superuser) process.seteuid?.(0);
    }
  });
});

describe('where the store lies', () => {
  test('an option comes before DWELLWRIGHT_STORE, and that before the data folder', () => {
    const environment = { DWELLWRIGHT_STORE: '/shop/trials.db' };
    expect(defaultStorePath({ option: '/desk/copy.db', environment })).toBe('/desk/copy.db');
    expect(defaultStorePath({ environment })).toBe('/shop/trials.db');
    expect(defaultStorePath({ option: ':memory:', environment })).toBe(':memory:');
    expect(defaultStorePath({ option: 'trials.db', environment })).toBe(join(process.cwd(), 'trials.db'));
    expect(defaultStorePath({ environment: { DWELLWRIGHT_STORE: '' } })).toMatch(/dwellwright.*store\.db$/);
  });

  test('on Linux the data folder is that of the XDG base directory specification', ({ skip }) => {
    skip(process.platform !== 'linux', 'skipped: the specification is for Linux');
    const data = process.env.XDG_DATA_HOME || join(homedir(), '.local', 'share');
    expect(defaultStorePath({ environment: {} })).toBe(join(data, 'dwellwright', 'store.db'));
  });
});
