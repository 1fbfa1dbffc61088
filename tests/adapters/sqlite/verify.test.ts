import { closeSync, openSync, readFileSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { openStore } from '../../../src/adapters/sqlite/open-store.ts';
import { verifyStore } from '../../../src/adapters/sqlite/verify-store.ts';
import { addTrial, filled, tamper } from './filled-store.ts';
import { cycleOf, headOf, lineAt, openedStore, recipeOf, temporaryFolder } from './samples.ts';

const threeTrials = (): string =>
  filled(join(temporaryFolder(), 'store.db'), (store) => {
    for (const name of ['a', 'b', 'c']) addTrial(store, name);
    store.saveRecipe(recipeOf());
  });

/** The trigger that refuses a change, taken away and put back, as somebody with a database tool might. */
const pastTrigger = (path: string, trigger: string, change: string): void => {
  const database = new Database(path);
  const sql = database
    .prepare<[string], string>('SELECT sql FROM sqlite_schema WHERE name = ?')
    .pluck()
    .get(trigger) as string;
  database.exec(`DROP TRIGGER ${trigger}`);
  database.exec(change);
  database.exec(sql);
  database.close();
};

test('a store as it was written: 3 of 3 recordings proved by hash, nothing wrong', () => {
  const path = threeTrials();
  expect(verifyStore(path)).toEqual({
    path,
    recordings: 3,
    sound: 3,
    notClosed: [],
    runResults: 3,
    recipes: 1,
    cycles: 0,
    problems: [],
  });
});

test('a recording under way is told as not closed and is no problem', () => {
  const path = join(temporaryFolder(), 'store.db');
  const store = openedStore({ path });
  const writer = store.startRecording(headOf('live'));
  writer.append(lineAt(0));
  writer.flush();
  expect(verifyStore(path)).toMatchObject({ recordings: 1, sound: 0, notClosed: ['live'], problems: [] });
  writer.append(lineAt(100_000));
  writer.close();
  expect(verifyStore(path)).toMatchObject({ recordings: 1, sound: 1, notClosed: [], problems: [] });
});

describe('what was altered is named', () => {
  const altered: readonly (readonly [string, string, string])[] = [
    [
      'one digit of one line',
      'recording_blocks_never_updated',
      "UPDATE recording_blocks SET body_text = replace(body_text, '10.000000 line', '10.000001 line')",
    ],
    [
      'one line taken out, its count too',
      'recording_blocks_never_updated',
      `UPDATE recording_blocks SET entry_count = entry_count - 1,
         body_text = substr(body_text, instr(body_text, char(10)) + 1) WHERE first_entry = 50`,
    ],
    [
      'a block taken out',
      'recording_blocks_never_deleted',
      'DELETE FROM recording_blocks WHERE first_entry = 100',
    ],
    [
      'the head',
      'recordings_only_closed_once',
      "UPDATE recordings SET head_text = replace(head_text, '0.1.0', '0.1.1')",
    ],
    [
      'the closing line',
      'recordings_only_closed_once',
      "UPDATE recordings SET closing_text = replace(closing_text, 'end 300', 'end 301')",
    ],
  ];
  test.each(altered)('%s', (_what, trigger, change) => {
    const path = threeTrials();
    const only = change.includes('WHERE') ? 'AND' : 'WHERE';
    const which = "recording_row = (SELECT recording_row FROM recordings WHERE recording_id = 'recording-b')";
    pastTrigger(path, trigger, `${change} ${only} ${which}`);
    const { problems, sound } = verifyStore(path);
    expect(problems).toEqual([
      { kind: 'recording', subject: 'recording-b', detail: expect.stringMatching(/^altered: /) },
    ]);
    expect(sound).toBe(2);
  });

  test('a line that cannot be read in a recording that was never closed', () => {
    const path = filled(join(temporaryFolder(), 'store.db'), (store) =>
      addTrial(store, 'a', { closed: false }),
    );
    pastTrigger(
      path,
      'recording_blocks_never_updated',
      "UPDATE recording_blocks SET body_text = replace(body_text, ' line ', ' lime ') WHERE first_entry = 0",
    );
    expect(verifyStore(path).problems).toEqual([
      { kind: 'recording', subject: 'recording-a', detail: expect.stringContaining('cannot be read') },
    ]);
  });

  test('a block missing in a recording that was never closed', () => {
    const path = filled(join(temporaryFolder(), 'store.db'), (store) =>
      addTrial(store, 'a', { closed: false }),
    );
    pastTrigger(
      path,
      'recording_blocks_never_deleted',
      'DELETE FROM recording_blocks WHERE first_entry = 50',
    );
    expect(verifyStore(path).problems).toEqual([
      { kind: 'recording', subject: 'recording-a', detail: expect.stringContaining('after 50 entries') },
    ]);
  });

  test('a simulated recording passed off as real', () => {
    const path = threeTrials();
    pastTrigger(
      path,
      'recordings_only_closed_once',
      'UPDATE recordings SET simulated = 0 WHERE recording_row = 1',
    );
    expect(verifyStore(path).problems).toEqual([
      { kind: 'recording', subject: 'recording-a', detail: expect.stringContaining('simulated') },
    ]);
  });

  test("a recipe's dwell in its column only", () => {
    const path = threeTrials();
    pastTrigger(path, 'recipes_never_updated', 'UPDATE recipes SET dwell_s = 100');
    expect(verifyStore(path).problems).toEqual([
      { kind: 'recipe', subject: 'WB-212 on North, version 1', detail: expect.stringContaining('table') },
    ]);
  });

  const cycles: readonly (readonly [string, string, string])[] = [
    ["a cycle's dwell in its column only", 'UPDATE cycles SET dwell_held_s = 100', 'table'],
    ['a cycle that is no cycle', "UPDATE cycles SET cycle_json = json_remove(cycle_json, '$.hold')", 'hold'],
    [
      'a cycle by a recipe version that is not there',
      "UPDATE cycles SET recipe_version = 7, cycle_json = json_set(cycle_json, '$.recipeVersion', 7)",
      'recipe version 7 is not there',
    ],
    [
      'a cycle whose recording is not there',
      "UPDATE cycles SET cycle_json = json_set(cycle_json, '$.recordingId', 'gone')",
      'recording gone is not there',
    ],
  ];
  test.each(cycles)('%s', (_what, change, detail) => {
    const path = filled(threeTrials(), (store) =>
      store.saveCycle(cycleOf('cycle-a', { recordingId: 'recording-a' })),
    );
    expect(verifyStore(path)).toMatchObject({ cycles: 1, problems: [] });
    pastTrigger(path, 'cycles_never_updated', change);
    expect(verifyStore(path).problems).toEqual([
      { kind: 'cycle', subject: 'cycle-a', detail: expect.stringContaining(detail) },
    ]);
  });

  test('a run result that is no result', () => {
    const path = threeTrials();
    tamper(path, "UPDATE run_results SET result_json = '{}' WHERE recording_row = 3");
    expect(verifyStore(path).problems).toEqual([
      { kind: 'run-result', subject: 'recording-c, run 1', detail: expect.stringContaining('ruleVersion') },
    ]);
  });

  test('a trigger that guards the traces is gone, a strange one is there', () => {
    const path = threeTrials();
    tamper(path, 'DROP TRIGGER recording_blocks_never_updated; CREATE TABLE strange (a)');
    expect(verifyStore(path).problems.map(({ kind, subject }) => `${kind}: ${subject}`)).toEqual([
      'schema: trigger recording_blocks_never_updated',
      'schema: table strange',
    ]);
  });

  test('a reference to a recording that is not there', () => {
    const path = threeTrials();
    tamper(
      path,
      "INSERT INTO run_decisions (recording_row, run_number, kind, reason, decided_at) VALUES (99, 1, 'set-aside', 'x', 'y')",
    );
    expect(verifyStore(path).problems).toEqual([
      expect.objectContaining({ kind: 'reference', subject: 'run_decisions row 1' }),
    ]);
  });
});

test.each([0.3, 0.6, 0.9])('a page overwritten at %d of the file is found', (place) => {
  const path = threeTrials();
  const database = new Database(path);
  database.pragma('wal_checkpoint(TRUNCATE)');
  database.close();
  const size = readFileSync(path).length;
  const file = openSync(path, 'r+');
  writeSync(file, Buffer.alloc(4096, 0xa5), 0, 4096, Math.floor((size * place) / 4096) * 4096);
  closeSync(file);
  expect(verifyStore(path).problems.length).toBeGreaterThan(0);
});

test('what is no store is refused by name, and nothing is made', () => {
  const folder = temporaryFolder();
  writeFileSync(
    join(folder, 'text'),
    'no store at all, but longer than a header of a database is, by far. '.repeat(9),
  );
  expect(() => verifyStore(join(folder, 'text'))).toThrow(
    expect.objectContaining({ code: 'store-not-a-store' }),
  );
  expect(() => verifyStore(join(folder, 'missing.db'))).toThrow(
    expect.objectContaining({ code: 'store-missing' }),
  );
  expect(() => openStore({ path: join(folder, 'missing.db'), readonly: true })).toThrow();
});
