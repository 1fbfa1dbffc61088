import type { BondingState } from './BondingState.ts';
import { isStale } from './bond-line-now.ts';

export interface PlatenNow {
  readonly side: 'upper' | 'lower';
  readonly temperatureC: number | null;
  readonly setPointC: number | null;
  /** Null where temperature or set point is not known. */
  readonly inside: boolean | null;
}

/** The measured platens against set point ± band; empty where none is measured. An old or faulted reading counts as none. */
export function platensNow(state: BondingState): readonly PlatenNow[] {
  const { job, session } = state;
  if (job?.roles == null) return [];
  return job.roles.flatMap((role, channel): readonly PlatenNow[] => {
    if (role !== 'upper-platen' && role !== 'lower-platen') return [];
    const side = role === 'upper-platen' ? 'upper' : 'lower';
    const value = session?.latestReading?.values[channel];
    const temperatureC = value?.kind === 'temperature' && !isStale(state) ? value.temperatureC : null;
    const setPointC = job.platenSetPointC?.[side] ?? null;
    const known = temperatureC !== null && setPointC !== null;
    return [
      {
        side,
        temperatureC,
        setPointC,
        inside: known ? Math.abs(temperatureC - setPointC) <= job.platenBandC : null,
      },
    ];
  });
}
