import type { WarmUp } from './WarmUp.ts';
import { WARM_UP_FIGURES } from './warm-up-figures.ts';

/** A warm-up for scripts: every figure with its unit in the key, °C and s; null where it could not be told. */
export function warmUpJson(warmUp: WarmUp): Readonly<Record<string, unknown>> {
  const { rules } = warmUp;
  return {
    ruleVersion: warmUp.ruleVersion,
    powerOnS: warmUp.powerOn.timeS,
    powerOnBy: warmUp.powerOn.by,
    lengthS: warmUp.endedS,
    setPointUpperC: rules.setPointC?.upper ?? null,
    setPointLowerC: rules.setPointC?.lower ?? null,
    bandC: rules.ready.bandC,
    readyForS: rules.ready.forS,
    readyAtS: warmUp.readyAtS,
    cautions: warmUp.cautions,
    upperLessLowerC: warmUp.difference?.steadyC ?? null,
    upperLessLowerLargestWhileHeatingC: warmUp.difference?.largestWhileHeatingC ?? null,
    platens: warmUp.channels.map((channel) => ({
      channel: channel.channel,
      role: channel.role,
      setPointC: channel.setPointC,
      ...Object.fromEntries(
        WARM_UP_FIGURES.flatMap(({ key, value, standardUncertainty }) => [
          [key, value(channel)],
          ...(standardUncertainty === undefined ? [] : [[uncertaintyKey(key), standardUncertainty(channel)]]),
        ]),
      ),
      largestRateAtS: channel.largestRateAtS,
      peakC: channel.peakC,
      peakAtS: channel.peakAtS,
      fullPowerFromS: channel.fullPower?.fromS ?? null,
      fullPowerToS: channel.fullPower?.toS ?? null,
      firstRateCPerS: channel.fullPower?.firstRateCPerS.value ?? null,
      steadyFromS: channel.steady?.fromS ?? null,
      steadyToS: channel.steady?.toS ?? null,
      recoveries: channel.recoveries,
      noiseC: channel.noiseC,
      spikes: channel.spikes,
      faults: channel.faults,
    })),
    gaps: warmUp.gaps,
  };
}

function uncertaintyKey(key: string): string {
  return `standardUncertaintyOf${key[0]!.toUpperCase()}${key.slice(1)}`;
}
