import { middleOfBand, netFacingBand } from '../press/net-facing-band.ts';
import { pressure } from '../press/pressure.ts';
import { PRESSURE_PAGE_TEXT } from '../text/home-text.ts';
import { pressureLines } from '../text/pressure-text.ts';
import { numberText } from '../text/units-text.ts';
import type { HomeState } from './HomeState.ts';
import { said } from './home-reduced.ts';

/** What the gauge must show for the chosen assembly on the chosen press, for the middle of the band. */
export function pressurePage(state: HomeState): HomeState {
  const press = state.facts.presses.find(({ name }) => name === state.plan.pressName);
  const assembly = state.facts.assemblies.find(({ name }) => name === state.plan.assemblyName);
  if (
    press === undefined ||
    press.ramBoreMm === null ||
    assembly === undefined ||
    assembly.ringOuterDiameterMm === null ||
    assembly.ringInnerDiameterMm === null
  )
    return said(state, PRESSURE_PAGE_TEXT.missing, 'caution');
  const bandPsi = netFacingBand(assembly);
  const result = pressure({
    ringOuterDiameterMm: assembly.ringOuterDiameterMm,
    ringInnerDiameterMm: assembly.ringInnerDiameterMm,
    ramBoreMm: press.ramBoreMm,
    ramRodMm: press.ramRodMm,
    ramPulls: press.ramRodMm !== null,
    rams: press.rams,
    gaugeDivisionPsi: press.gaugeDivisionPsi,
    bandPsi,
    given: { netFacingPsi: middleOfBand(bandPsi) },
  });
  return {
    ...state,
    page: {
      kind: 'lines',
      title: PRESSURE_PAGE_TEXT.title(assembly.name, press.name),
      word: PRESSURE_PAGE_TEXT.word(numberText(result.gaugePsi, 0)),
      lines: pressureLines(result, { wanted: true, bandIsDefault: assembly.netFacingPsi == null }),
      scroll: 0,
    },
  };
}
