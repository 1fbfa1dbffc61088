import type { Assembly, Press } from '../../../src/core/press/Press.ts';

/** Sizes of the invented shop: brake plate WB-212 on a 200 mm ram. */
export const SHOP_ASSEMBLY: Assembly = {
  name: 'WB-212',
  ringOuterDiameterMm: 212,
  ringInnerDiameterMm: 168,
  carrier: null,
  targetC: 176.667,
  holdS: 120,
  adhesive: null,
  dataSheetRevision: null,
  highestDwellS: null,
  highestPeakC: null,
  leastRecoveryS: null,
};

export const SHOP_PRESS: Press = {
  name: 'North',
  ramBoreMm: 200,
  ramRodMm: null,
  rams: 1,
  gaugeDivisionPsi: 2,
  platenSetPointC: null,
  timerStartsAt: 'closing',
  timerOffsetS: 0,
  timerStepS: 1,
};
