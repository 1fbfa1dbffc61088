import type { ReadingValue } from '../reading/StreamEvent.ts';
import { bondLineChannels } from './bond-line-channels.ts';
import { speedOf } from './pace.ts';
import { staleAfterS } from './stale-after-s.ts';
import type { TrialScreenState } from './TrialScreenState.ts';

export type BondLineTrouble =
  | { readonly kind: 'no-reader'; readonly cause: string | null }
  | { readonly kind: 'refused'; readonly detail: string }
  | { readonly kind: 'stale'; readonly ageS: number }
  | { readonly kind: 'fault'; readonly fault: string };

/** Why the bond line's temperature cannot be trusted now; null when it can. Gravest first. */
export function bondLineTrouble(state: TrialScreenState): BondLineTrouble | null {
  if (state.link.kind === 'lost') return { kind: 'no-reader', cause: state.link.cause };
  const refusal = state.session?.refusal ?? null;
  if (refusal !== null && state.latest === null) return { kind: 'refused', detail: refusal.detail };
  if (state.latest === null || state.latestUs === null) return { kind: 'no-reader', cause: null };
  const ageS = (state.nowUs - state.latestUs) / 1e6;
  if (ageS > staleAfterS(state.intervalS, speedOf(state)) && !state.replayOver)
    return { kind: 'stale', ageS };
  for (const channel of bondLineChannels(state.setup.roles)) {
    const value: ReadingValue | undefined = state.latest.values[channel];
    if (value?.kind === 'fault') return { kind: 'fault', fault: value.fault };
  }
  return null;
}
