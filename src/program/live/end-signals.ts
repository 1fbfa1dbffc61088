import { windowClosed } from './hang-up.ts';

/** Reason of an abort by a signal. */
export const END_SIGNAL = 'signal';

/**
 * One signal for every way a trial ends from outside: Ctrl-C, a closed window, SIGTERM. The first asks; a second
 * Ctrl-C while things are being put away ends the program at once (what has arrived is on disk by then).
 */
export function endSignals(): { readonly controller: AbortController; off(): void } {
  const controller = new AbortController();
  const end = (): void => {
    if (controller.signal.aborted) process.exit(130);
    controller.abort(END_SIGNAL);
  };
  const names = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
  for (const name of names) process.on(name, end);
  process.on('SIGHUP', windowClosed);
  return {
    controller,
    off() {
      for (const name of names) process.off(name, end);
      process.off('SIGHUP', windowClosed);
    },
  };
}
