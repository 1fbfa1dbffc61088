import { describe, expect, it } from 'vitest';
import { createFramePainter } from '../../../src/adapters/terminal/frame-painter.ts';
import { styledRowToAnsi } from '../../../src/adapters/terminal/styled-row-to-ansi.ts';
import { trialFrame } from '../../../src/core/screen/trial-frame.ts';
import { trialView } from '../../../src/core/screen/trial-view.ts';
import { CROSSING_S, readingAt, ScriptedTrial } from '../../core/screen/scripted-trial.ts';

/** Rows of the figure in block digits and its columns, at 80 × 24. */
const FIGURE = { from: 1, to: 9, columns: 30 };

/**
 * A run on a clock of its own, painted as on a terminal: fifty readings a second from the reader, a frame wanted every 20 ms
 * (far more than any screen asks for). Tells the times at which something was painted, was different, or flashed.
 */
function paintRun(fromS: number, toS: number, prepare: (trial: ScriptedTrial) => void) {
  const trial = new ScriptedTrial().readings(0, 10).close();
  prepare(trial);
  let nowMs = fromS * 1000;
  const due: { readonly atMs: number; readonly run: () => void }[] = [];
  let painted = false;
  const painter = createFramePainter(
    {
      idle: true,
      write: () => {
        painted = true;
      },
      onIdle: () => {},
      drained: () => Promise.resolve(true),
    },
    { leastMs: 100, nowMs: () => nowMs, later: (run, afterMs) => due.push({ atMs: nowMs + afterMs, run }) },
  );
  const times = { painted: [] as number[], figure: [] as number[], flash: [] as number[] };
  let [figure, flash] = ['', false];
  let drawn: ReturnType<typeof trialFrame> = [];
  for (; nowMs < toS * 1000; nowMs += 20) {
    for (const one of due.splice(0))
      if (one.atMs <= nowMs) one.run();
      else due.push(one);
    const timeS = nowMs / 1000;
    trial.session = { ...trial.session, latestReading: readingAt(timeS, trial.closedS) };
    trial.report(timeS, { latestTimeS: timeS }).tick(timeS);
    drawn = trialFrame(trialView(trial.state, { columns: 80, rows: 24, ascii: false }));
    painter.paint(drawn.map((row) => styledRowToAnsi(row, '256')));
    if (!painted) continue;
    painted = false;
    times.painted.push(timeS);
    const text = drawn
      .slice(FIGURE.from, FIGURE.to)
      .map((row) =>
        row
          .map((segment) => segment.text)
          .join('')
          .slice(0, FIGURE.columns),
      )
      .join('\n');
    if (text !== figure) times.figure.push(timeS);
    figure = text;
    const now = drawn.slice(1, 8).some((row) => row.some(({ role }) => role === 'flash'));
    if (now && !flash) times.flash.push(timeS);
    flash = now;
  }
  return times;
}

/** Most of `times` in any stretch of so many seconds. */
const mostIn = (seconds: number, times: readonly number[]): number =>
  Math.max(
    0,
    ...times.map((from) => times.filter((one) => one >= from - 1e-9 && one < from + seconds - 1e-6).length),
  );

describe('how often the screen changes', () => {
  const heating = paintRun(10, 40, () => {});

  it('the chart and all else is painted at most ten times a second, and in a run hardly less', () => {
    expect(mostIn(1, heating.painted)).toBeLessThanOrEqual(10);
    expect(heating.painted.length).toBeGreaterThan(30 * 5);
  });

  it('digits change at most four times a second, over any five seconds (a frame may come up to 100 ms late)', () => {
    expect(mostIn(5, heating.figure)).toBeLessThanOrEqual(20);
    expect(heating.figure.length).toBeGreaterThan(30);
  });

  it('the crossing flashes slower than three times a second (WCAG 2.2, 2.3.1), and does flash', () => {
    const crossing = paintRun(64, 80, (trial) => trial.readings(10, 64).cross());
    expect(CROSSING_S).toBeCloseTo(56.4, 0);
    expect(mostIn(1, crossing.flash)).toBeLessThan(3);
    expect(crossing.flash.length).toBeGreaterThanOrEqual(3);
  });

  it('the same at twenty times the press’s speed: on the person’s clock', () => {
    const trial = new ScriptedTrial({ speed: 20 });
    trial.readings(0, 10).close().readings(10, 64).cross();
    // A frame every 100 ms of a person's second is every 2 s of the press's.
    const flashes: number[] = [];
    let before = false;
    for (let frame = 0; frame < 60; frame++) {
      trial.state = { ...trial.state, nowUs: 70e6 + frame * 2e6, flashUntilUs: 1e12 };
      const { flash } = trialView(trial.state, { columns: 80, rows: 24, ascii: false }).state;
      if (flash && !before) flashes.push(frame / 10);
      before = flash;
    }
    expect(mostIn(1, flashes)).toBeLessThan(3);
    expect(flashes.length).toBeGreaterThanOrEqual(4);
  });
});
