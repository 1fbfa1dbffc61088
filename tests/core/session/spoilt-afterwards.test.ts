import { describe, expect, it } from 'vitest';
import type { OperatorMark } from '../../../src/core/reading/StreamEvent.ts';
import type { RecordingEntry } from '../../../src/core/recording/RecordingEntry.ts';
import { createSession } from '../../../src/core/session/create-session.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';
import { runRules } from '../../../src/program/options/run-rules.ts';

const markAt = (timeS: number, mark: OperatorMark): RecordingEntry => ({
  kind: 'mark',
  arrivedUs: Math.round(timeS * 1e6),
  by: 'key',
  mark,
});

/** The trade's example: 24 °C, platens 232 °C, time constant 40.5 s; closed at 20 s, opened at 210 s, then cooling. */
function throughTheRun() {
  const session = createSession({
    decoder: createReaderDecoder({ statedUnit: 'C' }),
    roles: ['bond-line'],
    rules: runRules({}),
  });
  const finished: string[] = [];
  const take = (entry: RecordingEntry) => {
    for (const event of session.accept(entry))
      if (event.kind === 'run-finished') finished.push(event.result.verdict);
  };
  for (let step = 0; step <= 2600; step++) {
    const timeS = step / 10;
    const heatedS = Math.min(timeS, 210) - 20;
    const hotC = heatedS <= 0 ? 24 : 232 - 208 * Math.exp(-heatedS / 40.5);
    const valueC = timeS <= 210 ? hotC : 24 + (hotC - 24) * Math.exp(-(timeS - 210) / 60);
    if (step === 200) take(markAt(20, { kind: 'press-closed' }));
    if (step === 2100) take(markAt(210, { kind: 'opened' }));
    take({ kind: 'line', arrivedUs: step * 100_000, text: valueC.toFixed(2), wholeness: 'whole' });
  }
  return { session, finished, take };
}

describe('a run marked as spoilt after it has finished', () => {
  it('becomes unusable, with the reason first, and keeps its soak time of 53.5 s', () => {
    const { session, finished, take } = throughTheRun();
    expect(finished).toEqual(['good']);
    take(markAt(265, { kind: 'spoilt', reason: 'ring slipped' }));
    expect(finished).toEqual(['good', 'unusable']);
    expect(session.state.results).toHaveLength(1);
    const [result] = session.state.results;
    expect(result?.verdict).toBe('unusable');
    expect(result?.reasons[0]).toEqual({
      code: 'spoilt',
      severity: 'unusable',
      facts: { why: 'ring slipped' },
    });
    // tau * ln(208 / (232 - 176.667)) = 53.6 s
    expect(Math.abs((result?.soakTimeS ?? 0) - 40.5 * Math.log(208 / (232 - 176.667)))).toBeLessThan(0.3);
  });

  it('is as before once the mark is taken back', () => {
    const { session, take } = throughTheRun();
    const before = session.state.results[0];
    take(markAt(265, { kind: 'spoilt', reason: 'ring slipped' }));
    take(markAt(266, { kind: 'undo', what: 'spoilt' }));
    expect(session.state.results).toEqual([before]);
  });

  it('other marks after the run change nothing, nor does spoilt before any run', () => {
    const { session, finished, take } = throughTheRun();
    take(markAt(265, { kind: 'note', text: 'ring slipped' }));
    take(markAt(266, { kind: 'undo', what: 'opened' }));
    expect(finished).toEqual(['good']);
    expect(session.state.results[0]?.verdict).toBe('good');
    const fresh = createSession({
      decoder: createReaderDecoder({ statedUnit: 'C' }),
      roles: ['bond-line'],
      rules: runRules({}),
    });
    expect(fresh.accept(markAt(1, { kind: 'spoilt', reason: 'x' }))).toEqual([]);
  });
});
