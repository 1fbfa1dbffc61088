import type { PlatenSetup } from './create-platen.ts';
import type { SimulatedPressSetup } from './Scenario.ts';

/** 450 °F. */
export const PLATEN_SET_POINT_C = 232.22;

/** Steel platen 300 mm square, about 32 mm thick, with rod heaters. Invented. */
const PLATEN: PlatenSetup = {
  setPointC: PLATEN_SET_POINT_C,
  heatCapacityJPerK: 11_000,
  heaterW: 2_400,
  lossWPerK: 3,
  cycleS: 4,
  gainPerC: 0.1,
  resetS: 150,
  offsetC: 0,
};

/** The two presses of the demo shop (invented): 200 mm air rams, platens 300 mm square. */
export const NORTH: SimulatedPressSetup = Object.freeze({
  name: 'North',
  upper: PLATEN,
  lower: PLATEN,
  lowerContactM2KPerW: 1.272e-3,
  upperContactM2KPerW: 1.2e-3,
});

/** South's lower platen runs a few degrees under its set point. */
export const SOUTH: SimulatedPressSetup = Object.freeze({
  name: 'South',
  upper: PLATEN,
  lower: { ...PLATEN, offsetC: -3, cycleS: 5 },
  lowerContactM2KPerW: 1.272e-3,
  upperContactM2KPerW: 1.2e-3,
});
