import type Database from 'better-sqlite3';
import { inForce } from './in-force.ts';

type Row = Record<string, string | number | null>;

/** A table to which rows are only ever added and of which the last row about a thing counts. */
export interface LineTable {
  readonly table: 'run_decisions' | 'probes';
  /** Column that orders the rows; given anew. */
  readonly order: string;
  /** Columns that say what a row is about. */
  readonly about: readonly string[];
  /** Column that says when it was stated. */
  readonly at: string;
}

/**
 * Brings in the rows of such a table. Where the row that must count after this (the one stated last) would not be the
 * last, it is stated once more. `ownRow` gives a row as it reads in this store, or null to leave it out.
 */
export function mergeLines(
  own: Database.Database,
  other: Database.Database,
  of: LineTable,
  ownRow: (row: Row) => Row | null = (row) => row,
): number {
  const ownLines = linesAbout(own, of, (row) => row);
  let added = 0;
  for (const [about, theirs] of linesAbout(other, of, ownRow)) {
    const ours = ownLines.get(about) ?? [];
    const winner = inForce(ours, theirs);
    const keys = new Set(ours.map((one) => one.key));
    let last = ours.at(-1);
    for (const line of theirs) {
      if (keys.has(line.key)) continue;
      keys.add(line.key);
      insert(own, of.table, line.row);
      last = line;
      added += 1;
    }
    if (winner !== undefined && winner.key !== last?.key) insert(own, of.table, winner.row);
  }
  return added;
}

function linesAbout(database: Database.Database, of: LineTable, ownRow: (row: Row) => Row | null) {
  const lines = new Map<string, { key: string; at: string; row: Row }[]>();
  const all = database.prepare<[], Row>(`SELECT * FROM ${of.table} ORDER BY ${of.order}`).all();
  for (const { [of.order]: _order, ...found } of all) {
    const row = ownRow(found);
    if (row === null) continue;
    const about = JSON.stringify(of.about.map((column) => row[column]));
    const line = lines.get(about) ?? [];
    line.push({ key: JSON.stringify(Object.values(row)), at: String(row[of.at]), row });
    lines.set(about, line);
  }
  return lines;
}

function insert(own: Database.Database, table: string, row: Row): void {
  const columns = Object.keys(row);
  own
    .prepare(
      `INSERT INTO ${table} (${columns.join(', ')}) VALUES (${columns.map((column) => `@${column}`).join(', ')})`,
    )
    .run(row);
}
