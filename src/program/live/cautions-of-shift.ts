import type { Store } from '../../core/store/Store.ts';

/** Setting that holds when the cautions were read last. */
export const CAUTIONS_SETTING = 'cautions-acknowledged';
/** Cautions are acknowledged once a shift: eight hours. Common practice, no source. */
const SHIFT_MS = 8 * 3600 * 1000;

/** Whether the cautions were read in this shift, on whatever screen. */
export function cautionsAcknowledged(store: Pick<Store, 'setting'>, now: Date): boolean {
  const before = store.setting(CAUTIONS_SETTING);
  return before !== undefined && now.getTime() - Date.parse(before) < SHIFT_MS;
}

/** Keeps that the cautions were read now. */
export function acknowledgeCautions(store: Pick<Store, 'saveSetting'>, now: Date): void {
  store.saveSetting(CAUTIONS_SETTING, now.toISOString());
}
