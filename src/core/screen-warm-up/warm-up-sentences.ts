import { WARM_UP_LIVE_TEXT } from '../text/warm-up-live-text.ts';
import { estimateText } from '../text/warm-up-text.ts';
import type { WarmUpScreenState } from './WarmUpScreen.ts';
import { readingAgeS, type WarmUpStanding } from './warm-up-standing.ts';

const T = WARM_UP_LIVE_TEXT;
/** Heaters on and nothing rises for so long, s. Judgement, no source. */
const NO_RISE_S = 300;

/** What is to be known now, most important sentence first: what is wrong and what to see, or when READY may be expected. */
export function warmUpSentences(state: WarmUpScreenState, standing: WarmUpStanding): readonly string[] {
  const { ready, faults, heaters, nowUs } = state;
  const sinceS = heaters === null ? null : (nowUs - heaters.onUs) / 1e6;
  switch (standing) {
    case 'no-reader':
      return [T.lost];
    case 'stale':
      return [T.old(readingAgeS(state) ?? 0)];
    case 'no-reading':
      return noReading(state);
    case 'fault':
      return ready.platens.flatMap(({ label }, i) => {
        const fault = faults[i] ?? null;
        return fault === null ? [] : [T.fault(label, fault)];
      });
    case 'cold':
      if (sinceS === null) return [T.markHeaters];
      return [sinceS > NO_RISE_S ? T.noRise(sinceS) : estimateText(ready)];
    case 'heating':
    case 'near':
      return [estimateText(ready), ...(sinceS === null ? [T.markHeaters] : [])];
    case 'cooling':
      return [T.cooling];
    case 'above':
      return [T.above];
    case 'below':
      return [T.below, estimateText(ready)];
    case 'in-band':
    case 'ready':
      return [];
  }
}

function noReading(state: WarmUpScreenState): readonly string[] {
  const { link, counts, ready, readerName, openedUs, nowUs, channels } = state;
  if (link.kind === 'opening') return [T.opening];
  if (counts.lines > 0 && counts.readings === 0) return [T.unread(readerName, counts.lines)];
  if (counts.readings === 0) return [T.silent(readerName, openedUs === null ? 0 : (nowUs - openedUs) / 1e6)];
  return ready.platens.flatMap(({ label, temperatureC }, i) =>
    temperatureC === null ? [T.noRead(label, (channels[i]?.channel ?? i) + 1)] : [],
  );
}
