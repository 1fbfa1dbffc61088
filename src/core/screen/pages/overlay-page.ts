import type { ChartTrace } from '../../chart/ChartSpec.ts';
import { drawChart } from '../../chart/draw-chart.ts';
import type { SegmentRole } from '../../chart/StyledRow.ts';
import { shownTemperature, shownToC } from '../../chart/show-temperature.ts';
import { runsInPicture } from '../band-of-runs.ts';
import type { TrialScreenState } from '../TrialScreenState.ts';
import type { DrawPage } from './PageSize.ts';

const ROLES: readonly SegmentRole[] = [
  'bond-line',
  'upper-platen',
  'target',
  'lower-platen',
  'plain',
  'quiet',
];
const LETTERS = '123456789abcdefghijklmnopqrstuvwxyz';
const STEP = 50;
const SOAK_TIMES_SHOWN = 2;

/** Every run that counts, laid over the others with press closed at zero; each ends in its own number. */
export function overlayPage(state: TrialScreenState): DrawPage {
  const { rules } = state.setup;
  const shown = runsInPicture(state.finished, state.standing);
  const numberOf = new Map(
    state.standing.runs.map(({ source, result }, i) => [`${source} ${result.runNumber}`, i]),
  );
  const traces: ChartTrace[] = shown.map((run, i) => {
    const at = numberOf.get(`${run.recordingId} ${run.runNumber}`) ?? i;
    return {
      letter: LETTERS[at] ?? '*',
      role: ROLES[at % ROLES.length] ?? 'plain',
      line: 'solid',
      points: run.points.map(({ timeS, temperatureC: c }) => ({
        fromS: timeS,
        toS: timeS,
        lowC: c,
        highC: c,
        lastC: c,
        measured: true,
        faulted: false,
      })),
    };
  });
  const all = shown.flatMap((run) => run.points.map((p) => p.temperatureC));
  const lowC = Math.min(rules.targetC - 20, ...all);
  const highC = Math.max(rules.targetC + 20, ...all);
  const round = (c: number, way: 'floor' | 'ceil') =>
    shownToC(Math[way](shownTemperature(c, state.unit) / STEP) * STEP, state.unit);
  const longestS = Math.max(10, ...shown.map((run) => run.points.at(-1)?.timeS ?? 0));
  // What runs differ by is the way to the target; the hold is flat.
  const soakS = state.standing.statistics?.maxSoakS ?? null;
  const toS = soakS === null ? longestS : Math.min(longestS, SOAK_TIMES_SHOWN * soakS);
  return ({ columns, rows, ascii }) =>
    drawChart({
      columns,
      rows,
      fromS: -5,
      toS: toS * 1.02,
      zeroS: 0,
      lowC: round(lowC, 'floor'),
      highC: round(highC, 'ceil'),
      unit: state.unit,
      ascii,
      targetC: rules.targetC,
      traces,
      marks: [{ timeS: 0, label: 'closed' }],
      band: [],
      longestBridgedS: 5,
    });
}
