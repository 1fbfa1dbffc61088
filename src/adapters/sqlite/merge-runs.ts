import type Database from 'better-sqlite3';
import type { MergeDifference } from '../../core/exchange/MergeReport.ts';

interface Result {
  recording_row: number;
  run_number: number;
  rule_version: number;
  result_json: string;
  proof: string | null;
}

/** Brings run results in: missing ones are added, those of a later rule version replace, else own stays and is told. */
export function mergeRunResults(
  own: Database.Database,
  other: Database.Database,
  rowOf: ReadonlyMap<number, number>,
): { readonly added: number; readonly differences: readonly MergeDifference[] } {
  const find = own.prepare<[number, number], Result & { recording_id: string }>(`
    SELECT run_results.*, recording_id FROM run_results JOIN recordings USING (recording_row)
    WHERE recording_row = ? AND run_number = ?`);
  const put = own.prepare<[Result]>(`
    INSERT INTO run_results (recording_row, run_number, rule_version, result_json, proof)
    VALUES (@recording_row, @run_number, @rule_version, @result_json, @proof)
    ON CONFLICT (recording_row, run_number) DO UPDATE
    SET rule_version = excluded.rule_version, result_json = excluded.result_json, proof = excluded.proof`);
  const differences: MergeDifference[] = [];
  let added = 0;
  for (const theirs of other.prepare<[], Result>('SELECT * FROM run_results').iterate()) {
    const row = rowOf.get(theirs.recording_row);
    if (row === undefined) continue;
    const ours = find.get(row, theirs.run_number);
    if (ours === undefined || ours.rule_version < theirs.rule_version) {
      put.run({ ...theirs, recording_row: row });
      added += 1;
    } else if (ours.rule_version === theirs.rule_version && ours.result_json !== theirs.result_json) {
      differences.push({
        kind: 'run-result',
        subject: `${ours.recording_id}, run ${ours.run_number}`,
        details: [{ what: 'soak time s', own: soakTime(ours), other: soakTime(theirs) }],
      });
    }
  }
  return { added, differences };
}

function soakTime({ result_json }: Result): string {
  const { soakTimeS } = JSON.parse(result_json) as { readonly soakTimeS?: number | null };
  return soakTimeS === null || soakTimeS === undefined ? 'none' : String(soakTimeS);
}
