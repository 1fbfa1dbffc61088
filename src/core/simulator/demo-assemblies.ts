import type { SimulatedAssembly } from './Scenario.ts';

/** Plain carbon steel and a moulded friction material (invented, of the usual size). */
const STEEL = { conductivityWPerMK: 50, heatCapacityJPerM3K: 3.8e6 };
const FRICTION_MATERIAL = { conductivityWPerMK: 0.6, heatCapacityJPerM3K: 1.9e6 };

function ringAreaM2(outerDiameterMm: number, innerDiameterMm: number): number {
  return (Math.PI / 4) * (outerDiameterMm ** 2 - innerDiameterMm ** 2) * 1e-6;
}

/** Brake plate of a deck winch: ring 212 mm OD, 168 mm ID. */
export const WB_212: SimulatedAssembly = Object.freeze({
  name: 'WB-212',
  carrier: { ...STEEL, thicknessM: 0.008, cells: 8 },
  ring: { ...FRICTION_MATERIAL, thicknessM: 0.004, cells: 8 },
  bondFilmM2KPerW: 2e-4,
  faceM2: ringAreaM2(212, 168),
  edgeContactFactor: 0.985,
});

/** The smaller one: ring 150 mm OD, 118 mm ID, thinner carrier. */
export const WB_150: SimulatedAssembly = Object.freeze({
  name: 'WB-150',
  carrier: { ...STEEL, thicknessM: 0.006, cells: 6 },
  ring: { ...FRICTION_MATERIAL, thicknessM: 0.0035, cells: 7 },
  bondFilmM2KPerW: 2e-4,
  faceM2: ringAreaM2(150, 118),
  edgeContactFactor: 0.985,
});
