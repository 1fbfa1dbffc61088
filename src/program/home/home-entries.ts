import type { HomeEntry } from '../../core/screen-home/HomeFacts.ts';
import { HOME_TEXT } from '../../core/text/home-text.ts';
import type { HomeOptions } from './HomeOptions.ts';

/** A way from the home into another part of the program, with what it needs. */
export interface ProgramEntry extends HomeEntry {
  /** Runs until it is left; the home is shown again after. The store is closed meanwhile: open it by the options. */
  readonly run: (options: HomeOptions) => Promise<void>;
}

/**
 * Entries besides the home's own (trial, records, pressure, set-up, demo), in the order shown. Load the module inside
 * `run`, so that the home starts without it. Letters taken: t, r, p, s, d, h, f, q, x, g.
 */
export const HOME_ENTRIES: readonly ProgramEntry[] = [
  {
    key: 'b',
    word: HOME_TEXT.entries.bond[0],
    detail: HOME_TEXT.entries.bond[1],
    run: async (options) => (await import('../bonding/bond-from-home.ts')).bondFromHome(options),
  },
  {
    key: 'w',
    word: HOME_TEXT.entries.warmUp[0],
    detail: HOME_TEXT.entries.warmUp[1],
    needs: 'reader',
    run: async (options) => (await import('../warm-up-live/warm-up-from-home.ts')).warmUpFromHome(options),
  },
];
