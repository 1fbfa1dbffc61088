import { expect, it } from 'vitest';
import { analyseEntries } from '../../../src/core/session/analyse-entries.ts';
import { analyseTrace } from '../../../src/core/session/analyse-trace.ts';
import { decodeTrace } from '../../../src/core/session/decode-trace.ts';
import { traceFromBytes, traceToBytes } from '../../../src/core/session/trace-bytes.ts';
import { SHIPPED_SCENARIOS } from '../../../src/core/simulator/shipped-scenarios.ts';
import { simulateRecording } from '../../../src/core/simulator/simulate-recording.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';
import { runRules } from '../../../src/program/options/run-rules.ts';

// The replay of the lines is the reference here; that it is right is shown against the simulator's truth elsewhere.
it.each(SHIPPED_SCENARIOS.map(({ fileName, scenario }) => [fileName, scenario] as const))(
  '%s: decoded once and analysed gives the same as its replay to the last digit',
  (_, scenario) => {
    const { head, entries } = simulateRecording(scenario);
    const rules = runRules({}, head);
    const replayed = analyseEntries(entries, { decoder: createReaderDecoder(), roles: head.roles, rules });
    const trace = decodeTrace(entries, createReaderDecoder());
    expect(analyseTrace(trace, { roles: head.roles, rules })).toEqual(replayed.results);
    const other = runRules({ target: '300F' }, head);
    expect(analyseTrace(trace, { roles: head.roles, rules: other })).toEqual(
      analyseEntries(entries, { decoder: createReaderDecoder(), roles: head.roles, rules: other }).results,
    );
  },
);

it('a trace is the same after a way through bytes, and other bytes are none', () => {
  const { entries } = simulateRecording(SHIPPED_SCENARIOS[20]!.scenario);
  const trace = decodeTrace(entries, createReaderDecoder());
  const bytes = traceToBytes(trace);
  expect(traceFromBytes(bytes)).toEqual(trace);
  // As a database gives it: a part of a larger buffer, not on a boundary of 8.
  const larger = new Uint8Array(bytes.length + 3);
  larger.set(bytes, 3);
  expect(traceFromBytes(larger.subarray(3))).toEqual(trace);
  expect(traceFromBytes(bytes.subarray(0, bytes.length - 1))).toBeNull();
  expect(traceFromBytes(new Uint8Array(3))).toBeNull();
});
