import { describe, expect, it } from 'vitest';
import {
  differenceText,
  lengthText,
  numberText,
  pressureText,
  secondsField,
  secondsText,
  slopeText,
  temperatureField,
  temperatureText,
} from '../../../src/core/text/units-text.ts';

describe('temperatures in words', () => {
  it('176.67 °C reads 350 °F (176.7 °C), or the other way round by choice', () => {
    expect(temperatureText(176.66666667)).toBe('350 °F (176.7 °C)');
    expect(temperatureText(176.66666667, 'C')).toBe('176.7 °C (350 °F)');
  });

  it('a difference of 2.2 °C is 4 °F, never 36 °F', () => {
    expect(differenceText(2.2)).toBe('4 °F (2.2 °C)');
    expect(slopeText(1.37)).toBe('2.47 °F/s (1.37 °C/s)');
  });

  it('a column of temperatures has one width, whatever the value', () => {
    const values = [-273.15, -0.04, 0, 9.99, 176.7, 1820, null, Number.NaN];
    const widths = new Set(
      values.flatMap((value) => (['F', 'C'] as const).map((unit) => temperatureField(value, unit).length)),
    );
    expect(widths).toEqual(new Set([10]));
    expect(temperatureField(176.66666667, 'F')).toBe('  350.0 °F');
    expect(temperatureField(null, 'F')).toBe('      — °F');
  });
});

describe('other quantities in words', () => {
  it('seconds, pressure and length carry both units where two are used', () => {
    expect(secondsText(174)).toBe('174 s');
    expect(secondsText(53.47)).toBe('53.5 s');
    expect(secondsField(53.4712)).toBe('  53.47 s');
    expect(secondsField(null)).toBe('      — s');
    // 1 psi = 6.894757 kPa (NIST SP 811): 206 psi = 1420.3 kPa.
    expect(pressureText(206)).toBe('206 psi (1420 kPa)');
    expect(lengthText(212)).toBe('212 mm (8.346 in)');
  });

  it('no minus before zero, a dash for what is no number', () => {
    expect(numberText(-0.001, 1)).toBe('0.0');
    expect(numberText(Number.POSITIVE_INFINITY, 1)).toBe('—');
    expect(numberText(100, 0)).toBe('100');
  });
});
