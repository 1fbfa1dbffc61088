import { expect, it } from 'vitest';
import { analyseEntries } from '../../../src/core/session/analyse-entries.ts';
import { analyseTrace } from '../../../src/core/session/analyse-trace.ts';
import { decodeTrace } from '../../../src/core/session/decode-trace.ts';
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
