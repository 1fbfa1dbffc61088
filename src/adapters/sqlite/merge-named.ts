import type Database from 'better-sqlite3';
import type { MergeDifference } from '../../core/exchange/MergeReport.ts';

const KINDS = { presses: 'press', assemblies: 'assembly', logger_layouts: 'layout' } as const;
/** Columns that say nothing about the thing itself. */
const INCIDENTAL = new Set(['press_row', 'assembly_row', 'saved_at']);

type Row = Record<string, string | number | null>;

/** Brings in what has a name of its own: new names are added; where both have the name, own stays and what differs is told. */
export function mergeNamed(
  own: Database.Database,
  other: Database.Database,
  table: keyof typeof KINDS,
): { readonly added: number; readonly differences: readonly MergeDifference[] } {
  const find = own.prepare<[string], Row>(`SELECT * FROM ${table} WHERE name = ?`);
  const differences: MergeDifference[] = [];
  let added = 0;
  const all = other.prepare<[], Row & { name: string }>(`SELECT * FROM ${table} ORDER BY rowid`).all();
  for (const theirs of all) {
    const ours = find.get(theirs.name);
    if (ours === undefined) {
      insert(own, table, theirs);
      added += 1;
      continue;
    }
    const details = Object.keys(ours).flatMap((what) =>
      INCIDENTAL.has(what) || ours[what] === theirs[what]
        ? []
        : [{ what, own: shown(ours[what]), other: shown(theirs[what]) }],
    );
    if (details.length > 0) differences.push({ kind: KINDS[table], subject: theirs.name, details });
  }
  return { added, differences };
}

function insert(own: Database.Database, table: string, row: Row): void {
  const columns = Object.keys(row).filter((column) => !column.endsWith('_row'));
  own
    .prepare(
      `INSERT INTO ${table} (${columns.join(', ')}) VALUES (${columns.map((column) => `@${column}`).join(', ')})`,
    )
    .run(row);
}

const shown = (value: string | number | null | undefined): string =>
  value === null || value === undefined ? 'not stated' : String(value);
