import { collectSamples } from './collect-samples.ts';
import { estimateOnset, type OnsetEstimate } from './estimate-onset.ts';
import type { Level } from './LevelBlocks.ts';
import type { RiseSeen } from './OnsetWatch.ts';
import type { RunSurroundings } from './RunUnderWay.ts';

/**
 * Where a rise that has just become certain began: the readings from 15 s before the last quiet level (or three times as
 * long as the rise has lasted, for slow heating) up to now go to `estimateOnset`.
 */
export function locateOnset(
  { trace, resolutions }: RunSurroundings,
  channel: number,
  rise: RiseSeen,
  levels: readonly Level[],
  span: { readonly notBeforeS: number; readonly nowS: number },
): OnsetEstimate | null {
  const quietC = rise.lowestC + 0.3 * (rise.seenC - rise.lowestC);
  const quiet = levels.filter((level) => level.timeS <= rise.seenS && level.levelC < quietC);
  const quietS = quiet[quiet.length - 1]?.timeS ?? rise.lowestS;
  const fromS = Math.max(span.notBeforeS, quietS - Math.max(15, 3 * (rise.seenS - quietS)));
  return estimateOnset(collectSamples(trace, channel, fromS, span.nowS), resolutions[channel]!.resolutionC);
}
