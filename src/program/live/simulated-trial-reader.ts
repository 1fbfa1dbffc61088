import { createSimulatedReader } from '../../adapters/simulated-reader/create-simulated-reader.ts';
import type { MonotonicClock } from '../../core/reading/ReaderLink.ts';
import { demoTrialScenario } from '../../core/simulator/demo-trial-scenario.ts';
import type { TrialReader } from './TrialReader.ts';

export interface SimulatedTrialOptions {
  readonly host: MonotonicClock;
  readonly speed: number | 'as-fast-as-possible';
  readonly runs: number;
  readonly onFinished?: () => void;
}

/** The simulated reader and press of the demo scenario; closings come by themselves. */
export function simulatedTrialReader({ host, speed, runs, onFinished }: SimulatedTrialOptions): TrialReader {
  const link = createSimulatedReader({
    scenario: demoTrialScenario({ runs }),
    speed,
    clock: host,
    ...(onFinished === undefined ? {} : { onFinished }),
  });
  // Time of the simulation never sleeps.
  return {
    link,
    clock: link.clock,
    speed: typeof speed === 'number' ? speed : 1,
    watchSleep: () => ({ check: () => undefined, stop: () => undefined }),
  };
}
