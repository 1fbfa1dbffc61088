/** A heated platen and its controller. Power in W, heat capacity in J/K, temperatures in °C. */
export interface PlatenSetup {
  readonly setPointC: number;
  readonly heatCapacityJPerK: number;
  readonly heaterW: number;
  readonly lossWPerK: number;
  /** The controller switches the heater once in each cycle, for the share it has worked out. */
  readonly cycleS: number;
  /** Heater share per °C below the set point. */
  readonly gainPerC: number;
  /** Time in which the controller's slow part makes up for a lasting difference. */
  readonly resetS: number;
  /** The platen is this much hotter or colder than the controller believes (its own sensor's error and place). */
  readonly offsetC: number;
}

export interface Platen {
  step(stepS: number, heatTakenW: number): void;
  readonly temperatureC: number;
  readonly heaterOn: boolean;
}

/**
 * One lump of metal, C · dT/dt = heater − loss · (T − ambient) − heat taken by the part, under a proportional
 * and integral controller that switches the heater in cycles. A cold part makes it sag; then it recovers.
 */
export function createPlaten(
  setup: PlatenSetup,
  start: { readonly temperatureC: number; readonly ambientC: number; readonly cyclePhase: number },
): Platen {
  const steadyShare = (setup.lossWPerK * (setup.setPointC - start.ambientC)) / setup.heaterW;
  let temperatureC = start.temperatureC;
  let slowShare = steadyShare;
  let share = steadyShare;
  let intoCycleS = start.cyclePhase * setup.cycleS;
  let heaterOn = false;

  return {
    step(stepS, heatTakenW) {
      const belowC = setup.setPointC + setup.offsetC - temperatureC;
      intoCycleS += stepS;
      if (intoCycleS >= setup.cycleS) {
        intoCycleS -= setup.cycleS;
        share = clampShare(slowShare + setup.gainPerC * belowC);
      }
      // The slow part rests while the heater is at a limit, or it would overshoot for minutes.
      const wanted = slowShare + setup.gainPerC * belowC;
      if (wanted > 0 && wanted < 1) slowShare += (setup.gainPerC * belowC * stepS) / setup.resetS;
      heaterOn = intoCycleS < share * setup.cycleS;
      const heaterW = heaterOn ? setup.heaterW : 0;
      const lossW = setup.lossWPerK * (temperatureC - start.ambientC);
      temperatureC += ((heaterW - lossW - heatTakenW) * stepS) / setup.heatCapacityJPerK;
    },
    get temperatureC() {
      return temperatureC;
    },
    get heaterOn() {
      return heaterOn;
    },
  };
}

function clampShare(share: number): number {
  return Math.min(1, Math.max(0, share));
}
