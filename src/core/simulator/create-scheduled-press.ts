import { type ClosingTruth, createClosingTruth } from './create-closing-truth.ts';
import { createPressSimulation, PHYSICS_STEP_S, type PressMoment } from './create-press-simulation.ts';
import type { RandomSource } from './create-random.ts';
import type { Closing, Scenario } from './Scenario.ts';

export interface ContactEdge {
  readonly timeS: number;
  readonly closed: boolean;
}

/** A press that runs through the scenario's closings, or is closed and opened by hand. */
export interface ScheduledPress {
  /** One step of the physics; `edge` is set when the press closed or opened at its start. */
  step(): { readonly moment: PressMoment; readonly edge: ContactEdge | null };
  readonly moment: PressMoment;
  /** Closes (opens) at the next step, whatever the schedule says. Nothing happens if it already is. */
  closePress(): void;
  openPress(): void;
  truths(): readonly ClosingTruth[];
}

/** Time after opening at which the next part is laid in, s. */
const CHANGE_PART_S = 20;

export function createScheduledPress(
  scenario: Scenario,
  random: RandomSource,
  by: 'schedule' | 'hand' = 'schedule',
): ScheduledPress {
  const simulation = createPressSimulation(scenario, random);
  const truths: ReturnType<typeof createClosingTruth>[] = [];
  let nextClosing = 0;
  let layAtStep: number | null = null;
  let wanted: 'close' | 'open' | null = null;
  let steps = 0;

  const closingAt = (index: number): Closing | undefined =>
    scenario.closings[
      by === 'hand' && scenario.closings.length > 0 ? index % scenario.closings.length : index
    ];
  const first = closingAt(0);
  if (first !== undefined) simulation.layPart(first);

  function dueNow(): 'close' | 'open' | null {
    if (by === 'hand') return wanted;
    const closing = closingAt(nextClosing);
    if (closing === undefined) return null;
    if (!simulation.moment.closed) return steps >= toSteps(closing.closedAtS) ? 'close' : null;
    return steps >= toSteps(closing.openedAtS) ? 'open' : null;
  }

  function step(): { moment: PressMoment; edge: ContactEdge | null } {
    if (layAtStep !== null && steps >= layAtStep && !simulation.moment.closed) {
      const next = closingAt(nextClosing);
      if (next !== undefined) simulation.layPart(next);
      layAtStep = null;
    }
    const due = dueNow();
    wanted = null;
    let edge: ContactEdge | null = null;
    const timeS = steps * PHYSICS_STEP_S;
    if (due === 'close' && !simulation.moment.closed) {
      simulation.close();
      truths.push(createClosingTruth(scenario.targetC, simulation.moment));
      layAtStep = null;
      edge = { timeS, closed: true };
    } else if (due === 'open' && simulation.moment.closed) {
      simulation.open();
      truths.at(-1)?.opened(timeS);
      nextClosing += 1;
      layAtStep = steps + toSteps(CHANGE_PART_S);
      edge = { timeS, closed: false };
    }
    const moment = simulation.step();
    steps += 1;
    truths.at(-1)?.accept(moment);
    return { moment, edge };
  }

  return {
    step,
    get moment() {
      return simulation.moment;
    },
    closePress: () => {
      wanted = 'close';
    },
    openPress: () => {
      wanted = 'open';
    },
    truths: () => truths.map((closing) => closing.truth()),
  };
}

function toSteps(timeS: number): number {
  return Math.round(timeS / PHYSICS_STEP_S);
}
