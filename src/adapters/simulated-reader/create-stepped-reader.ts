import type { MonotonicClock, ReaderLinkListener } from '../../core/reading/ReaderLink.ts';
import { createDelay } from '../../core/simulator/create-arrivals.ts';
import { createSimulatedDevice } from '../../core/simulator/create-simulated-device.ts';
import type { Scenario } from '../../core/simulator/Scenario.ts';
import type { SimulatedReader } from './SimulatedReader.ts';

export interface SteppedReader extends SimulatedReader {
  /** Moves the simulation on to this many seconds since it began and hands out what the reader sent. */
  advanceToS(timeS: number): void;
  /** Pulls the plug; bytes stop. `plugIn` opens it again. The device goes on meanwhile. */
  unplug(cause?: string): void;
  plugIn(): void;
}

export interface SteppedReaderOptions {
  readonly scenario: Scenario;
  readonly closing?: 'by-itself' | 'by-hand';
  /** Clock of the link; without it, the time of the simulation itself. */
  readonly clock?: MonotonicClock;
}

const encoder = new TextEncoder();

/** The simulated reader without timers: time moves only when told. The twin of the serial link for tests. */
export function createSteppedReader({
  scenario,
  closing = 'by-itself',
  clock,
}: SteppedReaderOptions): SteppedReader {
  const device = createSimulatedDevice(scenario, closing === 'by-hand' ? 'hand' : 'schedule');
  const delayS = createDelay(scenario.seed);
  let listener: ReaderLinkListener | null = null;
  let plugged = true;
  let latestUs = 0;
  let simulatedS = 0;
  let openedAtUs = 0;
  let replies: Uint8Array[] = [];

  const linkClock: MonotonicClock = clock ?? {
    nowUs: () => Math.max(latestUs, Math.round(simulatedS * 1e6)),
  };

  function deliver(bytes: Uint8Array, sentUs: number): void {
    if (bytes.length === 0 || listener === null || !plugged) return;
    // Never later than the link's clock, or a key pressed now would seem to come before its reading.
    const arrivedUs = Math.round(sentUs + delayS() * 1e6) + openedAtUs;
    latestUs = Math.max(latestUs, clock === undefined ? arrivedUs : Math.min(arrivedUs, clock.nowUs()));
    listener.bytes(bytes, latestUs);
  }

  return {
    name: 'simulated reader',
    simulated: true,
    clock: linkClock,
    async open(next) {
      listener = next;
      openedAtUs = (clock?.nowUs() ?? 0) - Math.round(simulatedS * 1e6);
    },
    send(command) {
      if (listener === null || !plugged) return;
      replies.push(device.receive(encoder.encode(`${command}\n`)));
    },
    async close() {
      listener = null;
    },
    advanceToS(timeS) {
      const fromUs = simulatedS * 1e6;
      simulatedS = Math.max(simulatedS, timeS);
      const waiting = replies;
      replies = [];
      for (const reply of waiting) deliver(reply, fromUs);
      for (const { bytes, sentUs } of device.advanceTo(Math.round(simulatedS * 1e6))) deliver(bytes, sentUs);
    },
    unplug(cause = 'unplugged') {
      if (!plugged) return;
      plugged = false;
      latestUs = Math.max(latestUs, Math.round(simulatedS * 1e6) + openedAtUs);
      listener?.lost(latestUs, cause);
    },
    plugIn() {
      if (plugged) return;
      plugged = true;
      latestUs = Math.max(latestUs, Math.round(simulatedS * 1e6) + openedAtUs);
      listener?.back(latestUs);
    },
    closePress: () => device.closePress(),
    openPress: () => device.openPress(),
    get simulatedS() {
      return simulatedS;
    },
    get finished() {
      return closing === 'by-itself' && simulatedS >= scenario.endS;
    },
  };
}
