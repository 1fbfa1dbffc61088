import { createSimulatedReader } from '../../adapters/simulated-reader/create-simulated-reader.ts';
import type { MonotonicClock } from '../../core/reading/ReaderLink.ts';
import { SIMULATED_RATES_HZ } from '../../core/simulator/create-reader-voice.ts';
import { demoTrialScenario } from '../../core/simulator/demo-trial-scenario.ts';
import { OptionError } from '../options/OptionError.ts';
import { parseNumber } from '../options/parse-number.ts';
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
  /** Readings a second. @default the demo scenario's 10 */
  readonly rateHz?: number;
}

/** The simulated reader and press of the demo scenario; closings come by themselves, or by hand. */
export function simulatedTrialReader(options: SimulatedTrialOptions): TrialReader {
  const { host, speed, runs, onFinished, closing = 'by-itself', goOn = false } = options;
  const scenario = demoTrialScenario({ runs });
  const link = createSimulatedReader({
    scenario: {
      ...scenario,
      reader: { ...scenario.reader, rateHz: options.rateHz ?? scenario.reader.rateHz },
    },
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

/** A rate that the simulated reader has, or a refusal that names them. */
export function simulatedRate(text: string): number {
  const rateHz = parseNumber(text, '--rate', { least: 0.1, most: 1000 });
  if (SIMULATED_RATES_HZ.includes(rateHz)) return rateHz;
  throw new OptionError(
    `--rate: the simulated reader has no rate of ${rateHz} readings a second`,
    `Choose one of ${SIMULATED_RATES_HZ.join(', ')}, or leave --rate out`,
    'rate-not-offered',
  );
}
