import { describe, expect, it } from 'vitest';
import { middleOfBand, netFacingBand } from '../../../src/core/press/net-facing-band.ts';
import type { Assembly, Press } from '../../../src/core/press/Press.ts';
import { gaugeFor } from '../../../src/core/ready-check/gauge-for.ts';
import { SHOP_ASSEMBLY, SHOP_PRESS } from './shop-sizes.ts';

describe('net facing pressure of an assembly', () => {
  it('is 200 to 250 psi, common practice, where none is stated', () => {
    expect(netFacingBand(null)).toEqual({ low: 200, high: 250 });
    expect(netFacingBand({ netFacingPsi: null })).toEqual({ low: 200, high: 250 });
  });

  it('is its own where stated, and the gauge follows it: gauge = net · ring area ÷ ram area (closed form)', () => {
    const assembly: Assembly = { ...SHOP_ASSEMBLY, netFacingPsi: { low: 150, high: 170 } };
    expect(middleOfBand(netFacingBand(assembly))).toBe(160);
    const gauge = gaugeFor(SHOP_PRESS as Press, assembly);
    // Areas: π/4 · (212² − 168²) and π/4 · 200².
    const share = (212 ** 2 - 168 ** 2) / 200 ** 2;
    expect(gauge?.gaugePsi).toBeCloseTo(160 * share, 9);
    expect(gauge?.bandLowGaugePsi).toBeCloseTo(150 * share, 9);
    expect(gauge?.bandHighGaugePsi).toBeCloseTo(170 * share, 9);
  });
});
