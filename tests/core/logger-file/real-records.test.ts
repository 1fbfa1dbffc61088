import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { problemOf, readFile } from './read-file.ts';

// Records of other people's experiments, see tests/reference/traces/README.md for source and licence.
// Facts below were counted in the files with awk, apart from this code; K to °C is −273.15 by definition.
const record = (name: string): Uint8Array =>
  readFileSync(fileURLToPath(new URL(`../../reference/traces/${name}`, import.meta.url)));

describe('heater-step.csv: row number, Time, Q1, T1, T2, no unit in the file', () => {
  const file = record('heater-step.csv');

  it('reads 1002 rows of T1 from 0 s to 999.02 s, 21.54 °C to 55.38 °C', () => {
    const { samples, values, timesS, troubles, layout } = readFile(file, {
      temperatureColumns: ['T1'],
      unit: 'C',
    });
    expect(samples).toHaveLength(1002);
    expect(timesS.at(0)).toBe(0);
    expect(timesS.at(-1)).toBe(999.02);
    expect(values.at(0)).toBe(21.54);
    expect(values.at(-1)).toBe(55.38);
    expect(troubles).toEqual([]);
    expect(layout.recognised).toContain('column 2 "Time" in seconds');
  });

  it('reads T2 by its number 5 and as °F: 22.51 °F is −5.272222 °C', () => {
    expect(readFile(file, { temperatureColumns: ['5'], unit: 'F' }).values[0]).toBe(-5.272222);
  });

  it('first reads 50 °C or more on T1 at 305.33 s', () => {
    const { values, timesS } = readFile(file, { temperatureColumns: ['T1'], unit: 'C' });
    expect(timesS[values.findIndex((value) => Number(value) >= 50)]).toBe(305.33);
  });

  it('without options asks for the column and the unit in one go', () => {
    const problem = problemOf(file);
    expect(problem.code).toBe('logger-file-temperature-unknown');
    expect(problem.remedy).toBe(
      'add --temperature-column T1 or --temperature-column T2, together with --unit C (or F, K)',
    );
  });
});

describe('radiant-heating.csv: seconds and kelvin under the headings, a junction that came off', () => {
  const file = record('radiant-heating.csv');

  it('reads 751 rows of T_back_1 from 294.7 K = 21.55 °C, missing once the junction came off', () => {
    const { samples, values, timesS, layout } = readFile(file, { temperatureColumns: ['T_back_1'] });
    expect(samples).toHaveLength(751);
    expect(timesS.at(-1)).toBe(750);
    expect(values[0]).toBe(21.55);
    expect(values.filter((value) => value === 'missing')).toHaveLength(485);
    expect(values.at(-1)).toBe('missing');
    expect(layout.recognised).toContain('in seconds from the heading');
    expect(layout.recognised).toContain('kelvin from the file');
  });

  it('reads T_back_2 to the end, 573.5 K = 300.35 °C', () => {
    expect(readFile(file, { temperatureColumns: ['T_back_2'] }).values.at(-1)).toBe(300.35);
  });

  it('without options lists both columns; the unit is in the file', () => {
    expect(problemOf(file).remedy).toBe('add --temperature-column T_back_1 or --temperature-column T_back_2');
  });
});
