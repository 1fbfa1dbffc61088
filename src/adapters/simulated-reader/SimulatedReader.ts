import type { MonotonicClock, ReaderLink } from '../../core/reading/ReaderLink.ts';

/** A simulated reader as a link, with the press under it in reach. */
export interface SimulatedReader extends ReaderLink {
  readonly simulated: true;
  /** The link's clock: stamp key presses and everything else of this trial with it, not with the host's own. */
  readonly clock: MonotonicClock;
  /** Closes or opens the press by hand. Only with `closing: 'by-hand'`. */
  closePress(): void;
  openPress(): void;
  /** Seconds of the simulation so far. */
  readonly simulatedS: number;
  /** The scenario's last closing and what follows it are over (never when worked by hand). */
  readonly finished: boolean;
}
