import { median } from '../run/median.ts';
import type { ReadyRule } from './ReadyRule.ts';
import type { PlatenReadiness, WatchedPlaten } from './ReadyWatch.ts';

const MIDDLE_OF = 5;
/** A platen that gave no reading for so long is not known to be anywhere, s. Judgement, no source. */
export const SILENT_AFTER_S = 10;

/** Whether one platen is inside its band, and since when. */
export function createPlatenWatch({ label, setPointC }: WatchedPlaten, rule: ReadyRule) {
  const latest: number[] = [];
  let latestAtS: number | null = null;
  let insideSinceS: number | null = null;
  let nowS = 0;

  const silent = (): boolean => latestAtS === null || nowS - latestAtS > SILENT_AFTER_S;
  const forget = (): void => {
    insideSinceS = null;
    latest.length = 0;
  };

  return {
    accept(timeS: number, temperatureC: number | null): void {
      nowS = timeS;
      if (silent()) forget();
      if (temperatureC === null || !Number.isFinite(temperatureC)) return;
      latestAtS = timeS;
      latest.push(temperatureC);
      if (latest.length > MIDDLE_OF) latest.shift();
      const inside = Math.abs(median(latest)! - setPointC) <= rule.bandC;
      if (!inside) insideSinceS = null;
      else insideSinceS ??= timeS;
    },
    get readiness(): PlatenReadiness {
      const known = !silent();
      const inside = known && insideSinceS !== null;
      return {
        label,
        setPointC,
        temperatureC: known ? median(latest) : null,
        inside,
        insideForS: inside ? nowS - insideSinceS! : 0,
      };
    },
  };
}
