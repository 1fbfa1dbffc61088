import { createConductionStack } from './create-conduction-stack.ts';
import { createLag } from './create-lag.ts';
import { createPlaten } from './create-platen.ts';
import type { RandomSource } from './create-random.ts';
import type { Closing, Scenario } from './Scenario.ts';

/** Step of the physics, s. */
export const PHYSICS_STEP_S = 0.01;
/** Still air round a part that waits, and a cold bench with an air blast after opening, W/m²K. */
const WAITING_W_PER_M2K = 4;
const COOLING_W_PER_M2K = 260;
/** A probe in a platen's bore is part of the platen; one that touches it lags this much. */
const TOUCHING_LAG_S = 0.8;

/** What is true in the press at a moment. */
export interface PressMoment {
  readonly timeS: number;
  readonly closed: boolean;
  readonly bondLineC: number;
  readonly outerEdgeC: number;
  readonly upperPlatenC: number;
  readonly lowerPlatenC: number;
  /** Temperatures of the probes themselves: bond line, outer edge, upper platen, lower platen. */
  readonly probesC: readonly [number, number, number, number];
  readonly lowerHeaterOn: boolean;
  readonly upperHeaterOn: boolean;
}

export interface PressSimulation {
  /** One step of PHYSICS_STEP_S. */
  step(): PressMoment;
  readonly moment: PressMoment;
  /** Lays a part in the open press. */
  layPart(closing: Pick<Closing, 'startC' | 'contactFactor' | 'edgeFactor'>): void;
  close(): void;
  open(): void;
}

/**
 * Two controlled platens, a part between them (mid-width and outer edge as two stacks: platen contact, carrier, adhesive,
 * ring, platen contact) and the probes, each with its lag and its loss along the wire.
 */
export function createPressSimulation(scenario: Scenario, random: RandomSource): PressSimulation {
  const { press, assembly, probes, ambientC, channelTroubles } = scenario;
  const platen = (setup: Scenario['press']['upper']) =>
    createPlaten(setup, {
      temperatureC: setup.setPointC + setup.offsetC + scenario.platenStartDifferenceC,
      ambientC,
      cyclePhase: random.uniform(),
    });
  const upper = platen(press.upper);
  const lower = platen(press.lower);
  const stack = () =>
    createConductionStack([assembly.carrier, assembly.ring], [assembly.bondFilmM2KPerW], ambientC);
  const middle = stack();
  const edge = stack();
  const touching = new Set(channelTroubles.filter((t) => t.kind === 'touches-platen').map((t) => t.channel));
  const startsC = [ambientC, ambientC, upper.temperatureC, lower.temperatureC] as const;
  const lags = probes.map((probe, index) =>
    createLag(touching.has(index + 1) ? TOUCHING_LAG_S : probe.lagS, startsC[index]!),
  );
  let steps = 0;
  let closed = false;
  let everClosed = false;
  let part: Pick<Closing, 'contactFactor' | 'edgeFactor'> = { contactFactor: 1, edgeFactor: 1 };

  function stepStacks(): void {
    const air = {
      temperatureC: ambientC,
      resistanceM2KPerW: 1 / (everClosed ? COOLING_W_PER_M2K : WAITING_W_PER_M2K),
    };
    for (const [pile, factor] of [
      [middle, part.contactFactor],
      [edge, part.contactFactor * part.edgeFactor * assembly.edgeContactFactor],
    ] as const) {
      if (!closed) pile.step(PHYSICS_STEP_S, air, air);
      else {
        pile.step(
          PHYSICS_STEP_S,
          { temperatureC: lower.temperatureC, resistanceM2KPerW: press.lowerContactM2KPerW * factor },
          { temperatureC: upper.temperatureC, resistanceM2KPerW: press.upperContactM2KPerW * factor },
        );
      }
    }
  }

  function stepPlatens(): void {
    const share = closed ? assembly.faceM2 / 2 : 0;
    lower.step(PHYSICS_STEP_S, share * (middle.lowerFluxWPerM2 + edge.lowerFluxWPerM2));
    upper.step(PHYSICS_STEP_S, share * (middle.upperFluxWPerM2 + edge.upperFluxWPerM2));
  }

  function read(stepS: number): PressMoment {
    const bondLineC = middle.betweenLayersC(0);
    const outerEdgeC = edge.betweenLayersC(0);
    const spotsC = [bondLineC, outerEdgeC, upper.temperatureC, lower.temperatureC];
    const probesC = lags.map((lag, index) => {
      const spotC = closed && touching.has(index + 1) ? lower.temperatureC : spotsC[index]!;
      const seenC = spotC + probes[index]!.conductionShare * (ambientC - spotC);
      if (stepS === 0) lag.rest(seenC);
      return stepS === 0 ? seenC : lag.step(stepS, seenC);
    });
    return {
      timeS: steps * PHYSICS_STEP_S,
      closed,
      bondLineC,
      outerEdgeC,
      upperPlatenC: upper.temperatureC,
      lowerPlatenC: lower.temperatureC,
      probesC: probesC as unknown as [number, number, number, number],
      lowerHeaterOn: lower.heaterOn,
      upperHeaterOn: upper.heaterOn,
    };
  }

  let moment = read(0);
  return {
    step() {
      stepStacks();
      stepPlatens();
      steps += 1;
      moment = read(PHYSICS_STEP_S);
      return moment;
    },
    get moment() {
      return moment;
    },
    layPart(next) {
      part = next;
      everClosed = false;
      middle.setAllC(next.startC);
      edge.setAllC(next.startC);
      if (steps === 0) moment = read(0);
    },
    close() {
      closed = true;
      everClosed = true;
    },
    open() {
      closed = false;
    },
  };
}
