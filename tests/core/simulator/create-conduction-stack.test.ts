import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DwellwrightError } from '../../../src/core/DwellwrightError.ts';
import {
  createConductionStack,
  type StackLayer,
} from '../../../src/core/simulator/create-conduction-stack.ts';

// Inputs and values: tests/reference/conduction/SOURCE.md.
const CASES = JSON.parse(
  readFileSync(new URL('../../reference/conduction/conduction-cases.json', import.meta.url), 'utf8'),
);

/** As good as insulated. */
const INSULATED = { temperatureC: 0, resistanceM2KPerW: 1e12 };

function run(
  layers: StackLayer[],
  films: number[],
  startC: number,
  durationS: number,
  stepS: number,
  lower: Parameters<ReturnType<typeof createConductionStack>['step']>[1],
  upper = INSULATED,
) {
  const stack = createConductionStack(layers, films, startC);
  for (let step = 0; step < Math.round(durationS / stepS); step += 1) stack.step(stepS, lower, upper);
  return stack;
}

describe('createConductionStack against published solutions', () => {
  it('plane wall, Incropera Example 5.4: insulated face 43.02 °C, oil side 45.36 °C after 8 min', () => {
    const { inputs, recomputed } = CASES['incropera-5.4-plane-wall'];
    const wall: StackLayer = {
      thicknessM: inputs.L_m,
      conductivityWPerMK: inputs.k_W_mK,
      heatCapacityJPerM3K: inputs.k_W_mK / inputs.alpha_m2_s,
      cells: 80,
    };
    const oil = { temperatureC: inputs.T_oil_c, resistanceM2KPerW: 1 / inputs.h_W_m2K };
    const stack = run([wall], [], inputs.T_initial_c, inputs.t_s, 0.05, oil);
    // The exact solution's one-term form; further terms are below 1e-9 at Fo = 5.64. Half a cell is 0.25 mm.
    expect(Math.abs(stack.cellsC.at(-1)! - recomputed.T_insulated_face_c)).toBeLessThan(0.01);
    const oilSideC = stack.cellsC[0]! + (stack.lowerFluxWPerM2 * inputs.L_m) / 160 / inputs.k_W_mK;
    expect(Math.abs(oilSideC - recomputed.T_oil_side_c)).toBeLessThan(0.01);
    expect(Math.abs(-stack.lowerFluxWPerM2 - recomputed.q_W_m2)).toBeLessThan(5);
  });

  it('plane wall, Incropera Table 5.1: decay rate ζ² and amplitude C1 at Bi 0.1, 1 and 10 within 0.1 %', () => {
    for (const row of CASES['plane-wall-one-term-coefficients'].recomputed) {
      if (![0.1, 1, 10].includes(row.Bi)) continue;
      const wall: StackLayer = { thicknessM: 1, conductivityWPerMK: 1, heatCapacityJPerM3K: 1, cells: 100 };
      const stack = createConductionStack([wall], [], 1);
      const stepS = 0.0002;
      const fluid = { temperatureC: 0, resistanceM2KPerW: 1 / row.Bi };
      // Insulated face is the wall's middle; half a cell away from it cos(ζ·x) differs from 1 by less than 3e-5.
      // From Fo 1 to Fo 2, where the second term is below 1e-6 of the first.
      const at: number[] = [];
      for (let step = 1; step <= 10_000; step += 1) {
        stack.step(stepS, fluid, INSULATED);
        if (step === 5000 || step === 10_000) at.push(stack.cellsC.at(-1)!);
      }
      const rate = Math.log(at[0]! / at[1]!);
      expect(Math.abs(rate / row.zeta1 ** 2 - 1)).toBeLessThan(1e-3);
      expect(Math.abs((at[0]! * Math.exp(row.zeta1 ** 2)) / row.C1 - 1)).toBeLessThan(1e-3);
    }
  });

  it('semi-infinite solid, Incropera Example 5.6: 0 °C at 0.677 m (printed 0.68 m) after 60 days of −15 °C', () => {
    const { inputs, recomputed, published } = CASES['incropera-5.6-semi-infinite'];
    const soil: StackLayer = {
      thicknessM: 6,
      conductivityWPerMK: inputs.k_W_mK,
      heatCapacityJPerM3K: inputs.rho_kg_m3 * inputs.cp_J_kgK,
      cells: 600,
    };
    const surface = { temperatureC: inputs.T_surface_c, resistanceM2KPerW: 1e-9 };
    const stack = run([soil], [], inputs.T_initial_c, inputs.t_days * 86_400, 2000, surface);
    const above = stack.cellsC.findIndex((temperatureC) => temperatureC > inputs.T_at_depth_c);
    const [belowC, aboveC] = [stack.cellsC[above - 1]!, stack.cellsC[above]!];
    const depthM = (above - 0.5 + -belowC / (aboveC - belowC)) * 0.01;
    expect(Math.abs(depthM - recomputed.depth_m)).toBeLessThan(0.002);
    expect(depthM.toFixed(2)).toBe(published.depth_m.toFixed(2));
  });

  it('lumped part (Bi 0.002): exponential with τ = ρ·c·L/h as in Incropera Example 5.1, 5.16 s (printed 5.2 s) to 199 °C', () => {
    const { inputs, recomputed } = CASES['incropera-5.1'];
    // A plate with the sphere's volume over surface: thickness D/6, so the same time constant of 1 s.
    const plate: StackLayer = {
      thicknessM: recomputed.diameter_m / 6,
      conductivityWPerMK: inputs.k_W_mK,
      heatCapacityJPerM3K: inputs.rho_kg_m3 * inputs.cp_J_kgK,
      cells: 4,
    };
    const stack = createConductionStack([plate], [], inputs.T_initial_c);
    const gas = { temperatureC: inputs.T_gas_c, resistanceM2KPerW: 1 / inputs.h_W_m2K };
    let timeS = 0;
    while (stack.cellsC[0]! < inputs.T_target_c) {
      stack.step(0.001, gas, INSULATED);
      timeS += 0.001;
    }
    // The plate's own resistance adds Bi/3 = 0.0008 of a time constant to each: 0.5 %.
    expect(Math.abs(timeS - recomputed.time_s)).toBeLessThan(0.03);
  });

  it('steady state through two layers and a film: temperatures divide as the resistances in series (closed form)', () => {
    const a: StackLayer = { thicknessM: 0.01, conductivityWPerMK: 50, heatCapacityJPerM3K: 3.8e6, cells: 7 };
    const b: StackLayer = { thicknessM: 0.004, conductivityWPerMK: 0.5, heatCapacityJPerM3K: 2e6, cells: 5 };
    const stack = run(
      [a, b],
      [3e-4],
      20,
      4000,
      1,
      { temperatureC: 230, resistanceM2KPerW: 1e-3 },
      { temperatureC: 30, resistanceM2KPerW: 2e-3 },
    );
    const total = 1e-3 + 0.01 / 50 + 3e-4 + 0.004 / 0.5 + 2e-3;
    const flux = (230 - 30) / total;
    expect(stack.lowerFluxWPerM2).toBeCloseTo(flux, 4);
    expect(stack.upperFluxWPerM2).toBeCloseTo(-flux, 4);
    expect(stack.betweenLayersC(0)).toBeCloseTo(230 - flux * (1e-3 + 0.01 / 50 + 1.5e-4), 6);
  });

  it('heat that went in is heat that is there: balance closes to 1e-9', () => {
    const a: StackLayer = { thicknessM: 0.008, conductivityWPerMK: 50, heatCapacityJPerM3K: 3.8e6, cells: 8 };
    const b: StackLayer = {
      thicknessM: 0.004,
      conductivityWPerMK: 0.6,
      heatCapacityJPerM3K: 1.9e6,
      cells: 8,
    };
    const stack = createConductionStack([a, b], [2e-4], 24);
    let taken = 0;
    for (let step = 0; step < 5000; step += 1) {
      stack.step(
        0.01,
        { temperatureC: 232, resistanceM2KPerW: 1e-3 },
        { temperatureC: 231, resistanceM2KPerW: 1e-3 },
      );
      taken += (stack.lowerFluxWPerM2 + stack.upperFluxWPerM2) * 0.01;
    }
    let stored = 0;
    stack.cellsC.forEach((temperatureC, cell) => {
      stored += (temperatureC - 24) * (cell < 8 ? 3.8e6 * 0.001 : 1.9e6 * 0.0005);
    });
    expect(Math.abs(taken / stored - 1)).toBeLessThan(1e-9);
  });

  it('halving the step changes the bond line by less than 0.001 °C', () => {
    const a: StackLayer = { thicknessM: 0.008, conductivityWPerMK: 50, heatCapacityJPerM3K: 3.8e6, cells: 8 };
    const b: StackLayer = {
      thicknessM: 0.004,
      conductivityWPerMK: 0.6,
      heatCapacityJPerM3K: 1.9e6,
      cells: 8,
    };
    const hot = { temperatureC: 232, resistanceM2KPerW: 1e-3 };
    const coarse = run([a, b], [2e-4], 24, 50, 0.01, hot, hot).betweenLayersC(0);
    const fine = run([a, b], [2e-4], 24, 50, 0.005, hot, hot).betweenLayersC(0);
    expect(Math.abs(coarse - fine)).toBeLessThan(0.001);
  });

  it('refuses no layers, sizes that are not positive, and a missing film', () => {
    const sound: StackLayer = {
      thicknessM: 0.01,
      conductivityWPerMK: 50,
      heatCapacityJPerM3K: 3.8e6,
      cells: 4,
    };
    for (const bad of [
      [],
      [{ ...sound, thicknessM: 0 }],
      [{ ...sound, cells: Number.NaN }],
      [sound, sound],
    ]) {
      expect(() => createConductionStack(bad, [], 20)).toThrow(DwellwrightError);
    }
  });
});
