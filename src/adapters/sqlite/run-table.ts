import type Database from 'better-sqlite3';
import type { Store } from '../../core/store/Store.ts';
import type { TrialRun } from '../../core/trial/TrialResult.ts';
import { fromJson } from './from-json.ts';
import { jsonProof } from './json-proof.ts';
import { runResultSchema } from './run-result-schema.ts';
import { toJson } from './to-json.ts';

interface Row {
  recording_id: string;
  run_number: number;
  result_json: string;
  kind: 'set-aside' | 'taken-in' | 'automatic' | null;
  reason: string | null;
}

/** Results of runs (replaced freely, each with its rule version) and the decisions on them (only ever added). */
export function runTable(
  database: Database.Database,
  recordingRow: (recordingId: string) => number,
): Pick<Store, 'saveRunResult' | 'trialRuns' | 'decideRun'> {
  const save = database.prepare(`
    INSERT INTO run_results (recording_row, run_number, rule_version, result_json, proof) VALUES (?, ?, ?, ?, ?)
    ON CONFLICT (recording_row, run_number) DO UPDATE
    SET rule_version = excluded.rule_version, result_json = excluded.result_json, proof = excluded.proof`);
  const decide = database.prepare(
    'INSERT INTO run_decisions (recording_row, run_number, kind, reason, decided_at) VALUES (?, ?, ?, ?, ?)',
  );
  const runs = database.prepare<[string], Row>(`
    SELECT recording_id, run_results.run_number, result_json, kind, reason
    FROM recordings
    JOIN run_results USING (recording_row)
    LEFT JOIN run_decisions ON decision_id = (
      SELECT max(latest.decision_id) FROM run_decisions AS latest
      WHERE latest.recording_row = run_results.recording_row AND latest.run_number = run_results.run_number)
    WHERE trial_id = ?
    ORDER BY recordings.recording_row, run_results.run_number`);
  return {
    saveRunResult(recordingId, result) {
      const json = toJson(result);
      save.run(recordingRow(recordingId), result.runNumber, result.ruleVersion, json, jsonProof(json));
    },
    trialRuns: (trialId) => runs.all(trialId).map(fromRow),
    decideRun(decision) {
      const row = recordingRow(decision.recordingId);
      decide.run(row, decision.runNumber, decision.kind, decision.reason, decision.decidedAt);
    },
  };
}

function fromRow(row: Row): TrialRun & { readonly recordingId: string } {
  const what = `the result of run ${row.run_number} of "${row.recording_id}"`;
  return {
    source: row.recording_id,
    recordingId: row.recording_id,
    result: fromJson(runResultSchema, row.result_json, what),
    decision:
      row.kind === null || row.kind === 'automatic'
        ? { kind: 'automatic' }
        : { kind: row.kind, reason: row.reason ?? '' },
  };
}
