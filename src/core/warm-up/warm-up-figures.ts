import type { ChannelWarmUp } from './WarmUp.ts';

/** Kind of a figure: says its unit and how it is shown. */
export type FigureKind = 'time' | 'temperature' | 'difference' | 'rate' | 'drift' | 'percent';

/** A figure that can be set side by side. `value` in s, °C, °C/s, °C/h or %. */
export interface WarmUpFigure {
  readonly key: string;
  readonly kind: FigureKind;
  readonly value: (channel: ChannelWarmUp) => number | null;
  readonly standardUncertainty?: (channel: ChannelWarmUp) => number | null;
}

/** Every figure of a platen's warm-up, in the order of the course of a warm-up. Keys carry the unit. */
export const WARM_UP_FIGURES: readonly WarmUpFigure[] = Object.freeze([
  { key: 'startC', kind: 'temperature', value: (one) => one.startC },
  { key: 'largestRateCPerS', kind: 'rate', value: (one) => one.largestRateCPerS },
  {
    key: 'delayS',
    kind: 'time',
    value: (one) => one.fullPower?.delayS?.value ?? null,
    standardUncertainty: (one) => one.fullPower?.delayS?.standardUncertainty ?? null,
  },
  {
    key: 'timeConstantS',
    kind: 'time',
    value: (one) => one.fullPower?.timeConstantS?.value ?? null,
    standardUncertainty: (one) => one.fullPower?.timeConstantS?.standardUncertainty ?? null,
  },
  { key: 'riseTimeS', kind: 'time', value: (one) => one.riseTimeS },
  { key: 'reachesBandS', kind: 'time', value: (one) => one.reachesBandS },
  { key: 'staysInBandS', kind: 'time', value: (one) => one.staysInBandS },
  { key: 'readyAtS', kind: 'time', value: (one) => one.readyAtS },
  { key: 'settlingTimeS', kind: 'time', value: (one) => one.settlingTimeS },
  { key: 'overshootC', kind: 'difference', value: (one) => one.overshootC },
  { key: 'overshootPercent', kind: 'percent', value: (one) => one.overshootPercent },
  { key: 'levelC', kind: 'temperature', value: (one) => one.steady?.levelC ?? null },
  { key: 'meanOffsetC', kind: 'difference', value: (one) => one.steady?.meanOffsetC ?? null },
  {
    key: 'driftCPerHour',
    kind: 'drift',
    value: (one) => one.steady?.driftCPerHour.value ?? null,
    standardUncertainty: (one) => one.steady?.driftCPerHour.standardUncertainty ?? null,
  },
  { key: 'rippleAmplitudeC', kind: 'difference', value: (one) => one.steady?.ripple?.amplitudeC ?? null },
  { key: 'ripplePeriodS', kind: 'time', value: (one) => one.steady?.ripple?.periodS ?? null },
  { key: 'dipC', kind: 'difference', value: (one) => one.recoveries[0]?.depthC ?? null },
  { key: 'dipLowestAfterS', kind: 'time', value: (one) => one.recoveries[0]?.lowestAfterS ?? null },
  { key: 'recoveryTimeS', kind: 'time', value: (one) => one.recoveries[0]?.recoveryTimeS ?? null },
]);
