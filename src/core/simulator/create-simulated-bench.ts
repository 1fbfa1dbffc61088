import type { ChannelValue } from '../wire/WireEvent.ts';
import type { ClosingTruth } from './create-closing-truth.ts';
import { PHYSICS_STEP_S, type PressMoment } from './create-press-simulation.ts';
import { createRandom } from './create-random.ts';
import { createReadingElectronics } from './create-reading-electronics.ts';
import { type ContactEdge, createScheduledPress } from './create-scheduled-press.ts';
import type { Scenario } from './Scenario.ts';

/** Debounce of the contact input: the edge is reported this much later, stamped with when it happened. */
export const CONTACT_DEBOUNCE_S = 0.02;

/** Time a reader takes from the middle of a measurement to sending it, s. */
const CONVERSION_S = 0.004;

/** `timeS` is when it happened, `sentS` when the reader sends it. In the order of sending. */
export type BenchEvent = { readonly timeS: number; readonly sentS: number } & (
  | { readonly kind: 'sample'; readonly channels: readonly ChannelValue[] }
  | { readonly kind: 'contact'; readonly closed: boolean }
);

/** Press, part, probes and the reader's measuring side; times in s of the simulation. */
export interface SimulatedBench {
  /** Everything that happened up to this moment and was not told before, in order. */
  advanceTo(timeS: number): readonly BenchEvent[];
  readonly timeS: number;
  readonly moment: PressMoment;
  closePress(): void;
  openPress(): void;
  setRate(rateHz: number): void;
  truths(): readonly ClosingTruth[];
}

export function createSimulatedBench(
  scenario: Scenario,
  by: 'schedule' | 'hand' = 'schedule',
): SimulatedBench {
  const random = createRandom(scenario.seed);
  const press = createScheduledPress(scenario, random, by);
  const electronics = [1, 2, 3, 4].map((channel) => createReadingElectronics(scenario, channel, random));
  let intervalS = 1 / scenario.reader.rateHz;
  // Where in the press's history the reader's own beat falls is a matter of chance.
  let nextSampleS = random.uniform() * intervalS;
  let steps = 0;
  let before = press.moment;
  let waiting: BenchEvent[] = [];

  function sample(timeS: number): BenchEvent {
    const after = press.moment;
    const share = after.timeS > before.timeS ? (timeS - before.timeS) / (after.timeS - before.timeS) : 1;
    const channels = electronics.map((channel, index) => {
      const fromC = before.probesC[index]!;
      return channel.read(fromC + share * (after.probesC[index]! - fromC), after);
    });
    return { kind: 'sample', timeS, sentS: timeS + CONVERSION_S, channels };
  }

  function contact(edge: ContactEdge): BenchEvent {
    return {
      kind: 'contact',
      timeS: edge.timeS,
      sentS: edge.timeS + CONTACT_DEBOUNCE_S,
      closed: edge.closed,
    };
  }

  return {
    advanceTo(timeS) {
      const events: BenchEvent[] = waiting;
      waiting = [];
      while ((steps + 1) * PHYSICS_STEP_S <= timeS + 1e-9) {
        before = press.moment;
        const { moment, edge } = press.step();
        steps += 1;
        if (edge !== null && scenario.reader.hasContact) events.push(contact(edge));
        while (nextSampleS <= moment.timeS) {
          events.push(sample(nextSampleS));
          nextSampleS += intervalS;
        }
      }
      events.sort((a, b) => a.sentS - b.sentS);
      waiting = events.filter((event) => event.sentS > timeS);
      return events.filter((event) => event.sentS <= timeS);
    },
    get timeS() {
      return press.moment.timeS;
    },
    get moment() {
      return press.moment;
    },
    closePress: () => press.closePress(),
    openPress: () => press.openPress(),
    setRate(rateHz) {
      nextSampleS += 1 / rateHz - intervalS;
      intervalS = 1 / rateHz;
    },
    truths: () => press.truths(),
  };
}
