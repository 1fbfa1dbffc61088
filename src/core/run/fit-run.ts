import { fitHeatingCurve } from '../heating-fit/fit-heating-curve.ts';
import { fittedWindow } from '../heating-fit/fitted-window.ts';
import { type RunFit, runFit } from '../heating-fit/run-fit.ts';
import { collectSamples } from './collect-samples.ts';
import type { RunFacts } from './RunFacts.ts';

/** Heating curve of the channel whose crossing is the run's; null without crossing, closing, start or a curve. */
export function fitRun(
  facts: RunFacts,
  span: { readonly riseFromS: number; readonly closedUntilS: number },
): RunFit | null {
  const { crossing, crossings, pressClosed, startC, trace } = facts;
  if (crossing === null || pressClosed === null || startC === null) return null;
  const channel = crossings.find((one) => one.crossing?.timeS === crossing.timeS)?.channel;
  if (channel === undefined) return null;
  const { fromS, toS } = fittedWindow(span.riseFromS, crossing.timeS, span.closedUntilS);
  const readings = collectSamples(trace, channel - 1, fromS, toS);
  const noiseC = facts.channels[channel - 1]?.noiseC ?? 0;
  const fit = fitHeatingCurve(readings, { startC, startUncertaintyC: noiseC });
  return fit === null ? null : runFit(fit, pressClosed.timeS);
}
