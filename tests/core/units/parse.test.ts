import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDuration } from '../../../src/core/units/parse-duration.ts';
import { parseLength } from '../../../src/core/units/parse-length.ts';
import { parsePressure } from '../../../src/core/units/parse-pressure.ts';
import { parseTemperature } from '../../../src/core/units/parse-temperature.ts';
import { parseTemperatureDifference } from '../../../src/core/units/parse-temperature-difference.ts';
import { UnitError } from '../../../src/core/units/UnitError.ts';

function refusal(parse: () => number): UnitError {
  try {
    parse();
  } catch (error) {
    if (error instanceof UnitError) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('temperature', () => {
  // NIST SP 811, B.8 and appendix examples: 32 °F = 0 °C, 212 °F = 100 °C, 451 °F = 232.78 °C, −40 = −40.
  it.each([
    ['32F', 0],
    ['212 °F', 100],
    ['-40F', -40],
    ['−40 °F', -40],
    ['451F', 232.7777777777778],
    ['350F', 176.66666666666666],
    ['350 deg F', 176.66666666666666],
    ['176.7C', 176.7],
    ['176,7 °C', 176.7],
    ['0,125C', 0.125],
    ['450K', 176.85],
    ['0K', -273.15],
    ['+20.5 celsius', 20.5],
  ])('%s is %s °C', (text, temperatureC) => {
    expect(parseTemperature(text, '--target')).toBeCloseTo(temperatureC, 10);
  });

  it.each([
    ['350', 'unit-missing'],
    ['', 'number-unreadable'],
    ['F', 'number-unreadable'],
    ['350X', 'unit-unknown'],
    ['350 toString', 'unit-unknown'],
    ['1,250C', 'number-unreadable'],
    ['1.250,5C', 'number-unreadable'],
    ['3.5.0F', 'number-unreadable'],
    ['NaN C', 'number-unreadable'],
    ['1e3C', 'unit-unknown'],
    ['-300C', 'value-out-of-range'],
    ['-1K', 'value-out-of-range'],
  ])('"%s" is refused as %s, naming the option and what to do', (text, code) => {
    const error = refusal(() => parseTemperature(text, '--target'));
    expect(error.code).toBe(code);
    expect(error.message).toContain('--target');
    expect(error.remedy).toMatch(/\S/u);
    expect(error.option).toBe('--target');
  });

  it('says both readings of an ambiguous comma', () => {
    expect(refusal(() => parseTemperature('1,250F', '--target')).remedy).toBe('Write 1250 or 1.250');
  });
});

describe('temperature difference', () => {
  it.each([
    ['9F', 5],
    ['5C', 5],
    ['5K', 5],
    ['-1.8 °F', -1],
    ['2,2 °C', 2.2],
  ])('%s is %s °C of difference, without + 32', (text, differenceC) => {
    expect(parseTemperatureDifference(text, '--limit')).toBeCloseTo(differenceC, 12);
  });

  it('refuses a difference without a unit', () => {
    expect(refusal(() => parseTemperatureDifference('5', '--limit')).code).toBe('unit-missing');
  });
});

describe('duration', () => {
  it.each([
    ['120s', 120],
    ['2min', 120],
    ['2 m', 120],
    ['1m30s', 90],
    ['1 min 30 s', 90],
    ['12.5s', 12.5],
    ['12,5 s', 12.5],
    ['500ms', 0.5],
    ['1h1m1s1ms', 3661.001],
    ['0s', 0],
    ['.5s', 0.5],
  ])('%s is %s s', (text, seconds) => {
    expect(parseDuration(text, '--hold')).toBe(seconds);
  });

  it.each([
    ['120', 'unit-missing'],
    ['1m30', 'unit-missing'],
    ['1:30', 'unit-missing'],
    ['2 fortnights', 'unit-unknown'],
    ['30s1m', 'number-unreadable'],
    ['30s30s', 'number-unreadable'],
    ['', 'number-unreadable'],
    ['s', 'number-unreadable'],
    ['120s!', 'number-unreadable'],
    ['-5s', 'value-out-of-range'],
  ])('"%s" is refused as %s', (text, code) => {
    expect(refusal(() => parseDuration(text, '--hold')).code).toBe(code);
  });

  it('takes a negative timer offset where allowed: -1.5s is -1.5', () => {
    expect(parseDuration('-1.5s', '--timer-offset', { negative: true })).toBe(-1.5);
    expect(parseDuration('−1.5s', '--timer-offset', { negative: true })).toBe(-1.5);
  });
});

describe('pressure', () => {
  // NIST SP 811, B.8: 1 psi = 6.894 757 kPa; 1 bar = 100 kPa.
  it.each([
    ['120psi', 120, 0],
    ['6.894757kPa', 1, 1e-7],
    ['1bar', 14.50377, 1e-5],
    ['1MPa', 145.0377, 1e-4],
    ['100 kPa', 14.50377, 1e-5],
    ['8,3 bar', 120.3813, 1e-4],
    ['101325 Pa', 14.69595, 1e-5],
  ])('%s is %s psi', (text, psi, within) => {
    expect(Math.abs(parsePressure(text, '--gauge') - psi)).toBeLessThanOrEqual(within);
  });

  it('refuses a pressure without a unit and one in inches', () => {
    expect(refusal(() => parsePressure('120', '--gauge')).code).toBe('unit-missing');
    expect(refusal(() => parsePressure('120in', '--gauge')).code).toBe('unit-unknown');
    expect(refusal(() => parsePressure('-5psi', '--gauge')).code).toBe('value-out-of-range');
  });
});

describe('length', () => {
  // International inch of 1959: exactly 25.4 mm.
  it.each([
    ['1in', 25.4],
    ['9.875in', 250.825],
    ['9 7/8 in', 250.825],
    ['9-7/8"', 250.825],
    ['9.875″', 250.825],
    ['7/8in', 22.225],
    ['212 mm', 212],
    ['212,5mm', 212.5],
    ['21.2cm', 212],
    ['0.212 m', 212],
  ])('%s is %s mm', (text, mm) => {
    expect(parseLength(text, '--ring-od')).toBeCloseTo(mm, 10);
  });

  it.each([
    ['212', 'unit-missing'],
    ['9 7/8', 'unit-missing'],
    ['9 7/0 in', 'number-unreadable'],
    ['9 875in', 'unit-unknown'],
    ['212 psi', 'unit-unknown'],
    ['-5in', 'value-out-of-range'],
  ])('"%s" is refused as %s', (text, code) => {
    expect(refusal(() => parseLength(text, '--ring-od')).code).toBe(code);
  });
});

it('any text gives a finite number or a named refusal, in every quantity', () => {
  const pieces = fc.constantFrom(
    '1',
    '0',
    '.',
    ',',
    '-',
    '/',
    ' ',
    's',
    'm',
    'min',
    'F',
    '°C',
    'K',
    'psi',
    'in',
    '"',
    'e',
    '€',
  );
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string(),
        fc.array(pieces, { maxLength: 8 }).map((all) => all.join('')),
      ),
      (text) => {
        for (const parse of [
          parseTemperature,
          parseTemperatureDifference,
          parseDuration,
          parsePressure,
          parseLength,
        ]) {
          try {
            expect(Number.isFinite(parse(text, '--option'))).toBe(true);
          } catch (error) {
            if (!(error instanceof UnitError)) throw error;
          }
        }
      },
    ),
    { numRuns: 2000 },
  );
});
