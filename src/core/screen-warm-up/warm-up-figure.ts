import { numberText } from '../text/units-text.ts';
import { WARM_UP_LIVE_TEXT } from '../text/warm-up-live-text.ts';
import type { PlatenReadiness } from '../warm-up/ReadyWatch.ts';
import type { WarmUpScreenState } from './WarmUpScreen.ts';
import { readingAgeS, type WarmUpStanding } from './warm-up-standing.ts';

const T = WARM_UP_LIVE_TEXT;
const NO_FIGURE = '---';

export interface WarmUpFigure {
  readonly text: string;
  readonly unit: string;
  /** Old: drawn in a broken shade. */
  readonly faded: boolean;
  readonly caption: string;
}

/**
 * The figure in block digits: inside the band the minutes to READY, else the platen that is farthest from its set point, as it
 * decides. Old readings are faded and tell their age; a fault is no figure.
 */
export function warmUpFigure(state: WarmUpScreenState, standing: WarmUpStanding): WarmUpFigure {
  const { shown, ready, rule, unit } = state;
  const platen = farthest(shown.platens);
  if (standing === 'fault' || standing === 'no-reading' || platen?.temperatureC == null)
    return { text: NO_FIGURE, unit: '', faded: true, caption: T.noCaption };
  if (standing === 'in-band') {
    const leftS = Math.max(0, Math.ceil(rule.forS - ready.insideForS));
    const text = `${Math.floor(leftS / 60)}:${String(leftS % 60).padStart(2, '0')}`;
    return { text, unit: 'MIN', faded: false, caption: T.insideCaption };
  }
  const old = standing === 'stale' || standing === 'no-reader';
  const value = unit === 'F' ? platen.temperatureC * 1.8 + 32 : platen.temperatureC;
  return {
    text: numberText(value, 0),
    unit: `°${unit}`,
    faded: old,
    caption: old
      ? T.oldCaption(platen.label, readingAgeS(state) ?? 0)
      : T.caption(platen, comparedTo(platen, shown.platens), unit),
  };
}

function farthest(platens: readonly PlatenReadiness[]): PlatenReadiness | undefined {
  const awayC = ({ temperatureC, setPointC }: PlatenReadiness) =>
    Math.abs((temperatureC ?? setPointC) - setPointC);
  const told = platens.filter(({ temperatureC }) => temperatureC !== null);
  // Platens outside go before those inside; a half degree more or less moves the figure from one to the other only there.
  return [...told].sort((a, b) => Number(a.inside) - Number(b.inside) || awayC(b) - awayC(a))[0];
}

function comparedTo(one: PlatenReadiness, all: readonly PlatenReadiness[]): 'colder' | 'hotter' | null {
  const others = all.filter((other) => other !== one && other.temperatureC !== null);
  // With set points of their own, the hotter one may be the one that has further to go.
  const alike = others.every(({ setPointC }) => setPointC === one.setPointC);
  if (others.length === 0 || !alike || one.temperatureC === null) return null;
  if (others.every((other) => other.temperatureC! >= one.temperatureC!)) return 'colder';
  return others.every((other) => other.temperatureC! <= one.temperatureC!) ? 'hotter' : null;
}
