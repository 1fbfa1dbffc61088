import type { PlatenRecord } from './gather-platens.ts';
import type { ChannelWarmUp, PowerOn, WarmUpCaution, WarmUpRules } from './WarmUp.ts';

/** A platen this near its set point at the start was warm, as a share of the way from room to set point. */
const WARM_SHARE = 0.5;
const ROOM_C = 25;

/** What must be said beside a warm-up. */
export function cautionsOf(
  channels: readonly ChannelWarmUp[],
  underWay: boolean,
  powerOn: PowerOn,
  record: PlatenRecord,
  rules: WarmUpRules,
): readonly WarmUpCaution[] {
  const cautions: WarmUpCaution[] = [];
  const warm = (one: ChannelWarmUp) =>
    one.startC > ROOM_C + WARM_SHARE * ((one.setPointC ?? one.peakC) - ROOM_C);
  if (rules.setPointC === null) cautions.push('no-set-point');
  if (channels.some(warm)) cautions.push('began-hot');
  if (powerOn.by === 'rise' && underWay) cautions.push('heating-had-begun');
  else if (powerOn.by === 'rise') cautions.push('power-on-from-rise');
  if (channels.some((one) => one.fullPower === null)) cautions.push('no-full-power-stretch');
  if (channels.some((one) => one.fullPower?.rough)) cautions.push('full-power-rough');
  if (channels.some((one) => isDrifting(one, rules.ready.bandC))) cautions.push('still-drifting');
  if (channels.some((one) => one.steady === null)) cautions.push('not-settled');
  if (record.gaps.length > 0) cautions.push('gaps');
  return cautions;
}

/** The steady stretch drifts by more than the band in an hour, and that is no chance. */
function isDrifting({ steady }: ChannelWarmUp, bandC: number): boolean {
  if (steady === null) return false;
  const { value, standardUncertainty } = steady.driftCPerHour;
  return Math.abs(value) > Math.max(bandC, 3 * standardUncertainty);
}
