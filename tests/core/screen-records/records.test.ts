import { describe, expect, it } from 'vitest';
import { moveCursor, wholeWindow, zoom } from '../../../src/core/screen-records/chart-window.ts';
import { readingAt, valueAt } from '../../../src/core/screen-records/value-at.ts';
import { firstOrderTrace, PAGES, trialFacts } from '../screen-home/shop.ts';

const SPAN = [-20, 180] as const;
const WHOLE = { fromS: -20, toS: 180, cursorS: 53.6 };
const { trialId } = trialFacts();

describe('window of the chart', () => {
  it('is the whole run at first, the cursor on the crossing', () => {
    expect(wholeWindow([firstOrderTrace(0)])).toEqual({ fromS: -20, toS: 180, cursorS: 53.63 });
    expect(wholeWindow([])).toBeNull();
  });

  it('halves about the cursor, which keeps its place on the screen', () => {
    const near = zoom(WHOLE, 'in', SPAN);
    expect(near.toS - near.fromS).toBeCloseTo(100, 9);
    // The cursor stood at (53.6 + 20) / 200 = 36.8 % of the window.
    expect((near.cursorS - near.fromS) / (near.toS - near.fromS)).toBeCloseTo(0.368, 9);
  });

  it('never leaves the run, nor gets shorter than 2 s', () => {
    let window = WHOLE;
    for (let i = 0; i < 20; i++) window = zoom(window, 'in', SPAN);
    expect(window.toS - window.fromS).toBeCloseTo(2, 9);
    for (let i = 0; i < 20; i++) window = zoom(window, 'out', SPAN);
    expect(window).toEqual(WHOLE);
  });

  it('follows the cursor, which stops at both ends', () => {
    let window = zoom(zoom(WHOLE, 'in', SPAN), 'in', SPAN);
    for (let i = 0; i < 300; i++) window = moveCursor(window, 1, SPAN);
    expect(window.cursorS).toBe(180);
    expect(window.toS).toBeCloseTo(180, 9);
    for (let i = 0; i < 600; i++) window = moveCursor(window, -1, SPAN);
    expect(window.cursorS).toBe(-20);
    expect(window.fromS).toBeCloseTo(-20, 9);
  });
});

describe('value at the cursor', () => {
  it('is the nearest reading, none where it is more than 2 s away', () => {
    const trace = firstOrderTrace(0);
    expect(readingAt(trace, 53.63)?.timeS).toBeCloseTo(53.6, 6);
    expect(readingAt(trace, 183)).toBeNull();
    expect(readingAt({ ...trace, readings: [] }, 0)).toBeNull();
  });

  it('at 53.63 s is 350 °F on the curve of the domain brief', () => {
    const value = valueAt(firstOrderTrace(0), 0, 53.63);
    expect(value).toMatchObject({ kind: 'temperature' });
    expect(value?.kind === 'temperature' && value.temperatureC).toBeCloseTo(176.67, 0);
  });
});

describe('keys in the records', () => {
  it('asks for all trials and opens one', () => {
    expect(PAGES.trial!().intents).toEqual([{ kind: 'load-all' }, { kind: 'load-trial', trialId }]);
  });

  it('sets a run aside only with a reason', () => {
    const page = PAGES.trial!().keys('x', 'enter');
    expect(page.intents.filter(({ kind }) => kind === 'decide-run')).toEqual([]);
    expect(page.type('probe slipped').intents.at(-1)).toEqual({
      kind: 'decide-run',
      trialId,
      run: 0,
      decision: 'set-aside',
      reason: 'probe slipped',
    });
  });

  it('takes in a suspect run, never one that is not suspect', () => {
    const page = PAGES.trial!().keys('t');
    expect(page.text()).toMatch(/Only a suspect run/);
    page.keys('down', 'down', 'down', 't').type('platen was ready');
    expect(page.intents.at(-1)).toMatchObject({ kind: 'decide-run', run: 3, decision: 'taken-in' });
  });

  it('draws the picked runs in one chart', () => {
    const page = PAGES.trial!().keys(' ', 'down', 'down', ' ');
    expect(page.text()).toMatch(/Picked for one chart: runs 1, 3/);
    expect(page.keys('enter').intents.at(-1)).toEqual({ kind: 'load-traces', trialId, runs: [0, 2] });
  });

  it('draws all runs with a, the next one with n', () => {
    expect(PAGES.trial!().keys('a').intents.at(-1)).toEqual({
      kind: 'load-traces',
      trialId,
      runs: [0, 1, 2, 3],
    });
    expect(PAGES.chart!().keys('n').intents.at(-1)).toEqual({ kind: 'load-traces', trialId, runs: [1] });
  });

  it('replays at ×1, ×5, ×20 or ×100', () => {
    for (const [key, speed] of [
      ['1', 1],
      ['2', 5],
      ['3', 20],
      ['4', 100],
    ] as const)
      expect(PAGES.trial!().keys('p', key).intents.at(-1)).toEqual({
        kind: 'replay',
        trialId,
        run: 0,
        speed,
      });
  });

  it('accepts the stricter rule as a recipe, with initials', () => {
    expect(PAGES.trial!().keys('i').type('AB').intents.at(-1)).toEqual({
      kind: 'accept-recipe',
      trialId,
      rule: 'next-run',
      initials: 'AB',
    });
  });

  it('letters typed as a reason are text: q, h and f change nothing else', () => {
    const page = PAGES.trial!().keys('x', 'q', 'h', 'f');
    expect(page.text()).toMatch(/Why\?\s+qhf_/);
    expect(page.state.unit).toBe('F');
    expect(page.state.help).toBeNull();
  });

  it('goes on with the trial through the start page', () => {
    const page = PAGES.trial!().keys('g');
    expect(page.state.goOnWith).toBe(trialId);
    expect(page.intents.some(({ kind }) => kind === 'start-trial')).toBe(false);
    expect(page.keys('enter').intents.at(-1)).toMatchObject({ kind: 'start-trial', goOnWith: trialId });
  });

  it('the cursor moves, its values follow, and x brings it back to the crossing', () => {
    const page = PAGES.chart!().keys('right', 'right');
    // Two sixtieths of 200 s after 53.63 s.
    expect(page.text()).toMatch(/at 60\.3 s from press closed/);
    expect(page.keys('x').text()).toMatch(/at 53\.6 s/);
    expect(page.keys('up', 'up', 'w').text()).toMatch(/ 0 s .* 150 s /);
  });

  it('Esc goes back chart, trial, trials, home', () => {
    const page = PAGES.chart!();
    const kinds = [1, 2, 3].map(() => {
      page.keys('escape');
      return page.state.page.kind === 'records' ? page.state.page.records.view.kind : page.state.page.kind;
    });
    expect(kinds).toEqual(['trial', 'trials', 'home']);
  });
});
