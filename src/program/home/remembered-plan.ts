import { EMPTY_PLAN, type TrialPlan } from '../../core/screen-home/HomeFacts.ts';
import type { Store } from '../../core/store/Store.ts';

const SETTING = 'next-trial';

/** What the last trial was started with; an unreadable setting counts as none. */
export function rememberedPlan(store: Store): TrialPlan {
  const text = store.setting(SETTING);
  if (text === undefined) return EMPTY_PLAN;
  let known: unknown;
  try {
    known = JSON.parse(text);
  } catch {
    // Written by hand or by a later version: the defaults serve as well.
    return EMPTY_PLAN;
  }
  if (typeof known !== 'object' || known === null) return EMPTY_PLAN;
  const plan = known as Record<string, unknown>;
  const word = <Word extends string>(key: string, words: readonly Word[]): Word | null =>
    words.find((one) => one === plan[key]) ?? null;
  const text40 = (key: string): string | null => (typeof plan[key] === 'string' ? plan[key] : null);
  return {
    pressName: text40('pressName'),
    assemblyName: text40('assemblyName'),
    reader: text40('reader'),
    readerUnit: word('readerUnit', ['F', 'C'] as const),
    ring: word('ring', ['fresh', 're-used'] as const),
    coating: word('coating', ['coated', 'bare'] as const),
    probe: word('probe', ['re-laid', 'left'] as const),
    initials: text40('initials'),
  };
}

export function rememberPlan(store: Store, plan: TrialPlan): void {
  store.saveSetting(SETTING, JSON.stringify(plan));
}
