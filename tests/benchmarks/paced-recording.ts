import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { createMonotonicClock } from '../../src/adapters/host/create-monotonic-clock.ts';
import { openStore } from '../../src/adapters/sqlite/open-store.ts';
import { createLineSource } from '../../src/core/reading/create-line-source.ts';
import { createSession } from '../../src/core/session/create-session.ts';
import { createReaderDecoder } from '../../src/core/wire/create-reader-decoder.ts';
import { benchHead, benchRules, sampleChunks } from './bench-data.ts';

function openPath(recordingId: string) {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  const store = openStore({ path: join(folder, 'bench.db') });
  const clock = createMonotonicClock();
  const writer = store.startRecording(benchHead(recordingId));
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
  const close = (): void => {
    writer.close();
    store.close();
    rmSync(folder, { recursive: true });
  };
  return { clock, writer, session, source, close };
}

/** Share of one core that the whole path takes at 1,000 lines/s in real time, and the delay until on disk. */
export async function costAt1000LinesPerS(seconds: number) {
  const chunks = sampleChunks(seconds * 1000);
  const path = openPath('paced');
  const startMs = performance.now();
  const cpuBefore = process.cpuUsage();
  for (let i = 0; i < chunks.length; i += 1) {
    const dueMs = (i / chunks.length) * seconds * 1000;
    const aheadMs = dueMs - (performance.now() - startMs);
    if (aheadMs > 1) await wait(aheadMs);
    path.source.bytes(chunks[i] as Uint8Array, path.clock.nowUs());
  }
  const cpu = process.cpuUsage(cpuBefore);
  const wallMs = performance.now() - startMs;
  path.writer.flush();
  const delay = path.writer.commitDelay();
  path.close();
  return {
    coreShare: (cpu.user + cpu.system) / 1000 / wallMs,
    onDiskP99Ms: delay.p99Ms,
    onDiskWorstMs: delay.worstMs,
  };
}

/** Heap growth over an hour of 10 Hz recording (36,000 lines), fed as fast as it goes. */
export async function heapGrowthOverAnHourMB(): Promise<number> {
  const chunks = sampleChunks(36_000);
  const path = openPath('hour');
  globalThis.gc?.();
  const before = process.memoryUsage().heapUsed;
  for (let i = 0; i < chunks.length; i += 1) {
    path.source.bytes(chunks[i] as Uint8Array, Math.round((i / chunks.length) * 3_600_000_000));
    if (i % 16 === 0) await wait(0);
  }
  globalThis.gc?.();
  const growth = (process.memoryUsage().heapUsed - before) / 1e6;
  path.close();
  return growth;
}
