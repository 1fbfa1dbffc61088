import type { MonotonicClock } from '../../core/reading/ReaderLink.ts';
import type { Scenario } from '../../core/simulator/Scenario.ts';
import { createScaledClock } from './create-scaled-clock.ts';
import { createSteppedReader } from './create-stepped-reader.ts';
import type { SimulatedReader } from './SimulatedReader.ts';

export interface SimulatedReaderOptions {
  readonly scenario: Scenario;
  /** Seconds of the simulation in one second, 1 for real time; or as fast as the machine can. */
  readonly speed?: number | 'as-fast-as-possible';
  readonly closing?: 'by-itself' | 'by-hand';
  /** The host's monotonic clock. */
  readonly clock: MonotonicClock;
  /** After the scenario's end go on reading with the press open, as a real reader would. */
  readonly goOn?: boolean;
  /** Called once when the scenario has run out (never when worked by hand). */
  readonly onFinished?: () => void;
}

/** How often the reader's bytes are handed on, ms of the host. */
const TURN_MS = 20;
/** Simulated time of one turn when running as fast as possible, s: other work gets its chance in between. */
const FAST_TURN_S = 1;

/**
 * A reader with a press under it, without hardware: speaks the reader protocol through bytes in real time, ×N, or as
 * fast as possible. Arrival times are of its own `clock`, which runs ×N too, so drift and delays look as in real time.
 */
export function createSimulatedReader(options: SimulatedReaderOptions): SimulatedReader {
  const { scenario, speed = 1, closing = 'by-itself', goOn = false, clock, onFinished } = options;
  const paced = speed !== 'as-fast-as-possible';
  const scaled = paced ? createScaledClock(clock, speed) : null;
  const reader = createSteppedReader({ scenario, closing, ...(scaled === null ? {} : { clock: scaled }) });
  let stopped = true;
  let told = false;
  let timer: NodeJS.Timeout | NodeJS.Immediate | null = null;
  let startUs = 0;

  function advanceTo(wantedS: number): void {
    reader.advanceToS(closing === 'by-itself' && !goOn ? Math.min(wantedS, scenario.endS) : wantedS);
  }

  /** By hand, the press moves now, not at the end of the turn. */
  function catchUp(): void {
    if (!stopped && scaled !== null) advanceTo((scaled.nowUs() - startUs) / 1e6);
  }

  function turn(): void {
    if (stopped) return;
    if (scaled === null) advanceTo(reader.simulatedS + FAST_TURN_S);
    else catchUp();
    if (reader.finished && !told) {
      told = true;
      stopped ||= !goOn;
      onFinished?.();
    }
    if (!stopped) timer = scaled === null ? setImmediate(turn) : setTimeout(turn, TURN_MS);
  }

  return {
    name: reader.name,
    simulated: true,
    clock: reader.clock,
    async open(listener) {
      await reader.open(listener);
      startUs = scaled?.nowUs() ?? 0;
      stopped = false;
      timer = setImmediate(turn);
    },
    send: (command) => reader.send(command),
    async close() {
      stopped = true;
      clearTimeout(timer as NodeJS.Timeout);
      clearImmediate(timer as NodeJS.Immediate);
      await reader.close();
    },
    closePress() {
      catchUp();
      reader.closePress();
    },
    openPress() {
      catchUp();
      reader.openPress();
    },
    get simulatedS() {
      return reader.simulatedS;
    },
    get finished() {
      return reader.finished;
    },
  };
}
