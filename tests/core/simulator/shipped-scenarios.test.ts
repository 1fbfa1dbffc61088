import { describe, expect, it } from 'vitest';
import { SHIPPED_SCENARIOS } from '../../../src/core/simulator/shipped-scenarios.ts';
import { simulateRun } from '../../../src/core/simulator/simulate-run.ts';

const good = SHIPPED_SCENARIOS.filter(({ fileName }) => /-run-\d\.dwell\.txt$/.test(fileName));

function soaks(part: string): readonly number[] {
  return good
    .filter(({ fileName }) => fileName.startsWith(part))
    .map(({ scenario }) => {
      const [closing] = simulateRun({ ...scenario, endS: 80 }).closings;
      return closing!.bondLineCrossingS! - closing!.pressClosedS;
    });
}

describe('SHIPPED_SCENARIOS', () => {
  it('has names and seeds of their own', () => {
    expect(new Set(SHIPPED_SCENARIOS.map(({ fileName }) => fileName)).size).toBe(SHIPPED_SCENARIOS.length);
    expect(new Set(SHIPPED_SCENARIOS.map(({ scenario }) => scenario.seed)).size).toBe(
      SHIPPED_SCENARIOS.length,
    );
  });

  it('has five good runs each of two assemblies on two presses, with a spread of 0.2 to 1 s', () => {
    for (const part of ['wb-212-north', 'wb-212-south', 'wb-150-north', 'wb-150-south']) {
      const values = soaks(part);
      expect(values).toHaveLength(5);
      const mean = values.reduce((a, b) => a + b) / 5;
      const sd = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 4);
      expect(sd).toBeGreaterThan(0.2);
      expect(sd).toBeLessThan(1);
    }
  });

  it('has a recording for each of the 15 failures of the trade’s list', () => {
    const failures = SHIPPED_SCENARIOS.map(({ scenario }) => scenario.failure).join('\n');
    for (const failure of [
      /tip not at the bond line/,
      /taped over/,
      /touches a platen/,
      /wire broken/,
      /loose plug/,
      /plug reversed/,
      /wrong thermocouple type/,
      /lead crushed/,
      /extension lead reversed/,
      /grounded junction/,
      /interference/,
      /carrier still warm/,
      /ram low/,
      /platen not recovered/,
      /taper/,
      /opened early/,
      /marked late/,
      /unplugged/,
      /rebooted/,
      /clock reset/,
      /wrapped/,
    ]) {
      expect(failures).toMatch(failure);
    }
  });

  it('names a reason for every recording that is not good', () => {
    for (const { expected } of SHIPPED_SCENARIOS) {
      if (expected.verdict !== 'good') expect(expected.reasonCodes.length).toBeGreaterThan(0);
    }
  });
});
