import { readFileSync } from 'node:fs';

const FOLDER = new URL('../../reference/statistics/', import.meta.url);

/** A worked example by its id; fields differ from example to example. */
// biome-ignore lint/suspicious/noExplicitAny: the file holds a different shape for every example
export function example(id: string): any {
  const all = JSON.parse(readFileSync(new URL('worked-examples.json', FOLDER), 'utf8'));
  if (!(id in all)) throw new Error(`no worked example ${id}`);
  return all[id];
}

/** One column of a data file with a heading line. */
export function column(file: string, index = 0): readonly number[] {
  const lines = readFileSync(new URL(file, FOLDER), 'utf8').trim().split('\n');
  return Object.freeze(lines.slice(1).map((line) => Number(line.split(',')[index])));
}

/** Certified values of the NIST StRD univariate sets. */
export function certified(): Record<string, { n: number; certified_mean: number; certified_sd: number }> {
  return JSON.parse(readFileSync(new URL('strd/certified.json', FOLDER), 'utf8'));
}
