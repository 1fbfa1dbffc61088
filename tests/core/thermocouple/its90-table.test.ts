import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { emfFromTemperatureUv } from '../../../src/core/thermocouple/emf-from-temperature-uv.ts';
import { ITS90_TABLE } from '../../../src/core/thermocouple/its90-table.ts';
import { temperatureFromEmfC } from '../../../src/core/thermocouple/temperature-from-emf-c.ts';
import type { ThermocoupleType } from '../../../src/core/wire/WireEvent.ts';

// Source: NIST ITS-90 Thermocouple Database SRD 60, table part (tests/reference/its90/SOURCE.md).
// Printed to 0.001 mV: the reference function must agree within half a digit, 0.5 µV (plus float dust).
const HALF_DIGIT_UV = 0.5 + 1e-6;
const TYPES: readonly { type: ThermocoupleType; rows: number }[] = [
  { type: 'K', rows: 1643 },
  { type: 'J', rows: 1411 },
  { type: 'T', rows: 671 },
  { type: 'E', rows: 1271 },
  { type: 'N', rows: 1571 },
  { type: 'R', rows: 1819 },
  { type: 'S', rows: 1819 },
  { type: 'B', rows: 1821 },
];

function tableRows(type: ThermocoupleType): readonly { temperatureC: number; emfUv: number }[] {
  const file = new URL(`../../reference/its90/type-${type.toLowerCase()}.csv`, import.meta.url);
  const lines = readFileSync(file, 'utf8').trim().split('\n').slice(1);
  return lines.map((line) => {
    const [temperature, emfMv] = line.split(',').map(Number);
    return { temperatureC: temperature!, emfUv: emfMv! * 1000 };
  });
}

describe('ITS-90 reference functions against the published tables', () => {
  it('cover 12,026 table rows in all', () => {
    expect(TYPES.reduce((sum, { type }) => sum + tableRows(type).length, 0)).toBe(12_026);
  });

  for (const { type, rows } of TYPES) {
    it(`type ${type}: ${rows} rows within half a printed digit (0.5 µV)`, () => {
      const table = tableRows(type);
      expect(table).toHaveLength(rows);
      let worstUv = 0;
      for (const { temperatureC, emfUv } of table) {
        worstUv = Math.max(worstUv, Math.abs(emfFromTemperatureUv(type, temperatureC) - emfUv));
      }
      expect(worstUv).toBeLessThanOrEqual(HALF_DIGIT_UV);
    });

    it(`type ${type}: there and back closes within 0.001 °C over the whole inverse range, in steps of 0.37 °C`, () => {
      const { inverse } = ITS90_TABLE[type];
      const highestC = inverse.at(-1)!.toC;
      let worstC = 0;
      for (let temperatureC = inverse[0]!.fromC; temperatureC <= highestC; temperatureC += 0.37) {
        const back = temperatureFromEmfC(type, emfFromTemperatureUv(type, temperatureC));
        worstC = Math.max(worstC, Math.abs(back - temperatureC));
      }
      expect(worstC).toBeLessThan(0.001);
      expect(temperatureFromEmfC(type, emfFromTemperatureUv(type, highestC))).toBeCloseTo(highestC, 3);
    });

    it(`type ${type}: an emf read from the table gives the table's temperature within the table's rounding`, () => {
      const fromC = ITS90_TABLE[type].inverse[0]!.fromC;
      for (const row of tableRows(type)) {
        if (row.temperatureC <= fromC || row.temperatureC >= ITS90_TABLE[type].inverse.at(-1)!.toC) continue;
        const slopeUvPerC =
          (emfFromTemperatureUv(type, row.temperatureC + 0.05) -
            emfFromTemperatureUv(type, row.temperatureC - 0.05)) /
          0.1;
        const allowedC = (0.5 / slopeUvPerC) * 1.02 + 0.001;
        expect(Math.abs(temperatureFromEmfC(type, row.emfUv) - row.temperatureC)).toBeLessThan(allowedC);
      }
    });
  }
});
