import type { RunResult } from '../run/RunResult.ts';
import type { Probe } from './Probe.ts';

/** Probes whose channel gave the crossing of these runs, each once; `byChannel` is channel 1 first. */
export function crossingProbes(
  results: readonly Pick<RunResult, 'crossing' | 'crossings'>[],
  byChannel: readonly (Probe | null)[],
): readonly Probe[] {
  const found = results.flatMap(({ crossing, crossings }) => {
    const own = crossings.find((one) => crossing !== null && one.crossing?.timeS === crossing.timeS);
    return own === undefined ? [] : (byChannel[own.channel - 1] ?? []);
  });
  return [...new Set(found)];
}
