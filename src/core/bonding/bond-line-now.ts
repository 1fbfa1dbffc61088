import { bondLineChannels } from '../screen/bond-line-channels.ts';
import type { BondingState } from './BondingState.ts';
import { staleLimitS } from './stale-limit-s.ts';

/** How the bond line stands: the coldest probe, or why it is not known. */
export type BondLineNow =
  | { readonly kind: 'no-probe' }
  | { readonly kind: 'no-reading'; readonly lost: boolean }
  | { readonly kind: 'stale'; readonly ageS: number; readonly temperatureC: number | null }
  | { readonly kind: 'fault'; readonly fault: string }
  | { readonly kind: 'known'; readonly temperatureC: number };

export function hasProbe({ job }: Pick<BondingState, 'job'>): boolean {
  return job?.roles?.some((role) => role.startsWith('bond-line')) ?? false;
}

/** Age of the latest reading, s; null before the first. */
export function readingAgeS({ latestUs, nowUs }: Pick<BondingState, 'latestUs' | 'nowUs'>): number | null {
  return latestUs === null ? null : Math.max(0, (nowUs - latestUs) / 1e6);
}

export function isStale(state: BondingState): boolean {
  const ageS = readingAgeS(state);
  return (
    ageS === null || state.link.kind === 'lost' || ageS > staleLimitS(state.intervalS, state.job?.speed ?? 1)
  );
}

export function bondLineNow(state: BondingState): BondLineNow {
  const { job, session } = state;
  if (!hasProbe(state) || job?.roles == null) return { kind: 'no-probe' };
  const reading = session?.latestReading ?? null;
  if (reading === null || state.link.kind === 'lost')
    return { kind: 'no-reading', lost: state.link.kind === 'lost' };
  const values = bondLineChannels(job.roles).map((channel) => reading.values[channel]);
  const known = values.flatMap((value) => (value?.kind === 'temperature' ? [value.temperatureC] : []));
  const coldestC = known.length === 0 ? null : Math.min(...known);
  if (isStale(state)) return { kind: 'stale', ageS: readingAgeS(state) ?? 0, temperatureC: coldestC };
  const fault = values.find((value) => value?.kind === 'fault');
  if (fault?.kind === 'fault') return { kind: 'fault', fault: fault.fault };
  return coldestC === null
    ? { kind: 'fault', fault: 'unspecified' }
    : { kind: 'known', temperatureC: coldestC };
}
