import type { ChartBandPoint } from '../chart/ChartSpec.ts';
import type { FinishedRun, RunPoint } from './FinishedRun.ts';
import type { TrialStanding } from './TrialScreenState.ts';

const STEP_S = 0.5;
const FROM_S = -5;
/** A longer silence in a run is not bridged, s. */
const LONGEST_BRIDGED_S = 5;

/** The finished runs that the overlay shows: none that is unusable or set aside. */
export function runsInPicture(
  finished: readonly FinishedRun[],
  { runs }: TrialStanding,
): readonly FinishedRun[] {
  const out = new Set(
    runs
      .filter(({ result, decision }) => decision.kind === 'set-aside' || result.verdict === 'unusable')
      .map(({ source, result }) => `${source} ${result.runNumber}`),
  );
  return finished.filter((run) => !out.has(`${run.recordingId} ${run.runNumber}`));
}

/**
 * The finished runs that count: good ones and suspect ones taken in, none set aside. A run that the standing does not
 * know yet goes by its own verdict.
 */
export function runsThatCount(
  finished: readonly FinishedRun[],
  { runs }: TrialStanding,
): readonly FinishedRun[] {
  const counts = new Map(
    runs.map(({ source, result, decision }) => [
      `${source} ${result.runNumber}`,
      decision.kind === 'automatic' ? result.verdict === 'good' : decision.kind === 'taken-in',
    ]),
  );
  return finished.filter((run) => counts.get(`${run.recordingId} ${run.runNumber}`) ?? run.good === true);
}

/** Lowest and highest of the runs at each half second since press closed. Runs over at that time are left out. */
export function bandOfRuns(runs: readonly FinishedRun[]): readonly ChartBandPoint[] {
  const endS = Math.max(FROM_S, ...runs.map((run) => run.points.at(-1)?.timeS ?? FROM_S));
  const cursors = runs.map(() => 0);
  const band: ChartBandPoint[] = [];
  for (let step = 0; FROM_S + step * STEP_S <= endS; step++) {
    const timeS = FROM_S + step * STEP_S;
    let [lowC, highC] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    runs.forEach(({ points }, i) => {
      while ((points[(cursors[i] ?? 0) + 1]?.timeS ?? Number.POSITIVE_INFINITY) <= timeS)
        cursors[i] = (cursors[i] ?? 0) + 1;
      const temperatureC = between(points[cursors[i] ?? 0], points[(cursors[i] ?? 0) + 1], timeS);
      if (temperatureC === null) return;
      lowC = Math.min(lowC, temperatureC);
      highC = Math.max(highC, temperatureC);
    });
    if (lowC <= highC) band.push({ timeS, lowC, highC });
  }
  return band;
}

function between(a: RunPoint | undefined, b: RunPoint | undefined, timeS: number): number | null {
  if (a === undefined || a.timeS > timeS) return null;
  if (b === undefined) return a.timeS === timeS ? a.temperatureC : null;
  if (b.timeS - a.timeS > LONGEST_BRIDGED_S) return null;
  return a.temperatureC + ((b.temperatureC - a.temperatureC) * (timeS - a.timeS)) / (b.timeS - a.timeS);
}
