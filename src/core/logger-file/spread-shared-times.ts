import type { TimedLine } from './logger-file-entries.ts';

/** More rows than this under one time are passed on as they are. */
const MOST_ROWS = 20_000;

/**
 * Spreads rows that share one written time evenly over the step to the next: row i of n stands at
 * time + step · i/n. The first time may have lost its first rows (the log began inside the step) and the last
 * its last ones; they are spaced like the usual rows, towards the full side. Common practice, no source.
 * A row's true place inside its step is not known, so a time is good to a step at worst.
 */
export function* spreadSharedTimes(
  lines: Iterable<TimedLine>,
  shared: { readonly stepUs: number; readonly rowsPerStep: number },
): Generator<TimedLine> {
  let group: TimedLine[] = [];
  let groupUs: number | undefined;
  let first = true;
  function* flush(last: boolean): Generator<TimedLine> {
    const rows = group.filter((timed) => timed.rowUs !== undefined).length;
    const usual = Math.max(rows, first || last ? shared.rowsPerStep : rows);
    const lead = first && !last ? usual - rows : 0;
    let row = 0;
    for (const timed of group) {
      if (timed.rowUs === undefined) yield timed;
      else {
        yield { ...timed, rowUs: timed.rowUs + (shared.stepUs * (lead + row)) / usual };
        row += 1;
      }
    }
    if (rows > 0) first = false;
    group = [];
  }
  for (const timed of lines) {
    if (timed.rowUs !== undefined && (timed.rowUs !== groupUs || group.length >= MOST_ROWS)) {
      yield* flush(false);
      groupUs = timed.rowUs;
    }
    group.push(timed);
  }
  yield* flush(true);
}
