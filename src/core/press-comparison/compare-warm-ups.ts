import type { ChannelRole } from '../recording/RecordingEntry.ts';
import { sampleMean } from '../statistics/sample-mean.ts';
import { welchInterval } from '../statistics/welch-interval.ts';
import type { WarmUp } from '../warm-up/WarmUp.ts';
import { WARM_UP_FIGURES, type WarmUpFigure } from '../warm-up/warm-up-figures.ts';
import type { ComparedFigure, ComparedSide, WarmUpComparison } from './WarmUpComparison.ts';

/**
 * Two presses, or one before and after, figure by figure and platen by platen: means, difference (second less first), and
 * where both sides repeat, the 95 % interval of the difference (Welch, NIST/SEMATECH e-Handbook 1.3.5.3). A platen that
 * one side lacks is left out.
 */
export function compareWarmUps(first: ComparedSide, second: ComparedSide): WarmUpComparison {
  const roles = rolesOf(first.warmUps).filter((role) => rolesOf(second.warmUps).includes(role));
  const rules = [...first.warmUps, ...second.warmUps].map((one) => JSON.stringify(one.rules));
  return {
    first,
    second,
    figures: roles.flatMap((role) =>
      WARM_UP_FIGURES.map((figure) => compareFigure(figure, role, first.warmUps, second.warmUps)),
    ),
    repeated: first.warmUps.length > 1 && second.warmUps.length > 1,
    rulesDiffer: new Set(rules).size > 1,
  };
}

function compareFigure(
  figure: WarmUpFigure,
  role: ChannelRole,
  firstWarmUps: readonly WarmUp[],
  secondWarmUps: readonly WarmUp[],
): ComparedFigure {
  const valuesOf = (warmUps: readonly WarmUp[]) =>
    warmUps.map((warmUp) => {
      const channel = warmUp.channels.find((one) => one.role === role);
      return channel === undefined ? null : figure.value(channel);
    });
  const first = valuesOf(firstWarmUps);
  const second = valuesOf(secondWarmUps);
  const [told, toldToo] = [first.filter(isTold), second.filter(isTold)];
  const firstMean = told.length === 0 ? null : sampleMean(told);
  const secondMean = toldToo.length === 0 ? null : sampleMean(toldToo);
  // Without any spread on either side there is nothing to hold a difference against: coarse figures, or copies.
  const spread = [told, toldToo].some((values) => Math.max(...values) > Math.min(...values));
  const welch = told.length > 1 && toldToo.length > 1 && spread ? welchInterval(told, toldToo) : null;
  return {
    role,
    key: figure.key,
    kind: figure.kind,
    first,
    second,
    firstMean,
    secondMean,
    difference: firstMean === null || secondMean === null ? null : secondMean - firstMean,
    interval:
      welch === null ? null : { low: welch.low, high: welch.high, degreesOfFreedom: welch.degreesOfFreedom },
    standsOut: welch !== null && (welch.low > 0 || welch.high < 0),
  };
}

function isTold(value: number | null): value is number {
  return value !== null && Number.isFinite(value);
}

function rolesOf(warmUps: readonly WarmUp[]): readonly ChannelRole[] {
  return [...new Set(warmUps.flatMap((warmUp) => warmUp.channels.map((channel) => channel.role)))];
}
