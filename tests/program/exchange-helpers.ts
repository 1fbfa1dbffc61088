import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openStore } from '../../src/adapters/sqlite/open-store.ts';
import type { RunResult } from '../../src/core/run/RunResult.ts';
import type { Store } from '../../src/core/store/Store.ts';
import type { Ask } from '../../src/program/exchange/ask.ts';
import type { ImportOptions } from '../../src/program/exchange/ImportOptions.ts';
import { type ImportOutcome, importFiles } from '../../src/program/exchange/import-files.ts';
import { analyseSource } from '../../src/program/sources/analyse-source.ts';
import { recordingSource } from '../../src/program/sources/recording-source.ts';

export const NOW = new Date('2026-03-02T12:00:00Z');
export const OF_A_TRIAL = { assembly: 'WB-212', press: 'North' } as const;

/** A rise of first order after the press closes: closed form, time constant 40.5 s, 24 °C to 232.2 °C (450 °F). */
const START_C = 24;
const PLATEN_C = (450 - 32) / 1.8;
const TIME_CONSTANT_S = 40.5;
export const CLOSED_AT_S = 12;
const temperatureC = (timeS: number): number =>
  timeS < CLOSED_AT_S
    ? START_C
    : PLATEN_C - (PLATEN_C - START_C) * Math.exp(-(timeS - CLOSED_AT_S) / TIME_CONSTANT_S);
/** Soak time to 350 °F of that rise: τ ln((platen − start)/(platen − target)). */
export const SOAK_S = TIME_CONSTANT_S * Math.log((PLATEN_C - START_C) / (PLATEN_C - (350 - 32) / 1.8));

export interface LogForm {
  readonly heading: string;
  readonly row: (timeS: number, celsius: number, at: number) => string;
  readonly stepS?: number;
  readonly lineEnd?: string;
}

/** A logger's file of that rise, 240 s long. */
export function logText({ heading, row, stepS = 0.5, lineEnd = '\n' }: LogForm): string {
  const rows = Array.from({ length: Math.round(240 / stepS) }, (_, at) =>
    row(at * stepS, temperatureC(at * stepS), at),
  );
  return [heading, ...rows, ''].join(lineEnd);
}

export const PLAIN_LOG: LogForm = {
  heading: 'Time (s),Bond line (C)',
  row: (timeS, celsius) => `${timeS.toFixed(1)},${celsius.toFixed(2)}`,
};

export function writtenFile(folder: string, name: string, text: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

/** `import` as the command does it, without its printing. */
export async function brought(
  storePath: string,
  files: readonly string[],
  options: Partial<ImportOptions> = {},
  ask: Ask | null = null,
): Promise<ImportOutcome> {
  const store = openStore({ path: storePath });
  try {
    return await importFiles(store, files, { show: 'F', ...options }, { ask, now: NOW });
  } finally {
    store.close();
  }
}

/** Every run of a store, worked out again from its recordings as `replay --trial` does. */
export function replayedFromStore(storePath: string): readonly RunResult[] {
  return withStoreAt(storePath, (store) =>
    store.recordingIds().flatMap((id) => {
      const recording = store.recording(id);
      if (recording === undefined) throw new Error(`no recording ${id}`);
      return analyseSource(recordingSource(id, recording, {}), {}).results;
    }),
  );
}

export function withStoreAt<Result>(storePath: string, work: (store: Store) => Result): Result {
  const store = openStore({ path: storePath });
  try {
    return work(store);
  } finally {
    store.close();
  }
}
