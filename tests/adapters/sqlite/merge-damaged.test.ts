import {
  copyFileSync,
  existsSync,
  linkSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { mergeStores } from '../../../src/adapters/sqlite/merge-stores.ts';
import { openStore } from '../../../src/adapters/sqlite/open-store.ts';
import { verifyStore } from '../../../src/adapters/sqlite/verify-store.ts';
import { DwellwrightError } from '../../../src/core/DwellwrightError.ts';
import { createRandom } from '../../../src/core/simulator/create-random.ts';
import { addTrial, contentsOf, filled, rowCounts, tamper } from './filled-store.ts';
import { cycleOf, headOf, lineAt, recipeOf, resultOf } from './samples.ts';

const folder = mkdtempSync(join(tmpdir(), 'dwellwright-'));
afterAll(() => rmSync(folder, { recursive: true }));
const own = join(folder, 'own.db');
const other = join(folder, 'other.db');
let contents: unknown;
let rows: unknown;

beforeAll(() => {
  filled(own, (store) => addTrial(store, 'a'));
  filled(other, (store) => {
    for (const name of ['b', 'c', 'd']) addTrial(store, name);
    const writer = store.startRecording(headOf('long'));
    for (let at = 0; at < 3_000; at += 1) writer.append(lineAt(at * 100_000));
    writer.close();
    store.saveRecipe(recipeOf({ note: 'other laptop' }));
    store.saveCycle(cycleOf('cycle-b'));
  });
  contents = contentsOf(own);
  rows = rowCounts(own);
});

/** Merges into own; a refusal says what to do and leaves own whole, row for row. Returns the refusal's code, null where merged. */
function merged(otherPath: string, ownPath = own): string | null {
  try {
    mergeStores({ ownPath, otherPath });
  } catch (error) {
    if (!(error instanceof DwellwrightError)) throw error;
    expect(error.remedy ?? '').not.toBe('');
    expect(verifyStore(own).problems).toEqual([]);
    expect(rowCounts(own)).toEqual(rows);
    expect(contentsOf(own)).toEqual(contents);
    return error.code;
  }
  return null;
}

function damaged(name: string, change: (path: string) => void): string {
  const path = join(folder, name);
  copyFileSync(other, path);
  change(path);
  return path;
}

describe('a damaged other never harms the own store', () => {
  test('bits flipped anywhere, 150 files: refused with what to do, or what came in is whole', () => {
    const { uniform: random } = createRandom(20_260_302);
    const codes = new Set<string | null>();
    for (let at = 0; at < 150; at += 1) {
      const path = damaged('flipped.db', (file) => {
        const bytes = readFileSync(file);
        const place = Math.floor(random() * bytes.length);
        bytes[place] = (bytes[place] ?? 0) ^ (1 << Math.floor(random() * 8));
        writeFileSync(file, bytes);
      });
      const target = join(folder, 'target.db');
      copyFileSync(own, target);
      const code = merged(path, target);
      codes.add(code);
      expect(verifyStore(target).problems).toEqual([]);
      if (code !== null) expect(contentsOf(target)).toEqual(contents);
    }
    expect(codes).toContain('merge-damaged');
  });

  test.each([0.05, 0.2, 0.5, 0.8, 0.99])('cut off at %d of its length', (share) => {
    const path = damaged('cut.db', (file) =>
      truncateSync(file, Math.floor(readFileSync(file).length * share)),
    );
    expect(merged(path)).toMatch(/^(merge-damaged|store-corrupt|store-not-a-store)$/);
  });

  test.each<[string, string, (path: string) => void]>([
    [
      'another program’s number in its head',
      'store-not-a-store',
      (path) => tamper(path, 'PRAGMA application_id = 1'),
    ],
    [
      'a version of a later program',
      'store-newer',
      (path) => tamper(path, "INSERT INTO migrations VALUES (999, 'later', '', '')"),
    ],
    ['a table missing', 'merge-damaged', (path) => tamper(path, 'DROP TABLE probes')],
    [
      'a column missing',
      'merge-damaged',
      (path) => tamper(path, 'ALTER TABLE assemblies DROP COLUMN carrier'),
    ],
    [
      'a figure altered in a result',
      'merge-damaged',
      (path) =>
        tamper(
          path,
          'UPDATE run_results SET result_json = replace(result_json, \'"soakTimeS":53\', \'"soakTimeS":63\')',
        ),
    ],
    ['nothing in it', 'store-older', (path) => writeFileSync(path, '')],
    ['text', 'store-not-a-store', (path) => writeFileSync(path, 'no store\n'.repeat(1_000))],
  ])('%s: %s', (name, code, change) => {
    expect(merged(damaged(`${name.replaceAll(/\W/g, '-')}.db`, change))).toBe(code);
  });

  test('a folder is refused', () => {
    expect(merged(folder)).toBe('store-is-folder');
  });

  test('held by another program all the time: refused as busy, after it was waited for', {
    timeout: 20_000,
  }, () => {
    const held = damaged('held.db', () => {});
    const holder = new Database(held);
    holder.pragma('locking_mode = EXCLUSIVE');
    holder.exec('BEGIN EXCLUSIVE');
    try {
      expect(merged(held)).toBe('store-busy');
    } finally {
      holder.close();
    }
  });
});

describe('the store itself under another name', () => {
  test.each<[string, (path: string) => void]>([
    ['a symbolic link', (path) => symlinkSync(own, path)],
    ['a hard link', (path) => linkSync(own, path)],
    [
      'a link to a link',
      (path) => {
        symlinkSync(own, `${path}-one`);
        symlinkSync(`${path}-one`, path);
      },
    ],
  ])('%s is refused', (name, link) => {
    const path = join(folder, `${name.replaceAll(' ', '-')}.db`);
    link(path);
    expect(merged(path)).toBe('merge-same-store');
    expect(existsSync(`${path}-wal`)).toBe(false);
  });
});

test('what still waits in the log beside the other store comes in too', () => {
  const path = join(folder, 'waiting.db');
  const store = openStore({ path });
  addTrial(store, 'w');
  try {
    expect(readFileSync(`${path}-wal`).length).toBeGreaterThan(0);
    const target = join(folder, 'with-waiting.db');
    expect(mergeStores({ ownPath: target, otherPath: path }).added).toMatchObject({
      trials: 1,
      recordings: 1,
    });
    expect(contentsOf(target)).toEqual(contentsOf(path));
  } finally {
    store.close();
  }
});

describe('verify finds a digit altered in', () => {
  const trigger = (table: string, change: string) => (path: string) => {
    const database = new Database(path);
    const sql = database
      .prepare<[string], string>('SELECT sql FROM sqlite_schema WHERE name = ?')
      .pluck()
      .get(`${table}_never_updated`);
    database.exec(`DROP TRIGGER ${table}_never_updated; ${change}; ${sql}`);
    database.close();
  };
  test.each<[string, string, (path: string) => void]>([
    [
      'a trace',
      'recording',
      trigger('recording_blocks', "UPDATE recording_blocks SET body_text = replace(body_text, '12.', '13.')"),
    ],
    [
      'a later chunk of a long trace',
      'recording',
      trigger(
        'recording_blocks',
        "UPDATE recording_blocks SET body_text = replace(body_text, '12.', '13.') WHERE block_id = (SELECT max(block_id) FROM recording_blocks)",
      ),
    ],
    [
      'a result',
      'run-result',
      (path) =>
        tamper(
          path,
          "UPDATE run_results SET result_json = json_set(result_json, '$.soakTimeS', 61) WHERE recording_row = 1",
        ),
    ],
    [
      'a recipe',
      'recipe',
      trigger('recipes', "UPDATE recipes SET recipe_json = json_set(recipe_json, '$.soakS', 61)"),
    ],
    [
      'a cycle',
      'cycle',
      trigger('cycles', "UPDATE cycles SET cycle_json = json_set(cycle_json, '$.peakC', 999)"),
    ],
  ])('%s', (name, kind, change) => {
    const problems = verifyStore(damaged(`altered-${name.replaceAll(' ', '-')}.db`, change)).problems;
    expect(problems.length).toBeGreaterThan(0);
    expect(new Set(problems.map((one) => one.kind))).toEqual(new Set([kind]));
  });

  test('a result of an earlier program, without a proof, is read as it is', () => {
    const path = damaged('no-proof.db', (file) => tamper(file, 'UPDATE run_results SET proof = NULL'));
    expect(verifyStore(path).problems).toEqual([]);
    const store = openStore({ path });
    store.saveRunResult('recording-b', resultOf(1));
    store.close();
    expect(verifyStore(path).problems).toEqual([]);
  });
});
