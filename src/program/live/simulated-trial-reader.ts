import { createSimulatedReader } from '../../adapters/simulated-reader/create-simulated-reader.ts';
import type { MonotonicClock } from '../../core/reading/ReaderLink.ts';
import { demoTrialScenario } from '../../core/simulator/demo-trial-scenario.ts';
import type { TrialReader } from './TrialReader.ts';

export interface SimulatedTrialOptions {
  readonly host: MonotonicClock;
  readonly speed: number | 'as-fast-as-possible';
  readonly runs: number;
  readonly onFinished?: () => void;
  /** Goes on reading after the last closing, as a real reader would. @default false */
  readonly goOn?: boolean;
  /** By hand: the keys that mark press closed and opened close and open it. @default 'by-itself' */
  readonly closing?: 'by-itself' | 'by-hand';
}

/** The simulated reader and press of the demo scenario; closings come by themselves, or by hand. */
export function simulatedTrialReader(options: SimulatedTrialOptions): TrialReader {
  const { host, speed, runs, onFinished, closing = 'by-itself', goOn = false } = options;
  const link = createSimulatedReader({
    scenario: demoTrialScenario({ runs }),
    speed,
    clock: host,
    closing,
    goOn,
    ...(onFinished === undefined ? {} : { onFinished }),
  });
  // Time of the simulation never sleeps.
  return {
    link,
    clock: link.clock,
    ...(closing === 'by-hand' ? { hand: link } : {}),
    speed: typeof speed === 'number' ? speed : 1,
    watchSleep: () => ({ check: () => undefined, stop: () => undefined }),
  };
}
