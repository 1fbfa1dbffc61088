import { describe, expect, it } from 'vitest';
import { createReadingAssembler } from '../../../src/core/reading/create-reading-assembler.ts';
import { SHIPPED_SCENARIOS, simulateRecording } from '../../../src/core/simulator/index.ts';
import { createReaderDecoder } from '../../../src/core/wire/create-reader-decoder.ts';

/** The simulator knows what it did; the assembler sees only its lines. */
function assembled(name: string) {
  const shipped = SHIPPED_SCENARIOS.find(({ scenario }) => scenario.name === name);
  if (shipped === undefined) throw new Error(`no scenario ${name}`);
  const { head, entries } = simulateRecording(shipped.scenario);
  const assembler = createReadingAssembler({ decoder: createReaderDecoder() });
  const events = entries.flatMap((entry) => [...assembler.accept(entry)]);
  events.push(...assembler.finish());
  const edges = events.flatMap((event) => (event.kind === 'contact' ? [event] : []));
  return {
    scenario: shipped.scenario,
    truth: head.truth,
    assembler,
    events,
    edges,
    gaps: events.filter((event) => event.kind === 'gap'),
  };
}

describe('reading assembler on the simulated reader', () => {
  it("finds the simulated clock's drift within four standard uncertainties, each below 0.5 ppm", () => {
    for (const name of ['counter-wrapped', 'reader-restarted', 'host-asleep', 'trouble-on-the-wire']) {
      const { assembler, scenario } = assembled(name);
      const { driftPpm, standardUncertaintyPpm } = assembler.clock;
      expect(standardUncertaintyPpm).toBeLessThan(0.5);
      expect(Math.abs((driftPpm as number) - scenario.reader.driftPpm)).toBeLessThan(
        4 * (standardUncertaintyPpm as number),
      );
    }
  });

  it('keeps press closed and opened where they were, to 10 ms, across wrap, restart, sleep and unplug', () => {
    for (const name of [
      'counter-wrapped',
      'reader-restarted',
      'clock-reset',
      'host-asleep',
      'unplugged-away-from-crossing',
    ]) {
      const { edges, truth } = assembled(name);
      expect(edges.map((edge) => edge.closed)).toEqual([true, false]);
      expect(Math.abs((edges[0]?.timeS as number) - (truth?.pressClosedS as number))).toBeLessThan(0.01);
      expect(Math.abs((edges[1]?.timeS as number) - (truth?.openedS as number))).toBeLessThan(0.01);
    }
  });

  it('names each trouble by its cause, and a wrap is none', () => {
    expect(assembled('counter-wrapped').gaps).toEqual([]);
    expect(assembled('reader-restarted').gaps).toMatchObject([{ cause: 'reader-restarted' }]);
    expect(assembled('host-asleep').gaps).toMatchObject([{ cause: 'host-asleep' }]);
    expect(assembled('unplugged-away-from-crossing').gaps).toMatchObject([{ cause: 'unplugged' }]);
    expect(assembled('failure-lines-lost-near-crossing').gaps).toMatchObject([
      { cause: 'lost-samples', lostSamples: 25 },
    ]);
  });
});
