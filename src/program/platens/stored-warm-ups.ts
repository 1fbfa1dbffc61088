import { existsSync } from 'node:fs';
import { neutralise } from '../../core/text/neutralise.ts';
import { isPlaten } from '../../core/warm-up/gather-platens.ts';
import { madeForWarmUp } from '../../core/warm-up/made-for-warm-up.ts';
import { OptionError } from '../options/OptionError.ts';
import { storePath } from '../options/store-path.ts';
import { type StoreOptions, withStore } from '../options/with-store.ts';
import { type Days, isWithin } from './days.ts';

/**
 * Recordings of the store that may hold a warm-up of this press, made on these days, in the order they were made: those made for
 * it, and others with a platen channel that belong to no trial. Measured and simulated ones are never mixed: measured go first.
 */
export async function storedWarmUps(
  pressName: string,
  days: Days | null,
  options: StoreOptions,
): Promise<{ readonly ids: readonly string[]; readonly simulatedLeftOut: number }> {
  if (!existsSync(storePath(options))) throw noStore(pressName);
  return withStore(options, (store) => {
    const heads = store.recordingIds().flatMap((id) => store.recording(id)?.head ?? []);
    const fitting = heads
      .filter((head) => head.pressName === pressName && head.roles.some(isPlaten))
      .filter((head) => madeForWarmUp(head) ?? head.trialId === undefined)
      .filter(({ madeAt }) => days === null || isWithin(madeAt, days))
      .sort((a, b) => Date.parse(a.madeAt) - Date.parse(b.madeAt));
    const measured = fitting.filter(({ simulated }) => !simulated);
    const used = measured.length > 0 ? measured : fitting;
    return {
      ids: used.map(({ recordingId }) => recordingId),
      simulatedLeftOut: fitting.length - used.length,
    };
  });
}

function noStore(pressName: string): OptionError {
  return new OptionError(
    `no store, and so no warm-up of ${neutralise(pressName)}`,
    'Record one first: dwellwright warm-up --live; or name the store with --store FILE',
    'recording-unknown',
  );
}
