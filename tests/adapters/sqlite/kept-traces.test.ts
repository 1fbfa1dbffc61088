import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { openStore } from '../../../src/adapters/sqlite/open-store.ts';
import { verifyStore } from '../../../src/adapters/sqlite/verify-store.ts';
import { addTrial, filled } from './filled-store.ts';
import { temporaryFolder } from './samples.ts';

const TRACE = Uint8Array.from({ length: 200 }, (_, index) => index);

const keeping = (): string =>
  filled(join(temporaryFolder(), 'store.db'), (store) => {
    addTrial(store, 'a');
    addTrial(store, 'open', { closed: false });
    store.keepTraces(
      ['recording-a', 'recording-open', 'recording-nowhere'].map((recordingId) => ({
        recordingId,
        trace: TRACE,
      })),
      3,
    );
  });

const read = (path: string, recordingId: string, version = 3): Uint8Array | undefined => {
  const store = openStore({ path, readonly: true });
  try {
    return store.keptTrace(recordingId, version);
  } finally {
    store.close();
  }
};

test('a kept trace comes back for its recording and version only; none is kept of a recording that is not closed', () => {
  const path = keeping();
  expect(read(path, 'recording-a')).toEqual(Buffer.from(TRACE));
  expect(read(path, 'recording-a', 4)).toBeUndefined();
  expect(read(path, 'recording-open')).toBeUndefined();
  expect(read(path, 'recording-nowhere')).toBeUndefined();
  expect(verifyStore(path).problems).toEqual([]);
});

test.each([
  ['one bit of it', "UPDATE kept_traces SET trace = CAST(X'FF' || substr(trace, 2) AS BLOB)"],
  ['its proof', "UPDATE kept_traces SET proof = CAST(X'00' || substr(proof, 2) AS BLOB)"],
])('with %s changed it is as if it were not there, and verify names it', (_, sql) => {
  const path = keeping();
  const database = new Database(path);
  database.exec(sql);
  database.close();
  expect(read(path, 'recording-a')).toBeUndefined();
  expect(verifyStore(path).problems).toEqual([
    { kind: 'kept-trace', subject: 'recording-a', detail: expect.stringMatching(/does not fit/) },
  ]);
});
