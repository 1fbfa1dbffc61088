import { createHash } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { ReadlineParser } from '@serialport/parser-readline';
import Database from 'better-sqlite3';
import { createMonotonicClock } from '../../src/adapters/host/create-monotonic-clock.ts';
import { openStore } from '../../src/adapters/sqlite/open-store.ts';
import { createLineSource } from '../../src/core/reading/create-line-source.ts';
import { createSession } from '../../src/core/session/create-session.ts';
import { createReaderDecoder } from '../../src/core/wire/create-reader-decoder.ts';
import { benchHead, benchRules, sampleChunks } from './bench-data.ts';

/** Lines a second through the bare readline parser: the floor that nothing of ours can beat. */
export async function bareParserLinesPerS(lines: number): Promise<number> {
  const chunks = sampleChunks(lines);
  const parser = new ReadlineParser({ delimiter: '\n' });
  let count = 0;
  parser.on('data', () => {
    count += 1;
  });
  const startMs = performance.now();
  Readable.from(chunks).pipe(parser);
  await new Promise((resolve) => parser.on('end', resolve));
  if (count < lines) throw new Error(`bare parser lost lines: ${count} of ${lines}`);
  return lines / ((performance.now() - startMs) / 1000);
}

/** Lines a second through a plain script: bare parser, split, a checksum sum, batched commits with FULL. */
export async function plainScriptLinesPerS(lines: number): Promise<number> {
  const chunks = sampleChunks(lines);
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const database = new Database(join(folder, 'plain.db'));
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.exec('CREATE TABLE line (at INTEGER, text TEXT) STRICT');
  const insert = database.prepare('INSERT INTO line VALUES (?, ?)');
  const commit = database.transaction((batch: readonly string[]) => {
    for (const text of batch) insert.run(0, text);
  });
  const parser = new ReadlineParser({ delimiter: '\n' });
  let batch: string[] = [];
  let sum = 0;
  parser.on('data', (line: string) => {
    const fields = line.split(' ');
    for (let i = 0; i < line.length; i += 1) sum = (sum + line.charCodeAt(i)) & 0xffff;
    for (const field of fields) if (Number.isNaN(Number(field))) sum += 1;
    batch.push(line);
    if (batch.length === 1000) {
      commit(batch);
      batch = [];
    }
  });
  const startMs = performance.now();
  Readable.from(chunks).pipe(parser);
  await new Promise((resolve) => parser.on('end', resolve));
  commit(batch);
  const rate = lines / ((performance.now() - startMs) / 1000);
  database.close();
  rmSync(folder, { recursive: true });
  return sum >= 0 ? rate : 0;
}

/** Lines a second through the whole path: splitter, checksum, decoder, assembler, run tracker, durable store. */
export async function wholePathLinesPerS(
  lines: number,
): Promise<{ readonly linesPerS: number; readonly heapGrowthMB: number }> {
  const chunks = sampleChunks(lines);
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const store = openStore({ path: join(folder, 'bench.db') });
  const clock = createMonotonicClock();
  const writer = store.startRecording(
    benchHead(createHash('sha256').update('bench').digest('hex').slice(0, 12)),
  );
  const session = createSession({
    decoder: createReaderDecoder(),
    roles: benchHead('').roles,
    rules: benchRules,
  });
  const source = createLineSource({
    startUs: clock.nowUs(),
    onEntry: (entry) => {
      writer.append(entry);
      session.accept(entry);
    },
  });
  globalThis.gc?.();
  const heapBefore = process.memoryUsage().heapUsed;
  const startMs = performance.now();
  let fed = 0;
  for (const chunk of chunks) {
    source.bytes(chunk, clock.nowUs());
    fed += 1;
    // Timers (group commit) get their turn, as they would between reads of a port.
    if (fed % 16 === 0) await new Promise((resolve) => setImmediate(resolve));
  }
  writer.close();
  const rate = lines / ((performance.now() - startMs) / 1000);
  globalThis.gc?.();
  const heapAfter = process.memoryUsage().heapUsed;
  const { readings } = session.state.counts;
  store.close();
  rmSync(folder, { recursive: true });
  if (readings < lines - 1) throw new Error(`whole path lost readings: ${readings} of ${lines}`);
  return { linesPerS: rate, heapGrowthMB: (heapAfter - heapBefore) / 1e6 };
}
