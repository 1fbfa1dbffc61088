import type { Assembly, Press } from '../../core/press/Press.ts';
import { COMMAND_TEXT } from '../../core/text/command-text.ts';
import { parseTemperature } from '../../core/units/parse-temperature.ts';
import { newAssembly } from './assemblies.ts';
import { newPress } from './presses.ts';

const PLATENS_C = parseTemperature('450F', 'demo');

/** The demo's press, invented: a 200 mm air ram, platens at 450 °F. */
export const DEMO_PRESS: Press = {
  ...newPress('North'),
  ramBoreMm: 200,
  gaugeDivisionPsi: 2,
  platenSetPointC: { upper: PLATENS_C, lower: PLATENS_C },
};

/** The demo's assembly, invented: a brake plate of a deck winch. */
export const DEMO_ASSEMBLY: Assembly = {
  ...newAssembly('WB-212'),
  ringOuterDiameterMm: 212,
  ringInnerDiameterMm: 168,
  carrier: COMMAND_TEXT.demoCarrier,
};
