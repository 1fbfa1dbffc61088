import { describe, expect, it } from 'vitest';
import type { StreamEvent } from '../../../src/core/reading/StreamEvent.ts';
import { closedKey, EXAMPLE, makeReadings, openedKey, trueSoak, withEvents } from './make-heating.ts';
import { track } from './track.ts';

const undo = (timeS: number): StreamEvent => ({
  kind: 'mark',
  timeS,
  mark: { kind: 'undo', what: 'press-closed' },
});
const closedAgo = (timeS: number, agoS: number): StreamEvent => ({
  kind: 'mark',
  timeS,
  mark: { kind: 'press-closed', agoS },
});
const delayed = { ...EXAMPLE, delayS: 2 };
const run = (...marks: StreamEvent[]) =>
  track(withEvents(makeReadings({ heating: delayed, openedS: 210, endS: 240 }), closedKey(20), ...marks))
    .results;

describe('press closed taken back', () => {
  it('107 s later leaves a run timed from the onset that is suspect and says so, never good', () => {
    const [result, ...others] = run(undo(127), openedKey(210));
    expect(others).toEqual([]);
    expect(result).toMatchObject({ verdict: 'suspect', pressClosed: { by: 'onset' } });
    expect(result?.reasons[0]).toMatchObject({
      code: 'from-onset',
      severity: 'suspect',
      facts: { takenBack: 'yes' },
    });
  });

  it('and put back at its own moment gives the whole soak time again, good', () => {
    const [result, ...others] = run(undo(127), closedAgo(131, 111), openedKey(210));
    expect(others).toEqual([]);
    expect(result).toMatchObject({ verdict: 'good', pressClosed: { by: 'key', timeS: 20 } });
    // Closed form of the heating curve: d + τ·ln((Tp − T0)/(Tp − target)).
    expect(result?.soakTimeS).toBeCloseTo(trueSoak(delayed, 176.67), 0);
  });

  it('and marked anew after the crossing begins another run: none of the two is good, none has a negative soak time', () => {
    const results = run(undo(127), closedKey(137), openedKey(210));
    expect(results.map(({ verdict }) => verdict)).toEqual(['suspect', 'unusable']);
    expect(results[1]).toMatchObject({ soakTimeS: null, soakTimeStandardUncertaintyS: null });
    expect(results[1]?.reasons[0]?.code).toBe('started-above-target');
  });

  it('before anything rose leaves no trace: the next mark counts', () => {
    const results = track(
      withEvents(
        makeReadings({ heating: delayed, openedS: 210, endS: 240 }),
        closedKey(10),
        undo(12),
        closedKey(20),
        openedKey(210),
      ),
    ).results;
    expect(results).toHaveLength(1);
    expect(results[0]).toMatchObject({ verdict: 'good', pressClosed: { timeS: 20 } });
  });
});

describe('ready check not passed', () => {
  const noted = (text: string) =>
    run({ kind: 'mark', timeS: 21, mark: { kind: 'note', text } }, openedKey(210))[0];

  it('makes a run suspect where a probe was at fault as the press closed', () => {
    const result = noted('Ready check not passed, probe fault: Probes: bond line: open circuit.');
    expect(result).toMatchObject({
      verdict: 'suspect',
      reasons: [{ code: 'ready-check-not-passed', severity: 'suspect' }],
    });
  });

  it('is a note of a good run for anything else', () => {
    const result = noted('Ready check not passed: Platens: upper platen 430 °F.');
    expect(result).toMatchObject({
      verdict: 'good',
      reasons: [{ code: 'ready-check-not-passed', severity: 'note' }],
    });
  });
});
