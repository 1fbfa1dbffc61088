/** A platen that is heated from cold. Power in W, heat capacity in J/K, times in s, temperatures in °C. Invented. */
export interface WarmUpPlatenSetup {
  readonly setPointC: number;
  readonly heatCapacityJPerK: number;
  readonly heaterW: number;
  readonly lossWPerK: number;
  /** First-order lag from the heater rods into the plate. */
  readonly heaterLagS: number;
  readonly probeLagS: number;
  readonly cycleS: number;
  /** Heater share per °C below the set point, and the time in which the slow part makes up for a lasting difference. */
  readonly gainPerC: number;
  readonly resetS: number;
  /** The plate is this much hotter or colder than its controller believes. */
  readonly offsetC: number;
}

export interface WarmUpPlaten {
  step(stepS: number, heatTakenW: number, powered: boolean): void;
  readonly plateC: number;
  /** The probe's own temperature, before noise. */
  readonly probeC: number;
}

/** Heater rods, plate and probe in a row, under a controller that switches the rods in cycles and starts knowing nothing. */
export function createWarmUpPlaten(
  setup: WarmUpPlatenSetup,
  ambientC: number,
  cyclePhase: number,
): WarmUpPlaten {
  let plateC = ambientC;
  let probeC = ambientC;
  let flowW = 0;
  let slowShare = 0;
  let share = 0;
  let intoCycleS = cyclePhase * setup.cycleS;

  return {
    step(stepS, heatTakenW, powered) {
      const belowC = setup.setPointC + setup.offsetC - plateC;
      const wanted = slowShare + setup.gainPerC * belowC;
      intoCycleS += stepS;
      if (intoCycleS >= setup.cycleS) {
        intoCycleS -= setup.cycleS;
        share = Math.min(1, Math.max(0, wanted));
      }
      // The slow part rests while the heater is at a limit.
      if (powered && wanted > 0 && wanted < 1) slowShare += (setup.gainPerC * belowC * stepS) / setup.resetS;
      const heaterW = powered && (wanted >= 1 || intoCycleS < share * setup.cycleS) ? setup.heaterW : 0;
      flowW += (heaterW - flowW) * -Math.expm1(-stepS / setup.heaterLagS);
      const lossW = setup.lossWPerK * (plateC - ambientC);
      plateC += ((flowW - lossW - heatTakenW) * stepS) / setup.heatCapacityJPerK;
      probeC += (plateC - probeC) * -Math.expm1(-stepS / setup.probeLagS);
    },
    get plateC() {
      return plateC;
    },
    get probeC() {
      return probeC;
    },
  };
}

/**
 * Time constant of the plate alone, τ = C/h, and the delay that the two quicker lags look like once they have died away:
 * for three lags in a row the slow part is 1 − A·e^(−t/τ) with A = τ²/((τ − τ₂)·(τ − τ₃)), so it leaves 0 at τ·ln A.
 */
export function fullPowerTruth(setup: WarmUpPlatenSetup): {
  readonly timeConstantS: number;
  readonly delayS: number;
} {
  const tau = setup.heatCapacityJPerK / setup.lossWPerK;
  const slowPart = tau ** 2 / ((tau - setup.heaterLagS) * (tau - setup.probeLagS));
  return { timeConstantS: tau, delayS: tau * Math.log(slowPart) };
}
