import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runProgram, temporaryFolder } from './run-program.ts';

const folder = join(import.meta.dirname, '..', '..', 'recordings');
const RUNS = [1, 2].map((run) => join(folder, `wb-212-north-run-${run}.dwell.txt`));

function store(): Record<string, string> {
  return { DWELLWRIGHT_STORE: join(temporaryFolder(), 'store.db') };
}

describe('probes', () => {
  it('keeps type, class, points and every version; boiling water needs the air pressure', () => {
    const where = store();
    const added = runProgram(
      [
        'probes',
        'K-07',
        '--type',
        'K',
        '--class',
        'IEC 2',
        '--point',
        '177C:-0.6C:0.5C:2026-03-01',
        '--json',
      ],
      where,
    );
    expect(added.err).toBe('');
    expect(JSON.parse(added.out).probes[0]).toMatchObject({
      name: 'K-07',
      thermocoupleType: 'K',
      toleranceClass: 'iec-class-2',
      points: [{ temperatureC: 177, errorC: -0.6, standardUncertaintyC: 0.25, calibratedOn: '2026-03-01' }],
      atTarget: { from: 'calibration', correctionC: 0.6 },
    });
    const refused = runProgram(['probes', 'K-07', '--point', 'boiling:0.1C:0.2C'], where);
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('--air-pressure');
    const again = runProgram(
      [
        'probes',
        'K-07',
        '--point',
        'ice:0C:0.2C',
        '--point',
        'boiling:0.1C:0.2C',
        '--air-pressure',
        '1013.25mbar',
      ],
      where,
    );
    expect(again.out).toContain('EXTRAPOLATED');
    const { history } = JSON.parse(runProgram(['probes', 'K-07', '--history', '--json'], where).out);
    expect(history).toHaveLength(2);
    // Boiling point at the standard atmosphere: 99.97 °C (IAPWS-IF97).
    expect(history[0].probe.points[1].temperatureC).toBeCloseTo(99.97, 2);
    expect(history[1].probe.points[0].errorC).toBe(-0.6);
  });

  it('refuses a class that is none, a day that is none and a new probe without a type', () => {
    for (const args of [
      ['K', '--type', 'K', '--class', 'IEC 9'],
      ['K', '--type', 'K', '--point', '177C:0C:1C:2026-02-30'],
      ['K', '--class', 'IEC 2'],
    ])
      expect(runProgram(['probes', ...args], store()).code).toBe(2);
  });
});

describe('replay with a probe', () => {
  it('a probe that reads 0.6 °C low makes raw soak times 0.6 °C ÷ slope too long, and takes its tolerance out of the budget', () => {
    const where = store();
    runProgram(['probes', 'K-07', '--type', 'K', '--point', '177C:-0.6C:0.5C'], where);
    const raw = JSON.parse(runProgram(['replay', ...RUNS, '--json'], where).out);
    const corrected = JSON.parse(runProgram(['replay', ...RUNS, '--probes', 'K-07', '--json'], where).out);
    for (const [at, run] of raw.runs.entries()) {
      const shift = run.soakTimeS - corrected.runs[at].soakTimeS;
      expect(Math.abs(shift - 0.6 / run.slopeAtCrossingCPerS)).toBeLessThan(0.05);
    }
    const part = (
      json: { uncertainty: { parts: { part: string; standardUncertaintyS: number }[] } },
      code: string,
    ) => json.uncertainty.parts.find((one) => one.part === code)?.standardUncertaintyS;
    // ±2.2 °C ÷ √3 at about 1.39 °C/s; calibrated: 0.25 °C.
    expect(part(raw, 'thermocouple-tolerance')).toBeCloseTo(2.2 / Math.sqrt(3) / 1.395, 1);
    expect(part(corrected, 'calibration')).toBeCloseTo(0.25 / 1.395, 2);
    expect(part(corrected, 'thermocouple-tolerance')).toBeUndefined();
  });

  it('a recording whose head holds the probe replays the same without any store', () => {
    const where = store();
    runProgram(['probes', 'K-07', '--type', 'K', '--point', '177C:-0.6C:0.5C'], where);
    const [first] = RUNS;
    const record = JSON.stringify({
      name: 'K-07',
      thermocoupleType: 'K',
      toleranceClass: null,
      points: [{ temperatureC: 177, errorC: -0.6, standardUncertaintyC: 0.25, calibratedOn: null }],
      readerIncluded: false,
      headC: null,
      readerC: null,
    });
    const text = readFileSync(first as string, 'latin1');
    const file = join(temporaryFolder(), 'with-probe.dwell.txt');
    writeFileSync(
      file,
      text.replace('\nbegin\n', `\nprobe-1: K-07\nprobe-1-record: ${record}\nbegin\n`),
      'latin1',
    );
    const byHead = JSON.parse(runProgram(['replay', file, '--json'], store()).out);
    const byOption = JSON.parse(
      runProgram(['replay', first as string, '--probes', 'K-07', '--json'], where).out,
    );
    expect(byHead.runs[0].soakTimeS).toBe(byOption.runs[0].soakTimeS);
    const none = JSON.parse(runProgram(['replay', file, '--probes', '-', '--json'], store()).out);
    expect(none.runs[0].soakTimeS).toBeGreaterThan(byHead.runs[0].soakTimeS + 0.3);
  });

  it('adds each stated part once, refuses one it does not know', () => {
    const json = JSON.parse(
      runProgram(
        ['replay', ...RUNS, '--part', 'cold-junction:1C', '--part', 'probe-lag:0.5s', '--json'],
        store(),
      ).out,
    );
    const codes = json.uncertainty.parts.map((one: { part: string }) => one.part);
    expect(codes.filter((code: string) => code === 'cold-junction')).toHaveLength(1);
    expect(codes).toContain('probe-lag');
    expect(runProgram(['replay', ...RUNS, '--part', 'luck:1C'], store()).code).toBe(2);
  });
});

describe('cure in results', () => {
  const CURE = ['--activation-energy', '80kJ/mol', '--cure-reference', '177C', '--cure-range', '120C/230C'];

  it('is given only where the data sheet’s three figures are, and changes no dwell', () => {
    const without = JSON.parse(runProgram(['replay', ...RUNS, '--json'], store()).out);
    const withCure = JSON.parse(runProgram(['replay', ...RUNS, ...CURE, '--json'], store()).out);
    expect(without.runs[0].cureEquivalentS).toBeNull();
    expect(withCure.runs[0].cureEquivalentS).toBeGreaterThan(120);
    expect(withCure.dwell).toEqual(without.dwell);
    expect(runProgram(['replay', ...RUNS, ...CURE.slice(0, 2)], store()).code).toBe(2);
  });

  it('stays with the assembly', () => {
    const where = store();
    runProgram(['assemblies', 'WB-212', ...CURE], where);
    const { assemblies } = JSON.parse(runProgram(['assemblies', '--json'], where).out);
    expect(assemblies[0].cure).toEqual({
      activationEnergyKjPerMol: 80,
      referenceC: 177,
      rangeC: { from: 120, to: 230 },
    });
  });
});

describe('what-if', () => {
  it('estimates, with an interval and no recipe, and leaves the store without one', () => {
    const where = store();
    const ended = runProgram(
      ['what-if', ...RUNS, '--target', '360F', '--platens', '440F', '--start', '90F', '--json'],
      where,
    );
    expect(ended.err).toBe('');
    const { estimate, recipe } = JSON.parse(ended.out);
    expect(recipe).toBeNull();
    expect(estimate.intervalS[0]).toBeLessThan(estimate.soakS);
    expect(JSON.parse(runProgram(['recipes', '--json'], where).out).recipes).toEqual([]);
  });

  it('is refused by name, exit code 1, where the target is so close to the platens that the probe leaves more than a tenth of the hold open', () => {
    const ended = runProgram(['what-if', ...RUNS, '--target', '440F'], store());
    expect(ended.code).toBe(1);
    expect(ended.err).toContain('the probe alone leaves');
  });

  it('refuses when nothing is changed', () => {
    expect(runProgram(['what-if', ...RUNS], store()).code).toBe(2);
  });
});
