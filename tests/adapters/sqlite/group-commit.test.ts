import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import type { Timer } from '../../../src/adapters/sqlite/Timer.ts';
import { headOf, lineAt, openedStore, temporaryFolder } from './samples.ts';

/** A timer that a test moves by hand. */
function handTimer(): Timer & { move(byMs: number): void } {
  let nowMs = 0;
  let due: { atMs: number; call: () => void }[] = [];
  return {
    nowMs: () => nowMs,
    after(delayMs, call) {
      const one = { atMs: nowMs + delayMs, call };
      due.push(one);
      return () => {
        due = due.filter((other) => other !== one);
      };
    },
    move(byMs) {
      nowMs += byMs;
      const ready = due.filter(({ atMs }) => atMs <= nowMs);
      due = due.filter(({ atMs }) => atMs > nowMs);
      for (const { call } of ready) call();
    },
  };
}

function recording(more: { onTrouble?: (error: unknown) => void } = {}) {
  const path = join(temporaryFolder(), 'store.db');
  const timer = handTimer();
  const store = openedStore({ path, timer, busyTimeoutMs: 0, ...more });
  const writer = store.startRecording(headOf('a'));
  const other = openedStore({ path, readonly: true });
  const stored = () => [...(other.recording('a')?.entries() ?? [])].length;
  return { path, timer, store, writer, stored };
}

test('what arrives within 50 ms is one commit, 50 ms after the first of it', () => {
  const { timer, writer, stored } = recording();
  writer.append(lineAt(0));
  timer.move(30);
  writer.append(lineAt(1));
  timer.move(19);
  expect(stored()).toBe(0);
  timer.move(1);
  expect(stored()).toBe(2);
  expect(writer.commitDelay()).toEqual({ commits: 1, p99Ms: 50, worstMs: 50 });
  timer.move(500);
  expect(writer.commitDelay().commits).toBe(1);
});

test('when timers cannot fire, the clock itself brings the commit: at most 64 entries late', () => {
  const { timer, writer, stored } = recording();
  let late = Number.POSITIVE_INFINITY;
  const held = { ...timer };
  for (let number = 0; number < 1_000 && late === Number.POSITIVE_INFINITY; number += 1) {
    writer.append(lineAt(number));
    if (number === 100) timer.nowMs = () => held.nowMs() + 50;
    if (number >= 100 && stored() > 0) late = number - 100;
  }
  expect(late).toBeLessThanOrEqual(64);
});

test('4,096 entries are committed at once', () => {
  const { writer, stored } = recording();
  for (let number = 0; number < 4_095; number += 1) writer.append(lineAt(number));
  expect(stored()).toBe(0);
  writer.append(lineAt(4_095));
  expect(stored()).toBe(4_096);
});

test('99th percentile by nearest rank: of 100 commits with delays 1 to 100 ms it is 99 ms', () => {
  const { timer, writer } = recording();
  for (let delayMs = 1; delayMs <= 100; delayMs += 1) {
    writer.append(lineAt(delayMs));
    // Below 50 ms the flush comes first; above, the timer's call is late by as much.
    timer.move(delayMs);
    writer.flush();
  }
  expect(writer.commitDelay()).toEqual({ commits: 100, p99Ms: 99, worstMs: 100 });
});

test('closing the store puts on disk what waits, and leaves the recording not closed', () => {
  const { store, writer, stored } = recording();
  writer.append(lineAt(0));
  store.close();
  expect(stored()).toBe(1);
});

test('held off by another program, entries wait, the trouble is told each time, and a tenth of a second after it is free all is on disk', () => {
  const told: unknown[] = [];
  const { path, timer, writer, stored } = recording({ onTrouble: (error) => told.push(error) });
  const other = new Database(path);
  other.exec('BEGIN IMMEDIATE');
  writer.append(lineAt(0));
  timer.move(50);
  expect(told).toEqual([expect.objectContaining({ code: 'store-busy' })]);
  writer.append(lineAt(1));
  timer.move(100);
  expect(told).toHaveLength(2);
  other.exec('ROLLBACK');
  other.close();
  expect(stored()).toBe(0);
  timer.move(100);
  expect(stored()).toBe(2);
  expect(writer.commitDelay()).toMatchObject({ commits: 1, worstMs: 250 });
  writer.close();
});

test('held off with nobody listening, the next append throws it once, and no entry is lost', () => {
  const { path, timer, writer, stored, store } = recording();
  const other = new Database(path);
  other.exec('BEGIN IMMEDIATE');
  writer.append(lineAt(0));
  timer.move(50);
  expect(() => writer.append(lineAt(1))).toThrow(expect.objectContaining({ code: 'store-busy' }));
  writer.append(lineAt(2));
  expect(() => writer.flush()).toThrow(expect.objectContaining({ code: 'store-busy' }));
  other.exec('ROLLBACK');
  other.close();
  writer.close();
  expect(stored()).toBe(3);
  expect(store.recording('a')?.soundness).toEqual({ kind: 'sound' });
});

test('closing a recording that the disk refuses can be tried again', () => {
  const { path, writer, store } = recording();
  const other = new Database(path);
  writer.append(lineAt(0));
  writer.flush();
  other.exec('BEGIN IMMEDIATE');
  expect(() => writer.close()).toThrow(expect.objectContaining({ code: 'store-busy' }));
  other.exec('ROLLBACK');
  other.close();
  writer.close();
  expect(store.recording('a')?.soundness).toEqual({ kind: 'sound' });
});
