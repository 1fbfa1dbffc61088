import type { BondingState } from './BondingState.ts';
import { isStale } from './bond-line-now.ts';
import { type Steady, steady } from './steady.ts';

/** A platen is out of band, or inside again, once it has been so for longer than this together, s. Judgement, no source. */
export const PLATEN_STEADY_S = 3;

export interface PlatenNow {
  readonly side: 'upper' | 'lower';
  readonly temperatureC: number | null;
  readonly setPointC: number | null;
  /** What counts, steady at the band's edge. Null where temperature or set point is not known. */
  readonly inside: boolean | null;
  /** What the latest reading alone says. */
  readonly readingInside: boolean | null;
}

export type PlatensSteady = Readonly<Record<PlatenNow['side'], Steady<boolean> | null>>;

/** The measured platens against set point ± band; empty where none is measured. An old or faulted reading counts as none. */
export function platensNow(state: BondingState): readonly PlatenNow[] {
  return readPlatens(state).map((one) => ({
    ...one,
    inside: one.readingInside === null ? null : (state.platens[one.side]?.value ?? one.readingInside),
  }));
}

/** The platens' standing after the latest readings; one that is not known begins anew. */
export function watchPlatens(state: BondingState, atUs: number): PlatensSteady {
  const next: { upper: Steady<boolean> | null; lower: Steady<boolean> | null } = { upper: null, lower: null };
  for (const { side, readingInside } of readPlatens(state))
    if (readingInside !== null)
      next[side] = steady(state.platens[side], readingInside, atUs, PLATEN_STEADY_S * 1e6);
  return next;
}

function readPlatens({ job, session, ...state }: BondingState): readonly Omit<PlatenNow, 'inside'>[] {
  if (job?.roles == null) return [];
  return job.roles.flatMap((role, channel) => {
    if (role !== 'upper-platen' && role !== 'lower-platen') return [];
    const side = role === 'upper-platen' ? 'upper' : 'lower';
    const value = session?.latestReading?.values[channel];
    const known = value?.kind === 'temperature' && !isStale({ job, session, ...state });
    const temperatureC = known ? value.temperatureC : null;
    const setPointC = job.platenSetPointC?.[side] ?? null;
    const readingInside =
      temperatureC === null || setPointC === null
        ? null
        : Math.abs(temperatureC - setPointC) <= job.platenBandC;
    return [{ side, temperatureC, setPointC, readingInside }];
  });
}
