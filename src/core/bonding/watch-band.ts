import type { BandSide, BondingState } from './BondingState.ts';
import { bandAt } from './band-at.ts';
import { bondLineNow } from './bond-line-now.ts';
import { steady } from './steady.ts';

/** Outside (or inside again) counts once it has been so for longer than this together, s. Judgement, no source. */
export const BAND_STEADY_S = 2;

/** The recipe's own runs at this time of the closing, with the tolerance on both sides; null where they say nothing. */
export function allowedBand(
  { job, under, nowUs }: BondingState,
  atUs = nowUs,
): { readonly lowC: number; readonly highC: number } | null {
  if (job === null || under === null || under.openedUs !== null) return null;
  const band = bandAt(job.band, (atUs - under.closedUs) / 1e6);
  return band && { lowC: band.lowC - job.bandToleranceC, highC: band.highC + job.bandToleranceC };
}

/** Holds the bond line against the recipe's own runs; an old or faulted reading says nothing. */
export function watchBand(state: BondingState, atUs: number): BondingState {
  const { under } = state;
  if (under === null || under.openedUs !== null) return state;
  const now = bondLineNow(state);
  const allowed = now.kind === 'known' ? allowedBand(state, atUs) : null;
  if (now.kind !== 'known' || allowed === null)
    return under.band === null ? state : { ...state, under: { ...under, band: null } };
  const side: BandSide =
    now.temperatureC < allowed.lowC ? 'below' : now.temperatureC > allowed.highC ? 'above' : 'inside';
  const before = under.band ?? { value: 'inside', seen: side, sinceUs: atUs };
  const band = steady<BandSide>(before, side, atUs, BAND_STEADY_S * 1e6);
  const wasOutside = under.wasOutside || band.value !== 'inside';
  if (band === under.band && under.bandSeen && wasOutside === under.wasOutside) return state;
  return { ...state, under: { ...under, band, bandSeen: true, wasOutside } };
}
