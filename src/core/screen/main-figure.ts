import { RUN_FACTS } from '../text/run-facts-text.ts';
import type { StateName } from '../text/screen-text.ts';
import { numberText, type TemperatureUnit, temperatureField } from '../text/units-text.ts';
import { temperatureCToF } from '../units/temperature-c-to-f.ts';
import { bondLineChannels } from './bond-line-channels.ts';
import { bondLineTrouble } from './bond-line-trouble.ts';
import { isHoldUnseen } from './hold-standing.ts';
import type { TrialScreenState } from './TrialScreenState.ts';
import type { TrialView } from './TrialView.ts';

const NO_FIGURE = '---';

/**
 * The figure in block digits: the bond line's temperature, and while the hold counts, the seconds left.
 * Several bond-line probes: the coldest, since the slowest one decides. Old readings are faded, faults are no figure.
 */
export function mainFigure(state: TrialScreenState, name: StateName): TrialView['figure'] {
  const unit = `°${state.unit}`;
  const coldestC = coldestBondLineC(state);
  const trouble = bondLineTrouble(state);
  const faded = trouble !== null;
  const caption = captionOf(coldestC, state.unit, trouble?.kind === 'stale' ? trouble.ageS : null);
  const othersC = coldestC === null ? coldestSpeakingC(state) : null;
  const others = othersC === null ? '' : RUN_FACTS.others(temperatureField(othersC, state.unit).trim());
  if (isSeenOnly(state, name)) {
    const seen = RUN_FACTS.ofHold(state.setup.rules.holdS);
    return {
      text: `${Math.floor(state.session?.run.holdCountedS ?? 0)}`,
      unit: 's',
      faded,
      caption: seen,
      below: caption === '' ? others : caption,
    };
  }
  if (counts(state, name) && trouble === null) {
    const leftS = state.setup.rules.holdS - (state.session?.run.holdCountedS ?? 0);
    return { text: `${Math.max(0, Math.ceil(leftS - 0.05))}`, unit: 's', faded, caption };
  }
  if (coldestC === null) return { text: NO_FIGURE, unit: '', faded: true, caption: others };
  const shown = state.unit === 'F' ? temperatureCToF(coldestC) : coldestC;
  return { text: numberText(shown, 0), unit, faded, caption };
}

/** The hold counts down also after a dip; where readings were missing the count proves nothing. */
function counts(state: TrialScreenState, name: StateName): boolean {
  if (name === 'hold' || name === 'dipped') return true;
  const phase = state.session?.run.phase;
  return name === 'hold-not-verified' && phase === 'crossed' && !isHoldUnseen(state);
}

/** A hold that was not seen whole shows what was seen of it: a countdown would promise an end. */
function isSeenOnly(state: TrialScreenState, name: StateName): boolean {
  const phase = state.session?.run.phase;
  if (name !== 'hold-not-verified' || phase === 'hold-done') return false;
  return isHoldUnseen(state) || bondLineTrouble(state) !== null;
}

/** Coldest of the bond-line probes that still speak; no figure for the bond line, which another one decides. */
function coldestSpeakingC(state: TrialScreenState): number | null {
  const trouble = bondLineTrouble(state);
  if (trouble !== null && trouble.kind !== 'fault') return null;
  const speaking = bondLineChannels(state.setup.roles).flatMap((channel) => {
    const value = state.shown?.values[channel];
    return value?.kind === 'temperature' ? [value.temperatureC] : [];
  });
  return speaking.length === 0 ? null : Math.min(...speaking);
}

function coldestBondLineC(state: TrialScreenState): number | null {
  let coldestC: number | null = null;
  for (const channel of bondLineChannels(state.setup.roles)) {
    const value = state.shown?.values[channel];
    if (value?.kind !== 'temperature') return null;
    if (coldestC === null || value.temperatureC < coldestC) coldestC = value.temperatureC;
  }
  return coldestC;
}

function captionOf(temperatureC: number | null, unit: TemperatureUnit, ageS: number | null): string {
  if (temperatureC === null) return '';
  const both = [unit, unit === 'F' ? 'C' : 'F'] as const;
  const [first, second] = both.map((u) => temperatureField(temperatureC, u).trim());
  return ageS === null ? RUN_FACTS.bondLine(first ?? '', second ?? '') : RUN_FACTS.old(first ?? '', ageS);
}
