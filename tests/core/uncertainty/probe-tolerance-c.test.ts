import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { defaultCommonParts } from '../../../src/core/uncertainty/default-common-parts.ts';
import {
  type BaseMetalType,
  probeToleranceC,
  type ToleranceClass,
} from '../../../src/core/uncertainty/probe-tolerance-c.ts';
import { soakTimeBudget } from '../../../src/core/uncertainty/soak-time-budget.ts';
import { trialRun } from '../trial/trial-run.ts';

const published = JSON.parse(
  readFileSync(new URL('../../reference/statistics/thermocouple-tolerances.json', import.meta.url), 'utf8'),
);

describe('tolerance of a new probe', () => {
  const classes: readonly [ToleranceClass, string, string][] = [
    ['astm-standard', 'tolerances_astm_e230', 'standard'],
    ['astm-special', 'tolerances_astm_e230', 'special'],
    ['iec-class-1', 'tolerances_iec_60584_1', 'class1'],
    ['iec-class-2', 'tolerances_iec_60584_1', 'class2'],
  ];
  for (const [toleranceClass, standard, column] of classes) {
    it.each<BaseMetalType>(['K', 'J', 'T', 'E', 'N'])(
      `${toleranceClass}, type %s as published, over its range`,
      (type) => {
        const entry = published[standard].types[type];
        const row = entry[column];
        const [fromC, toC] = row.range_c ?? entry.range_c;
        for (const temperatureC of [fromC, 0, 100, 177, 300, toC]) {
          const expected = Math.max(row.abs_c, row.fraction * Math.abs(temperatureC));
          expect(probeToleranceC(type, toleranceClass, temperatureC)).toBeCloseTo(expected, 12);
        }
        expect(() => probeToleranceC(type, toleranceClass, toC + 1)).toThrow(
          expect.objectContaining({ code: 'option-out-of-range' }),
        );
        expect(() => probeToleranceC(type, toleranceClass, fromC - 1)).toThrow(
          expect.objectContaining({ code: 'option-out-of-range' }),
        );
      },
    );
  }

  it('by default a trial at 350 °F carries ±2.2 °C: 0.93 s at 1.37 °C/s, 1.5 s expanded, 0.5 s once calibrated', () => {
    const [line] = soakTimeBudget(
      [53, 53.5, 54].map((soak) => trialRun(soak)),
      defaultCommonParts(176.67),
    ).lines;
    expect(line?.code).toBe('thermocouple-tolerance');
    expect(line?.standardUncertaintyS).toBeCloseTo(0.93, 2);
    expect(line?.expandedS).toBeCloseTo(1.5, 1);
    expect(line?.remedy?.expandedThenS).toBeCloseTo(0.5, 1);
  });
});
