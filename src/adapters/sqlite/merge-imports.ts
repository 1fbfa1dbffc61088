import type Database from 'better-sqlite3';

interface Row {
  recording_row: number;
  file_sha256: string;
  file_name: string;
  read_as: string;
  imported_at: string;
}

/** Brings in which file became which recording, so that a file brought in on the other laptop is known here too. */
export function mergeImports(
  own: Database.Database,
  other: Database.Database,
  rowOf: ReadonlyMap<number, number>,
): void {
  const insert = own.prepare<[Row]>(`
    INSERT INTO imports (recording_row, file_sha256, file_name, read_as, imported_at)
    VALUES (@recording_row, @file_sha256, @file_name, @read_as, @imported_at)
    ON CONFLICT (file_sha256, recording_row) DO NOTHING`);
  for (const row of other.prepare<[], Row>('SELECT * FROM imports ORDER BY import_id').all()) {
    const recording_row = rowOf.get(row.recording_row);
    if (recording_row !== undefined) insert.run({ ...row, recording_row });
  }
}
