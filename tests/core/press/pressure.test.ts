import { describe, expect, it } from 'vitest';
import type { PressureInput } from '../../../src/core/press/PressureResult.ts';
import { pressure } from '../../../src/core/press/pressure.ts';
import { ramAreaMm2 } from '../../../src/core/press/ram-area.ts';
import { ringAreaMm2 } from '../../../src/core/press/ring-area.ts';
import { pressureLines } from '../../../src/core/text/pressure-text.ts';

/** Check value of the trade (common practice, no source). */
const BIG: PressureInput = Object.freeze({
  ringOuterDiameterMm: 9.875 * 25.4,
  ringInnerDiameterMm: 8.75 * 25.4,
  ramBoreMm: 6 * 25.4,
  given: { gaugePsi: 120 },
});
/** The demo assembly WB-212 on a press with one 200 mm ram. */
const WB_212 = Object.freeze({ ringOuterDiameterMm: 212, ringInnerDiameterMm: 168, ramBoreMm: 200 });

describe('net facing pressure', () => {
  it('ring 9.875 × 8.75 in, one 6 in ram, 120 psi gauge: about 206 psi net, inside 200 to 250 psi', () => {
    const result = pressure(BIG);
    // Closed form: 120 · 6² ÷ (9.875² − 8.75²) = 4320 ÷ 20.953125 = 206.1745.
    expect(result.netFacingPsi).toBeCloseTo(206.1745, 4);
    expect(result.insideBand).toBe(true);
    expect(result.side).toBe('inside');
  });

  it('WB-212: ring π/4·(212² − 168²) = 13132 mm², ram 31416 mm², 90 psi gives 215.3 psi', () => {
    const result = pressure({ ...WB_212, given: { gaugePsi: 90 } });
    expect(result.ringAreaMm2).toBeCloseTo((Math.PI / 4) * 16_720, 8);
    expect(result.ramAreaMm2).toBeCloseTo(Math.PI * 10_000, 8);
    // 90 · 40000 ÷ 16720.
    expect(result.netFacingPsi).toBeCloseTo(215.311, 3);
    // F = p·A: 90 psi = 0.620528 N/mm² (NIST SP 811) on 31415.93 mm².
    expect(result.forceN).toBeCloseTo(19494.5, 0);
  });

  it('gauge for 225 psi wanted gives 225 psi back: both ways round agree', () => {
    const { gaugePsi } = pressure({ ...WB_212, given: { netFacingPsi: 225 } });
    expect(gaugePsi).toBeCloseTo((225 * 16_720) / 40_000, 10);
    expect(pressure({ ...WB_212, given: { gaugePsi } }).netFacingPsi).toBeCloseTo(225, 10);
  });

  it('the band of 200 to 250 psi is 83.6 to 104.5 psi on the gauge; 83 is below, 105 above', () => {
    const result = pressure({ ...WB_212, given: { gaugePsi: 83 } });
    expect(result.bandLowGaugePsi).toBeCloseTo(83.6, 10);
    expect(result.bandHighGaugePsi).toBeCloseTo(104.5, 10);
    expect(result.side).toBe('below');
    expect(pressure({ ...WB_212, given: { gaugePsi: 105 } }).side).toBe('above');
  });

  it('the ends of the band belong to it, dust of unit conversion included', () => {
    for (const wanted of [200, 250]) {
      const { gaugePsi } = pressure({ ...BIG, given: { netFacingPsi: wanted } });
      for (const dust of [1 - 4e-16, 1, 1 + 4e-16]) {
        expect(pressure({ ...BIG, given: { gaugePsi: gaugePsi * dust } }).insideBand).toBe(true);
      }
    }
    expect(pressure({ ...BIG, given: { netFacingPsi: 199.999 } }).side).toBe('below');
  });

  it('one gauge division of 5 psi moves it by 5 · 40000 ÷ 16720 = 11.96 psi and may leave the band at 85 psi', () => {
    const result = pressure({ ...WB_212, given: { gaugePsi: 85 }, gaugeDivisionPsi: 5 });
    expect(result.netFacingPerDivisionPsi).toBeCloseTo(11.962, 3);
    expect(result.divisionMayLeaveBand).toBe(true);
    expect(pressure({ ...WB_212, given: { gaugePsi: 94 }, gaugeDivisionPsi: 5 }).divisionMayLeaveBand).toBe(
      false,
    );
  });

  it('two rams double it, half the land doubles it, 90 % efficiency takes a tenth', () => {
    const plain = pressure(BIG).netFacingPsi;
    expect(pressure({ ...BIG, rams: 2 }).netFacingPsi).toBeCloseTo(2 * plain, 9);
    expect(pressure({ ...BIG, landFraction: 0.5 }).netFacingPsi).toBeCloseTo(2 * plain, 9);
    expect(pressure({ ...BIG, efficiency: 0.9 }).netFacingPsi).toBeCloseTo(0.9 * plain, 9);
  });
});

describe('areas', () => {
  it('a pulling ram loses its rod: π/4·(200² − 60²)', () => {
    expect(ramAreaMm2({ ramBoreMm: 200, ramRodMm: 60, ramPulls: true })).toBeCloseTo(
      (Math.PI / 4) * 36_400,
      9,
    );
    expect(ramAreaMm2({ ramBoreMm: 200, ramRodMm: 60 })).toBeCloseTo((Math.PI / 4) * 40_000, 9);
  });

  it('an inner diameter of 0 is a full disc', () => {
    expect(ringAreaMm2({ ringOuterDiameterMm: 2, ringInnerDiameterMm: 0 })).toBeCloseTo(Math.PI, 12);
  });
});

describe('refusals by name', () => {
  it.each<[string, Partial<PressureInput>, string, string]>([
    [
      'swapped diameters',
      { ringOuterDiameterMm: 168, ringInnerDiameterMm: 212 },
      'diameters-swapped',
      'ringInnerDiameterMm',
    ],
    ['equal diameters', { ringInnerDiameterMm: 212 }, 'diameters-swapped', 'ringInnerDiameterMm'],
    ['a ring of 0', { ringOuterDiameterMm: 0 }, 'size-impossible', 'ringOuterDiameterMm'],
    ['a negative inner diameter', { ringInnerDiameterMm: -1 }, 'size-impossible', 'ringInnerDiameterMm'],
    ['a bore that is no number', { ramBoreMm: Number.NaN }, 'size-impossible', 'ramBoreMm'],
    ['a rod thicker than the bore', { ramRodMm: 210 }, 'size-impossible', 'ramRodMm'],
    ['a pulling ram without a rod', { ramPulls: true }, 'size-missing', 'ramRodMm'],
    ['no ram', { rams: 0 }, 'rams-impossible', 'rams'],
    ['one and a half rams', { rams: 1.5 }, 'rams-impossible', 'rams'],
    ['land of 110 %', { landFraction: 1.1 }, 'fraction-impossible', 'landFraction'],
    ['no efficiency', { efficiency: 0 }, 'fraction-impossible', 'efficiency'],
    ['a gauge of 0', { given: { gaugePsi: 0 } }, 'pressure-impossible', 'gaugePsi'],
    ['a wanted net below 0', { given: { netFacingPsi: -5 } }, 'pressure-impossible', 'netFacingPsi'],
    ['a band that falls', { bandPsi: { low: 250, high: 200 } }, 'band-impossible', 'bandPsi'],
    ['a division of 0', { gaugeDivisionPsi: 0 }, 'pressure-impossible', 'gaugeDivisionPsi'],
  ])('%s', (_name, change, code, quantity) => {
    expect(() => pressure({ ...WB_212, given: { gaugePsi: 90 }, ...change })).toThrow(
      expect.objectContaining({ code, quantity, remedy: expect.stringMatching(/\S/u) }),
    );
  });
});

describe('pressure in words', () => {
  it('states areas, both pressures, the band and its source, the division, and the caution about the ram', () => {
    const lines = pressureLines(pressure({ ...BIG, gaugeDivisionPsi: 5 }));
    expect(lines.slice(0, 5)).toEqual([
      'Ring area 10617 mm² (16.46 in²), ram area 18241 mm² (28.27 in²).',
      'At gauge 120 psi (827 kPa): net facing pressure 206.2 psi (1422 kPa).',
      'That is inside the band of 200 to 250 psi (common practice, no source).',
      'On the gauge the band runs from 116.4 psi (803 kPa) to 145.5 psi (1003 kPa).',
      'One gauge division (5.0 psi) read wrong moves it by 8.6 psi: 198 to 215 psi net, which may leave the band.',
    ]);
    expect(lines.some((line) => line.includes('The ram crushes'))).toBe(true);
  });

  it('below the band reads so', () => {
    expect(pressureLines(pressure({ ...WB_212, given: { gaugePsi: 60 } }))[2]).toBe(
      'That is below the band of 200 to 250 psi (common practice, no source).',
    );
  });
});
