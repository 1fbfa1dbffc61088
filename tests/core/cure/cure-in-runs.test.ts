import { describe, expect, it } from 'vitest';
import { equivalentTimeS } from '../../../src/core/cure/equivalent-time-s.ts';
import { cureHeadLines, headCure } from '../../../src/core/cure/head-cure.ts';
import { createRunTracker } from '../../../src/core/run/create-run-tracker.ts';
import { runRules } from '../../../src/program/options/run-rules.ts';

/** Invented figures; no adhesive's. */
const cure = { activationEnergyKjPerMol: 80, referenceC: 177, rangeC: { from: 100, to: 220 } };
const bondLineC = (t: number) => (t <= 0 ? 24 : 232.2 - 208.2 * Math.exp(-t / 40.5));

/** Closed by contact at 20 s, opened at 180 s; hot for 100 s more with the press open. */
function run(rules = { ...runRules({}), cure }) {
  const tracker = createRunTracker({ rules, roles: ['bond-line'] });
  const live: number[] = [];
  let result = null;
  for (let step = 0; step <= 2800; step += 1) {
    const timeS = step / 10;
    if (step === 200) tracker.accept({ kind: 'contact', timeS, closed: true });
    if (step === 1800) tracker.accept({ kind: 'contact', timeS, closed: false });
    const temperatureC = timeS > 180 ? 200 : bondLineC(timeS - 20);
    const events = tracker.accept({
      kind: 'reading',
      reading: { timeS, arrivedUs: timeS * 1e6, values: [{ kind: 'temperature', temperatureC }] },
    });
    if (tracker.state.cureEquivalentS !== undefined) live.push(tracker.state.cureEquivalentS);
    for (const event of events) if (event.kind === 'run-finished') result = event.result;
  }
  return { live, result };
}

describe('cure of a run', () => {
  const timesS = Array.from({ length: 1601 }, (_, i) => i / 10);
  const expected = equivalentTimeS(timesS, timesS.map(bondLineC), cure, 0.1).equivalentS;

  it('counts only while the press is closed: from press closed at 20 s to its opening at 180 s', () => {
    const { result } = run();
    expect(Math.abs(result!.cure!.equivalentS - expected)).toBeLessThan(0.2);
  });

  it('grows live and ends where the result does', () => {
    const { live, result } = run();
    for (let i = 1; i < live.length; i += 1) expect(live[i]!).toBeGreaterThanOrEqual(live[i - 1]!);
    expect(Math.abs(live.at(-1)! - result!.cure!.equivalentS)).toBeLessThan(0.5);
  });

  it('is absent without the data sheet’s figures, and changes nothing else of the run', () => {
    const without = run(runRules({}) as ReturnType<typeof runRules> & { cure: typeof cure });
    expect(without.live).toEqual([]);
    expect({ ...run().result, cure: null }).toEqual(without.result);
  });

  it('comes back from the head of a recording', () => {
    expect(headCure({ further: cureHeadLines(cure) })).toEqual(cure);
    expect(headCure({ further: {} })).toBeUndefined();
    expect(() => headCure({ further: { ...cureHeadLines(cure), 'cure-reference-c': 'x' } })).toThrow(
      expect.objectContaining({ code: 'cure-facts-wrong' }),
    );
  });
});
