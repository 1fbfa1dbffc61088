import { crossingChart } from '../../core/figure/crossing-chart.ts';
import { dwellBars } from '../../core/figure/dwell-bars.ts';
import { overlayChart } from '../../core/figure/overlay-chart.ts';
import type { Picture } from '../../core/figure/Picture.ts';
import { runChart } from '../../core/figure/run-chart.ts';
import { runTrace } from '../../core/figure/run-trace.ts';
import { soakTimesChart } from '../../core/figure/soak-times-chart.ts';
import { overlayOf } from '../../core/report/overlay-of.ts';
import { soakTimesOf } from '../../core/report/soak-times-of.ts';
import { DWELL_RULE_NAME } from '../../core/text/dwell-text.ts';
import type { TemperatureUnit } from '../../core/text/units-text.ts';
import { OptionError } from '../options/OptionError.ts';
import type { GatheredTrial } from './GatheredTrial.ts';

export const CHART_VIEWS = ['overlay', 'crossing', 'run', 'soak-times', 'dwell'] as const;
export type ChartView = (typeof CHART_VIEWS)[number];

interface ChartWish {
  /** Without a wish: one run is drawn with all its channels, several as an overlay. */
  readonly view?: ChartView;
  readonly run?: number;
  readonly unit: TemperatureUnit;
}

/** The picture wanted of a trial; refuses, with what would help, where there is nothing to draw. */
export function chartOf(gathered: GatheredTrial, { view, run, unit }: ChartWish): Picture {
  const { outcome, job } = gathered;
  const wanted = view ?? (run !== undefined || outcome.runs.length === 1 ? 'run' : 'overlay');
  const picture = (): Picture | null => {
    switch (wanted) {
      case 'run':
        return oneRun(gathered, run ?? 1, unit);
      case 'overlay': {
        const overlay = overlayOf({ ...gathered, unit }, job.simulated);
        return overlay.runs.length === 0 ? null : overlayChart(overlay);
      }
      case 'crossing':
        return crossingChart(overlayOf({ ...gathered, unit }, job.simulated));
      case 'soak-times':
        return soakTimesChart(soakTimesOf(outcome, job.simulated));
      case 'dwell': {
        const dwells = (['mean', 'next-run'] as const).flatMap((rule) => {
          const { dwell } = outcome.dwells[rule];
          return dwell === null ? [] : [{ name: DWELL_RULE_NAME[rule], dwell }];
        });
        return dwells.length === 0 ? null : dwellBars(dwells);
      }
    }
  };
  const drawn = picture();
  if (drawn !== null) return drawn;
  throw new OptionError(
    `chart: nothing to draw in the view "${wanted}"`,
    'No run has what it shows; try --view run, or see why with dwellwright replay',
    'nothing-to-draw',
  );
}

function oneRun(
  { outcome, recordings, recordingOfRun, job }: GatheredTrial,
  run: number,
  unit: TemperatureUnit,
) {
  const result = outcome.runs[run - 1]?.result;
  const recording = recordings[recordingOfRun[run - 1] ?? -1];
  if (result === undefined || recording === undefined) return null;
  const zeroS = result.pressClosed?.timeS ?? 0;
  const crossingS = result.crossing === null ? null : result.crossing.timeS - zeroS;
  return runChart({
    trace: runTrace(recording.trace, result, String(run)),
    targetC: outcome.settings.targetC,
    unit,
    simulated: job.simulated,
    closedBy: result.pressClosed?.by ?? null,
    crossingS,
    holdDoneS:
      crossingS !== null && result.hold !== null && result.hold.longestUnbrokenS >= result.hold.wantedS
        ? crossingS + result.hold.wantedS
        : null,
    openedS: result.openedS === null ? null : result.openedS - zeroS,
  });
}
