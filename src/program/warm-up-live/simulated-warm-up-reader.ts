import { createScaledClock } from '../../adapters/simulated-reader/create-scaled-clock.ts';
import type { MonotonicClock, ReaderLinkListener } from '../../core/reading/ReaderLink.ts';
import { simulateWarmUpRecording } from '../../core/simulator/warm-up-recording.ts';
import type { WarmUpScenario } from '../../core/simulator/warm-up-scenarios.ts';
import { HOME_TEXT } from '../../core/text/home-text.ts';
import { HEATERS_ON } from '../../core/warm-up/heaters-notes.ts';
import type { TrialReader } from '../live/TrialReader.ts';

export interface SimulatedWarmUpOptions {
  readonly host: MonotonicClock;
  readonly speed: number;
  readonly scenario: WarmUpScenario;
  readonly onFinished: () => void;
}

export interface SimulatedWarmUpReader extends TrialReader {
  /** `listener` hears when the simulated technician switches the heaters on, µs of the reader's clock. */
  onHeatersOn(listener: (atUs: number) => void): void;
}

/** How often lines are handed on, ms of the host. */
const TURN_MS = 20;

/** A reader on the platens of a simulated press that warms up: the scenario's lines, each when its time has come. */
export function simulatedWarmUpReader({
  host,
  speed,
  scenario,
  onFinished,
}: SimulatedWarmUpOptions): SimulatedWarmUpReader {
  const clock = createScaledClock(host, speed);
  const { entries } = simulateWarmUpRecording(scenario);
  const encoder = new TextEncoder();
  let timer: NodeJS.Timeout | undefined;
  let next = 0;
  let heatersOn: (atUs: number) => void = () => undefined;
  const turn = (listener: ReaderLinkListener, openedUs: number): void => {
    const untilUs = clock.nowUs() - openedUs;
    for (
      let entry = entries[next];
      entry !== undefined && entry.arrivedUs <= untilUs;
      entry = entries[++next]
    ) {
      const atUs = openedUs + entry.arrivedUs;
      if (entry.kind === 'line') listener.bytes(encoder.encode(`${entry.text}\n`), atUs);
      else if (entry.kind === 'mark' && entry.mark.kind === 'note' && HEATERS_ON.test(entry.mark.text))
        heatersOn(atUs);
    }
    if (next < entries.length) return;
    clearInterval(timer);
    onFinished();
  };
  return {
    link: {
      name: HOME_TEXT.simulated,
      simulated: true,
      async open(listener) {
        const openedUs = clock.nowUs();
        timer = setInterval(() => turn(listener, openedUs), TURN_MS);
      },
      send: () => undefined,
      async close() {
        clearInterval(timer);
      },
    },
    clock,
    speed,
    // Time of the simulation never sleeps.
    watchSleep: () => ({ check: () => undefined, stop: () => undefined }),
    onHeatersOn(listener) {
      heatersOn = listener;
    },
  };
}
