import type Database from 'better-sqlite3';
import { inForce } from './in-force.ts';

interface Row {
  recording_row: number;
  run_number: number;
  kind: string;
  reason: string;
  decided_at: string;
}

/**
 * Brings decisions on runs in. They are only ever added, and the last one counts: where the one that must count (the
 * latest made) would not be the last, it is stated once more.
 */
export function mergeDecisions(
  own: Database.Database,
  other: Database.Database,
  rowOf: ReadonlyMap<number, number>,
): number {
  const insert = own.prepare<[Row]>(`
    INSERT INTO run_decisions (recording_row, run_number, kind, reason, decided_at)
    VALUES (@recording_row, @run_number, @kind, @reason, @decided_at)`);
  const ownLines = linesByRun(own, (row) => row);
  let added = 0;
  for (const [run, theirs] of linesByRun(other, (row) => rowOf.get(row))) {
    const ours = ownLines.get(run) ?? [];
    const winner = inForce(ours, theirs);
    const keys = new Set(ours.map((one) => one.key));
    let last = ours.at(-1);
    for (const line of theirs) {
      if (keys.has(line.key)) continue;
      keys.add(line.key);
      insert.run(line.row);
      last = line;
      added += 1;
    }
    if (winner !== undefined && winner.key !== last?.key) insert.run(winner.row);
  }
  return added;
}

function linesByRun(database: Database.Database, ownRow: (row: number) => number | undefined) {
  const lines = new Map<string, { key: string; at: string; row: Row }[]>();
  for (const found of database.prepare<[], Row>('SELECT * FROM run_decisions ORDER BY decision_id').all()) {
    const recording_row = ownRow(found.recording_row);
    if (recording_row === undefined) continue;
    const { run_number, kind, reason, decided_at } = found;
    const run = `${recording_row} ${run_number}`;
    const line = lines.get(run) ?? [];
    line.push({
      key: JSON.stringify([kind, reason, decided_at]),
      at: decided_at,
      row: { recording_row, run_number, kind, reason, decided_at },
    });
    lines.set(run, line);
  }
  return lines;
}
