import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { fixtureProgram } from './fixture-program.ts';
import { temporaryFolder } from './samples.ts';

interface Call {
  readonly name: string;
  readonly rest: string;
  readonly beganS: number;
  readonly endedS: number;
}

const LINE = /^(\d+) +(\d+\.\d+) (?:<\.\.\. (\w+) resumed>)?(.*)$/;

/** System calls in the order they ended; calls that were interrupted in the listing are joined again. */
function callsOf(trace: string): Call[] {
  const begun = new Map<string, { name: string; rest: string; beganS: number }>();
  const calls: Call[] = [];
  for (const line of trace.split('\n')) {
    const [, thread = '', time = '', resumed, rest = ''] = LINE.exec(line) ?? [];
    const name = resumed ?? /^(\w+)\(/.exec(rest)?.[1];
    if (name === undefined) continue;
    const begin = resumed === undefined ? { name, rest, beganS: Number(time) } : begun.get(thread);
    if (begin === undefined) continue;
    if (rest.includes('<unfinished')) begun.set(thread, begin);
    else {
      const tookS = Number(/<(\d+\.\d+)>$/.exec(rest)?.[1] ?? 0);
      calls.push({ ...begin, endedS: resumed === undefined ? begin.beganS + tookS : Number(time) });
    }
  }
  return calls;
}

test('on Linux, each entry is written to the write-ahead log and flushed from the cache within 200 ms of its arrival', async ({
  skip,
}) => {
  const probe = spawnSync('strace', ['-f', '-e', 'trace=fsync', 'true']);
  skip(process.platform !== 'linux', 'skipped: system calls are traced on Linux only');
  skip(probe.error !== undefined, 'skipped: strace is not on this machine');
  skip(probe.status !== 0, `skipped: tracing is not allowed here (${probe.stderr})`);

  const program = await fixtureProgram('append-steadily');
  const folder = temporaryFolder();
  const path = join(folder, 'store.db');
  const traceFile = join(folder, 'trace');
  const traced = [
    '-f',
    '-ttt',
    '-T',
    '-y',
    '-s',
    '64',
    '-e',
    'trace=write,pwrite64,fsync,fdatasync',
    '-o',
    traceFile,
  ];
  const run = spawnSync('strace', [...traced, process.execPath, program.file, path, 'a', '150'], {
    env: program.env,
    encoding: 'utf8',
  });
  rmSync(dirname(program.file), { recursive: true, force: true });
  expect(run.status, run.stderr).toBe(0);

  const calls = callsOf(readFileSync(traceFile, 'utf8'));
  const appends = calls.filter((call) => call.name === 'write' && call.rest.includes('"append '));
  const logWrites = calls.filter((call) => call.name === 'pwrite64' && call.rest.includes('store.db-wal>'));
  const flushes = calls.filter(
    (call) => /^f(data)?sync$/.test(call.name) && call.rest.includes('store.db-wal>'),
  );
  expect(appends).toHaveLength(150);

  const delaysMs = appends.map((append) => {
    const written = logWrites.find((call) => call.beganS >= append.beganS);
    const flushed = flushes.find((call) => written !== undefined && call.beganS >= written.endedS);
    return flushed === undefined ? Number.POSITIVE_INFINITY : (flushed.endedS - append.beganS) * 1_000;
  });
  const ascending = delaysMs.toSorted((a, b) => a - b);
  const p99Ms = ascending[Math.ceil(ascending.length * 0.99) - 1];
  const said = JSON.parse(/^delay (.*)$/m.exec(run.stdout)?.[1] ?? 'null');
  console.log(
    `flush trace: ${flushes.length} flushes of the log for 150 entries at 100/s; arrival to flushed: ` +
      `99th percentile ${p99Ms?.toFixed(0)} ms, worst ${ascending.at(-1)?.toFixed(0)} ms (traced); ` +
      `the store itself says 99th percentile ${said.p99Ms.toFixed(0)} ms, worst ${said.worstMs.toFixed(0)} ms`,
  );
  expect(ascending.at(-1)).toBeLessThan(200);
  // Grouped: many entries share a flush, and no write to the log is left without one.
  expect(flushes.length).toBeLessThan(100);
  expect(flushes.at(-1)?.beganS).toBeGreaterThanOrEqual(logWrites.at(-1)?.endedS ?? Number.POSITIVE_INFINITY);
});
