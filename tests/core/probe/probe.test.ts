import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { boilingPointC, saturationTemperatureK } from '../../../src/core/probe/boiling-point-c.ts';
import { checkProbe } from '../../../src/core/probe/check-probe.ts';
import type { CalibrationPoint, Probe, ProbeToleranceClass } from '../../../src/core/probe/Probe.ts';
import { probeCorrection } from '../../../src/core/probe/probe-correction.ts';
import { probeErrorAt } from '../../../src/core/probe/probe-error-at.ts';
import { probeUncertaintyC } from '../../../src/core/probe/probe-uncertainty-c.ts';
import { toleranceLimitC } from '../../../src/core/probe/tolerance-limit-c.ts';

const TARGET_C = (350 - 32) / 1.8;
const point = (temperatureC: number, errorC: number, standardUncertaintyC = 0.25): CalibrationPoint => ({
  temperatureC,
  errorC,
  standardUncertaintyC,
  calibratedOn: '2026-03-01',
});
const probe = (
  points: readonly CalibrationPoint[],
  toleranceClass: ProbeToleranceClass | null = 'iec-class-2',
): Probe =>
  checkProbe({
    name: 'K-07',
    thermocoupleType: 'K',
    toleranceClass,
    points,
    readerIncluded: false,
    headC: null,
    readerC: null,
  });

describe('boiling point of water', () => {
  // IAPWS R7-97(2012), Table 36: saturation temperature by equation 31, digits as printed.
  it.each([
    [0.1, 372.755919],
    [1, 453.035632],
    [10, 584.149488],
  ])('at %f MPa is %f K (IAPWS-IF97, Table 36, from memory) to 1e-6 K', (pressureMpa, expectedK) => {
    expect(Math.abs(saturationTemperatureK(pressureMpa) - expectedK)).toBeLessThan(5.1e-7);
  });

  it('is 99.97 °C at the standard atmosphere (from memory) and 95 °C at 84.608 kPa (steam tables, from memory)', () => {
    expect(boilingPointC(101.325)).toBeCloseTo(99.974, 3);
    expect(Math.abs(boilingPointC(84.608) - 95)).toBeLessThan(0.03);
  });

  it.each([39, 116, Number.NaN, 1013])('refuses an air pressure of %f kPa', (kpa) => {
    expect(() => boilingPointC(kpa)).toThrow(expect.objectContaining({ code: 'pressure-out-of-range' }));
  });
});

interface Facts {
  readonly abs_c?: number | null;
  readonly fraction: number;
  readonly rule?: string;
  readonly range_c: readonly [number, number];
}
type AstmEntry = { readonly range_c: readonly [number, number] } & Readonly<
  Record<'standard' | 'special', Facts>
>;
type IecEntry = Readonly<Record<string, Facts | null>>;

describe('tolerance limit', () => {
  const published = JSON.parse(
    readFileSync(new URL('../../reference/probe/tolerances.json', import.meta.url), 'utf8'),
  );
  const rows: [string, string, number, number][] = [];
  const classes: Record<string, [string, string]> = {
    'astm-standard': ['astm', 'standard'],
    'astm-special': ['astm', 'special'],
    'iec-class-1': ['iec', 'class1'],
    'iec-class-2': ['iec', 'class2'],
    'iec-class-3': ['iec', 'class3'],
  };
  for (const [ours, [standard, name]] of Object.entries(classes))
    for (const type of Object.keys(published[standard])) {
      const astm: AstmEntry = published.astm[type];
      const iec: IecEntry = published.iec[type];
      const facts = standard === 'astm' ? { ...astm[name as 'standard'], range_c: astm.range_c } : iec[name];
      if (facts == null || facts.rule !== undefined) continue;
      const [from, to] = facts.range_c;
      for (const at of [from, (from + to) / 2, to])
        rows.push([ours, type, at, Math.max(facts.abs_c ?? 0, facts.fraction * Math.abs(at))]);
    }

  it(`meets the ${rows.length} published limits (ASTM E230, IEC 60584-1: ends and middle of each range)`, () => {
    expect(rows.length).toBeGreaterThan(80);
    for (const [name, type, at, expected] of rows)
      expect([name, type, at, toleranceLimitC(type as 'K', name as ProbeToleranceClass, at)]).toEqual([
        name,
        type,
        at,
        expect.closeTo(expected, 9),
      ]);
  });

  it('refuses class 3 at 177 °C and a class the type does not have', () => {
    expect(() => toleranceLimitC('K', 'iec-class-3', TARGET_C)).toThrow(
      expect.objectContaining({ code: 'no-tolerance-here' }),
    );
    expect(() => toleranceLimitC('B', 'iec-class-1', 800)).toThrow(
      expect.objectContaining({ code: 'no-tolerance-here' }),
    );
  });
});

describe('calibration of a probe', () => {
  it('is a straight line between points: −0.2 at 100, −0.6 at 200 gives −0.5 at 175 °C', () => {
    const found = probeErrorAt(probe([point(200, -0.6, 0.3), point(100, -0.2)]), 175)!;
    expect(found.errorC).toBeCloseTo(-0.5, 12);
    expect(found).toMatchObject({ kind: 'bracketed', standardUncertaintyC: 0.3, distanceC: 25 });
  });

  it('takes the error off the reading: a probe that reads 0.6 °C low at 177 °C', () => {
    const correct = probeCorrection(probe([point(177, -0.6)]))!;
    expect(correct(176.4)).toBeCloseTo(177, 12);
  });

  it('puts back the truth to 0.0001 °C for every temperature between points 0, 100 and 200 °C', () => {
    const errors = probe([point(0, 0.1), point(100, -0.8), point(200, 1.5)]);
    const correct = probeCorrection(errors)!;
    for (let trueC = 0; trueC <= 200; trueC += 7)
      expect(Math.abs(correct(trueC + probeErrorAt(errors, trueC)!.errorC) - trueC)).toBeLessThan(1e-4);
  });

  it('gives no correction to a probe that has a tolerance only', () => {
    expect(probeCorrection(probe([]))).toBeNull();
  });

  it('ice and boiling water do not bracket 177 °C: extrapolated, uncertainty grows with the distance', () => {
    const iceAndBoiling = probe([point(0, 0.1, 0.1), point(boilingPointC(98.5), 0.2, 0.1)]);
    const at = (temperatureC: number) => probeErrorAt(iceAndBoiling, temperatureC)!;
    expect(at(50).kind).toBe('bracketed');
    expect(at(TARGET_C)).toMatchObject({ kind: 'extrapolated', errorC: 0.2 });
    // 77.5 °C beyond 99.2 °C, 0.75 % ÷ √3 of it beside 0.1 °C.
    expect(at(TARGET_C).standardUncertaintyC).toBeCloseTo(
      Math.hypot(0.1, (0.0075 * (TARGET_C - boilingPointC(98.5))) / Math.sqrt(3)),
      12,
    );
    expect(at(220).standardUncertaintyC).toBeGreaterThan(at(TARGET_C).standardUncertaintyC);
    expect(probeUncertaintyC(iceAndBoiling, TARGET_C)).toMatchObject({
      from: 'extrapolated-calibration',
      rectangular: false,
    });
  });

  it('without points is a limit ±2.5 °C (IEC class 2) or ±2.2 °C (ASTM standard): standard 1.443 and 1.270 °C', () => {
    expect(probeUncertaintyC(probe([]), TARGET_C)).toMatchObject({
      rectangular: true,
      limitC: 2.5,
      from: 'tolerance',
    });
    expect(probeUncertaintyC(probe([]), TARGET_C).standardUncertaintyC).toBeCloseTo(1.4434, 4);
    expect(probeUncertaintyC(probe([], 'astm-standard'), TARGET_C).standardUncertaintyC).toBeCloseTo(1.27, 2);
  });

  it('of unknown class is taken for the widest, and says so', () => {
    expect(probeUncertaintyC(probe([], null), TARGET_C)).toMatchObject({
      classAssumed: true,
      toleranceClass: 'iec-class-2',
    });
  });

  it.each([
    ['two points at one temperature', [point(177, 0), point(177.2, 1)]],
    ['an error of 40 °C', [point(177, 40)]],
    ['no uncertainty', [point(177, 0, 0)]],
    ['a figure that is no number', [point(Number.NaN, 0)]],
  ])('refuses %s', (_, points) => {
    expect(() => probe(points)).toThrow(expect.objectContaining({ code: 'point-wrong' }));
  });
});
